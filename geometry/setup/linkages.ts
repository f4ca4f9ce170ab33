import type { Adjustment } from '../adjusters/adjustment';
import type { Seat } from '../car/document';
import type { AxleMechanism, SideMechanism, Wheel } from '../car/mechanism';
import { turnAbout } from '../core/rotation';
import { add, anyPerpendicular, cross, distance, mirror, reject, subtract, unit, ZERO, type Vector } from '../core/vector';
import type { ArmPivot, Linkage, Rod, StrutGuide } from '../corner/corner';

export const NO_ADJUSTMENT: Adjustment = {
  shifts: { body: {}, arm: {}, knuckle: {} },
  lengths: {},
  clamp: null,
  springSeat: 0,
  strutBody: 0,
};

/** Spindle at design, outboard: s = (cos γ sin t, cos γ cos t, −sin γ), γ camber, t toe. */
export function spindleAtDesign(wheel: Wheel): Vector {
  const c = Math.cos(wheel.camber);
  return [c * Math.sin(wheel.toe), c * Math.cos(wheel.toe), -Math.sin(wheel.camber)];
}

/** Movement of a rod's inner end per mm of rack, in the frame of that side. */
export function rackStep(axle: AxleMechanism, side: SideMechanism, rod: string): Vector {
  const steering = axle.steering;
  if (steering === null || steering.rod !== rod) return ZERO;
  return side.side === 'left' ? steering.axis : mirror(steering.axis);
}

/**
 * The links of one side with an adjustment made.
 * A displaced centre changes a rod's length only where the arm carries it; where body or knuckle does, the point moves and the length stays.
 */
export function linkageOf(axle: AxleMechanism, side: SideMechanism, adjustment: Adjustment): Linkage {
  const moved = (seat: Seat, name: string): Vector => movedPoint(side, adjustment, seat, name);
  const rods = axle.rods.map(({ name, inner, outer }, index): Rod => ({
    name,
    inner: moved('body', inner),
    outer: moved('knuckle', outer),
    length: rodLength(axle, side, adjustment, index),
    rack: rackStep(axle, side, name),
  }));
  return {
    layout: axle.layout,
    rods,
    guide: axle.layout === 'strut' ? strutGuide(side, adjustment) : null,
    pivot: axle.trailingArm === null ? null : armPivot(axle.trailingArm, moved),
    wheelCentre: moved('knuckle', 'wheelCentre'),
  };
}

/** A point at design, moved by what displaces its centre in one of the bodies that hold it. */
function movedPoint({ points }: SideMechanism, { shifts }: Adjustment, seat: Seat, name: string): Vector {
  const by = shifts[seat][name];
  return by === undefined ? points[name] : add(points[name], by);
}

/** Length of a rod by its index [mm]: between its centres in the arm, and what is turned in. */
export function rodLength(axle: AxleMechanism, side: SideMechanism, adjustment: Adjustment, index: number): number {
  const { name, inner, outer } = axle.rods[index];
  const between = distance(movedPoint(side, adjustment, 'arm', outer), movedPoint(side, adjustment, 'arm', inner));
  return between + (adjustment.lengths[name] ?? 0);
}

/**
 * The strut's axis in knuckle coordinates. A clamp turns the knuckle by +angle against the strut; seen from the knuckle
 * the strut's tube turns by −angle.
 */
function strutGuide(side: SideMechanism, adjustment: Adjustment): StrutGuide {
  const { strutTop } = side.points;
  const foot = add(side.points['strutFoot'], adjustment.shifts.knuckle['strutFoot'] ?? ZERO);
  const axis = unit(subtract(strutTop, foot));
  const top = add(strutTop, adjustment.shifts.body['strutTop'] ?? ZERO);
  return { top, foot: onStrutTube(side, adjustment, foot), axis: turnedWithTube(adjustment, axis) };
}

/** Knuckle coordinates of a point that is fixed to the strut's tube. */
export function onStrutTube(side: SideMechanism, adjustment: Adjustment, point: Vector): Vector {
  const clamp = adjustment.clamp;
  if (clamp === null) return point;
  const pivot = side.points[clamp.pivot];
  return add(pivot, turnAbout(subtract(point, pivot), clamp.axis, -clamp.angle));
}

const turnedWithTube = (adjustment: Adjustment, direction: Vector): Vector =>
  adjustment.clamp === null ? direction : turnAbout(direction, adjustment.clamp.axis, -adjustment.clamp.angle);

function armPivot(
  arm: NonNullable<AxleMechanism['trailingArm']>,
  moved: (seat: 'body' | 'arm', name: string) => Vector,
): ArmPivot {
  const first = unit(reject(anyPerpendicular(arm.axis), arm.axis));
  return {
    onBody: moved('body', arm.pivot),
    onArm: moved('arm', arm.pivot),
    axis: arm.axis,
    across: [first, cross(arm.axis, first)],
  };
}
