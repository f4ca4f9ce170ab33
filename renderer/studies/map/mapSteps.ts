import type { MapAnswer, MapQuestion, SetupDocument } from '../../../geometry/index';
import { withSetting } from '../../state/settings';

/** What is wanted of a map, in contract units. */
export interface MapMarks {
  /** null: no value is marked */
  readonly wanted: { readonly value: number; readonly tolerance: number } | null;
  /** null: no threshold is given */
  readonly threshold: { readonly value: number; readonly sense: 'above' | 'below' } | null;
}

/** A setting that the parts really have. */
export interface MapStep {
  /** indexes into the steps either way */
  readonly column: number;
  readonly row: number;
  /** in the file's unit; along a motion in mm or degrees */
  readonly x: number;
  readonly y: number;
  readonly value: number | null;
  readonly second: number | null;
  /** inside every limit of the file */
  readonly isAllowed: boolean;
  /** names of the limits that it breaks */
  readonly breaks: readonly string[];
  /** allowed, within what is marked, and on the right side of the threshold */
  readonly fits: boolean;
}

const passes = (second: number | null, { threshold }: MapMarks): boolean =>
  threshold === null ||
  (second !== null && (threshold.sense === 'above' ? second >= threshold.value - 1e-9 : second <= threshold.value + 1e-9));

const isNear = (value: number | null, { wanted }: MapMarks): boolean =>
  value !== null && (wanted === null || Math.abs(value - wanted.value) <= wanted.tolerance + 1e-9);

/** Whether anything is asked of the steps at all. */
export const hasMarks = ({ wanted, threshold }: MapMarks): boolean => wanted !== null || threshold !== null;

/** Every real step of a map, and whether it is what one wants. */
export const mapSteps = ({ onSteps }: MapAnswer, marks: MapMarks): readonly MapStep[] => {
  if (!onSteps) return [];
  const { x, y, z, second, limits = [] } = onSteps;
  return y.flatMap((yValue, row) =>
    x.map((xValue, column): MapStep => {
      const value = z[row]?.[column] ?? null;
      const other = second?.[row]?.[column] ?? null;
      const breaks = limits.flatMap(({ name, spare }) => {
        const left = spare[row]?.[column] ?? null;
        return value !== null && left !== null && left >= -1e-9 ? [] : [name];
      });
      const isAllowed = value !== null && breaks.length === 0;
      return {
        column,
        row,
        x: xValue,
        y: yValue,
        value,
        second: other,
        isAllowed,
        breaks: value === null ? [] : breaks,
        fits: hasMarks(marks) && isAllowed && isNear(value, marks) && passes(other, marks),
      };
    }),
  );
};

/** Steps that fit, the nearest to what is wanted first; without a wanted value as they stand. */
export const fittingSteps = (steps: readonly MapStep[], { wanted }: MapMarks): readonly MapStep[] => {
  const fitting = steps.filter(({ fits }) => fits);
  if (wanted === null) return fitting;
  const miss = ({ value }: MapStep): number => Math.abs((value ?? Infinity) - wanted.value);
  return [...fitting].sort((a, b) => miss(a) - miss(b));
};

/** What a step turns, as a setup says it. A motion turns nothing. */
export const stepSettings = ({ x, y }: Pick<MapQuestion, 'x' | 'y'>, step: Pick<MapStep, 'x' | 'y'>): SetupDocument =>
  (
    [
      [x, step.x],
      [y, step.y],
    ] as const
  ).reduce<SetupDocument>(
    (made, [axis, value]) => (axis.kind === 'adjuster' ? withSetting(made, axis.axle, axis.name, axis.side, value) : made),
    {},
  );
