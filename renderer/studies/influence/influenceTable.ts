import {
  findReading,
  fitterWords,
  mattersOf,
  type AdjusterDocument,
  type CarDocument,
  type Influence,
  type InfluenceRow,
  type Numbers,
  type ReadingEntry,
} from '../../../geometry/index';
import type { PlainTable } from '../../lengths/lengthTables';
import { mmPerFileUnit } from '../../units/fileLength';
import { formatShort } from '../../units/format';
import { shownReading, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits, UnitChoice } from '../../units/unitChoice';
import { shortName } from '../answers/sideEffects';
import { labelOf } from '../answers/turnedParts';

/**
 * One step is small: it is read to one decimal more than the reading itself; rates have enough of them, and so have lengths in
 * inches, which are finer by themselves: with one more the last columns had no room.
 */
const decimalsOf = ({ quantity, decimals }: ReadingEntry, { length }: ShownUnits): number =>
  quantity === 'anglePerLength' || (quantity === 'length' && length === 'in') ? decimals : decimals + 1;

/** Heads that are narrower than their names. */
const NARROW: Readonly<Record<string, string>> = { wheelbaseLeft: 'Wheelb. left', wheelbaseRight: 'Wheelb. right' };

export interface MatrixColumn {
  readonly entry: ReadingEntry;
  readonly name: string;
  readonly shown: ShownQuantity;
  /** in contract units; null where nothing says */
  readonly matters: number | null;
}

export interface MatrixCell {
  /** null: no value here */
  readonly change: number | null;
  readonly text: string;
  /** step ÷ tolerance; null where nothing says what matters */
  readonly share: number | null;
  readonly side: 'left' | 'right' | null;
  /** of a bushing that is not fitted: the mark that does it */
  readonly at: string | null;
}

/** One line: a step of a part, or one mark of a bushing that is not fitted. */
export interface MatrixLine {
  /** "1 mm outboard", "hole at 3 o’clock" */
  readonly step: string;
  readonly cells: readonly MatrixCell[];
  /** why there are none; null where there are */
  readonly why: string | null;
}

export interface MatrixRow extends MatrixLine {
  readonly name: string;
  readonly label: string;
  readonly adjuster: AdjusterDocument;
  readonly curved: boolean;
  /** labels of the parts that do the same */
  readonly alike: readonly string[];
  /** of a bushing that is not fitted: each of its marks */
  readonly marks: readonly MatrixLine[];
}

/** The columns chosen, in the units shown. */
export const matrixColumns = (document: CarDocument, keys: readonly string[], units: ShownUnits): readonly MatrixColumn[] =>
  keys.flatMap((key) => {
    const entry = findReading(key);
    if (!entry) return [];
    const shown = shownReading({ ...entry, decimals: decimalsOf(entry, units) }, units);
    return [{ entry, name: NARROW[key] ?? shortName(entry), shown, matters: mattersOf(document, key) ?? null }];
  });

/** "+0.086", "L +0.086". A change that rounds to nothing has no sign. */
const textOf = (change: number | null, side: MatrixCell['side'], { shown }: MatrixColumn): string => {
  if (change === null) return '–';
  const text = shown.formatChange(change);
  return side === null || !/[1-9]/.test(text) ? text : `${side === 'left' ? 'L' : 'R'} ${text}`;
};

/**
 * A change of both wheels is said once where it reads the same, else that of the wheel that changed more, with its letter.
 * @param turned - the wheels the part was turned on: a change of the turned wheel alone needs no letter
 */
const cellOf = (changes: Numbers, column: MatrixColumn, { axle, side: turned }: InfluenceRow): MatrixCell => {
  const { key, of } = column.entry;
  const changeAt = (owner: string): number | null => changes[`${owner}.${key}`] ?? null;
  const [left, right] = of === 'corner' ? [changeAt(`${axle}.left`), changeAt(`${axle}.right`)] : [null, null];
  const larger = Math.abs(right ?? 0) > Math.abs(left ?? 0) ? 'right' : 'left';
  const change =
    of === 'car' ? changeAt('wholeCar') : of === 'axle' ? changeAt(`${axle}.both`) : larger === 'left' ? left : right;
  const isAlike = of !== 'corner' || textOf(left, null, column) === textOf(right, null, column);
  const side = isAlike || change === null || larger === turned ? null : larger;
  return {
    change,
    side,
    text: textOf(change, side, column),
    share: change === null || column.matters === null ? null : change / column.matters,
    at: null,
  };
};

const lineOf = (changes: Numbers, columns: readonly MatrixColumn[], step: string, row: InfluenceRow): MatrixLine => ({
  step,
  cells: columns.map((column) => cellOf(changes, column, row)),
  why: null,
});

