import type { AxleDocument, SideName } from '../car/document';
import { distance, subtract, type Vector } from '../core/vector';
import type { PlacedAxle, PlacedCorner } from './place';

/** What a length is of: its kind says how it is spoken of, its name is that of the file where it has one. */
export type LengthKind = 'rod' | 'armLeg' | 'strut' | 'spring' | 'damper' | 'barLink' | 'barArm';

/** One part's length, centre to centre [mm]. */
export interface PartLength {
  readonly kind: LengthKind;
  /** a rod's or leg's name in the file; the kind where the file has no name for the part */
  readonly name: string;
  /** the right is null where it has no such part */
  readonly value: { readonly left: number; readonly right: number | null };
}

/** The legs of a strut's lower arm are rods of the mechanism by these names. */
const ARM_LEGS = ['armFront', 'armRear'];

interface Ends {
  readonly kind: LengthKind;
  readonly name: string;
  readonly from: Vector;
  readonly to: Vector;
}

/** Parts of a corner between two centres, in the order of the file: links, strut, spring, damper, bar. */
function partsOf(corner: PlacedCorner): readonly Ends[] {
  const { rods, strut, spring, damper, bar } = corner;
  const isArm = corner.arm !== null;
  const parts: Ends[] = rods.map(({ name, inner, outer }) => ({
    kind: isArm && ARM_LEGS.includes(name) ? 'armLeg' : 'rod',
    name,
    from: inner,
    to: outer,
  }));
  if (strut !== null) parts.push({ kind: 'strut', name: 'strut', from: strut.top, to: strut.foot });
  for (const [kind, span] of [['spring', spring] as const, ['damper', damper] as const]) {
    // A spring or damper on the strut is as long as the strut: it is measured once.
    const isStrut = strut !== null && span !== null && distance(span.upper, strut.top) === 0;
    if (span !== null && !isStrut) parts.push({ kind, name: kind, from: span.upper, to: span.lower });
  }
  if (bar !== null) {
    parts.push({ kind: 'barLink', name: 'barLink', from: bar.armEnd, to: bar.linkEnd });
    parts.push({ kind: 'barArm', name: 'barArm', from: bar.pivot, to: bar.armEnd });
  }
  return parts;
}

/**
 * Length of every rod, arm leg, strut, spring, damper, bar link and bar arm, centre to centre at the pose it is given.
 *
 * Rods and arms keep their length in every pose and change by their adjusters only; struts, springs and dampers move.
 * A bar's arm is measured from the end of its pivot line to the link.
 */
export function lengthsOf(placed: PlacedAxle): readonly PartLength[] {
  const [left, right] = [partsOf(placed.left), partsOf(placed.right)];
  return left.map(({ kind, name, from, to }) => {
    const twin = right.find((part) => part.name === name && part.kind === kind);
    return {
      kind,
      name,
      value: { left: distance(from, to), right: twin === undefined ? null : distance(twin.from, twin.to) },
    };
  });
}

/** A tape between two points: its length and its shares along the car's axes, from the first to the second [mm]. */
export interface Tape {
  readonly length: number;
  /** X forward, Y left, Z up */
  readonly apart: Vector;
}

export function tapeBetween(from: Vector, to: Vector): Tape {
  return { length: distance(from, to), apart: subtract(to, from) };
}

/** A named point of the file: where it is at a pose, and where the file has it, both in car coordinates [mm]. */
export interface PointPlace {
  readonly name: string;
  readonly now: Vector;
  readonly design: Vector;
}

/**
 * Every named point of one side at a pose beside its place in the file.
 * @param mm - millimetres in one unit of the file's length
 */
export function pointPlaces(axle: AxleDocument, placed: PlacedAxle, side: SideName, mm: number): readonly PointPlace[] {
  return Object.entries(placed[side].points).flatMap(([name, now]) => {
    const left = axle.points[name];
    if (left === undefined) return [];
    const own = side === 'right' ? axle.right?.points?.[name] : undefined;
    const [x, y, z] = own ?? left;
    const across = side === 'right' && own === undefined ? -y : y;
    return [{ name, now, design: [x * mm, across * mm, z * mm] as Vector }];
  });
}
