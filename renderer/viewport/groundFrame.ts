import type { Point } from './camera';

/** The car's frame laid so that the ground is level: the floor stays, the body leans. */
export interface GroundFrame {
  /** rows of the rotation from the car to the ground */
  readonly rows: readonly [Point, Point, Point];
  readonly point: Point;
  readonly toGround: (inCar: Point) => Point;
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: Point): Point => {
  const length = Math.sqrt(dot(a, a));
  return [a[0] / length, a[1] / length, a[2] / length];
};

/**
 * @param ground - a point of the ground and its unit normal in the car's frame
 * @returns the frame whose height is counted from the ground, its X the car's X laid into the ground
 */
export const groundFrame = ({ point, normal }: { readonly point: Point; readonly normal: Point }): GroundFrame => {
  const n = unit(normal);
  const x = unit([1 - n[0] * n[0], -n[0] * n[1], -n[0] * n[2]]);
  const rows = [x, cross(n, x), n] as const;
  const toGround = (inCar: Point): Point => {
    const from: Point = [inCar[0] - point[0], inCar[1] - point[1], inCar[2] - point[2]];
    return [dot(rows[0], from) + point[0], dot(rows[1], from) + point[1], dot(rows[2], from)];
  };
  return { rows, point, toGround };
};
