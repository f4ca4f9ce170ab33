import { toRadians, type Triple } from '../../geometry/index';
import type { GroundFrame } from './groundFrame';
import type { Point } from './points';

/** A point of the ground's frame as the car's frame has it. */
export const toCar = ({ rows, point }: GroundFrame, at: Point): Triple => {
  const from: Point = [at[0] - point[0], at[1] - point[1], at[2]];
  const axis = (index: 0 | 1 | 2): number =>
    rows[0][index] * from[0] + rows[1][index] * from[1] + rows[2][index] * from[2] + point[index];
  return [axis(0), axis(1), axis(2)];
};

/**
 * The place on a line through `from` that looks nearest to where the hand is.
 * @param axis - unit vector
 * @param seen - screen places of `from` and of the point 1 mm along the axis [px]
 * @param hand - [px]
 */
export const alongAxis = (
  from: Point,
  axis: Point,
  seen: readonly [readonly [number, number, ...number[]], readonly [number, number, ...number[]]],
  hand: readonly [number, number],
): Point => {
  const [a, b] = seen;
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  // An axis that points at the eye is a dot on the screen: there the hand moves nothing.
  const by = square < 1e-6 ? 0 : ((hand[0] - a[0]) * dx + (hand[1] - a[1]) * dy) / square;
  return [from[0] + axis[0] * by, from[1] + axis[1] * by, from[2] + axis[2] * by];
};

/** An axis within this of the line of sight is seen as a dot: a pixel would be metres of it. */
const NO_ARM = Math.cos(toRadians(15));
/** A view that looks along an axis within this shows the plane of the other two. */
const SQUARE = Math.cos(toRadians(1));

const sight = (axis: Point, away: Point): number => Math.abs(axis[0] * away[0] + axis[1] * away[1] + axis[2] * away[2]);

/** Whether an axis points at the eye, so that nothing can be dragged along it. @param axis,away - unit vectors */
export const isAtEye = (axis: Point, away: Point): boolean => sight(axis, away) > NO_ARM;

/**
 * A move in the plane that a view shows: where it looks along one of the axes, nothing of that axis is in it, although no eye looks
 * straight down.
 * @param axes - unit vectors, as `moved` and `away` in the ground's frame
 * @param away - along the line of sight
 */
export const inPlane = (moved: Point, axes: readonly Point[], away: Point): Point => {
  const depth = axes.find((axis) => sight(axis, away) > SQUARE);
  if (!depth) return moved;
  const by = moved[0] * depth[0] + moved[1] * depth[1] + moved[2] * depth[2];
  return [moved[0] - by * depth[0], moved[1] - by * depth[1], moved[2] - by * depth[2]];
};

/**
 * A move of a point where it is now, as a move of the point in the file.
 * @param rotation - row-major, from the knuckle at design to the car now; null for a point that does not turn
 */
export const moveAtDesign = (moved: Triple, rotation: readonly number[] | null): Triple => {
  if (!rotation) return moved;
  const r = (row: number, column: number): number => rotation[3 * row + column] ?? 0;
  const axis = (column: number): number => r(0, column) * moved[0] + r(1, column) * moved[1] + r(2, column) * moved[2];
  return [axis(0), axis(1), axis(2)];
};

/** A number of a point as a person would write it: a hundredth of a millimetre, a tenth of that in inches. @param mm - per unit of the file */
export const roundedPlace = (place: Triple, mm: number): Triple => {
  const decimals = mm === 1 ? 2 : 4;
  const round = (value: number): number => Number((value / mm).toFixed(decimals)) + 0;
  return [round(place[0]), round(place[1]), round(place[2])];
};
