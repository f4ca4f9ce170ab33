import type { SeenFrom } from '../car/document';
import type { Vector } from '../core/vector';

/** The direction in which the fitter looks at the left side of the car, in the car frame (X forward, Y left, Z up). */
export const SIGHT: Readonly<Record<SeenFrom, Vector>> = {
  above: [0, 0, -1],
  below: [0, 0, 1],
  front: [-1, 0, 0],
  rear: [1, 0, 0],
  inboard: [0, 1, 0],
  outboard: [0, -1, 0],
};

/** What lies to the right of a fitter who looks so at the left side; from above and below it depends on where one stands. */
export const FITTERS_RIGHT: Readonly<Partial<Record<SeenFrom, Vector>>> = {
  front: [0, 1, 0],
  rear: [0, -1, 0],
  inboard: [1, 0, 0],
  outboard: [-1, 0, 0],
};
