import { useId, useRef } from 'react';
import type { CurveOver } from '../compute/curves';
import { Segments } from '../look/controls/Segments';
import { useFailureWords } from '../readings/useFailureWords';
import { useBench, useWindow } from '../shell/benchContext';
import { moveTo } from '../state/actions/lookAt';
import { prefer } from '../state/actions/prefer';
import { CURVES_OVER, CURVES_SHOWN, MOST_PLOTS, nextPlot, plotsThatFit } from './curveChoices';
import { Plot } from './Plot';
import type { Range } from './plotScale';
import { useCurves, type CurvesShown } from './useCurves';
import { usePointerHeld } from './usePointerHeld';
import { useSize } from './useSize';

const OVERS: readonly { readonly name: CurveOver; readonly label: string }[] = [
  { name: 'bump', label: 'Bump' },
  { name: 'roll', label: 'Roll' },
  { name: 'steer', label: 'Steer' },
];
/** One press of an arrow key, and the grain of a drag, as on the motion rules: mm or degrees. */
const STEPS: Readonly<Record<CurveOver, number>> = { bump: 1, roll: 0.1, steer: 1 };
const KEYS = { bump: 'travel', roll: 'rollDeg', steer: 'rack' } as const;

const HINT =
  'Arrow keys and dragging move the car. Plus and minus, the wheel, or Shift and dragging a box zoom. ' +
  'Control with arrow keys, or Alt and dragging, moves the plot. A double click or 0 shows the whole.';

const toGrain = (value: number, grain: number): number => {
  const rounded = Number((Math.round(value / grain) * grain).toFixed(6));
  return rounded === 0 ? 0 : rounded;
};

const Legend = ({ shown }: { readonly shown: CurvesShown }) => {
  const sets = [...new Set(shown.plots.flatMap(({ measured }) => measured.map(({ name }) => name)))];
  return (
    <span className="legend">
      <span>
        <svg viewBox="0 0 26 10" aria-hidden="true">
          <path className="curve left" d="M0,5H26" />
          <circle className="mark left" cx="13" cy="5" r="3.4" />
        </svg>
        left
      </span>
      <span>
        <svg viewBox="0 0 26 10" aria-hidden="true">
          <path className="curve right" d="M0,5H26" />
          <rect className="mark right" x="9.8" y="1.8" width="6.4" height="6.4" />
        </svg>
        right
      </span>
      {shown.compared !== null && (
        <span className="name" title={shown.compared}>
          <svg viewBox="0 0 26 10" aria-hidden="true">
            <path className="curve compared" d="M1,5H26" />
            <path className="mark compared" d="M13,.8l4.2,4.2l-4.2,4.2l-4.2,-4.2z" />
          </svg>
          {shown.compared}
        </span>
      )}
      {sets.map((name) => (
        <span key={name} className="name" title={`measured: ${name}`}>
          <svg className="cross" viewBox="0 0 10 10" aria-hidden="true">
            <path d="M1,1l8,8m0,-8l-8,8" />
          </svg>
          {name}
        </span>
      ))}
    </span>
  );
};

const Strip = ({ shown, isDragged }: { readonly shown: CurvesShown; readonly isDragged: boolean }) => {
  const { store } = useWindow();
  const { over, numbers, motion, whole } = shown;
  const position = useBench((state) => state.position);
  const failure = useFailureWords();
  const hintId = useId();
  const strip = useRef<HTMLDivElement>(null);
  const { width } = useSize(strip);
  const fit = plotsThatFit(width);
  const at = position[KEYS[over]];
  const step = STEPS[over];
  const move = (value: number) => moveTo(store, { [KEYS[over]]: Math.min(whole[1], Math.max(whole[0], value)) });
  const keep = (list: readonly string[]) => prefer(store, CURVES_SHOWN, list);
  const inUnits = ([low, high]: Range): Range => [motion.toShown(low), motion.toShown(high)];
  const canAdd = numbers.length < Math.min(MOST_PLOTS, fit);
  const plots = shown.plots.slice(0, fit);
  return (
    <>
      <div className="curvehead">
        <h2>Curves over</h2>
        <Segments
          label="Curves over"
          chosen={over}
          options={OVERS.map((option) => ({ ...option, disabled: option.name === 'steer' && !shown.isSteered }))}
          onChoose={(name) => prefer(store, CURVES_OVER, name)}
        />
        <span>{motion.unit}</span>
        <Legend shown={shown} />
        <span className="spread" />
        {plots.length < shown.plots.length && (
          <span className="quiet count" title="A wider window has room for more">
            {plots.length} of {shown.plots.length}
          </span>
        )}
        <button
          type="button"
          className="button bare"
          disabled={!canAdd}
          title={canAdd ? 'One more curve' : 'No room for one more: take one away, or make the window wider'}
          onClick={() => keep([...numbers, nextPlot(numbers)])}
        >
          + curve
        </button>
      </div>
      <p id={hintId} className="unseen">
        {HINT}
      </p>
      {shown.hasFailed && failure && (
        <p className="curvewhy" role="note" title={failure.detail}>
          <b>No curves of {shown.setup}.</b> {failure.detail}
        </p>
      )}
      <div ref={strip} className="plots" title={HINT}>
        {plots.map((content, index) => (
          <Plot
            key={index}
            content={content}
            place={index}
            motion={{ name: over, shown: motion }}
            x={inUnits(shown.window)}
            whole={inUnits(whole)}
            isZoomed={shown.isZoomed}
            cursor={motion.toShown(at)}
            isDragged={isDragged}
            setup={shown.setup ?? ''}
            compared={shown.compared}
            hintId={hintId}
            onChoose={(number) => keep(numbers.map((one, place) => (place === index ? number : one)))}
            onRemove={numbers.length > 1 ? () => keep(numbers.filter((_, place) => place !== index)) : null}
            onMove={(input) => move(toGrain(motion.fromShown(input), step / 2))}
            onMoveBack={(input) => move(Number(motion.fromShown(input).toFixed(9)))}
            onStep={(steps) => move(toGrain(at + steps * step, step / 10))}
            onZoom={(x) => shown.zoomTo(x && [motion.fromShown(x[0]), motion.fromShown(x[1])])}
          />
        ))}
      </div>
    </>
  );
};

/** What is zoomed to belongs to one car, axle and motion. */
const Swept = ({ isDragged }: { readonly isDragged: boolean }) => <Strip shown={useCurves(isDragged)} isDragged={isDragged} />;

/** Readings over bump, roll or steer, under the view: the setup on the bench, the compared one behind it, measured points. */
export const Curves = () => {
  const isOpen = useBench((state) => state.history !== null);
  const of = useBench((state) => `${state.file?.title ?? ''} ${state.axle} ${String(state.preferences[CURVES_OVER] ?? '')}`);
  const isDragged = usePointerHeld();
  return (
    <section className="curves" aria-label="Curves">
      {isOpen && <Swept key={of} isDragged={isDragged} />}
    </section>
  );
};
