import { CATALOGUE, type AxleRow, type ReadingEntry } from '../../geometry/index';
import type { Breaches } from './breaches';
import { AGREEMENT, CENTRE_AGREEMENT, CENTRES, type Agreement } from './tolerances';

type Value = number | readonly number[] | null;
export const OWNERS = ['left', 'right', 'both'] as const;

/** Readings of corner or axle, in catalogue order. */
const ENTRIES: Readonly<Record<'left' | 'right' | 'both', readonly ReadingEntry[]>> = {
  left: CATALOGUE.filter((entry) => entry.of === 'corner'),
  right: CATALOGUE.filter((entry) => entry.of === 'corner'),
  both: CATALOGUE.filter((entry) => entry.of === 'axle'),
};

export interface RowComparison {
  /** part of the agreement that may be used up */
  readonly part: number;
  /** what the second row's reading would be in the first car; default: itself */
  readonly turned?: (value: number, entry: ReadingEntry, component: number) => number;
  /** readings that are left alone */
  readonly except?: readonly string[];
}

const agreementOf = (entry: ReadingEntry): Agreement =>
  CENTRES.includes(entry.key) ? CENTRE_AGREEMENT : AGREEMENT[entry.quantity];

/** Farther than this a centre may have no value in one of two rows and one in the other [mm]: the line is drawn at 10 km. */
const NEARLY_NONE = 1e6;

/** Every reading of two rows that should be the same. */
export function compareRows(
  breaches: Breaches,
  one: AxleRow,
  other: AxleRow,
  where: string,
  { part, turned = (value) => value, except = [] }: RowComparison,
): void {
  for (const owner of OWNERS) {
    for (const entry of ENTRIES[owner]) {
      if (except.includes(entry.key)) continue;
      const a = valuesOf(one, owner, entry);
      const b = valuesOf(other, owner, entry);
      const at = (): string => `${where} ${owner}.${entry.key}`;
      if (a === null || b === null) {
        const rest = a ?? b;
        breaches.check(
          rest === null || (CENTRES.includes(entry.key) && rest.some((value) => Math.abs(value) > NEARLY_NONE)),
          () => `${at()}: ${a} and ${b}`,
        );
        continue;
      }
      const { absolute, relative } = agreementOf(entry);
      // a far point is as sure as its distance, in both coordinates
      const size = Math.max(...a.map(Math.abs));
      for (let i = 0; i < a.length; i++)
        breaches.limit(Math.abs(a[i] - turned(b[i], entry, i)), part * (absolute + relative * size), at);
    }
  }
}

function valuesOf(row: AxleRow, owner: 'left' | 'right' | 'both', entry: ReadingEntry): readonly number[] | null {
  const value = (row[owner] as unknown as Readonly<Record<string, Value>>)[entry.key];
  return value === null ? null : typeof value === 'number' ? [value] : value;
}
