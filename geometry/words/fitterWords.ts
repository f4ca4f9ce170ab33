import { stepScaleOf } from '../adjusters/stepScale';
import type { AdjusterDocument, OffsetBushingDocument, SlideDocument, Triple } from '../car/document';
import { toRadians } from '../core/angle';
import { formatNumber, formatShort } from '../format/format';
import { lengthWords } from '../format/lengthWords';
import type { UnitChoice } from '../format/unitChoice';
import { clockSeen, hourWords, seenFromWords } from './clockWords';
import { sideWords } from './sideWords';

/** What the fitter does or reads off the part, in two lengths. */
export interface FitterWords {
  readonly short: string;
  readonly detail: string;
}

/** Whose words: one side's, or both sides' where they have one number. */
type WordsOf = 'both' | 'left' | 'right';

const FORE = ['forward', 'rearward'] as const;
const SIDE = ['outboard', 'inboard'] as const;
const HEIGHT = ['up', 'down'] as const;

/** The plainest word for a direction on the left side. */
const directionWord = (direction: Triple): string => {
  const [x, y, z] = direction.map(Math.abs) as [number, number, number];
  if (y >= x && y >= z) return SIDE[direction[1] >= 0 ? 0 : 1];
  if (x >= z) return FORE[direction[0] >= 0 ? 0 : 1];
  return HEIGHT[direction[2] >= 0 ? 0 : 1];
};

const scaled = (direction: Triple, by: number): Triple => [direction[0] * by, direction[1] * by, direction[2] * by];
const lengthOf = ([x, y, z]: Triple): number => Math.sqrt(x * x + y * y + z * z);
const sine = (degrees: number): number => Math.sin(toRadians(degrees));

const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];

/** 2¼, ⅝, or decimals where the number is no eighth. */
export const turnsText = (turns: number): string => {
  const size = Math.abs(turns);
  const eighths = size * 8;
  if (Math.abs(eighths - Math.round(eighths)) > 1e-6) return formatNumber(size, 2);
  const whole = Math.floor(Math.round(eighths) / 8);
  const part = EIGHTHS[Math.round(eighths) % 8] ?? '';
  return whole === 0 && part !== '' ? part : `${whole}${part}`;
};

const turnWord = (turns: number): string => (Math.abs(turns) > 1 ? 'turns' : 'turn');
const plural = (count: number, word: string): string =>
  `${formatShort(Math.abs(count), 2)} ${word}${Math.abs(count) === 1 ? '' : 's'}`;

/** Shims out of stock that make up a thickness, largest first; null where they do not. All in the file's unit. */
export const shimsFor = (thickness: number, stock: readonly number[]): readonly number[] | null => {
  let rest = Math.abs(thickness);
  const taken: number[] = [];
  for (const shim of [...stock].sort((a, b) => b - a))
    while (shim > 0 && rest > shim - 1e-6 && taken.length < 40) {
      taken.push(shim);
      rest -= shim;
    }
  return rest < 1e-6 ? taken : null;
};

const slideWords = (adjuster: SlideDocument, value: number, mmPerUnit: number, units: UnitChoice): FitterWords => {
  if (value === 0) return { short: 'at zero', detail: adjuster.shims ? 'no shims' : 'at the zero mark' };
  const mm = value * mmPerUnit;
  const direction: Triple = adjuster.along === 'spindle' ? [0, 1, 0] : adjuster.along;
  const short = `${lengthWords(Math.abs(mm), 2, units)} ${directionWord(scaled(direction, Math.sign(value)))}`;
  const shims = adjuster.shims ? shimsFor(value, adjuster.shims) : null;
  const detail = shims
    ? `shims ${shims.map((shim) => lengthWords(shim * mmPerUnit, 2, units).replace(/ \w+$/, '')).join(' + ')}`
    : 'of the zero mark';
  return { short, detail };
};

const bushingWords = (adjuster: OffsetBushingDocument, value: number | null, side: WordsOf): FitterWords => {
  if (value === null) return { short: 'concentric', detail: 'hole in the middle of the bore' };
  const { axis, seenFrom, index } = adjuster;
  const seen = clockSeen(value, axis, seenFrom, side === 'right' ? 'right' : 'left');
  const other = clockSeen(value, axis, seenFrom, 'right');
  const isBefore = seen > 180;
  const marks = plural((isBefore ? 360 - seen : seen) / index, 'mark');
  const from = seen === 0 ? 'at 12' : `${marks} ${isBefore ? 'before' : 'past'} 12`;
  const sides = side !== 'both' || seen === other ? '' : `; the right one at ${hourWords(other)}`;
  return {
    short: `hole at ${hourWords(seen)}`,
    detail: `${formatShort(seen, 1)}°, ${from}, ${seenFromWords(seenFrom)}${sides}`,
  };
};

