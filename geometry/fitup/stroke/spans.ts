import type { AxleName, SideName } from '../../car/document';
import type { SpanDocument } from '../../car/fitUpDocument';
import type { CarMechanism } from '../../car/mechanism';
import { succeed, type Result } from '../../core/result';
import { add, distance, mirror, scale, ZERO, type Vector } from '../../core/vector';
import type { Failure } from '../../corner/failure';
import type { AssembledCar } from '../../setup/assembleCar';
import type { AssembledSide } from '../../setup/assembleSide';
import { followerOf } from '../carriers';
import type { FitUpCorner } from '../corners';
import { greatest, least, type Measure } from '../extremes';
import { atDesign, placed } from '../placement';
import { trackTo } from '../trackTo';

/** A hose or cable between two places of one corner [mm]. */
export interface SpanRow {
  readonly least: number;
  readonly greatest: number;
  /** of the file */
  readonly length: number;
  /** length − greatest */
  readonly spare: number;
  readonly at: { readonly least: SpanPlace; readonly greatest: SpanPlace };
}

interface SpanPlace {
  readonly travel: number;
  readonly rack: number;
}

/** Whether a span is one of an axle: named, or the only one that has what it names. */
export const isSpanOf = (span: SpanDocument, axle: AxleName, points: Readonly<Record<string, Vector>>): boolean =>
  span.axle === undefined ? [span.from, span.to].every((end) => typeof end !== 'string' || end in points) : span.axle === axle;

type Pose = Parameters<Measure>;
type EndOf = (...pose: Pose) => Vector | null;

/** Where the ends of a span are at a pose, in the left-hand frame. Given for one side, it is there on both. @param mm - per unit of the file */
function endsOf(span: SpanDocument, mm: number, { axle, side }: Pick<FitUpCorner, 'axle' | 'side'>): readonly [EndOf, EndOf] {
  const end = (at: SpanDocument['from'], on: string): EndOf => {
    const point = typeof at === 'string' ? namedPoint(side, at, on) : coordinates(span, scale(at, mm));
    const follow = followerOf(axle, side, on);
    const place = atDesign();
    return (motion, rack) => (follow(motion, rack, place) ? placed(place, point) : null);
  };
  return [end(span.from, span.fromOn), end(span.to, span.toOn)];
}

/** Distance between the ends of a span at a pose. @param mm - per unit of the file */
export function spanMeasure(span: SpanDocument, mm: number, corner: Pick<FitUpCorner, 'axle' | 'side'>): Measure {
  const [from, to] = endsOf(span, mm, corner);
  return (motion, rack) => {
    const [a, b] = [from(motion, rack), to(motion, rack)];
    return a === null || b === null ? NaN : distance(a, b);
  };
}

/** In the left-hand frame: what is given for the right has its negative y. */
const coordinates = (span: SpanDocument, point: Vector): Vector => (span.side === 'right' ? mirror(point) : point);

/** A point of the axle goes where its adjusters take it in the body that carries it. */
function namedPoint({ mechanism, adjustment }: AssembledSide, name: string, on: string): Vector {
  const seat = on === 'body' ? 'body' : ['knuckle', 'strut', 'strutFoot', 'trailingArm'].includes(on) ? 'knuckle' : 'arm';
  return add(mechanism.points[name], adjustment.shifts[seat][name] ?? ZERO);
}

/** Null where the envelope is not known, or none of it can be reached. */
export function spanRow(span: SpanDocument, mm: number, corner: FitUpCorner): SpanRow | null {
  const { side, envelope } = corner;
  if (envelope === null) return null;
  const measure = spanMeasure(span, mm, corner);
  const [nearest, farthest] = [least(side, envelope, measure), greatest(side, envelope, measure)];
  if (nearest === null || farthest === null) return null;
  const size = span.length * mm;
  return {
    least: nearest.value,
    greatest: farthest.value,
    length: size,
    spare: size - farthest.value,
    at: {
      least: { travel: nearest.travel, rack: nearest.rack },
      greatest: { travel: farthest.travel, rack: farthest.rack },
    },
  };
}

/**
 * The ends of every span of a corner at a position, in the car's frame [mm]; one whose ends cannot be placed is left out.
 * @param at - travel from design, rack [mm]
 */
export function spanEnds(
  { document, mmPerUnit }: CarMechanism,
  car: AssembledCar,
  name: AxleName,
  sideName: SideName,
  at: { readonly travel: number; readonly rack: number },
): Result<Readonly<Record<string, readonly [Vector, Vector]>>, Failure> {
  const assembled = car[name];
  if (assembled === null) return succeed({});
  const corner = { axle: assembled.mechanism, side: assembled[sideName] };
  const track = trackTo(corner.side.corner, at);
  if (!track.ok) return track;
  const turn = sideName === 'left' ? (v: Vector): Vector => v : mirror;
  const ends: Record<string, readonly [Vector, Vector]> = {};
  for (const [key, span] of Object.entries(document.spans ?? {})) {
    if (!isSpanOf(span, name, corner.side.mechanism.points)) continue;
    const [from, to] = endsOf(span, mmPerUnit, corner).map((end) => end(track.value.motion, at.rack));
    if (from !== null && to !== null) ends[key] = [turn(from), turn(to)];
  }
  return succeed(ends);
}
