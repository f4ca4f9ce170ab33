import type { DriveShaftDocument } from '../../car/document';
import { toRadians } from '../../core/angle';
import { cross, distance, dot, length, scale, subtract, unit, type Vector } from '../../core/vector';
import { knuckleDirection } from '../../corner/knucklePoint';
import type { Motion } from '../../corner/motion';
import { followerOf } from '../carriers';
import type { FitUpCorner } from '../corners';
import { greatest, least, type Extreme, type Measure } from '../extremes';
import { atDesign, placed } from '../placement';

/** A drive shaft at one pose: between its joints [mm], and how far each joint is bent [rad]. */
export interface ShaftState {
  /** between the joints' centres, longer than at design */
  readonly plunge: number;
  /** between the shaft and the inner joint's axis; null without one */
  readonly inner: number | null;
  /** between the shaft and the spindle */
  readonly outer: number;
}

/** What a shaft does over an envelope. Lengths in mm, angles in rad. */
export interface ShaftRow {
  /** greatest shortening and lengthening of the distance between the joints against design; 0 where there is none */
  readonly plungeIn: number;
  readonly plungeOut: number;
  /** greatest angle of each joint; the inner null without `innerAxis` */
  readonly angleInner: number | null;
  readonly angleOuter: number;
  /** what the file allows; null where it does not say */
  readonly allowed: {
    readonly plungeIn: number | null;
    readonly plungeOut: number | null;
    readonly angleInner: number | null;
    readonly angleOuter: number | null;
  };
  readonly at: Readonly<Record<'plungeIn' | 'plungeOut' | 'angleInner' | 'angleOuter', ShaftPlace | null>>;
}

interface ShaftPlace {
  readonly travel: number;
  readonly rack: number;
}

/** The angle between two lines, whichever way they point. */
const between = (a: Vector, b: Vector): number => Math.atan2(length(cross(a, b)), Math.abs(dot(a, b)));

/**
 * A shaft between two joints.
 * @param axis - of the inner joint; null: not known
 * @param spindle - of the wheel
 * @param atRest - between the joints at design [mm]
 */
export function shaftBetween(inner: Vector, outer: Vector, axis: Vector | null, spindle: Vector, atRest: number): ShaftState {
  const line = subtract(outer, inner);
  return {
    plunge: length(line) - atRest,
    inner: axis === null ? null : between(line, axis),
    outer: between(line, spindle),
  };
}

/** The shaft of a corner: its inner joint stays on the body, the outer one is carried by the knuckle. @param mm - per unit of the file */
function shaftOf(
  shaft: DriveShaftDocument,
  mm: number,
  { axle, side }: FitUpCorner,
): (motion: Motion, rack: number) => ShaftState {
  const inner = scale(shaft.inner, mm);
  const outer = scale(shaft.outer, mm);
  const atRest = distance(inner, outer);
  const axis = shaft.innerAxis === undefined ? null : unit(shaft.innerAxis);
  const knuckle = followerOf(axle, side, 'knuckle');
  const place = atDesign();
  return (motion, rack) => {
    knuckle(motion, rack, place);
    return shaftBetween(inner, placed(place, outer), axis, knuckleDirection(motion, side.corner.spindle), atRest);
  };
}

/** Null where the envelope is not known, or none of it can be reached. */
export function shaftRow(shaft: DriveShaftDocument, mm: number, corner: FitUpCorner): ShaftRow | null {
  const { side, envelope } = corner;
  if (envelope === null) return null;
  const state = shaftOf(shaft, mm, corner);
  const plunge: Measure = (motion, rack) => state(motion, rack).plunge;
  const [shortest, longest] = [least(side, envelope, plunge), greatest(side, envelope, plunge)];
  const outer = greatest(side, envelope, (motion, rack) => state(motion, rack).outer);
  if (shortest === null || longest === null || outer === null) return null;
  const inner =
    shaft.innerAxis === undefined ? null : greatest(side, envelope, (motion, rack) => state(motion, rack).inner ?? NaN);
  const placeOf = (extreme: Extreme | null): ShaftPlace | null =>
    extreme === null ? null : { travel: extreme.travel, rack: extreme.rack };
  const { plunge: range, maxAngleInner, maxAngleOuter } = shaft;
  return {
    plungeIn: Math.max(0, 0 - shortest.value),
    plungeOut: Math.max(0, longest.value),
    angleInner: inner?.value ?? null,
    angleOuter: outer.value,
    allowed: {
      plungeIn: range === undefined ? null : 0 - range[0] * mm,
      plungeOut: range === undefined ? null : range[1] * mm,
      angleInner: maxAngleInner === undefined ? null : toRadians(maxAngleInner),
      angleOuter: maxAngleOuter === undefined ? null : toRadians(maxAngleOuter),
    },
    at: {
      plungeIn: shortest.value < 0 ? placeOf(shortest) : null,
      plungeOut: longest.value > 0 ? placeOf(longest) : null,
      angleInner: placeOf(inner),
      angleOuter: placeOf(outer),
    },
  };
}
