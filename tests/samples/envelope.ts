import { sweepAxle, type AssembledCar, type AxleName, type AxleRow } from '../../geometry/index';

/** Travels from where the car stands at which the dampers are fully open and solid [mm]; both sides are within. */
interface Envelope {
  readonly open: number;
  readonly solid: number;
  /** rack from end to end [mm]; [0, 0] on an axle that is not steered */
  readonly rack: readonly [number, number];
}

/** No corner of a sample has more travel than this either way [mm]. */
const FAR = 200;
const HALVINGS = 40;

/** How much of its damper a side still has at a travel [mm]: negative past the stop. */
type Left = (row: AxleRow) => number;

/**
 * Damper fully open to solid and lock to lock of one axle, found by halving: damper travel grows with wheel travel.
 * @throws Error where the file does not say where the damper ends
 */
export function envelopeOf(car: AssembledCar, axle: AxleName): Envelope {
  const least = (key: 'solidLeft' | 'droopLeft'): Left => {
    return ({ left, right }) => {
      const [a, b] = [left[key], right[key]];
      if (a === null || b === null) throw new Error(`${axle}: the file does not say where the damper ends`);
      // the farther stop of the two sides: nothing of the envelope is left out
      return Math.max(a, b);
    };
  };
  const steering = car[axle]!.mechanism.steering;
  return {
    open: stopAt(car, axle, -1, least('droopLeft')),
    solid: stopAt(car, axle, 1, least('solidLeft')),
    rack: steering === null ? [0, 0] : (steering.travel ?? [0, 0]),
  };
}

/** The travel in one direction at which nothing is left; a travel that cannot be reached counts as past the stop. */
function stopAt(car: AssembledCar, axle: AxleName, sense: 1 | -1, left: Left): number {
  let inside = 0;
  let outside = sense * FAR;
  for (let i = 0; i < HALVINGS; i++) {
    const travel = 0.5 * (inside + outside);
    const row = sweepAxle(car, axle, [{ travel }])[0]!;
    if (row.ok && left(row.value) > 0) inside = travel;
    else outside = travel;
  }
  const at = sweepAxle(car, axle, [{ travel: inside }])[0]!;
  // what ends the search must be the damper and not the linkage
  if (!at.ok || left(at.value) > 1e-6) throw new Error(`${axle}: the linkage ends at ${inside} mm before the damper does`);
  return inside;
}

/** `count` values from one end to the other, both included. */
export const spread = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
