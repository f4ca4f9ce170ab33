import {
  toRadians,
  type AxleName,
  type CarDocument,
  type PlacedCorner,
  type SideName,
  type Vector,
} from '../../../geometry/index';
import type { OverlayItem } from '../../viewport/overlayTypes';
import { turnOf } from './bodyTurn';
import { add, cross, dot, unit } from './directions';

/** A joint of the file on one wheel. */
export interface JointAt {
  readonly point: string;
  readonly axle: AxleName;
  readonly side: SideName;
}

/** A joint as it stands: directions are unit vectors in the car's frame. */
export interface JointFan {
  readonly at: Vector;
  readonly bolt: Vector;
  /** the bore's axis, or the rod's own line */
  readonly line: Vector;
  /** where the line is without tilt, and square to it the way that it tilts */
  readonly straight: Vector;
  readonly across: Vector;
  /** [rad] */
  readonly tilt: number;
  /** the maker's [rad] */
  readonly rated: number;
}

/** Length of what is drawn of a joint [mm]. */
const ARM = 90;
const ARC = 62;
const STEPS = 12;

/** How a joint stands with its wheel at a position; null where the file has none there, or it is not known how a body turned. */
export const jointFan = (document: CarDocument, joint: JointAt, corner: PlacedCorner): JointFan | null => {
  const own = document.joints?.[joint.point];
  const at = corner.points[joint.point];
  if (!own || !at) return null;
  const turned = (way: Vector, on: string): Vector | null => {
    const turn = turnOf(document, joint, on, corner);
    return turn && unit(turn(joint.side === 'left' ? way : [way[0], -way[1], way[2]]));
  };
  const bolt = turned(own.bolt, own.boltOn);
  const rod = corner.rods.find(({ name }) => name === own.rod);
  const line = own.bore ? turned(own.bore, own.boreOn ?? 'body') : rod && unit(add(rod.inner, rod.outer, -1));
  if (!bolt || !line) return null;
  const cosine = Math.min(1, Math.abs(dot(bolt, line)));
  const sense = dot(bolt, line) < 0 ? -1 : 1;
  const straight: Vector = own.bore
    ? [sense * bolt[0], sense * bolt[1], sense * bolt[2]]
    : unit(add(line, bolt, -dot(bolt, line)));
  const across = unit(add(line, straight, -dot(line, straight)));
  const tilt = own.bore ? Math.acos(cosine) : Math.asin(cosine);
  return { at, bolt, line, straight, across, tilt, rated: toRadians(own.rated) };
};

const towards = ({ at, straight, across }: JointFan, angle: number, length: number): Vector =>
  add(add(at, straight, length * Math.cos(angle)), across, length * Math.sin(angle));

/** The side of the fan that a person looks at, from outside and ahead. */
export const faceOf = ({ straight, across }: JointFan, side: SideName): Vector => {
  const normal = cross(straight, across);
  const face = normal[1] * (side === 'left' ? 1 : -1) + normal[0] < 0 ? -1 : 1;
  return [face * normal[0], face * normal[1], face * normal[2]];
};

/** The bolt, the fan that the maker allows, the rod or bore, and the tilt between. @param tilt - that is said, drawn as an arc [rad] */
export const fanItems = (fan: JointFan, tilt: number): readonly OverlayItem[] => {
  const { at, bolt, line, rated } = fan;
  const arc = (from: number, to: number, length: number): Vector[] =>
    Array.from({ length: STEPS + 1 }, (_, step) => towards(fan, from + ((to - from) * step) / STEPS, length));
  return [
    { kind: 'hull', className: 'ratedfan', points: [at, ...arc(-rated, rated, ARM)] },
    { kind: 'line', className: 'boltline', points: [add(at, bolt, -ARM), add(at, bolt, ARM)] },
    { kind: 'line', className: 'straightline', points: [at, towards(fan, 0, ARM)] },
    { kind: 'line', className: 'tiltline', points: [at, add(at, line, ARM)] },
    { kind: 'line', className: 'tiltarc', points: arc(0, tilt, ARC) },
  ];
};

/** Where words about a fan belong: at the bolt's end, at the edge of what is rated, at the tilt. */
export const fanPlaces = (fan: JointFan, tilt: number): Readonly<Record<'bolt' | 'rated' | 'tilt', Vector>> => ({
  bolt: add(fan.at, fan.bolt, ARM),
  rated: towards(fan, -fan.rated, ARM),
  tilt: towards(fan, tilt / 2, ARC),
});
