import { numbersOf, type ReadingValue } from '../../geometry/index';
import type { BenchAnswered, BenchReadings } from '../compute/answerBench';
import type { PlainTable } from '../lengths/lengthTables';
import { shownReading } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import type { LimitPair } from './LimitBars';
import type { ReadingGroup } from './readingRows';

/**
 * The table as it is copied and saved: full numbers in the units shown, what is left of each limit, and why a number is missing.
 * @param limits - by the id of the row, in contract units
 */
export const readingTable = (
  answered: BenchAnswered,
  groups: readonly ReadingGroup[],
  limits: ReadonlyMap<string, readonly LimitPair[]>,
  units: ShownUnits,
): PlainTable => ({
  heads: [
    'reading',
    'unit',
    'left',
    'right',
    ...(answered.against === null ? [] : [`left less ${answered.against}`, `right less ${answered.against}`]),
    'limit from',
    'limit to',
    'left of the limit',
    'why missing',
  ],
  rows: groups.flatMap(({ rows }) =>
    rows.map(({ id, entry, name, why }) => {
      const shown = shownReading(entry, units);
      const component = Math.max(0, entry.components?.findIndex((one) => id.endsWith(`.${one}`)) ?? 0);
      const numberIn = (readings: BenchReadings, side: 'left' | 'right'): number | null => {
        if (entry.of !== 'corner' && side === 'right') return null;
        const owner = entry.of === 'corner' ? readings[side] : entry.of === 'axle' ? readings.both : readings.wholeCar;
        const value: ReadingValue = owner[entry.key] ?? null;
        return numbersOf(entry, value)[component] ?? null;
      };
      const inUnits = (value: number | null | undefined): number | null =>
        typeof value === 'number' ? shown.toShown(value) : null;
      const limit = limits.get(id)?.[0]?.limit;
      return [
        name,
        shown.unit,
        inUnits(numberIn(answered.row, 'left')),
        inUnits(numberIn(answered.row, 'right')),
        ...(answered.against === null
          ? []
          : [inUnits(numberIn(answered.difference, 'left')), inUnits(numberIn(answered.difference, 'right'))]),
        inUnits(limit?.min),
        inUnits(limit?.max),
        inUnits(limit?.spare),
        why ?? '',
      ];
    }),
  ),
});
