import type { RefObject } from 'react';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { scopeOf } from '../state/viewing';
import type { SceneControl } from './runScene';
import { isFromBehind } from './views';

/** What the two pictures beside the coordinates show, and the way back to all of it. */
export const PlanTitles = ({ control }: { readonly control: RefObject<SceneControl | null> }) => {
  const axle = useBench((state) => state.axle);
  const scope = useBench((state) => scopeOf(state.preferences));
  const setup = useBench((state) => state.history?.present.setup ?? '');
  const { length } = useUnits();
  return (
    <div className="plantitles">
      <p data-over-view>
        <b>{isFromBehind({ axle, scope }) ? 'From behind' : 'From the front'}</b> Y across, Z up, {length}
        <span>as set up in {setup}</span>
      </p>
      <p data-over-view>
        <b>From above</b> Y across, X forward, {length}
      </p>
      <button
        type="button"
        className="button"
        data-over-view
        title="Both pictures as they were [0]. A drag moves a picture, the wheel zooms it; a click chooses a point, and a drag of the chosen point moves that."
        onClick={() => control.current?.fit()}
      >
        Fit
      </button>
    </div>
  );
};
