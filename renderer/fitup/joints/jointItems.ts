import { toRadians, type CarDocument, type JointRow, type PlacedCorner, type Vector } from '../../../geometry/index';
import type { OverlayItem } from '../../viewport/overlayTypes';
import { turnOf } from './bodyTurn';
import { add, cross, dot, unit } from './directions';
import { NOTHING_SHOWN, type Shown } from '../view/FitUpView';

/** A caliper or a liner before the joint would hide it. */
const NOTHING: Shown = { ...NOTHING_SHOWN, isBare: true };

/** Length of what is drawn of a joint [mm]. */
const ARM = 90;
const ARC = 62;
const STEPS = 12;

/** The picture and the numbers say the same to this [rad]: else a body turned in a way that is not known here, and nothing is drawn. */
const AGREES = toRadians(0.15);

/** The bolt, the fan that its maker allows, the rod or bore, and the tilt between: at the position where it is greatest. */
export const jointShown = (
  document: CarDocument,
  row: JointRow,
  words: { readonly rated: string; readonly tilt: string },
  corner: PlacedCorner,
): Shown => {
  const joint = document.joints?.[row.point];
  const at = corner.points[row.point];
  if (!joint || !at) return NOTHING;
  const focus = { at, reach: 26, square: null };
  const turned = (way: Vector, on: string): Vector | null => {
    const turn = turnOf(document, row, on, corner);
    return turn && unit(turn(row.side === 'left' ? way : [way[0], -way[1], way[2]]));
  };
  const bolt = turned(joint.bolt, joint.boltOn);
  const rod = corner.rods.find(({ name }) => name === joint.rod);
  const line = joint.bore
    ? turned(joint.bore, joint.boreOn ?? 'body')
    : rod && unit(rod.inner.map((value, i) => value - (rod.outer[i] ?? 0)) as unknown as Vector);
  if (!bolt || !line) return { ...NOTHING, focus };
  const cosine = Math.min(1, Math.abs(dot(bolt, line)));
  const seen = joint.bore ? Math.acos(cosine) : Math.asin(cosine);
  if (row.tilt === null || Math.abs(seen - row.tilt) > AGREES) return { ...NOTHING, focus };
  // the direction without tilt, and the way that the tilt goes from it
  const sense = dot(bolt, line) < 0 ? -1 : 1;
  const along: Vector = [sense * bolt[0], sense * bolt[1], sense * bolt[2]];
  const straight = joint.bore ? along : unit(add(line, bolt, -dot(bolt, line)));
  const across = unit(add(line, straight, -dot(line, straight)));
  const towards = (angle: number, length: number): Vector =>
    add(add(at, straight, length * Math.cos(angle)), across, length * Math.sin(angle));
  const rated = toRadians(joint.rated);
  const arc = (from: number, to: number, length: number): Vector[] =>
    Array.from({ length: STEPS + 1 }, (_, step) => towards(from + ((to - from) * step) / STEPS, length));
  const { tilt } = row;
  const normal = cross(straight, across);
  const outboard = row.side === 'left' ? 1 : -1;
  const face = normal[1] * outboard + normal[0] < 0 ? -1 : 1;
  const items: OverlayItem[] = [
    { kind: 'hull', className: 'ratedfan', points: [at, ...arc(-rated, rated, ARM)] },
    { kind: 'line', className: 'boltline', points: [add(at, bolt, -ARM), add(at, bolt, ARM)] },
    { kind: 'line', className: 'straightline', points: [at, towards(0, ARM)] },
    { kind: 'line', className: 'tiltline', points: [at, add(at, line, ARM)] },
    { kind: 'line', className: 'tiltarc', points: arc(0, tilt, ARC) },
    { kind: 'label', text: 'bolt', at: add(at, bolt, ARM), reach: [18, -14], plated: true },
    { kind: 'label', text: words.rated, at: towards(-rated, ARM), reach: [-24, 24], plated: true },
    { kind: 'label', text: words.tilt, at: towards(tilt / 2, ARC), reach: [40, 34], plated: true, strong: true },
  ];
  return { ...NOTHING, items, focus: { ...focus, from: [face * normal[0], face * normal[1], face * normal[2]] } };
};
