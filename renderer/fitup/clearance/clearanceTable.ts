import type { AxleName, ClearanceAnswer, ClearanceRow } from '../../../geometry/index';
import type { Verdict } from '../../compute/limits';
import { nameOfKey } from '../../adjusters/fitterWords';
import type { PlainTable } from '../../lengths/lengthTables';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';

/** A row as it is read. */
export interface ShownClearance {
  readonly key: string;
  readonly row: ClearanceRow;
  readonly names: readonly [string, string];
  readonly gap: string;
  readonly needs: string;
  readonly bound: string;
  readonly verdict: Verdict;
  readonly verdictWords: string;
  readonly at: string;
  readonly rack: string;
  /** parts of the widest bar: the gap, and the margin */
  readonly share: number;
  readonly needsShare: number;
}

export const VERDICT_OF: Readonly<Record<ClearanceRow['verdict'], Verdict>> = {
  clear: 'within',
  close: 'close',
  'not-proved': 'close',
  short: 'broken',
  cuts: 'broken',
};

export const keyOfRow = ({ pair, axle, side }: Pick<ClearanceRow, 'pair' | 'axle' | 'side'>): string =>
  [axle, side, ...pair].join('|');

/** Of what cuts and has no depth that is all that is known. */
export const isPlainCut = ({ cuts, clearance }: Pick<ClearanceRow, 'cuts' | 'clearance'>): boolean => cuts && clearance === 0;

export const lengthsIn = (units: ShownUnits, decimals = 1) => shownQuantity({ quantity: 'length', decimals }, units);

/** "bump 60.0", "droop 41.5", "design": travel from design as it is said beside a column's unit. */
export const travelWords = (travel: number, units: ShownUnits): string => {
  const shown = lengthsIn(units);
  const text = shown.format(Math.abs(travel));
  return !/[1-9]/.test(text) ? 'design' : `${travel > 0 ? 'bump' : 'droop'} ${text}`;
};

/** What an answer tells about, one line of verdicts. */
export const verdictCounts = (
  rows: readonly ClearanceRow[],
): readonly { readonly verdict: Verdict; readonly words: string }[] => {
  const count = (...verdicts: readonly ClearanceRow['verdict'][]): number =>
    rows.filter(({ verdict }) => verdicts.includes(verdict)).length;
  const all = [
    { verdict: 'broken', words: 'cut', of: count('cuts') },
    { verdict: 'broken', words: 'short', of: count('short') },
    { verdict: 'close', words: 'not proved', of: count('not-proved') },
    { verdict: 'close', words: 'close', of: count('close') },
    { verdict: 'within', words: 'clear', of: count('clear') },
  ] as const;
  return all.filter(({ of }) => of > 0).map(({ verdict, words, of }) => ({ verdict, words: `${of} ${words}` }));
};

const verdictWords = (row: ClearanceRow, units: ShownUnits): string => {
  const shown = lengthsIn(units);
  switch (row.verdict) {
    case 'cuts':
      return isPlainCut(row) ? 'cuts' : `cuts, ${shown.format(-row.clearance)} deep`;
    case 'short':
      return `${shown.format(-row.spare)} short`;
    case 'not-proved':
      return row.surfaceOnly.length > 0 ? 'not proved, surface only' : 'not proved';
    case 'close':
      return `${shown.format(row.spare)} spare`;
    case 'clear':
      return `clear, ${shown.format(row.spare)} spare`;
  }
};

/** How well the number of a row is known. @param bound - with its unit */
export const proofWords = (row: ClearanceRow, bound: string): string => {
  if (isPlainCut(row)) return 'They cut into each other; how deep is not known for these shapes.';
  const { verdict, surfaceOnly } = row;
  const [first, second] = surfaceOnly.map(nameOfKey);
  if (first !== undefined) {
    const open =
      second === undefined ? `${first} is a mesh that is not closed` : `${first} and ${second} are meshes that are not closed`;
    return `${verdict === 'not-proved' ? 'Not proved: ' : ''}${open}. Only the surface was looked at, and what stands within it is not told. To the surface it could be less by ${bound}.`;
  }
  if (verdict === 'not-proved')
    return `Not proved: the margin is kept wherever it was looked, but between those positions it could be less by ${bound}.`;
  if (verdict === 'clear' || verdict === 'close')
    return `Proved between the positions too: it could be less by ${bound} at most.`;
  return `Between the positions that were looked at it could be less still, by ${bound}.`;
};

/** Why an axle has an envelope or not: what lacks comes before all that is said of it. */
export const lackingWords = ({ warnings }: ClearanceAnswer): readonly string[] =>
  warnings.filter(({ code }) => code === 'no-envelope').map(({ message }) => message);

/** What is said in the place of rows where there are none. */
export const noRowsWords = (answer: ClearanceAnswer, axle: AxleName): string => {
  const lacking = lackingWords(answer);
  return lacking.length > 0
    ? `Nothing is known of the ${axle} axle yet. ${lacking.join(' ')}`
    : `No two parts of the ${axle} axle move against each other: there is nothing that could touch.`;
};

/** The rows as they are read, least to spare first. */
export const shownClearance = ({ rows }: ClearanceAnswer, units: ShownUnits): readonly ShownClearance[] => {
  const shown = lengthsIn(units);
  // the bar's end: three times the largest margin, so that what is far from touching does not squeeze the rest
  const full = 3 * Math.max(1, ...rows.map(({ needs }) => needs));
  return rows.map((row) => ({
    key: keyOfRow(row),
    row,
    names: [nameOfKey(row.pair[0]), nameOfKey(row.pair[1])],
    gap: isPlainCut(row) ? 'cuts' : shown.format(row.clearance),
    needs: shown.format(row.needs),
    bound: lengthsIn(units, 2).format(row.bound),
    verdict: VERDICT_OF[row.verdict],
    verdictWords: verdictWords(row, units),
    at: travelWords(row.at.travel, units),
    rack: shown.formatChange(row.at.rack),
    share: Math.min(1, Math.max(0, row.clearance / full)),
    needsShare: Math.min(1, row.needs / full),
  }));
};

/** The table as it is copied and saved: full numbers, in the units that are read. */
export const clearancePlain = ({ rows }: ClearanceAnswer, units: ShownUnits): PlainTable => {
  const { unit, toShown } = lengthsIn(units);
  const heads = [
    'axle',
    'side',
    'part',
    'other part',
    `clearance [${unit}]`,
    `could be less by [${unit}]`,
    `needs [${unit}]`,
    `spare [${unit}]`,
    'verdict',
    'setup',
    `travel from design [${unit}]`,
    `rack [${unit}]`,
    ...['x', 'y', 'z', 'other x', 'other y', 'other z'].map((name) => `${name} [${unit}]`),
  ];
  return {
    heads,
    rows: rows.map((row) => [
      row.axle,
      row.side,
      row.pair[0],
      row.pair[1],
      isPlainCut(row) ? null : toShown(row.clearance),
      toShown(row.bound),
      toShown(row.needs),
      isPlainCut(row) ? null : toShown(row.spare),
      row.verdict,
      row.at.setup,
      toShown(row.at.travel),
      toShown(row.at.rack),
      ...row.points.flatMap((point) => point.map(toShown)),
    ]),
  };
};

/** What is said of the gap in the picture. */
export const gapFigure = (row: ClearanceRow, units: ShownUnits): string => {
  const shown = lengthsIn(units);
  if (isPlainCut(row)) return 'cuts';
  return row.cuts
    ? `cuts ${withUnit(shown.format(-row.clearance), shown.unit)}`
    : withUnit(shown.format(row.clearance), shown.unit);
};