/**
 * The fitter's words for a setting.
 * @param value - in the file's unit, null: nothing set
 * @param mmPerUnit - millimetres in one unit of length of the file
 * @param units - what lengths are said in
 * @param pivotToBolt - of a clamp eccentric: distance of its two bolts in the file's unit
 * @param side - a clock is mirrored on the right
 */
export const fitterWords = (
  adjuster: AdjusterDocument,
  value: number | null,
  mmPerUnit: number,
  units: UnitChoice,
  pivotToBolt?: number,
  side: WordsOf = 'both',
): FitterWords => {
  const number = value ?? 0;
  switch (adjuster.kind) {
    case 'slide':
      return slideWords(adjuster, number, mmPerUnit, units);
    case 'offset-bushing':
      return bushingWords(adjuster, value, side);
    case 'eccentric-bolt': {
      if (number === 0) return { short: 'at zero', detail: 'bolt in the middle of its slot' };
      const moved = adjuster.throw * sine(number);
      const word = directionWord(scaled(adjuster.slot, Math.sign(moved)));
      const short = `${plural(number / adjuster.mark, 'mark')} ${word}`;
      return { short, detail: `bolt ${lengthWords(Math.abs(moved) * mmPerUnit, 1, units)} ${word} of the slot’s middle` };
    }
    case 'clamp-eccentric': {
      if (number === 0) return { short: 'at zero', detail: 'bolts in line, nothing turned' };
      const alongX = Math.abs(adjuster.axis[0]) >= 0.7 * lengthOf(adjuster.axis);
      const topIn = adjuster.axis[0] * number > 0;
      const way = alongX ? `, top ${topIn ? 'in' : 'out'}` : '';
      const short = `${plural(number / adjuster.mark, 'mark')}${way}`;
      const shift = Math.abs(adjuster.throw * sine(number));
      const turned = pivotToBolt ? `; bolts ${lengthWords(pivotToBolt * mmPerUnit, 1, units)} apart` : '';
      return { short, detail: `bolt ${lengthWords(shift * mmPerUnit, 2, units)} across the bracket${turned}` };
    }
    case 'turnbuckle': {
      if (number === 0) return { short: 'at zero', detail: 'length of the drawing' };
      const longer = number > 0 ? 'longer' : 'shorter';
      const flats = adjuster.flats;
      const count = flats ? plural(number * flats, 'flat') : `${turnsText(number)} ${turnWord(number)}`;
      const moved = lengthWords(Math.abs(number * adjuster.perTurn * mmPerUnit), 2, units);
      return { short: `${count} ${longer}`, detail: `rod ${moved} ${longer}` };
    }
    case 'perch': {
      if (number === 0) return { short: 'at zero', detail: 'ring at the datum groove' };
      const way = number > 0 ? 'up' : 'down';
      const moved = lengthWords(Math.abs(number * adjuster.perTurn * mmPerUnit), 1, units);
      const what = adjuster.moves === 'body' ? 'strut foot' : 'seat';
      return { short: `${turnsText(number)} ${turnWord(number)} ${way}`, detail: `${what} ${moved} ${way} of the datum` };
    }
  }
};

/**
 * The words for both sides of the car: one set where they have one number, else what is said of each.
 * @param isApart - each side has a number of its own, be it the same one: a clock that is mirrored is then said of each
 */
export const fitterWordsOfSides = (
  adjuster: AdjusterDocument,
  value: { readonly left: number | null; readonly right: number | null },
  mmPerUnit: number,
  units: UnitChoice,
  pivotToBolt?: number,
  isApart = false,
): FitterWords => {
  const isOne = value.left === value.right;
  if (isOne && !isApart) return fitterWords(adjuster, value.left, mmPerUnit, units, pivotToBolt);
  const [left, right] = (['left', 'right'] as const).map((side) =>
    fitterWords(adjuster, value[side], mmPerUnit, units, pivotToBolt, side),
  ) as [FitterWords, FitterWords];
  if (isOne && left.short === right.short) return left;
  return { short: sideWords(left.short, right.short), detail: sideWords(left.detail, right.detail) };
};

/** The one size of a part that its card's head names. */
export const partSize = (adjuster: AdjusterDocument, mmPerUnit: number, units: UnitChoice): string => {
  const length = (size: number, decimals: number): string => lengthWords(size * mmPerUnit, decimals, units);
  const { min, max } = stepScaleOf(adjuster);
  switch (adjuster.kind) {
    case 'slide':
      return `${length(min, 1).replace(/ \w+$/, '')} … ${length(max, 1)}`;
    case 'eccentric-bolt':
    case 'clamp-eccentric':
      return `throw ${length(adjuster.throw, 2)}`;
    case 'offset-bushing':
      return `offset ${length(adjuster.offset, 2)}`;
    case 'turnbuckle':
    case 'perch':
      return `${length(adjuster.perTurn, 2)} a turn`;
  }
};
