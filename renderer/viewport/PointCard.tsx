import { nameOfKey } from '../adjusters/fitterWords';
import { NumberField } from '../look/controls/NumberField';
import { FarNotice } from '../points/FarNotice';
import { useBench, useWindow } from '../shell/benchContext';
import { movePoint } from '../state/actions/editCar';
import { chooseAxle, holdAdjuster } from '../state/actions/lookAt';
import { allowMove, choosePoint, switchOverlay } from '../state/actions/viewing';
import type { BenchStore } from '../state/benchStore';
import { overlaysOf, type PointRef } from '../state/viewing';
import { setupNamed } from '../state/settings';
import { mmPerFileUnit } from '../units/fileLength';
import { useUnits } from '../look/units';
import { shownQuantity } from '../units/shownQuantity';
import { adjustersHeldBack, adjustersMoving } from './joints';
import { TapeFrom, useTapeFrom } from './TapeFrom';
import type { Triple } from '../../geometry/index';

const AXIS_WORDS = ['X, forward', 'Y, left', 'Z, up'] as const;
const FARTHEST = 100_000;
const LENGTH = { quantity: 'length', decimals: 2 } as const;

const DesignFields = ({ chosen }: { readonly chosen: PointRef }) => {
  const { store } = useWindow();
  const units = useUnits();
  const document = useBench((state) => state.history?.present.document);
  const axle = document?.[chosen.axle];
  const own = axle?.right?.points?.[chosen.point];
  const design = chosen.side === 'right' && own ? own : axle?.points[chosen.point];
  if (!document || !design) return null;
  const mm = mmPerFileUnit(document);
  const shown = shownQuantity(LENGTH, units);
  const name = nameOfKey(chosen.point);
  const side = chosen.side === 'right' && own ? 'right' : 'left';
  const set = (index: number, value: number) => {
    const to = design.map((old, at) => (at === index ? Number((value / mm).toFixed(6)) : old)) as unknown as Triple;
    movePoint(store, chosen.axle, side, chosen.point, to, `Move ${name.toLowerCase()}`);
  };
  return (
    <span className="places" role="group" aria-label={`${name} at design`}>
      {AXIS_WORDS.map((words, index) => {
        const value = (design[index] ?? 0) * mm;
        return (
          <NumberField
            key={words}
            label={`${name} at design, ${words}, ${shown.unit}`}
            value={shown.toShown(value)}
            unit={shown.unit}
            min={shown.toShown(-FARTHEST)}
            max={shown.toShown(FARTHEST)}
            before={<span className="side">{words.charAt(0)}</span>}
            onSet={(number) => set(index, shown.fromShown(number))}
            onStep={(steps) => set(index, value + steps)}
            onHome={() => undefined}
          />
        );
      })}
    </span>
  );
};

/** Puts the point's own axle on the bench, and keeps it chosen. */
const showAxleOf = (store: BenchStore, chosen: PointRef): void => {
  chooseAxle(store, chosen.axle);
  choosePoint(store, chosen);
};

