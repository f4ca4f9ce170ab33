import { CATALOGUE, numbersOf, type ReadingEntry, type ReadingValue } from '../../geometry/index';
import type { BenchAnswered, BenchReadings } from '../compute/answerBench';
import { shownReading } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';

/** One line of the table: a reading, or one coordinate of a point. */
export interface ReadingRow {
  readonly id: string;
  readonly entry: ReadingEntry;
  readonly name: string;
  readonly unit: string;
  /** one value for the axle or the car, or one for each side */
  readonly owner: 'sides' | 'whole';
  readonly left: string | null;
  readonly right: string | null;
  /** difference to the compared setup; null where either has no value */
  readonly leftChange: string | null;
  readonly rightChange: string | null;
  /** why a value is missing, of the first side that misses it */
  readonly why: string | null;
}

export interface ReadingGroup {
  readonly name: string;
  readonly rows: readonly ReadingRow[];
}

/** Points come last: six coordinates each are looked up, not watched. */
const POINTS = 'Coordinates';

const whyOf = (answered: BenchAnswered, key: string): string | null => {
  const { why } = answered.row;
  const said = why[`left.${key}`] ?? why[`right.${key}`] ?? why[`both.${key}`] ?? why[`wholeCar.${key}`];
  return said?.replace('no heightAt for this axle', 'no place that ride height is read at (Points, Axle)') ?? null;
};

const rowsOf = (answered: BenchAnswered, entry: ReadingEntry, units: ShownUnits): readonly ReadingRow[] => {
  const reading = shownReading(entry, units);
  const { row, difference } = answered;
  const sides = entry.of === 'corner';
  const pick = (readings: BenchReadings, side: 'left' | 'right'): ReadingValue =>
    (sides ? readings[side] : entry.of === 'axle' ? readings.both : readings.wholeCar)[entry.key] ?? null;
  const [left, right] = [numbersOf(entry, pick(row, 'left')), numbersOf(entry, pick(row, 'right'))];
  const [leftChange, rightChange] = [numbersOf(entry, pick(difference, 'left')), numbersOf(entry, pick(difference, 'right'))];
  const shown = (value: number | null | undefined) => (typeof value === 'number' ? reading.format(value) : null);
  const change = (value: number | null | undefined) => (typeof value === 'number' ? reading.formatChange(value) : null);
  return left.map((value, index) => {
    const component = entry.components?.[index];
    const missing = value === null || right[index] === null;
    return {
      id: component ? `${entry.key}.${component}` : entry.key,
      entry,
      name: component ? `${entry.name}, ${component}` : entry.name,
      unit: reading.unit,
      owner: sides ? 'sides' : 'whole',
      left: shown(value),
      right: shown(right[index]),
      leftChange: change(leftChange[index]),
      rightChange: change(rightChange[index]),
      why: missing ? (whyOf(answered, entry.key) ?? 'no value here') : null,
    } satisfies ReadingRow;
  });
};

/** The whole table, in the catalogue's groups and order. */
export const readingGroups = (answered: BenchAnswered, units: ShownUnits): readonly ReadingGroup[] => {
  const groups = new Map<string, ReadingRow[]>();
  const points: ReadingRow[] = [];
  for (const entry of CATALOGUE) {
    const rows = rowsOf(answered, entry, units);
    if (entry.components) points.push(...rows);
    else groups.set(entry.group, [...(groups.get(entry.group) ?? []), ...rows]);
  }
  return [...groups, [POINTS, points] as const].map(([name, rows]) => ({ name, rows }));
};

/** Readings that mirror with their sign turned: equal on both sides means opposite numbers. */
const isOpposite = ({ entry, id }: ReadingRow): boolean => entry.key === 'steerAngle' || id.endsWith('.y');

const sizeOf = (text: string | null): string | null => text && text.replace(/^[+−]/, '');

/** Whether left and right differ from the compared setup by different amounts, so that each needs its own column. */
export const hasOwnChanges = (groups: readonly ReadingGroup[]): boolean =>
  groups.some(({ rows }) =>
    rows.some((row) => {
      if (row.owner === 'whole') return false;
      const { leftChange, rightChange } = row;
      return isOpposite(row) ? sizeOf(leftChange) !== sizeOf(rightChange) : leftChange !== rightChange;
    }),
  );
