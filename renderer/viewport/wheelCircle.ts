import type { PlacedCorner } from '../../geometry/index';
import { along, direction, type Point } from './points';

/** On the screen: no chord leaves the circle of a wheel by a pixel. */
const AROUND = 48;
/** On paper: a chord leaves the circle by 0.00015 of its radius, 0.02 mm of a wheel at 1:2.5: less than the finest line is wide. */
export const AROUND_ON_PAPER = 180;

const crossed = (a: Point, b: Point): Point => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** A circle about the spindle, in the car's frame. @param offset - along the spindle from the wheel centre, + outboard [mm] @param around - how many chords it is drawn with */
export const wheelCircle = (
  { wheelCentre, spindle }: PlacedCorner,
  radius: number,
  offset = 0,
  around = AROUND,
): readonly Point[] => {
  const heading = direction([0, 0, 0], crossed(spindle, [0, 0, 1]));
  const up = crossed(heading, spindle);
  const centre = along(wheelCentre, spindle, offset);
  return Array.from({ length: around + 1 }, (_, index) => {
    const angle = (2 * Math.PI * index) / around;
    return along(along(centre, heading, radius * Math.cos(angle)), up, radius * Math.sin(angle));
  });
};
