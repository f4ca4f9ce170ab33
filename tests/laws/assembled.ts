import { assembleCar, type AssembledCar, type CarDocument, type Position, toMechanism, toRadians } from '../../geometry/index';
import type { AxleDocument, AxleName } from '../../geometry/car/document';
import { drawFrom, type Draw } from './draw';
import { randomCar, SETUPS, type SetupName } from './randomCars';

export const AXLES = ['front', 'rear'] as const satisfies readonly AxleName[];
export const SIDES = ['left', 'right'] as const;

/** One setup of the four for every seed, in turn. */
export const setupOf = (seed: number): SetupName => SETUPS[Math.floor(seed / 2) % SETUPS.length];

/** A car put together; null where its links do not meet with this setup, which the law of failures looks at. */
export function assembled(document: CarDocument, setup: SetupName): AssembledCar | null {
  const made = assembleCar(toMechanism(document), document.setups![setup]);
  return made.ok ? made.value : null;
}

export interface CarOfSeed {
  readonly seed: number;
  readonly document: CarDocument;
  readonly setup: SetupName;
  readonly car: AssembledCar;
  /** goes on with the same seed: for positions and what else a law draws */
  readonly draw: Draw;
}

/** The cars of some seeds, one at a time, each with the setup whose turn it is. */
export function* carsOf(seeds: readonly number[]): Generator<CarOfSeed> {
  for (const seed of seeds) {
    const document = randomCar(seed);
    const setup = setupOf(seed);
    const car = assembled(document, setup);
    if (car !== null) yield { seed, document, setup, car, draw: drawFrom(-seed) };
  }
}

/** Least and greatest rack of an axle in the file's unit; 0 where it is not steered. */
export function lockOf(axle: AxleDocument): readonly [number, number] {
  const travel = axle.steering?.travel;
  if (travel === undefined) return [0, 0];
  return typeof travel === 'number' ? [-travel, travel] : travel;
}

/** Full travel either way: past what road cars have [mm]. */
export const FULL_TRAVEL = 90;

/** All corners of travel and lock, some between, and positions with roll. @param unit - mm per unit of the file */
export function randomPositions(draw: Draw, axle: AxleDocument, count: number): Position[] {
  const [low, high] = lockOf(axle);
  return Array.from({ length: count }, (_, i) => {
    const rack = low === high || i % 3 === 0 ? 0 : draw.between(low, high);
    if (i % 4 === 3) return { travel: draw.between(-30, 30), rack, roll: toRadians(draw.between(-4, 4)) };
    if (i % 2 === 1) return { travel: { left: draw.between(-60, 60), right: draw.between(-60, 60) }, rack };
    return { travel: draw.between(-FULL_TRAVEL, FULL_TRAVEL), rack };
  });
}
