/** A point or direction in three dimensions, [x, y, z]; points in mm. */
export type Vector = readonly [number, number, number];

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor, a[2] * factor];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** Plain square root of the sum of squares: Math.hypot differs between engines in the last bit. */
export const length = (a: Vector): number => Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
export const distance = (a: Vector, b: Vector): number => length(subtract(a, b));
/** The direction of `a`. The caller has made sure that `a` is not zero. */
export const unit = (a: Vector): Vector => scale(a, 1 / length(a));
/** `a` with the part along the unit vector `direction` taken out. */
export const reject = (a: Vector, direction: Vector): Vector => subtract(a, scale(direction, dot(a, direction)));
/** The mirror image in the car's middle plane (y negated). −0 becomes 0. */
export const mirror = (a: Vector): Vector => [a[0], a[1] === 0 ? 0 : -a[1], a[2]];
/** Some unit vector square to the unit vector `a`. */
export const anyPerpendicular = (a: Vector): Vector =>
  Math.abs(a[0]) < 0.7 ? unit(cross(a, [1, 0, 0])) : unit(cross(a, [0, 1, 0]));

export const ZERO: Vector = [0, 0, 0];
