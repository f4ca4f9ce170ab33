import type { Point as CameraPoint } from './camera';

export type Point = CameraPoint;

/** The point `by` mm from `from` along a unit direction. */
export const along = (from: Point, axis: Point, by: number): Point => [
  from[0] + axis[0] * by,
  from[1] + axis[1] * by,
  from[2] + axis[2] * by,
];

/** The point at a share of the way. */
export const between = (from: Point, to: Point, share: number): Point => [
  from[0] + (to[0] - from[0]) * share,
  from[1] + (to[1] - from[1]) * share,
  from[2] + (to[2] - from[2]) * share,
];

export const separation = (a: Point, b: Point): number => {
  const [x, y, z] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  return Math.sqrt(x * x + y * y + z * z);
};

/** Unit vector from one point to another; Z where they are one. */
export const direction = (from: Point, to: Point): Point => {
  const length = separation(from, to);
  return length < 1e-9 ? [0, 0, 1] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length, (to[2] - from[2]) / length];
};
