import {
  assembleCar,
  findSetup,
  inContractUnits,
  parseCar,
  placeAxle,
  readingsInContractUnits,
  readingsOfAxle,
  readingsOfCar,
  setupNames,
  toMechanism,
  type AssembledCar,
  type AxleDocument,
  type AxleName,
  type AxleReadings,
  type BodyDocument,
  type CarDocument,
  type CornerReadings,
  type PerSide,
  type PlacedAxle,
  type Position,
  type SetupDocument,
  type WholeCarReadings,
} from '../../geometry/index';

export interface Row {
  readonly travel: PerSide<number>;
  readonly left: CornerReadings;
  readonly right: CornerReadings;
  readonly both: AxleReadings;
  readonly why: Readonly<Record<string, string>>;
}

interface CarParts {
  readonly front?: AxleDocument;
  readonly rear?: AxleDocument;
  readonly body?: BodyDocument;
  readonly setups?: Readonly<Record<string, SetupDocument>>;
}

/** A car file in millimetres around the given axles. */
export const carOf = (parts: CarParts): CarDocument => ({
  format: 'jounce-car',
  version: 1,
  name: 'Case',
  units: { length: 'mm' },
  ...parts,
});

/** Reads the car as a file and puts it together, so that every case goes through the file's rules too. */
export function stand(parts: CarParts, setup?: string): AssembledCar {
  const parsed = parseCar(JSON.stringify(carOf(parts)));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const { document } = parsed.value;
  const car = assembleCar(toMechanism(document), findSetup(document, setup ?? setupNames(document)[0]));
  if (!car.ok) throw new Error(car.failure.message);
  return car.value;
}

/** One row in degrees. */
export function rowAt(car: AssembledCar, axle: AxleName, position: Position = {}): Row {
  const row = readingsOfAxle(car, axle, position);
  if (!row.ok) throw new Error(row.failure.message);
  return inContractUnits(row.value) as unknown as Row;
}

/** Readings of the whole car in degrees. */
export const wholeCarAt = (car: AssembledCar, position: Position = {}): WholeCarReadings =>
  readingsInContractUnits(readingsOfCar(car, position).wholeCar, 'car') as unknown as WholeCarReadings;

export function placedAt(car: AssembledCar, axle: AxleName, position: Position = {}): PlacedAxle {
  const placed = placeAxle(car, axle, position);
  if (!placed.ok) throw new Error(placed.failure.message);
  return placed.value;
}
