import { formatNumber } from '../units/format';
import { shownQuantity, type ShownQuantity } from '../units/shownQuantity';
import { STANDARD_UNITS } from '../units/unitChoice';

const inMinutes = (decimals: number): ShownQuantity =>
  shownQuantity({ quantity: 'angle', decimals }, { ...STANDARD_UNITS, angle: 'minutes', toeDiameter: null });

/** The part of a number line that an axis of a plot shows. */
export type Range = readonly [number, number];

const DECADE = 10;
/** Steps that are read easily: of a value, and of a motion. */
const VALUE_STEPS = [1, 2, 5, 10];
const MOTION_STEPS = [1, 2, 3, 4, 5, 10];

const decadeBelow = (value: number): number => Number(`1e${Math.floor(Math.log10(value) + 1e-9)}`);

const stepAmong = (steps: readonly number[], span: number, count: number): number => {
  const wanted = span / Math.max(1, count);
  if (!(wanted > 0) || !Number.isFinite(wanted)) return 1;
  const decade = decadeBelow(wanted);
  return decade * (steps.find((step) => step * decade >= wanted * (1 - 1e-9)) ?? DECADE);
};

/** The least easy step that cuts a span into at most `count` parts. */
export const valueStep = (span: number, count: number): number => stepAmong(VALUE_STEPS, span, count);
export const motionStep = (span: number, count: number): number => stepAmong(MOTION_STEPS, span, count);

const MINUTES_PER_DEGREE = 60;
/** Steps inside a degree that are read easily [minutes]. */
const MINUTE_STEPS = [1, 2, 5, 10, 15, 20, 30, 60];

/** The same of an angle that is read in degrees and minutes: whole minutes inside a degree, whole degrees past it. [°] */
export const minuteStep = (span: number, count: number): number => {
  const wanted = (MINUTES_PER_DEGREE * span) / Math.max(1, count);
  if (wanted > MINUTES_PER_DEGREE) return valueStep(span, count);
  const step = wanted > 1 ? MINUTE_STEPS.find((one) => one >= wanted * (1 - 1e-9)) : undefined;
  return (step ?? valueStep(MINUTES_PER_DEGREE * span, count)) / MINUTES_PER_DEGREE;
};

/** The numerals of such an axis: −2°, 0°05′, 0°00.5′. @param tick, step - [°] */
export const minuteTick = (tick: number, step: number): string => {
  const minutes = MINUTES_PER_DEGREE * step;
  if (Math.abs(step - Math.round(step)) < 1e-9) return `${formatNumber(tick, 0)}°`;
  return inMinutes(2 + decimalsOfStep(Number(minutes.toPrecision(9)))).format(tick);
};

/** Decimals that tell the multiples of a step apart. */
export const decimalsOfStep = (step: number): number => {
  for (let decimals = 0; decimals < 9; decimals += 1)
    if (Math.abs(step - Number(step.toFixed(decimals))) < step * 1e-6) return decimals;
  return 9;
};

/** The multiples of a step inside a range, its ends included. */
export const ticksOf = ([low, high]: Range, step: number): readonly number[] => {
  const ticks: number[] = [];
  const grain = step * 1e-6;
  for (let index = Math.ceil((low - grain) / step); index * step <= high + grain; index += 1)
    ticks.push(index === 0 ? 0 : Number((index * step).toPrecision(12)));
  return ticks;
};

/** The least range of whole steps around values. @param least - a span below which differences are not worth showing */
export const niceRange = (
  low: number,
  high: number,
  least: number,
  count: number,
  stepFor: (span: number, count: number) => number = valueStep,
): Range => {
  const middle = (low + high) / 2;
  const half = Math.max(high - low, least) / 2;
  const step = stepFor(2 * half, count);
  const [from, to] = [Math.min(low, middle - half), Math.max(high, middle + half)];
  const clean = (value: number) => (value === 0 ? 0 : Number(value.toPrecision(12)));
  const first = clean(Math.floor(from / step + 1e-6) * step);
  const last = clean(Math.ceil(to / step - 1e-6) * step);
  return first < last ? [first, last] : [first, clean(first + step)];
};

/** A kept range stays while the values fill at least this part of it. */
const FILLED = 0.4;

/**
 * The range to show next: the one that is shown while something is dragged, and while the values are inside it and fill it;
 * else the one that they ask for.
 * @param shown - null: nothing is shown yet
 * @param values - least and greatest value; null: there is none
 * @param isDragged - nothing is rescaled under the hand
 */
export const keepRange = (
  shown: Range | null,
  values: Range | null,
  isDragged: boolean,
  wanted: (low: number, high: number) => Range,
): Range => {
  if (!values) return shown ?? [-1, 1];
  const asked = wanted(values[0], values[1]);
  if (!shown) return asked;
  if (isDragged || (asked[0] === shown[0] && asked[1] === shown[1])) return shown;
  const inside = values[0] >= shown[0] && values[1] <= shown[1];
  return inside && asked[1] - asked[0] >= FILLED * (shown[1] - shown[0]) ? shown : asked;
};

/** Least and greatest of several lines; null where none has a number. */
export const rangeOfLines = (lines: readonly ArrayLike<number>[]): Range | null => {
  let [low, high] = [Infinity, -Infinity];
  for (const line of lines)
    for (let index = 0; index < line.length; index += 1) {
      const value = line[index] ?? NaN;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  return low <= high ? [low, high] : null;
};

/** A line whose ends shoot this many times farther than most of it reaches leaves the frame there. */
const SHOOTS = 8;
/** The part of the values at either end that may shoot off. */
const TAIL = 0.05;

/**
 * What a plot shows of lines by itself: all of them, but for ends that shoot off so far, as a roll centre does where its
 * links come parallel, that the rest would lie flat. They leave the frame.
 * @param least - a span of values that is not worth telling apart
 */
export const mainRange = (lines: readonly ArrayLike<number>[], least: number): Range | null => {
  const whole = rangeOfLines(lines);
  if (!whole) return null;
  const values = lines.flatMap((line) => Array.from(line).filter((value) => !Number.isNaN(value))).sort((a, b) => a - b);
  const at = (share: number): number => values[Math.round(share * (values.length - 1))] ?? 0;
  const [low, high] = [at(TAIL), at(1 - TAIL)];
  const most = Math.max(high - low, least);
  if (whole[1] - whole[0] <= SHOOTS * most) return whole;
  return [Math.max(whole[0], low - most / 2), Math.min(whole[1], high + most / 2)];
};

/** A range made wider (factor over 1) or narrower about one of its values. */
export const zoomRange = ([low, high]: Range, about: number, factor: number): Range => [
  about + (low - about) * factor,
  about + (high - about) * factor,
];

/** A range moved on by a part of its width. */
export const panRange = ([low, high]: Range, share: number): Range => {
  const by = (high - low) * share;
  return [low + by, high + by];
};

/** A range kept inside another, and no narrower than `least`. */
export const clampRange = (range: Range, whole: Range, least: number): Range => {
  const width = Math.min(whole[1] - whole[0], Math.max(least, range[1] - range[0]));
  const middle = (range[0] + range[1]) / 2;
  const low = Math.min(whole[1] - width, Math.max(whole[0], middle - width / 2));
  return [low, low + width];
};
