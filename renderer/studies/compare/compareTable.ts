import { mattersOf, type AxleName, type CarDocument, type Comparison, type ReadingEntry } from '../../../geometry/index';
import type { PlainTable } from '../../lengths/lengthTables';
import { shownReading, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import type { Effect, EffectColumn } from '../answers/sideEffects';

/** A reading of the setup on the bench and of every other one. */
export interface CompareRow {
  readonly entry: ReadingEntry;
  readonly column: EffectColumn;
  readonly shown: ShownQuantity;
  /** of the setup on the bench: left and right, or one value of the axle or the car; contract units */
  readonly own: Pair;
  readonly others: readonly { readonly values: Pair; readonly differences: Pair }[];
  /** why the setup on the bench has no value; null where it has one */
  readonly why: string | null;
}

/** Left and right; `right` is undefined for a reading of the axle or the car. */
export interface Pair {
  readonly left: number | null;
  readonly right: number | null | undefined;
}

export interface CompareGroup {
  readonly label: string;
  readonly rows: readonly CompareRow[];
}

const namesOf = (entry: ReadingEntry, axle: AxleName): readonly [string, string | undefined] => {
  switch (entry.of) {
    case 'corner':
      return [`${axle}.left.${entry.key}`, `${axle}.right.${entry.key}`];
    case 'axle':
      return [`${axle}.both.${entry.key}`, undefined];
    case 'car':
      return [`wholeCar.${entry.key}`, undefined];
  }
};

/** What differs by less is alike: what is left of rounding. */
const ALIKE = 1e-9;

/** Readings of an axle and of the whole car by their groups, in catalogue order. */
export const compareGroups = (
  { names, setups, differences }: Comparison,
  axle: AxleName,
  document: CarDocument,
  units: ShownUnits,
): readonly CompareGroup[] => {
  const entries = [
    ...new Map(
      names.filter((one) => one.axle === axle || one.axle === 'wholeCar').map(({ entry }) => [entry.key, entry]),
    ).values(),
  ];
  const rows = entries.map((entry): CompareRow => {
    const [left, right] = namesOf(entry, axle);
    const pairIn = (index: number): Pair => {
      const setup = setups[index];
      const values = setup?.ok ? setup.value.values : {};
      return { left: values[left] ?? null, right: right === undefined ? undefined : (values[right] ?? null) };
    };
    // this less that: the comparison has each setup less the first
    const lessIn = (index: number): Pair => {
      const found = differences[index];
      const negated = (name: string): number | null => {
        const value = found?.[name] ?? null;
        return value === null ? null : 0 - value;
      };
      return { left: negated(left), right: right === undefined ? undefined : negated(right) };
    };
    const first = setups[0];
    return {
      entry,
      column: { key: `${axle}.${entry.key}`, axle, entry, matters: mattersOf(document, entry.key) ?? null },
      shown: shownReading(entry, units),
      own: pairIn(0),
      others: setups.slice(1).map((_, index) => ({ values: pairIn(index + 1), differences: lessIn(index + 1) })),
      why: first?.ok ? (first.value.why[left] ?? (right === undefined ? null : (first.value.why[right] ?? null))) : null,
    };
  });
  const labels = [...new Set(rows.map(({ entry }) => entry.group))];
  return labels.map((label) => ({ label, rows: rows.filter(({ entry }) => entry.group === label) }));
};

/** Whether a reading differs in any of the others. */
export const isDifferent = ({ others }: CompareRow): boolean =>
  others.some(({ differences: { left, right } }) => Math.abs(left ?? 0) > ALIKE || Math.abs(right ?? 0) > ALIKE);

/** Whether a row has any value at all. */
export const hasValue = ({ own, others }: CompareRow): boolean =>
  [own, ...others.map(({ values }) => values)].some(({ left, right }) => left !== null || typeof right === 'number');

/** A difference as a cell with a bar. */
export const effectOf = (column: EffectColumn, change: number | null): Effect => ({
  column,
  change,
  side: null,
  share: change === null || column.matters === null ? null : change / column.matters,
});

/** "−1.20", "L −1.20 R −1.31": both wheels at once. */
export const pairText = ({ left, right }: Pair, { format }: Pick<ShownQuantity, 'format'>): string => {
  const write = (value: number | null): string => (value === null ? '–' : format(value));
  if (right === undefined) return write(left);
  const [l, r] = [write(left), write(right)];
  return l === r ? l : `L ${l} R ${r}`;
};

/** The comparison as it is copied and saved: full numbers in the units shown. */
export const comparePlainTable = (groups: readonly CompareGroup[], setup: string, others: readonly string[]): PlainTable => ({
  heads: ['reading', 'unit', 'of', setup, ...others.flatMap((name) => [name, `${setup} less ${name}`])],
  rows: groups.flatMap(({ rows }) =>
    rows.flatMap((row) => {
      const { toShown, unit } = row.shown;
      const put = (value: number | null | undefined): number | null =>
        value === null || value === undefined ? null : toShown(value);
      const line = (of: string, pick: (pair: Pair) => number | null | undefined) => [
        row.entry.name,
        unit,
        of,
        put(pick(row.own)),
        ...row.others.flatMap(({ values, differences }) => [put(pick(values)), put(pick(differences))]),
      ];
      if (row.own.right === undefined) return [line(row.entry.of === 'axle' ? 'axle' : 'car', ({ left }) => left)];
      return [line('left', ({ left }) => left), line('right', ({ right }) => right)];
    }),
  ),
});
