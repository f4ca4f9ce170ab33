import { useMemo, useState } from 'react';
import { sweepSetup, type CurveOver, type SweptSetup } from '../compute/curves';
import { motionRanges, type MotionRange } from '../compute/motionRanges';
import { standingRow } from '../compute/standing';
import { useBench } from '../shell/benchContext';
import { comparedWith } from '../state/benchStore';
import { useUnits } from '../look/units';
import { shownQuantity, shownReading } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import { chosenOver, chosenPlots } from './curveChoices';
import { plotContent, readingOfNumber, type PlotContent } from './plotContent';
import type { Range } from './plotScale';

/** Decimals of a position, in mm and degrees. */
const MOTION_DECIMALS: Readonly<Record<CurveOver, number>> = { bump: 1, roll: 2, steer: 1 };

const sameRange = (a: Range, b: Range): boolean => a[0] === b[0] && a[1] === b[1];

/** The whole of the motion that is swept; it stays as it is while something is dragged. */
const useWhole = (range: MotionRange | null, isDragged: boolean): Range => {
  const asked: Range = range ? [range.min, range.max] : [-1, 1];
  const [kept, setKept] = useState(asked);
  if (!isDragged && !sameRange(kept, asked)) setKept(asked);
  return isDragged ? kept : asked;
};

/** How the chosen motion is shown and typed: mm or inches, degrees or minutes. */
const motionShown = (over: CurveOver, units: ShownUnits) =>
  shownQuantity({ quantity: over === 'roll' ? 'angle' : 'length', decimals: MOTION_DECIMALS[over] }, units);

const shownOf = (number: string, units: ShownUnits) => {
  const entry = readingOfNumber(number)?.entry;
  return entry ? shownReading(entry, units) : shownQuantity({ quantity: 'ratio', decimals: 3 }, units);
};

const sweptOf = (answer: ReturnType<typeof sweepSetup>): SweptSetup | null => (answer.ok ? answer.value : null);

/**
 * What the strip of curves shows: the setup on the bench and the compared one over the chosen motion.
 * @param isDragged - something is under the hand
 */
export const useCurves = (isDragged: boolean) => {
  const units = useUnits();
  const bench = useBench((state) => state.history?.present ?? null);
  const other = useBench(comparedWith);
  const axle = useBench((state) => state.axle);
  const held = useBench((state) => state.position);
  const preferences = useBench((state) => state.preferences);
  const document = bench?.document ?? null;
  const isSteered = document?.[axle]?.steering !== undefined;
  const over = chosenOver(preferences, isSteered);
  const numbers = useMemo(() => chosenPlots(preferences), [preferences]);

  const ranges = useMemo(() => bench && motionRanges(bench.document, axle, standingRow(bench, axle)), [bench, axle]);
  const range = ranges && { bump: ranges.travel, roll: ranges.roll, steer: ranges.rack }[over];
  const whole = useWhole(range, isDragged);
  const [zoomed, setZoomed] = useState<Range | null>(null);
  const [from, to] = zoomed ?? whole;

  const span = { over, from, to, held };
  const own = bench && sweepSetup(bench.document, bench.setup, axle, span, numbers);
  const compared = other && sweepSetup(other.document, other.setup, axle, span, numbers);
  const [ownSwept, comparedSwept] = [own && sweptOf(own), compared && sweptOf(compared)];
  const setups = useMemo(() => [bench?.setup ?? '', other?.setup ?? ''], [bench?.setup, other?.setup]);
  const motion = useMemo(() => motionShown(over, units), [over, units]);

  const plots = useMemo<readonly PlotContent[]>(
    () =>
      document === null
        ? []
        : numbers.flatMap((number) => {
            const question = {
              number,
              shown: shownOf(number, units),
              motion,
              own: ownSwept,
              compared: comparedSwept,
              document,
              axle,
              over,
              setups,
            };
            return plotContent(question) ?? [];
          }),
    [numbers, units, motion, ownSwept, comparedSwept, document, axle, over, setups],
  );

  return {
    over,
    isSteered,
    numbers,
    plots,
    motion,
    /** [mm or degrees] */
    whole,
    window: [from, to] as Range,
    isZoomed: zoomed !== null,
    zoomTo: setZoomed,
    setup: bench?.setup ?? null,
    compared: other?.name ?? null,
    /** the setup on the bench has no curves: it cannot be set up */
    hasFailed: own?.ok === false,
  };
};

export type CurvesShown = ReturnType<typeof useCurves>;
