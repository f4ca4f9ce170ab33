import type { AxleDocument, PlacedCorner, SideName } from '../../geometry/index';
import type { GroundFrame } from './groundFrame';
import type { AxleContent, OverlayContent } from './overlayContent';
import type { OverlayItem } from './overlayTypes';
import { along, between, separation, type Point } from './points';
import { wheelCircle } from './wheelCircle';

/** A point of the compared setup that moved less is not drawn twice [mm]. */
const SAME_MM = 0.4;

/** The links of a corner as lines. */
export const skeleton = (corner: PlacedCorner): readonly (readonly Point[])[] => [
  ...corner.rods.map((rod) => [rod.inner, rod.outer]),
  ...(corner.arm ? [[corner.arm[0], corner.arm[2], corner.arm[1]]] : []),
  ...(corner.strut ? [[corner.strut.top, corner.strut.foot]] : []),
  ...(corner.trailingArm ? [[corner.trailingArm.pivot, corner.wheelCentre]] : []),
];

/** What is compared, as dots with diamonds at the joints that are elsewhere. */
export const ghostItems = (
  { placed, frame, compared, wheelRadius }: AxleContent,
  side: SideName,
  marked: boolean,
): OverlayItem[] => {
  if (!compared) return [];
  const [now, then] = [placed[side], compared.placed[side]];
  const { toGround } = compared.frame;
  const moved = Object.entries(then.points).filter(([name, point]) => {
    const other = now.points[name];
    return other !== undefined && separation(frame.toGround(other), toGround(point)) > SAME_MM;
  });
  if (moved.length === 0) return [];
  const joints = new Set(skeleton(then).flat().map(String));
  return [
    ...skeleton(then).map((points): OverlayItem => ({ kind: 'line', className: 'ghost', points: points.map(toGround) })),
    { kind: 'line', className: 'ghost', points: wheelCircle(then, wheelRadius).map(toGround) },
    ...moved
      .filter(([, point]) => marked && joints.has(String(point)))
      .map(([, point]): OverlayItem => ({ kind: 'mark', className: 'ghostmark', shape: 'diamond', at: toGround(point) })),
  ];
};

/** Where the wheel points, in the ground's frame: forward along the ground, square to the spindle. */
const headingOf = ({ toGround }: GroundFrame, { wheelCentre, spindle }: PlacedCorner): Point => {
  const [from, to] = [toGround(wheelCentre), toGround(along(wheelCentre, spindle, 1))];
  const [x, y] = [to[1] - from[1], from[0] - to[0]];
  const length = Math.sqrt(x * x + y * y) * (x < 0 ? -1 : 1);
  return [x / length, y / length, 0];
};

/** The steering axis from the ground to above the wheel. */
const axisLine = (corner: PlacedCorner): readonly [Point, Point] | null => {
  const axis = corner.steeringAxis;
  if (!axis) return null;
  const sense = axis.direction[2] >= 0 ? 1 : -1;
  const top = Math.max(corner.strut ? corner.strut.top[2] + 55 : -Infinity, corner.wheelCentre[2] + 1.15 * corner.loadedRadius);
  const length = (top - axis.ground[2]) / Math.max(0.2, Math.abs(axis.direction[2]));
  return [along(axis.ground, axis.direction, -30 * sense), along(axis.ground, axis.direction, length * sense)];
};

/** Whether two pairs of rods share a joint each on the knuckle: then the axis runs through both and can be touched. */
const hasBallJoints = ({ rods }: AxleDocument): boolean => {
  const outers = Object.values(rods ?? {}).map(([, outer]) => outer);
  return new Set(outers.filter((outer, index) => outers.indexOf(outer) !== index)).size >= 2;
};

/** Axis, trail and scrub of one corner: the sides of the right angle between contact centre and axis on the ground. */
export const axisItems = (content: AxleContent, side: SideName, named: boolean): OverlayItem[] => {
  const corner = content.placed[side];
  const { toGround } = content.frame;
  const line = axisLine(corner);
  const pierced = corner.steeringAxis?.ground;
  if (!line || !pierced) return [];
  const [low, high] = [toGround(line[0]), toGround(line[1])];
  const [contact, foot] = [toGround(corner.contactCentre), toGround(pierced)];
  const heading = headingOf(content.frame, corner);
  const ahead = (foot[0] - contact[0]) * heading[0] + (foot[1] - contact[1]) * heading[1];
  const elbow = along(contact, heading, ahead);
  const items: OverlayItem[] = [
    { kind: 'line', className: 'axishalo', points: [low, high] },
    { kind: 'line', className: 'axis', points: [low, high] },
    { kind: 'line', className: 'dimension', points: [contact, elbow, foot] },
    { kind: 'mark', className: 'contact', shape: 'cross', at: contact },
    { kind: 'mark', className: 'pierced', shape: 'ring', at: foot },
  ];
  if (!named) return items;
  const virtual = corner.strut === null && !hasBallJoints(content.axle);
  const { trail, scrub } = content.words[side];
  const name = virtual ? 'virtual steering axis' : 'steering axis';
  items.push({ kind: 'label', text: name, at: between(low, high, 0.985), reach: [-30, 6] });
  if (trail !== null)
    items.push({ kind: 'label', text: `trail ${trail}`, at: between(contact, elbow, 0.5), reach: [-40, 16], strong: true });
  if (scrub !== null)
    items.push({ kind: 'label', text: `scrub ${scrub}`, at: between(elbow, foot, 0.5), reach: [40, 18], strong: true });
  return items;
};

/** The circle of a wheel that is seen flat on, and what is written over it in the axle's view. */
export const outlineItems = (content: AxleContent, side: SideName): OverlayItem[] => {
  const { outlines, frame, placed, wheelRadius, words } = content;
  const items: OverlayItem[] = [];
  if (outlines[side])
    items.push({ kind: 'line', className: 'outline', points: wheelCircle(placed[side], wheelRadius).map(frame.toGround) });
  const { over } = words[side];
  if (over) {
    const [x, y, z] = frame.toGround(placed[side].wheelCentre);
    const at: Point = [x, y, z + wheelRadius];
    items.push({ kind: 'label', text: over[1], at, reach: [0, -14], strong: true });
    items.push({ kind: 'label', text: over[0], at, reach: [0, -35], strong: true, className: side });
  }
  return items;
};

/** The tyre at the ends of travel and lock, each as the eye sees its outline. */
export const envelopeItems = ({ envelopes, axles }: OverlayContent): OverlayItem[] =>
  envelopes.flatMap(({ axle, corners }) => {
    const content = axles.find(({ name }) => name === axle);
    if (!content) return [];
    const { tyreWidth, wheelRadius, frame } = content;
    return corners.map((corner): OverlayItem => {
      // The shoulders are rounded: the outer edges stand a little inside the full radius.
      const rings = [-0.5, -0.3, 0.3, 0.5].flatMap((share) =>
        wheelCircle(corner, Math.abs(share) > 0.4 ? wheelRadius - 18 : wheelRadius, share * tyreWidth),
      );
      return { kind: 'hull', className: 'envelope', points: rings.map(frame.toGround) };
    });
  });
