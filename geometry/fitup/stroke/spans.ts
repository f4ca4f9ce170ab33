import type { AxleName } from '../../car/document';
import type { SpanDocument } from '../../car/fitUpDocument';
import { add, distance, mirror, scale, ZERO, type Vector } from '../../core/vector';
import type { AssembledSide } from '../../setup/assembleSide';
import { followerOf } from '../carriers';
import type { FitUpCorner } from '../corners';
import { greatest, least, type Measure } from '../extremes';
import { atDesign, placed } from '../placement';

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

/**
 * Distance between the ends of a span at a pose. Given for one side, it is there on both.
 * @param mm - per unit of the file
 */
export function spanMeasure(span: SpanDocument, mm: number, { axle, side }: FitUpCorner): Measure {
  const end = (at: SpanDocument['from'], on: string): ((...pose: Parameters<Measure>) => Vector | null) => {
    const point = typeof at === 'string' ? namedPoint(side, at, on) : coordinates(span, scale(at, mm));
    const follow = followerOf(axle, side, on);
    const place = atDesign();
    return (motion, rack) => (follow(motion, rack, place) ? placed(place, point) : null);
  };
  const [from, to] = [end(span.from, span.fromOn), end(span.to, span.toOn)];
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
