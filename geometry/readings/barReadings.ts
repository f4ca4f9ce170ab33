import { add, cross, dot, reject, scale, subtract, type Vector } from '../core/vector';
import { followCarrier } from '../corner/carrier';
import type { Corner } from '../corner/corner';
import type { Motion } from '../corner/motion';
import type { BarArm } from '../corner/parts';

/** Where a bar's arm stands. */
export interface BarState {
  /** turn of the arm from design [rad, right hand about the bar's axis in the corner's left-hand frame] */
  readonly turn: number;
  /** d turn / d travel [rad/mm] */
  readonly rate: number;
  /** path length of the arm's end per mm of wheel travel, other wheel still; never negative */
  readonly ratio: number;
  readonly armEnd: Vector;
  readonly linkEnd: Vector;
}

/**
 * The arm is rigid about the bar's centre line and the link keeps its length: a cos ψ + b sin ψ = c, on the design's branch.
 * @returns null where the link cannot reach
 */
export function barState(bar: BarArm, corner: Corner, motion: Motion, rack: number): BarState | null {
  const end = followCarrier(bar.link, corner, motion, rack);
  const arm = subtract(bar.armEnd, bar.pivot);
  const onAxis = add(bar.pivot, scale(bar.axis, dot(arm, bar.axis)));
  const e1 = reject(arm, bar.axis);
  const e2 = cross(bar.axis, e1);
  // |L − P − r(ψ)|² = length², with P on the bar's axis level with the arm's end and r(ψ) = e1 cos ψ + e2 sin ψ
  const w = subtract(end.at, onAxis);
  const a = dot(w, e1);
  const b = dot(w, e2);
  const radiusSq = dot(e1, e1);
  const c = 0.5 * (dot(w, w) + radiusSq - bar.linkLength * bar.linkLength);
  const leverSq = a * a + b * b;
  const discriminant = leverSq - c * c;
  if (!(discriminant > 0)) return null;
  const root = bar.branch * Math.sqrt(discriminant);
  const cosine = (a * c - b * root) / leverSq;
  const sine = (b * c + a * root) / leverSq;
  const armNow = add(scale(e1, cosine), scale(e2, sine));
  const sideways = add(scale(e1, -sine), scale(e2, cosine));
  // length kept: (w − r)·(ẇ − r′ψ̇) = 0
  const link = subtract(w, armNow);
  const rate = dot(link, end.velocity) / dot(link, sideways);
  return {
    turn: Math.atan2(sine, cosine),
    rate,
    ratio: Math.abs(rate) * bar.radius,
    armEnd: add(onAxis, armNow),
    linkEnd: end.at,
  };
}

/** Which way the link meets the arm at design: the sign of the root above that gives ψ = 0. */
export function barBranch(pivot: Vector, axis: Vector, armEnd: Vector, linkEnd: Vector): 1 | -1 {
  const arm = subtract(armEnd, pivot);
  const onAxis = add(pivot, scale(axis, dot(arm, axis)));
  const e1 = reject(arm, axis);
  // sin ψ = 0 asks b c + a·root = 0, so root = −b c / a = −b (with cos ψ = 1, a = c)
  return dot(subtract(linkEnd, onAxis), cross(axis, e1)) > 0 ? -1 : 1;
}
