import type { Adjustment } from '../adjusters/adjustment';
import type { AxleMechanism, Bar, Damper, SideMechanism, Spring } from '../car/mechanism';
import type { SetupAxleDocument } from '../car/document';
import { add, distance, dot, length, reject, subtract, unit, ZERO, type Vector } from '../core/vector';
import { rodFrame, type Carrier } from '../corner/carrier';
import type { BarArm, CornerParts, Span } from '../corner/parts';
import { barBranch } from '../readings/barReadings';
import { onStrutTube } from './linkages';

/** Springs, damper and bar of one side, with an adjustment made. */
export function cornerParts(
  axle: AxleMechanism,
  side: SideMechanism,
  adjustment: Adjustment,
  setup: SetupAxleDocument | undefined,
): CornerParts {
  return {
    spring: axle.spring === null ? null : spanOf(axle, side, adjustment, axle.spring),
    damper: axle.damper === null ? null : spanOf(axle, side, adjustment, axle.damper),
    bar: axle.bar === null ? null : barArm(axle, side, adjustment, axle.bar, setup),
  };
}

function spanOf(axle: AxleMechanism, side: SideMechanism, adjustment: Adjustment, part: Spring | Damper): Span | null {
  const points = side.points;
  if (part.points === null) {
    if (axle.layout !== 'strut') return null;
    return { between: 'strut', designLength: distance(points['strutTop'], points['strutFoot']) };
  }
  const upper = points[part.points.upper];
  const lower = points[part.points.lower];
  return {
    between: 'points',
    upper: add(upper, adjustment.shifts.body[part.points.upper] ?? ZERO),
    lower: carrierOf(axle, side, adjustment, part.points.lowerOn, lower),
    designLength: distance(upper, lower),
  };
}

/**
 * What carries `point` (at design) when it is fixed to `on`: a rod's name, knuckle, strut, trailingArm, arm or body.
 * Both directions of a rod or arm run between its own centres: at design with what sits in the arm, now with what moves on body and knuckle.
 */
export function carrierOf(axle: AxleMechanism, side: SideMechanism, adjustment: Adjustment, on: string, point: Vector): Carrier {
  if (on === 'body') return { on: 'body', point };
  if (on === 'knuckle' || on === 'trailingArm') return { on: 'knuckle', point };
  if (on === 'strut') return { on: 'knuckle', point: onStrutTube(side, adjustment, point) };
  const index = axle.rods.findIndex((rod) => rod.name === (on === 'arm' ? 'armFront' : on));
  const centre = (name: string): Vector => add(side.points[name], adjustment.shifts.arm[name] ?? ZERO);
  const rod = axle.rods[index];
  const twin = axle.rods.findIndex((other, i) => i !== index && other.outer === rod.outer);
  if (twin < 0) {
    const from = centre(rod.inner);
    return { on: 'rod', rod: index, direction: unit(subtract(centre(rod.outer), from)), offset: subtract(point, from) };
  }
  const rods: [number, number] = index < twin ? [index, twin] : [twin, index];
  const frame = rodFrame(centre(axle.rods[rods[0]].inner), centre(axle.rods[rods[1]].inner), centre(rod.outer));
  const gap = subtract(point, frame.origin);
  return { on: 'frame', rods, local: [dot(gap, frame.axes[0]), dot(gap, frame.axes[1]), dot(gap, frame.axes[2])] };
}

/** The hole of the bar's arm that a setup names for this side. */
export function barHoleOf(bar: Bar, side: 'left' | 'right', setup: SetupAxleDocument | undefined): Bar['holes'][number] | null {
  const chosen = setup?.barHole;
  const name = typeof chosen === 'object' ? chosen[side] : chosen;
  return bar.holes.find((hole) => hole.name === name) ?? null;
}

function barArm(
  axle: AxleMechanism,
  side: SideMechanism,
  adjustment: Adjustment,
  bar: Bar,
  setup: SetupAxleDocument | undefined,
): BarArm {
  const armEnd = barHoleOf(bar, side.side, setup)?.armEnd ?? bar.armEnd;
  return {
    pivot: bar.pivot,
    axis: bar.axis,
    armEnd,
    link: carrierOf(axle, side, adjustment, bar.linkOn, bar.linkEnd),
    linkLength: distance(bar.linkEnd, armEnd) + (adjustment.lengths['barLink'] ?? 0),
    branch: barBranch(bar.pivot, bar.axis, armEnd, bar.linkEnd),
    radius: length(reject(subtract(armEnd, bar.pivot), bar.axis)),
  };
}
