import { AXLE_CATALOGUE } from './catalogueAxle';
import { CAR_CATALOGUE } from './catalogueCar';
import { TRAVEL_CATALOGUE } from './catalogueTravel';
import { WHEEL_CATALOGUE } from './catalogueWheel';
import type { Quantity, ReadingEntry, ReadingOwner } from './readingEntry';

/** Readings of one corner, in printing order. */
const CORNER_CATALOGUE: readonly ReadingEntry[] = [...WHEEL_CATALOGUE, ...TRAVEL_CATALOGUE];

/** Every reading, in the order in which tables, CSV columns and help show them: corner, axle, whole car. */
export const CATALOGUE: readonly ReadingEntry[] = [...CORNER_CATALOGUE, ...AXLE_CATALOGUE, ...CAR_CATALOGUE];

const BY_KEY: ReadonlyMap<string, ReadingEntry> = new Map(CATALOGUE.map((entry) => [entry.key, entry]));

/** The entry of a reading by its key ("camber"), or undefined where there is no such reading. */
export const findReading = (key: string): ReadingEntry | undefined => BY_KEY.get(key);

/** The entries of a corner, an axle or the whole car, in printing order. */
export function readingsOf(owner: ReadingOwner): readonly ReadingEntry[] {
  if (owner === 'corner') return CORNER_CATALOGUE;
  return owner === 'axle' ? AXLE_CATALOGUE : CAR_CATALOGUE;
}

/** The unit in which a quantity leaves the program (JSON, CSV); "1" for a plain ratio. */
export const CONTRACT_UNITS: Readonly<Record<Quantity, string>> = {
  angle: 'deg',
  length: 'mm',
  anglePerLength: 'deg/mm',
  anglePerAngle: 'deg/deg',
  anglePerG: 'deg/g',
  ratio: '1',
  percent: '%',
  force: 'N',
  forcePerLength: 'N/mm',
  forcePerG: 'N/g',
  momentPerAngle: 'N·m/deg',
  frequency: 'Hz',
};