/** One step of a part, in the fitter's words. */
const stepWords = (adjuster: AdjusterDocument, step: number, mm: number, units: UnitChoice): string =>
  adjuster.kind === 'offset-bushing'
    ? `${step < 0 ? 'back ' : ''}1 mark, ${formatShort(Math.abs(step), 1)}°`
    : fitterWords(adjuster, step, mm, units).short;

const clockWords = (adjuster: AdjusterDocument, clock: number, mm: number, units: UnitChoice): string =>
  fitterWords(adjuster, clock, mm, units).short;

/** Of all marks, the one that moves each reading most. */
const bestOf = (marks: readonly MatrixLine[], columns: readonly MatrixColumn[]): readonly MatrixCell[] =>
  columns.map((_, index) => {
    const cells = marks.flatMap(({ cells: line, step }) => (line[index] ? [{ ...line[index], at: step }] : []));
    const none: MatrixCell = { change: null, text: '–', share: null, side: null, at: null };
    return cells.reduce(
      (best, cell) => (cell.change !== null && Math.abs(cell.change) > Math.abs(best.change ?? 0) ? cell : best),
      cells.find(({ change }) => change !== null) ?? none,
    );
  });

const rowOf = (
  document: CarDocument,
  row: InfluenceRow,
  columns: readonly MatrixColumn[],
  alike: readonly string[],
  units: ShownUnits,
): MatrixRow | null => {
  const adjuster = document[row.axle]?.adjusters?.[row.adjuster];
  if (!adjuster) return null;
  const mm = mmPerFileUnit(document);
  const head = { name: row.adjuster, label: labelOf(document, row.axle, row.adjuster), adjuster, curved: row.curved, alike };
  if (row.fit) {
    const marks = row.fit.map(({ clock, changes }): MatrixLine => {
      const step = clockWords(adjuster, clock, mm, units);
      if (changes === null) return { step, cells: [], why: row.why[`fit.${clock}`] ?? 'it cannot be there' };
      return lineOf(changes, columns, step, row);
    });
    return { ...head, step: 'not fitted: its best mark for each', cells: bestOf(marks, columns), why: null, marks };
  }
  const [changes, step] = row.more === null ? [row.less, -row.step] : [row.more, row.step];
  if (changes === null)
    return {
      ...head,
      step: stepWords(adjuster, row.step, mm, units),
      cells: [],
      why: row.why['more'] ?? 'it cannot be there',
      marks: [],
    };
  return { ...head, ...lineOf(changes, columns, stepWords(adjuster, step, mm, units), row), marks: [] };
};

/** The answer as a matrix: parts down, readings across. */
export const influenceMatrix = (
  document: CarDocument,
  { rows, alike }: Influence,
  columns: readonly MatrixColumn[],
  units: ShownUnits,
): readonly MatrixRow[] =>
  rows.flatMap((row) => {
    const twins = alike.flatMap(({ axle, adjusters: [one, other] }) =>
      axle !== row.axle ? [] : one === row.adjuster ? [other] : other === row.adjuster ? [one] : [],
    );
    const labels = [...new Set(twins)].map((name) => labelOf(document, row.axle, name));
    return rowOf(document, row, columns, labels, units) ?? [];
  });

/** Radius of a dot whose area is the step in tolerances [px]. */
export const dotRadius = (share: number): number => Math.min(8, Math.max(0.9, 4.6 * Math.sqrt(Math.abs(share))));

/** "5 readings can be set independently". */
export const independentWords = (count: number): string =>
  `${count} ${count === 1 ? 'reading' : 'readings'} can be set independently`;

/** The matrix as it is copied and saved: full numbers in the units shown, one step each way. */
export const influencePlainTable = (document: CarDocument, { rows }: Influence, columns: readonly MatrixColumn[]): PlainTable => {
  const changeOf = (changes: Numbers | null, row: InfluenceRow, column: MatrixColumn): number | null => {
    const change = changes === null ? null : cellOf(changes, column, row).change;
    return change === null ? null : column.shown.toShown(change);
  };
  const unit = ({ shown }: MatrixColumn): string => (shown.unit === '' ? '' : ` [${shown.unit}]`);
  const line = (row: InfluenceRow, what: string, way: string, changes: Numbers | null, why: string | undefined) => [
    labelOf(document, row.axle, row.adjuster),
    row.side,
    what,
    row.unit,
    way,
    ...columns.map((column) => changeOf(changes, row, column)),
    row.curved ? 'not linear' : '',
    why ?? '',
  ];
  return {
    heads: [
      'part',
      'wheels',
      'step',
      'unit',
      'way',
      ...columns.map((column) => `${column.entry.name}${unit(column)}`),
      'linear',
      'why',
    ],
    rows: rows.flatMap((row) =>
      row.fit
        ? row.fit.map(({ clock, changes }) => line(row, String(clock), 'fitted there', changes, row.why[`fit.${clock}`]))
        : [
            line(row, String(row.step), 'more', row.more, row.why['more']),
            line(row, String(row.step), 'less', row.less, row.why['less']),
          ],
    ),
  };
};
