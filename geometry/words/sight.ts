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
