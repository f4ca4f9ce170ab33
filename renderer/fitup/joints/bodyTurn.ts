import type { AxleDocument, CarDocument, JointRow, PlacedCorner, Vector } from '../../../geometry/index';
import { mmPerFileUnit } from '../../units/fileLength';
import { add, cross, dot, unit } from './directions';

/** Turns a direction of the design, of its own side, to where its body has it now. */
export type Turn = (way: Vector) => Vector;

/** From one direction to another the short way: a rod that is free to turn about itself goes with the least rotation. */
export const leastTurn = (from: Vector, to: Vector): Turn => {
  const [a, b] = [unit(from), unit(to)];
  const axis = cross(a, b);
  const cosine = dot(a, b);
  return (way) =>
    add(add([way[0] * cosine, way[1] * cosine, way[2] * cosine], cross(axis, way)), axis, dot(axis, way) / (1 + cosine));
};

type Three = readonly [Vector, Vector, Vector];

/** A body that three of its points place. */
export const turnOfThree = (before: Three, now: Three): Turn => {
  const frame = ([p, q, r]: Three): Three => {
    const x = unit(add(q, p, -1));
    const z = unit(cross(x, add(r, p, -1)));
    return [x, cross(z, x), z];
  };
  const [from, to] = [frame(before), frame(now)];
  return (way) => from.reduce<Vector>((sum, axis, i) => add(sum, to[i] ?? axis, dot(axis, way)), [0, 0, 0]);
};

/** A point of the design, on its own side [mm]. */
const designPoint = (axle: AxleDocument, side: JointRow['side'], mm: number, name: string): Vector | null => {
  const own = side === 'right' ? axle.right?.points?.[name] : undefined;
  const at = own ?? axle.points[name];
  if (!at) return null;
  const sign = side === 'right' && own === undefined ? -1 : 1;
  return [mm * at[0], sign * mm * at[1], mm * at[2]];
};

/** How a carrier of a bolt or a bore is turned at a position; null for one whose turn is not known here. */
export const turnOf = (
  document: CarDocument,
  { axle: name, side }: Pick<JointRow, 'axle' | 'side'>,
  on: string,
  corner: PlacedCorner,
): Turn | null => {
  if (on === 'body' || on === 'rack') return (way) => way;
  const { rotation: r } = corner;
  const row = (way: Vector, i: number): number => (r[i] ?? 0) * way[0] + (r[i + 1] ?? 0) * way[1] + (r[i + 2] ?? 0) * way[2];
  const withKnuckle: Turn = (way) => [row(way, 0), row(way, 3), row(way, 6)];
  if (on === 'knuckle' || on === 'trailingArm') return withKnuckle;
  const axle = document[name];
  if (!axle) return null;
  const mm = mmPerFileUnit(document);
  const design = (point: string): Vector | null => designPoint(axle, side, mm, point);
  if (on === 'strut') {
    // the tube goes with the knuckle, and a clamp eccentric turns it on that
    const [top, foot] = [design('strutTop'), design('strutFoot')];
    if (!top || !foot || !corner.strut) return null;
    const turn = leastTurn(withKnuckle(add(top, foot, -1)), add(corner.strut.top, corner.strut.foot, -1));
    return (way) => turn(withKnuckle(way));
  }
  if (on === 'arm') {
    const before = ['armFront', 'armRear', 'ballJoint'].map(design);
    const [a, b, c] = before;
    return a && b && c && corner.arm ? turnOfThree([a, b, c], corner.arm) : null;
  }
  const rods = axle.rods ?? {};
  const ends = rods[on];
  const rod = corner.rods.find((one) => one.name === on);
  if (!ends || !rod) return null;
  const [inner, outer] = [design(ends[0]), design(ends[1])];
  if (!inner || !outer) return null;
  // two rods with one outer point are one body
  const [other] = Object.entries(rods).filter(([called, points]) => called !== on && points[1] === ends[1]);
  const second = other && corner.rods.find((one) => one.name === other[0]);
  const secondInner = other && design(other[1][0]);
  if (second && secondInner) return turnOfThree([inner, secondInner, outer], [rod.inner, second.inner, rod.outer]);
  return leastTurn(add(outer, inner, -1), add(rod.outer, rod.inner, -1));
};