/** How the chosen point can be moved: by its adjuster, or itself once the person says so. */
const Ways = ({ chosen }: { readonly chosen: PointRef }) => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present);
  const onBench = useBench((state) => state.axle);
  const held = useBench((state) => state.held);
  const mayMove = useBench((state) => state.viewing.mayMove);
  const axle = bench?.document[chosen.axle];
  if (!bench || !axle) return null;
  if (chosen.axle !== onBench)
    return (
      <p className="ask">
        It is of the other axle.
        <button type="button" className="button" onClick={() => showAxleOf(store, chosen)}>
          Show the {chosen.axle} axle
        </button>
      </p>
    );
  const setup = setupNamed(bench.document, bench.setup);
  const isToeSet = setup[chosen.axle]?.setToe !== undefined;
  const moving = adjustersMoving(axle, chosen.point, isToeSet);
  const heldBack = adjustersHeldBack(axle, chosen.point, isToeSet);
  const labelOf = (name: string): string => axle.adjusters?.[name]?.label ?? nameOfKey(name);
  const name = nameOfKey(chosen.point).toLowerCase();
  if (moving.length > 0) {
    const turned = held !== null && moving.includes(held) ? held : moving[0];
    return (
      <p>
        Drag it to turn{' '}
        {moving.map((one) => (
          <button
            key={one}
            type="button"
            className="button"
            aria-pressed={one === turned}
            onClick={() => holdAdjuster(store, one)}
          >
            {labelOf(one)}
          </button>
        ))}
      </p>
    );
  }
  if (!mayMove)
    return (
      <p className="ask">
        {heldBack.length === 0
          ? `The ${name} is no adjuster’s.`
          : heldBack.map(
              (one) => `${labelOf(one)} ${axle.adjusters?.[one]?.locked === undefined ? 'is set by toe' : 'is locked'}.`,
            )}{' '}
        Move the pickup point itself, in the car file and for every setup?
        <button type="button" className="button" onClick={() => allowMove(store)}>
          Move the point
        </button>
      </p>
    );
  return (
    <>
      <DesignFields chosen={chosen} />
      <p>Drag it in the view’s plane or by an arm; X, Y or Z holds it to an axis, Esc gives up.</p>
    </>
  );
};

/** The point chosen in the view: its name, where it is, its path, and how it can be moved. */
export const PointCard = () => {
  const { store } = useWindow();
  const units = useUnits();
  const chosen = useBench((state) => state.viewing.chosen);
  // the other end must not lie under the card
  const isTaping = useTapeFrom(chosen);
  const placed = useBench((state) => (chosen && state.axle === chosen.axle ? state.shown?.row.placed : undefined));
  const isReached = useBench((state) => state.answer?.ok !== false);
  const hasPath = useBench((state) => overlaysOf(state.preferences).includes('path'));
  // where lengths are read
  const isOnBench = useBench((state) => state.page === 'bench');
  // beside the table of points it is said there
  const hasTable = useBench((state) => state.page === 'points');
  const exists = useBench(
    (state) => chosen !== null && state.history?.present.document[chosen.axle]?.points[chosen.point] !== undefined,
  );
  if (!chosen || !exists) return null;
  const when = isReached ? 'now' : 'last reached';
  const at = placed?.[chosen.side].points[chosen.point];
  const name = nameOfKey(chosen.point);
  const lengths = shownQuantity(LENGTH, units);
  return (
    <div className="pointcard" data-over-view role="group" aria-label={`Chosen point: ${name}, ${chosen.side}`}>
      <p>
        <b>{name}</b> <span className={chosen.side}>{chosen.side}</span>
        {at && isOnBench && <TapeFrom from={chosen} />}
        <button type="button" className="button plain" aria-label={`Let go of ${name}`} onClick={() => choosePoint(store, null)}>
          ×
        </button>
      </p>
      {!isTaping && (
        <>
          <div className="standing">
            {at && (
              <p className="now">
                {when} {at.map((value, index) => `${'XYZ'.charAt(index)} ${lengths.format(value)}`).join('  ')}{' '}
                <span className="quiet">{lengths.unit}</span>
              </p>
            )}
            <label>
              <input type="checkbox" checked={hasPath} onChange={() => switchOverlay(store, 'path')} />
              Path over bump
            </label>
            <button
              type="button"
              className="button"
              aria-label={`Save the path of ${name} as CSV, over all travel and lock`}
              onClick={() => void import('./keepPath').then(({ keepPath }) => keepPath(store.getState(), chosen))}
            >
              CSV
            </button>
          </div>
          {!hasTable && <FarNotice axle={chosen.axle} side={chosen.side} point={chosen.point} />}
          <Ways chosen={chosen} />
        </>
      )}
    </div>
  );
};
