import { toRadians, type Vector } from '../../geometry/index';
import { add, cross, dot, scale, subtract, unit } from '../../geometry/core/vector';

/** A line about which something turns; `direction` need not be a unit vector. */
export interface Line {
  readonly point: Vector;
  readonly direction: Vector;
}

/** A direction turned about another by an angle in degrees, right-hand rule (Rodrigues' formula, as in any textbook). */
export function turned(v: Vector, direction: Vector, degrees: number): Vector {
  const k = unit(direction);
  const [c, s] = [Math.cos(toRadians(degrees)), Math.sin(toRadians(degrees))];
  return add(add(scale(v, c), scale(cross(k, v), s)), scale(k, dot(k, v) * (1 - c)));
}

/** A point turned about a line. */
export const turnedAbout = (at: Vector, { point, direction }: Line, degrees: number): Vector =>
  add(point, turned(subtract(at, point), direction, degrees));

/** A row-major rotation applied to a direction. */
export const rotate = (rotation: readonly number[], v: Vector): Vector => [
  dot([rotation[0], rotation[1], rotation[2]], v),
  dot([rotation[3], rotation[4], rotation[5]], v),
  dot([rotation[6], rotation[7], rotation[8]], v),
];

/** Root of a growing or falling function between two ends of opposite sign, by halving. */
export function bisect(f: (x: number) => number, low: number, high: number): number {
  const sign = Math.sign(f(low));
  for (let i = 0; i < 200 && low !== high; i++) {
    const middle = 0.5 * (low + high);
    if (middle === low || middle === high) break;
    if (Math.sign(f(middle)) === sign) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
