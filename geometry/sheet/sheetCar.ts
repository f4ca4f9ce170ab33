import type { AxleDocument, AxleName, CarDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { lengthWords } from '../format/lengthWords';
import { shownReading, withUnit, type ShownQuantity } from '../format/shownQuantity';
import type { ShownUnits, UnitChoice } from '../format/unitChoice';
import { findReading } from '../readings/catalogue';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import { readingsOfCar, type CarReadings } from '../readings/readings';
import type { AssembledCar } from '../setup/assembleCar';
import type { NamedSetup, SheetQuestion } from './sheet';

/** What the parts of a sheet are made from: the car standing in its setup, and its readings there. */
export interface SheetCar {
  readonly document: CarDocument;
  readonly mechanism: CarMechanism;
  readonly mm: number;
  readonly setup: NamedSetup;
  readonly assembled: AssembledCar;
  readonly readings: CarReadings;
  readonly question: SheetQuestion;
}

export const sheetCar = (assembled: AssembledCar, question: SheetQuestion): SheetCar => ({
  document: assembled.mechanism.document,
  mechanism: assembled.mechanism,
  mm: assembled.mechanism.mmPerUnit,
  setup: question.setup,
  assembled,
  readings: readingsOfCar(assembled),
  question,
});

/** "Front", "Rear". */
export const axleWord = (axle: AxleName): string => (axle === 'front' ? 'Front' : 'Rear');

/** The units of the sheet with the diameter that toe at the rim of this axle is read at. */
export const unitsFor = (document: CarDocument, axle: AxleName, units: UnitChoice, mm: number): ShownUnits => {
  const diameter = document[axle]?.wheel.toeDiameter;
  return { ...units, toeDiameter: diameter === undefined ? null : diameter * mm };
};

/** Across what toe at the rim is read: ", across 487 mm at the rim"; empty where toe is an angle. */
export const acrossWords = (car: SheetCar, axle: AxleName): string => {
  const { toe, toeDiameter } = unitsFor(car.document, axle, car.question.units, car.mm);
  return toe === 'rim' && toeDiameter !== null ? `, across ${lengthWords(toeDiameter, 1, car.question.units)} at the rim` : '';
};

/** How a reading of an axle is written on this sheet. */
export const shownOn = (car: SheetCar, axle: AxleName, key: string): ShownQuantity | null => {
  const entry = findReading(key);
  return entry ? shownReading(entry, unitsFor(car.document, axle, car.question.units, car.mm)) : null;
};

/** A reading where the car stands, in contract units; null where it has no value. */
export const readingAt = (
  readings: CarReadings,
  axle: AxleName,
  owner: 'left' | 'right' | 'both',
  key: string,
): number | null => {
  const row = readings[axle];
  const entry = findReading(key);
  if (row === null || !row.ok || entry === undefined) return null;
  const value = (row.value[owner] as unknown as Readonly<Record<string, ReadingValue>>)[key];
  const converted = valueInContractUnits(value ?? null, entry.quantity);
  return typeof converted === 'number' ? converted : null;
};

/** A reading in words with its unit; null where it has no value. */
export const readingWords = (car: SheetCar, axle: AxleName, owner: 'left' | 'right' | 'both', key: string): string | null => {
  const value = readingAt(car.readings, axle, owner, key);
  const shown = shownOn(car, axle, key);
  return value === null || shown === null ? null : withUnit(shown.format(value), shown.unit);
};

/** Distance between the two bolts of a clamp in the file's unit; undefined where the file does not have both. */
export const pivotToBoltOf = (axle: AxleDocument, pivot: string, bolt: string): number | undefined => {
  const [from, to] = [axle.points[pivot], axle.points[bolt]];
  if (!from || !to) return undefined;
  const [x, y, z] = [from[0] - to[0], from[1] - to[1], from[2] - to[2]];
  return Math.sqrt(x * x + y * y + z * z);
};
