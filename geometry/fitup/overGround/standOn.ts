import type { AxleName, SideName } from '../../car/document';
import { dot, mirror, scale, unit, type Vector } from '../../core/vector';
import type { Corner } from '../../corner/corner';
import { knuckleDirection, wheelCentre } from '../../corner/knucklePoint';
import type { Motion } from '../../corner/motion';
import { contactCentre } from '../../readings/wheelStance';

/** A wheel that the car stands on. */
export interface Foot {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly corner: Corner;
  readonly motion: Motion;
  /** from the wheel centre to the ground, square to the spindle [mm] */
  readonly radius: number;
}

/** The plane that a car stands on, in the car frame: all points p with p · normal = height [mm]. */
export interface GroundPlane {
  /** unit, up */
  readonly normal: Vector;
  readonly height: number;
  /** how far the wheel that fits least is off the plane [mm]: four wheels need not be on one */
  readonly unevenBy: number;
}

/** The lowest point of a wheel depends on the plane, and the plane on it: so often both are found anew. */
const ROUNDS = 12;

/** The plane that is nearest to all wheels; with one axle it runs level along the car. */
export function standOn(feet: readonly Foot[]): GroundPlane {
  const isOneAxle = feet.every(({ axle }) => axle === feet[0].axle);
  let plane: GroundPlane = { normal: [0, 0, 1], height: 0, unevenBy: 0 };
  for (let round = 0; round < ROUNDS; round++)
    plane = nearestPlane(
      feet.map((foot) => contactOf(foot, plane.normal)),
      isOneAxle,
    );
  return plane;
}

/** In the car frame. */
function contactOf({ side, corner, motion, radius }: Foot, normal: Vector): Vector {
  const own = side === 'left' ? normal : mirror(normal);
  const at = contactCentre(wheelCentre(motion), knuckleDirection(motion, corner.spindle), own, radius);
  return side === 'left' ? at : mirror(at);
}

/** z = a + b x + c y by least squares of height, from the middle of the points, where a is theirs. */
function nearestPlane(points: readonly Vector[], isLevel: boolean): GroundPlane {
  const middle = [0, 1, 2].map((axis) => points.reduce((sum, point) => sum + point[axis], 0) / points.length);
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const point of points) {
    const [x, y, z] = point.map((value, axis) => value - middle[axis]);
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const size = xx * yy - xy * xy;
  const [b, c] = isLevel ? [0, yz / yy] : [(xz * yy - yz * xy) / size, (yz * xx - xz * xy) / size];
  const normal = unit([-b, -c, 1]);
  const height = dot(normal, [middle[0], middle[1], middle[2]]);
  const unevenBy = Math.max(...points.map((point) => Math.abs(dot(normal, point) - height)));
  return { normal, height, unevenBy };
}

/** Height of a point of the car frame over the plane [mm]. */
export const heightOver = ({ normal, height }: GroundPlane, point: Vector): number => dot(normal, point) - height;

/** Straight down, in the left-hand frame of a corner. */
export const downSeenFrom = ({ normal }: GroundPlane, side: SideName): Vector =>
  scale(side === 'left' ? normal : mirror(normal), -1);
