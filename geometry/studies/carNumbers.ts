import type { CarDocument } from '../car/document';
import { mattersOf } from '../car/tolerances';
import { readingsOf } from '../readings/catalogue';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import type { ReadingEntry, ReadingOwner } from '../readings/readingEntry';
import type { CarReadings } from '../readings/readings';

/** One number of the car: "front.left.camber", "rear.both.track", "wholeCar.rake". */
export interface CarNumber {
  readonly name: string;
  readonly entry: ReadingEntry;
  readonly axle: 'front' | 'rear' | 'wholeCar';
  readonly owner: 'left' | 'right' | 'both' | 'wholeCar';
}

/** Values by dotted name, in contract units; null where there is none. */
export type Numbers = Readonly<Record<string, number | null>>;

/** Coordinates and instant centres are places, not properties: they are no reading that one asks a change of. */
const PLACES: ReadonlySet<string> = new Set(['frontViewInstantCentre', 'sideViewInstantCentre', 'wheelCentre', 'contactCentre']);

const numbersOf = (axle: CarNumber['axle'], owner: CarNumber['owner'], of: ReadingOwner): CarNumber[] =>
  readingsOf(of)
    .filter((entry) => entry.components === undefined && !PLACES.has(entry.key))
    .map((entry) => ({
      name: axle === 'wholeCar' ? `wholeCar.${entry.key}` : `${axle}.${owner}.${entry.key}`,
      entry,
      axle,
      owner,
    }));

/** Every reading that is one number, of the axles that the car has, in catalogue order. */
export function carNumberNames(document: CarDocument): readonly CarNumber[] {
  const axles = (['front', 'rear'] as const).filter((axle) => document[axle] !== undefined);
  return [
    ...axles.flatMap((axle) => [
      ...numbersOf(axle, 'left', 'corner'),
      ...numbersOf(axle, 'right', 'corner'),
      ...numbersOf(axle, 'both', 'axle'),
    ]),
    ...(axles.length === 2 ? numbersOf('wholeCar', 'wholeCar', 'car') : []),
  ];
}

/** The values of these numbers at one position. */
export function carNumbers(names: readonly CarNumber[], rows: CarReadings): Numbers {
  const values: Record<string, number | null> = {};
  for (const { name, entry, axle, owner } of names) values[name] = numberAt(rows, entry, axle, owner);
  return values;
}

function numberAt(rows: CarReadings, entry: ReadingEntry, axle: CarNumber['axle'], owner: CarNumber['owner']): number | null {
  const of = axle === 'wholeCar' ? rows.wholeCar : ownerOf(rows[axle], owner);
  const value = valueInContractUnits((of as Readonly<Record<string, ReadingValue>> | null)?.[entry.key] ?? null, entry.quantity);
  return typeof value === 'number' ? value : null;
}

function ownerOf(row: CarReadings['front'], owner: CarNumber['owner']): object | null {
  return row === null || !row.ok || owner === 'wholeCar' ? null : row.value[owner];
}

/** This less that, number by number; null where either has no value. */
export function changesBetween(before: Numbers, after: Numbers): Numbers {
  const changes: Record<string, number | null> = {};
  for (const [name, then] of Object.entries(after)) {
    const now = before[name];
    changes[name] = then === null || now === null || now === undefined ? null : then - now || 0;
  }
  return changes;
}

/** Σ (change ÷ what matters)² over the readings that have a `matters`: how much else a move changes. */
export function weightOf(document: CarDocument, names: readonly CarNumber[], changes: Numbers): number {
  let sum = 0;
  for (const { name, entry } of names) {
    const matters = mattersOf(document, entry.key);
    const change = changes[name];
    if (matters === undefined || change === null || change === undefined) continue;
    const weight = change / matters;
    sum += weight * weight;
  }
  return sum;
}
