import type { RefObject } from 'react';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { mmPerFileUnit } from '../units/fileLength';
import { scopeOf } from '../state/viewing';
import type { SceneControl } from './runScene';
import { isFromBehind } from './views';

/** A point that stands farther than this from where it is drawn was set up elsewhere [mm]. */
const APART_MM = 0.05;

/** What the two pictures beside the coordinates show, and the way back to all of it. */
export const PlanTitles = ({ control }: { readonly control: RefObject<SceneControl | null> }) => {
  const axle = useBench((state) => state.axle);
  const scope = useBench((state) => scopeOf(state.preferences));
  const setup = useBench((state) => state.history?.present.setup ?? '');
  const isApart = useBench(({ history, shown, viewing }) => {
    const { chosen } = viewing;
    const document = history?.present.document;
    const own = chosen && document?.[chosen.axle]?.points[chosen.point];
    const now = chosen && shown && shown.row.placed[chosen.side].points[chosen.point];
    if (!own || !now || !document || chosen.axle !== axle || chosen.side !== 'left') return false;
    const mm = mmPerFileUnit(document);
    return own.some((value, index) => Math.abs(value * mm - (now[index] ?? 0)) > APART_MM);
  });
  const { length } = useUnits();
  return (
    <div className="plantitles">
      <p data-over-view>
        <b>{isFromBehind({ axle, scope }) ? 'From behind' : 'From the front'}</b> Y across, Z up, {length}
        <span>
          as set up in {setup}
          {isApart ? '; the table has the points as drawn' : ''}
        </span>
      </p>
      <p data-over-view>
        <b>From above</b> Y across, X forward, {length}
      </p>
      <button
        type="button"
        className="button"
        data-over-view
        title="Both pictures as they were [0]. A drag moves a picture, the wheel zooms it; a drag of a point moves that, and a click chooses it. What is moved is the point as it stands now; as drawn it moves by as much, turned with its part."
        onClick={() => control.current?.fit()}
      >
        Fit
      </button>
    </div>
  );
};
