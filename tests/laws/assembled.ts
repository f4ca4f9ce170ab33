import { assembleCar, type AssembledCar, type CarDocument, type Position, toMechanism, toRadians } from '../../geometry/index';
import type { AxleDocument, AxleName } from '../../geometry/car/document';
import { drawFrom, type Draw } from './draw';
import { randomCar, type SetupName } from './randomCars';

export const AXLES = ['front', 'rear'] as const satisfies readonly AxleName[];
export const SIDES = ['left', 'right'] as const;

/** Every other dozen of seeds has adjusters moved, the rest are in turn as designed, with toe reset, or with all at once. */
const TURNS: readonly SetupName[] = ['Set', 'Design', 'Set', 'Toe', 'Set', 'Stance'];
/** A dozen in a row has every combination of layouts and both wild and plausible cars. */
export const setupOf = (seed: number): SetupName => TURNS[Math.floor(seed / 12) % TURNS.length];

/** A car put together; null where its links do not meet with this setup, which the law of failures looks at. */
export function assembled(document: CarDocument, setup: SetupName): AssembledCar | null {
  const made = assembleCar(toMechanism(document), document.setups![setup]);
  return made.ok ? made.value : null;
}

export interface DocumentOfSeed {
  readonly seed: number;
  readonly document: CarDocument;
  /** goes on with the same seed: for positions and what else a law draws */
  readonly draw: Draw;
}

export interface CarOfSeed extends DocumentOfSeed {
  readonly setup: SetupName;
  readonly car: AssembledCar;
}

export function* documentsOf(seeds: readonly number[]): Generator<DocumentOfSeed> {
  for (const seed of seeds) yield { seed, document: randomCar(seed), draw: drawFrom(-seed) };
}

/**
 * The cars of some seeds, one at a time, each with the setup whose turn it is, or as designed where that cannot be put together.
 * @param change - of the document, before it is put together
 */
export function* carsOf(
  seeds: readonly number[],
  change = (document: CarDocument): CarDocument => document,
): Generator<CarOfSeed> {
  for (const { seed, document: drawn, draw } of documentsOf(seeds)) {
    const document = change(drawn);
    const made = assembled(document, setupOf(seed));
    const setup = made === null ? 'Design' : setupOf(seed);
    const car = made ?? assembled(document, setup);
    if (car === null) throw new Error(`seed ${seed} cannot be put together as designed`);
    yield { seed, document, draw, setup, car };
  }
}

/** Without the height of its centre of gravity a car has no load transfer, and an axle's rows do not ask for the other axle. */
export function axlesApart({ body, ...car }: CarDocument): CarDocument {
  if (body === undefined) return car;
  const { centreOfGravityHeight: _, ...rest } = body;
  return { ...car, body: rest };
}

/** Least and greatest rack of an axle in the file's unit; 0 where it is not steered. */
export function lockOf(axle: AxleDocument): readonly [number, number] {
  const travel = axle.steering?.travel;
  if (travel === undefined) return [0, 0];
  return typeof travel === 'number' ? [-travel, travel] : travel;
}

/** The axle whose rack a position of the whole car moves; any, where none is steered. */
export const steeredAxle = (document: CarDocument): AxleName => (document.front!.steering === undefined ? 'rear' : 'front');

/** Full travel either way: past what road cars have [mm]. */
export const FULL_TRAVEL = 90;

/** Rack positions nearer to the middle than this are left out: a ratio of two small angles has few digits [mm]. */
const LEAST_RACK = 4;

/** Positions over full travel and lock: both wheels alike, each its own, rolled; half of them with the rack moved. */
export function randomPositions(draw: Draw, axle: AxleDocument, count: number): Position[] {
  const [low, high] = lockOf(axle);
  const rackOf = (): number => {
    const drawn = low === high || draw.chance(0.4) ? 0 : draw.chance(0.2) ? draw.pick([low, high]) : draw.between(low, high);
    return Math.abs(drawn) < LEAST_RACK ? 0 : drawn;
  };
  return Array.from({ length: count }, () => {
    const rack = rackOf();
    const kind = draw.pick(['alike', 'alike', 'apart', 'rolled'] as const);
    switch (kind) {
      case 'alike':
        return { travel: draw.between(-FULL_TRAVEL, FULL_TRAVEL), rack };
      case 'apart':
        return {
          travel: { left: draw.between(-FULL_TRAVEL, FULL_TRAVEL), right: draw.between(-FULL_TRAVEL, FULL_TRAVEL) },
          rack,
        };
      case 'rolled':
        return { travel: draw.between(-30, 30), rack, roll: toRadians(draw.between(-5, 5)) };
    }
  });
}
