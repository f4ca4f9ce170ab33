import { CATALOGUE, numberNamesOf, numbersOf, type AxleName, type CarDocument, type ReadingEntry } from '../../geometry/index';
import type { BenchAnswered, BenchRow } from '../compute/answerBench';
import type { CurveLine, CurveOver, SweptSetup } from '../compute/curves';
import type { ShownQuantity } from '../units/shownQuantity';
import { measuredSets, type MeasuredSet } from './measuredPoints';

/** The lines of one reading of one setup, in the units shown. */
export interface SweptLines {
  readonly inputs: Float64Array;
  readonly left: CurveLine;
  /** null: the reading is of the axle or the car */
  readonly right: CurveLine | null;
}

/** Everything that one plot draws but its cursor. */
export interface PlotContent {
  /** dotted name of the reading: "camber", "wheelCentre.x" */
  readonly number: string;
  readonly name: string;
  readonly unit: string;
  /** the numbers are degrees that are read in degrees and minutes */
  readonly isInMinutes: boolean;
  /** along the motion stand rows of a list, by their number */
  readonly isCounted?: boolean;
  /** what plus means; empty where there is no sense to it */
  readonly plus: string;
  /** a span of values that is not worth telling apart, in the units shown */
  readonly least: number;
  readonly own: SweptLines | null;
  readonly compared: SweptLines | null;
  readonly measured: readonly MeasuredSet[];
  /** why there is no line at all; null where there is one */
  readonly why: string | null;
}

interface NamedNumber {
  readonly entry: ReadingEntry;
  readonly name: string;
}

/** The reading of a dotted name; undefined for a name that there is not. */
export const readingOfNumber = (number: string): NamedNumber | undefined => {
  const entry = CATALOGUE.find((one) => numberNamesOf(one).includes(number));
  if (!entry) return undefined;
  const component = number.split('.')[1];
  return { entry, name: component === undefined ? entry.name : `${entry.name}, ${component}` };
};

const shownLine = ({ values, why }: CurveLine, shown: ShownQuantity): CurveLine => ({ values: values.map(shown.toShown), why });

const linesOf = (swept: SweptSetup | null, number: string, shown: ShownQuantity, motion: ShownQuantity): SweptLines | null => {
  const curves = swept?.curves.get(number);
  if (!swept || !curves) return null;
  const { left, right } = curves;
  return {
    inputs: swept.inputs.map(motion.toShown),
    left: shownLine(left, shown),
    right: right && shownLine(right, shown),
  };
};

const hasNumbers = (lines: SweptLines | null): boolean =>
  lines !== null && [lines.left, lines.right].some((line) => line?.values.some((value) => !Number.isNaN(value)));

/** Less than this many units of the last decimal shown is a straight line. */
const LEAST_GRAINS = 10;

export interface PlotQuestion {
  readonly number: string;
  readonly shown: ShownQuantity;
  readonly motion: ShownQuantity;
  readonly own: SweptSetup | null;
  readonly compared: SweptSetup | null;
  readonly document: CarDocument;
  readonly axle: AxleName;
  readonly over: CurveOver;
  readonly setups: readonly string[];
}

export const plotContent = (question: PlotQuestion): PlotContent | null => {
  const { number, shown, motion } = question;
  const named = readingOfNumber(number);
  if (!named) return null;
  const { entry, name } = named;
  const own = linesOf(question.own, number, shown, motion);
  const measured = measuredSets(question.document, question.axle, entry, number, question.over, question.setups);
  const isInMinutes = shown.unit === '' && entry.quantity === 'angle';
  const grain = Math.abs(shown.toShown(Number(`1e${-entry.decimals}`)));
  return {
    number,
    name,
    unit: isInMinutes ? '°' : shown.unit,
    isInMinutes,
    plus: entry.plus,
    least: LEAST_GRAINS * grain,
    own,
    compared: linesOf(question.compared, number, shown, motion),
    measured: measured.map((set) => ({
      ...set,
      points: set.points.map(({ input, value, sigma, side }) => ({
        input: motion.toShown(input),
        value: shown.toShown(value),
        sigma: sigma === null ? null : Math.abs(shown.toShown(value + sigma) - shown.toShown(value)),
        side,
      })),
    })),
    why: own && !hasNumbers(own) ? (own.left.why(0) ?? 'no value here') : null,
  };
};

/** The values of a reading at the position shown: of the setup on the bench and of the compared one. Contract units. */
export interface CursorValues {
  readonly left: number | null;
  /** null too where the reading is of the axle or the car */
  readonly right: number | null;
  readonly comparedLeft: number | null;
  readonly comparedRight: number | null;
}

const valueIn = (row: BenchRow, { entry }: NamedNumber, number: string, side: 'left' | 'right'): number | null => {
  if (entry.of !== 'corner' && side === 'right') return null;
  const owner = entry.of === 'corner' ? row[side] : entry.of === 'axle' ? row.both : row.wholeCar;
  return numbersOf(entry, owner[entry.key] ?? null)[numberNamesOf(entry).indexOf(number)] ?? null;
};

export const cursorValues = ({ row, against, compared }: BenchAnswered, number: string): CursorValues | null => {
  const named = readingOfNumber(number);
  if (!named) return null;
  const other = against !== null && compared.ok ? compared.value : null;
  return {
    left: valueIn(row, named, number, 'left'),
    right: valueIn(row, named, number, 'right'),
    comparedLeft: other && valueIn(other, named, number, 'left'),
    comparedRight: other && valueIn(other, named, number, 'right'),
  };
};
