import { add, cross, dot, length, subtract, type Vector } from '../core/vector';
import type { Acceleration } from '../corner/acceleration';
import { followCarrier } from '../corner/carrier';
import type { Corner } from '../corner/corner';
import { knuckleDirection, knucklePoint, travelTurn, velocityAt, wheelCentre } from '../corner/knucklePoint';
import type { Motion } from '../corner/motion';
import type { Span } from '../corner/parts';

/** Length of a spring or damper [mm] with its derivatives by wheel travel. */
export interface SpanState {
  readonly length: number;
  /** d length / d travel; the motion ratio is its negative */
  readonly rate: number;
  /** d² length / d travel² [1/mm]; 0 when no acceleration was given */
  readonly rate2: number;
  readonly upper: Vector;
  readonly lower: Vector;
}

/**
 * @param second - from `motionAcceleration`, or null where the second derivative is not wanted
 */
export function spanState(span: Span, corner: Corner, motion: Motion, rack: number, second: Acceleration | null): SpanState {
  if (span.between === 'strut') return strutSpan(corner, motion, second);
  const lower = followCarrier(span.lower, corner, motion, rack, second);
  const gap = subtract(lower.at, span.upper);
  const size = length(gap);
  const rate = dot(gap, lower.velocity) / size;
  const rate2 = second === null ? 0 : (dot(lower.velocity, lower.velocity) - rate * rate + dot(gap, lower.acceleration)) / size;
  return { length: size, rate, rate2, upper: span.upper, lower: lower.at };
}

/** |strutTop − strutFoot| along the axis: the foot slides, and the axis turns with the knuckle. */
function strutSpan(corner: Corner, motion: Motion, second: Acceleration | null): SpanState {
  const guide = corner.linkage.guide!;
  const axis = knuckleDirection(motion, guide.axis);
  const foot = knucklePoint(corner, motion, guide.foot);
  const gap = subtract(guide.top, foot);
  const omega = travelTurn(motion);
  const turned = cross(omega, axis);
  const velocity = velocityAt(motion, foot);
  const rate = dot(turned, gap) - dot(axis, velocity);
  let rate2 = 0;
  if (second !== null) {
    const arm = subtract(foot, wheelCentre(motion));
    const bent = add(cross(second.angular, axis), cross(omega, turned));
    const acceleration = add(second.linear, add(cross(second.angular, arm), cross(omega, cross(omega, arm))));
    rate2 = dot(bent, gap) - 2 * dot(turned, velocity) - dot(axis, acceleration);
  }
  return { length: dot(axis, gap), rate, rate2, upper: guide.top, lower: foot };
}

/** Second derivative by travel of the height of the contact centre over the ground [1/mm], for the rate at the contact. */
export function contactRiseRate(corner: Corner, motion: Motion, normal: Vector, second: Acceleration): number {
  const s = knuckleDirection(motion, corner.spindle);
  const omega = travelTurn(motion);
  const s1 = cross(omega, s);
  const s2 = add(cross(second.angular, s), cross(omega, s1));
  // height = W·n − r √(1 − (s·n)²)
  const lean = dot(s, normal);
  const lean1 = dot(s1, normal);
  const lean2 = dot(s2, normal);
  const up = Math.sqrt(1 - lean * lean);
  const up2 = -(lean1 * lean1 + lean * lean2) / up - (lean * lean * lean1 * lean1) / (up * up * up);
  return dot(second.linear, normal) - corner.loadedRadius * up2;
}
