import type { PlacedCorner, SideName } from '../../geometry/index';
import { wheelCutFor, type WheelCut } from './camera';
import { bladeOf } from './cornerModel';
import type { GroundFrame } from './groundFrame';
import type { AxleContent, OverlayContent } from './overlayContent';
import type { OverlayItem } from './overlayTypes';
import { along, between, type Point } from './points';

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** Which way the half lies that was cut off a wheel; null where the wheel is not drawn at all. */
const CUT_OFF: Readonly<Record<WheelCut, Point | null>> = { fore: [1, 0, 0], aft: [-1, 0, 0], above: [0, 0, 1], outline: null };

/**
 * Whether the half of a wheel that is drawn stands between the eye and a point.
 * @param eye,point - in the ground's frame @param radius - of the tyre [mm]
 */
export const isBehindWheel = (
  eye: Point,
  point: Point,
  corner: PlacedCorner,
  { toGround }: GroundFrame,
  radius: number,
): boolean => {
  const centre = toGround(corner.wheelCentre);
  const spindle = minus(toGround(along(corner.wheelCentre, corner.spindle, 1)), centre);
  const off = CUT_OFF[wheelCutFor(minus(eye, centre))];
  const [here, there] = [dot(minus(point, centre), spindle), dot(minus(eye, centre), spindle)];
  if (!off || here * there >= 0) return false;
  const through = minus(between(point, eye, here / (here - there)), centre);
  return dot(through, through) < radius * radius && dot(through, off) < 0;
};

/** A trailing arm that the wheel hides: its blade in dashes, named where one corner is shown. */
export const hiddenItems = (
  content: OverlayContent,
  { placed, frame, wheelRadius }: AxleContent,
  side: SideName,
): OverlayItem[] => {
  const corner = placed[side];
  if (!corner.trailingArm) return [];
  const blade = bladeOf(corner).map(frame.toGround);
  const [pivot, above, below] = blade;
  if (!pivot || !above || !below) return [];
  const middle = between(pivot, between(above, below, 0.5), 0.6);
  if (!isBehindWheel(content.eye, middle, corner, frame, wheelRadius)) return [];
  const items: OverlayItem[] = [{ kind: 'line', className: 'hidden', points: [pivot, above, below, pivot] }];
  if (content.sides.length === 1)
    items.push({ kind: 'label', text: 'Trailing arm, behind', at: middle, reach: [-20, -60], plated: true });
  return items;
};
