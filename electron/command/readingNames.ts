import { CATALOGUE, findReading, suggest, type AxleName, type CarDocument, type ReadingEntry } from '../../geometry/index';
import { usageError } from './commandError';

/** Readings that are one number each: no coordinates, no instant centres. */
export const numberReadings = (): readonly ReadingEntry[] => CATALOGUE.filter(({ components }) => components === undefined);

export interface NamedReading {
  readonly entry: ReadingEntry;
  readonly axle: AxleName | 'wholeCar';
  readonly owner: 'left' | 'right' | 'both' | 'wholeCar';
}

/**
 * The reading of a dotted name of this car: front.left.camber, rear.both.track, wholeCar.rake.
 * @throws CommandError of kind usage that says what the name should be like
 */
export function readingNamed(name: string, car: CarDocument): NamedReading {
  const wrong = (why: string): never => {
    throw usageError(
      `"${name}" is not the dotted name of a reading: ${why}, as in front.left.camber, rear.both.track or wholeCar.rake`,
    );
  };
  const [first = '', second = '', third, ...more] = name.split('.');
  const key = first === 'wholeCar' ? second : (third ?? '');
  if (more.length > 0 || (first === 'wholeCar' && third !== undefined)) wrong('it has too many parts');
  const entry = numberReadings().find((one) => one.key === key);
  if (entry === undefined) {
    const known = numberReadings().map((one) => one.key);
    return wrong(findReading(key) ? 'that reading is a point' : (suggest(key, known) ?? `"${key}" is no reading`));
  }
  if (first === 'wholeCar')
    return entry.of === 'car' ? { entry, axle: 'wholeCar', owner: 'wholeCar' } : wrong(`${key} is not of the whole car`);
  if (first !== 'front' && first !== 'rear') return wrong(`"${first}" is neither front, rear nor wholeCar`);
  if (car[first] === undefined) throw usageError(`this car has no ${first} axle`);
  const owners: readonly string[] = entry.of === 'corner' ? ['left', 'right'] : entry.of === 'axle' ? ['both'] : [];
  if (!owners.includes(second))
    return wrong(owners.length === 0 ? `${key} is of the whole car` : `${key} is of ${owners.join(' or ')}`);
  return { entry, axle: first, owner: second as NamedReading['owner'] };
}
