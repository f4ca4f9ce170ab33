import type { AxleDocument, PlacedAxle, PlacedCorner } from '../../geometry/index';
import type { ViewName } from '../state/benchStore';
import type { GroundFrame } from './groundFrame';
import { along, between, direction, separation, type Point } from './points';

/** A line over the picture: points in the ground's frame. */
export interface OverlayLine {
  readonly kind: 'line';
  readonly className: string;
  readonly points: readonly Point[];
}
/** A mark of constant size on the screen. */
export interface OverlayMark {
  readonly kind: 'mark';
  readonly className: string;
  readonly shape: 'ring' | 'cross' | 'diamond' | 'target';
  readonly at: Point;
}
/** Words with a thin leader; `reach` is where they would best stand from the point [px]. */
export interface OverlayLabel {
  readonly kind: 'label';
  readonly text: string;
  readonly at: Point;
  readonly reach: readonly [number, number];
  readonly strong?: true;
}
export type OverlayItem = OverlayLine | OverlayMark | OverlayLabel;

export interface OverlayContent {
  readonly view: ViewName;
  readonly placed: PlacedAxle;
  readonly frame: GroundFrame;
  /** the compared setup at the same position; null where it is the same or has no answer */
  readonly compared: { readonly placed: PlacedAxle; readonly frame: GroundFrame } | null;
  readonly axle: AxleDocument;
  /** name and place of the adjuster in hand */
  readonly held: { readonly label: string; readonly point: string | null } | null;
  readonly trail: string | null;
  readonly scrub: string | null;
  readonly rollCentre: string | null;
  /** wheels whose solid is hidden because they are seen flat on */
  readonly outlines: boolean;
  /** tyre radius [mm] */
  readonly wheelRadius: number;
}

const AROUND = 48;
/** A point of the compared setup that moved less is not drawn twice [mm]. */
const SAME_MM = 0.4;

const crossed = (a: Point, b: Point): Point => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** The wheel's circle in its centre plane, in the car's frame. */
const wheelCircle = ({ wheelCentre, spindle }: PlacedCorner, radius: number): readonly Point[] => {
  const heading = direction([0, 0, 0], crossed(spindle, [0, 0, 1]));
  const up = crossed(heading, spindle);
  return Array.from({ length: AROUND + 1 }, (_, index) => {
    const angle = (2 * Math.PI * index) / AROUND;
    return along(along(wheelCentre, heading, radius * Math.cos(angle)), up, radius * Math.sin(angle));
  });
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

const skeleton = (corner: PlacedCorner): readonly (readonly Point[])[] => [
  ...corner.rods.map((rod) => [rod.inner, rod.outer]),
  ...(corner.arm ? [[corner.arm[0], corner.arm[2], corner.arm[1]]] : []),
  ...(corner.strut ? [[corner.strut.top, corner.strut.foot]] : []),
];

const ghostItems = ({ placed, frame, compared, wheelRadius }: OverlayContent): OverlayItem[] => {
  if (!compared) return [];
  const [now, then] = [placed.left, compared.placed.left];
  const moved = Object.entries(then.points).filter(([name, point]) => {
    const other = now.points[name];
    return other !== undefined && separation(frame.toGround(other), compared.frame.toGround(point)) > SAME_MM;
  });
  if (moved.length === 0) return [];
  const toGround = compared.frame.toGround;
  return [
    ...skeleton(then).map((points): OverlayItem => ({ kind: 'line', className: 'ghost', points: points.map(toGround) })),
    { kind: 'line', className: 'ghost', points: wheelCircle(then, wheelRadius).map(toGround) },
    ...moved.map(([, point]): OverlayItem => ({ kind: 'mark', className: 'ghostmark', shape: 'diamond', at: toGround(point) })),
  ];
};

/** Whether two pairs of rods share a joint each on the knuckle: then the axis runs through both and can be touched. */
const hasBallJoints = ({ rods }: AxleDocument): boolean => {
  const outers = Object.values(rods ?? {}).map(([, outer]) => outer);
  return new Set(outers.filter((outer, index) => outers.indexOf(outer) !== index)).size >= 2;
};

/** Axis, trail and scrub of one corner: the sides of the right angle between contact centre and axis on the ground. */
const axisItems = (content: OverlayContent, corner: PlacedCorner, named: boolean): OverlayItem[] => {
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
  items.push({
    kind: 'label',
    text: virtual ? 'virtual steering axis' : 'steering axis',
    at: between(low, high, 0.985),
    reach: [-58, 6],
  });
  if (content.trail !== null)
    items.push({
      kind: 'label',
      text: `trail ${content.trail}`,
      at: between(contact, elbow, 0.5),
      reach: [-64, 16],
      strong: true,
    });
  if (content.scrub !== null)
    items.push({ kind: 'label', text: `scrub ${content.scrub}`, at: between(elbow, foot, 0.5), reach: [70, 18], strong: true });
  return items;
};

/** Everything drawn over the solids, back to front. */
export const overlayItems = (content: OverlayContent): readonly OverlayItem[] => {
  const { view, placed, frame, held, rollCentre, outlines, wheelRadius } = content;
  const items: OverlayItem[] = ghostItems(content);
  if (outlines) {
    items.push({ kind: 'line', className: 'outline', points: wheelCircle(placed.left, wheelRadius).map(frame.toGround) });
  }
  items.push(...axisItems(content, placed.left, view !== 'top'));
  if (view === 'front') items.push(...axisItems(content, placed.right, false));
  if (placed.rollCentre && view === 'front') {
    const at = frame.toGround(placed.rollCentre);
    items.push({ kind: 'mark', className: 'rollcentre', shape: 'target', at });
    if (rollCentre !== null) items.push({ kind: 'label', text: `roll centre ${rollCentre}`, at, reach: [0, -64], strong: true });
  }
  const point = held?.point === null || held === null ? undefined : placed.left.points[held.point];
  if (held && point) items.push({ kind: 'label', text: held.label, at: frame.toGround(point), reach: [-70, -46], strong: true });
  return items;
};
