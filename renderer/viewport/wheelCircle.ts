import type { PlacedCorner } from '../../geometry/index';
import { along, direction, type Point } from './points';

const AROUND = 48;

const crossed = (a: Point, b: Point): Point => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** A circle about the spindle, in the car's frame. @param offset - along the spindle from the wheel centre, + outboard [mm] */
export const wheelCircle = ({ wheelCentre, spindle }: PlacedCorner, radius: number, offset = 0): readonly Point[] => {
  const heading = direction([0, 0, 0], crossed(spindle, [0, 0, 1]));
  const up = crossed(heading, spindle);
  const centre = along(wheelCentre, spindle, offset);
  return Array.from({ length: AROUND + 1 }, (_, index) => {
    const angle = (2 * Math.PI * index) / AROUND;
    return along(along(centre, heading, radius * Math.cos(angle)), up, radius * Math.sin(angle));
  });
};
