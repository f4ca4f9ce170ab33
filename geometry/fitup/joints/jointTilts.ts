import type { AxleName, SideName } from '../../car/document';
import type { JointDocument } from '../../car/fitUpDocument';
import { toRadians } from '../../core/angle';
import { leastFirst } from '../../core/order';
import { add, scale, subtract, unit, type Vector } from '../../core/vector';
import { knucklePoint } from '../../corner/knucklePoint';
import { MOTION_WIDTH, type Motion } from '../../corner/motion';
import { followerOf } from '../carriers';
import type { FitUpCorner } from '../corners';
import { climb, type Extreme } from '../extremes';
import { atDesign, turned, turnedBack } from '../placement';
import { bestBolt, tiltBetween, type TiltKind } from './clocking';

/** One joint of one wheel, over the envelopes of the setups asked for. Angles in rad, lengths in mm. */
export interface JointRow {
  /** its point */
  readonly point: string;
  readonly axle: AxleName;
  readonly side: SideName;
  readonly kind: TiltKind;
  /** greatest; null where no position is known, with the reason in `why` */
  readonly tilt: number | null;
  /** the maker's */
  readonly rated: number;
  readonly spare: number | null;
  /** where it is greatest: travel from design */
  readonly at: { readonly setup: string; readonly travel: number; readonly rack: number } | null;
  /** unit vector as the file gives `bolt`, at design: with it the greatest tilt is least */
  readonly bestBolt: Vector | null;
  readonly tiltThen: number | null;
  readonly why: Readonly<Record<string, string>>;
}

/**
 * The tilt of every joint of the file over everything that its wheel can do, least spare first.
 * @param corners - of `fitUpCorners`, of one car
 */
export function jointTilts(corners: readonly FitUpCorner[]): JointRow[] {
  if (corners.length === 0) return [];
  const { document } = corners[0].car.mechanism;
  const rows = Object.entries(document.joints ?? {}).flatMap(([point, joint]) => {
    const own = corners.filter(({ axle }) => axle.axle === (joint.axle ?? axle.axle) && point in axle.left.points);
    return (['left', 'right'] as const).flatMap((side) => {
      const these = own.filter((corner) => corner.side.mechanism.side === side);
      return these.length === 0 ? [] : [rowOf(point, joint, these)];
    });
  });
  return leastFirst(rows, ({ spare }) => spare ?? -Infinity);
}

/** A joint in one setup, with its directions at every position of the grid as the bolt's body sees them. */
interface Field {
  readonly corner: FitUpCorner;
  /** the bore, or the rod's line, as the bolt's body sees it; null where a part has no place */
  readonly seen: (motion: Motion, rack: number) => Vector | null;
  readonly directions: readonly (Vector | null)[];
}

function rowOf(point: string, joint: JointDocument, corners: readonly FitUpCorner[]): JointRow {
  const kind: TiltKind = joint.bore === undefined ? 'rod' : 'bore';
  const { axle, side } = corners[0];
  const common = { point, axle: axle.axle, side: side.mechanism.side, kind, rated: toRadians(joint.rated) };
  const fields = corners.flatMap((corner) => (corner.envelope === null ? [] : [fieldOf(joint, corner)]));
  const bolt = unit(joint.bolt);
  const worst = worstOf(kind, bolt, fields);
  if (worst === null) {
    const missing = corners.find((corner) => corner.missing !== null)?.missing;
    const reason = missing ?? 'no position of the envelope can be reached';
    const why = Object.fromEntries(['tilt', 'spare', 'at', 'bestBolt', 'tiltThen'].map((key) => [key, reason]));
    return { ...common, tilt: null, spare: null, at: null, bestBolt: null, tiltThen: null, why };
  }
  const { extreme, direction, field } = worst;
  const best = bestBolt(
    kind,
    bolt,
    direction,
    (one) => worstOf(kind, one, fields)!.direction,
    (one) => worstOnGrid(kind, one, fields),
  );
  return {
    ...common,
    tilt: extreme.value,
    spare: common.rated - extreme.value,
    at: { setup: field.corner.setup, travel: extreme.travel, rack: extreme.rack },
    bestBolt: best.bolt,
    tiltThen: best.tilt,
    why: {},
  };
}

function fieldOf(joint: JointDocument, corner: FitUpCorner): Field {
  const seen = seenFromBolt(joint, corner);
  const { motions, isReached, racks } = corner.envelope!;
  const directions = Array.from(isReached, (reached, i) =>
    reached === 1 ? seen(motions.subarray(i * MOTION_WIDTH, (i + 1) * MOTION_WIDTH), racks[i % racks.length]) : null,
  );
  return { corner, seen, directions };
}

function seenFromBolt(joint: JointDocument, { axle, side }: FitUpCorner): Field['seen'] {
  const [bolted, bored] = [atDesign(), atDesign()];
  const followBolt = followerOf(axle, side, joint.boltOn);
  if (joint.bore !== undefined) {
    const bore = unit(joint.bore);
    const followBore = followerOf(axle, side, joint.boreOn!);
    return (motion, rack) =>
      followBolt(motion, rack, bolted) && followBore(motion, rack, bored) ? turnedBack(bolted, turned(bored, bore)) : null;
  }
  const rod = side.corner.linkage.rods.find(({ name }) => name === joint.rod)!;
  return (motion, rack) => {
    if (!followBolt(motion, rack, bolted)) return null;
    const inner = add(rod.inner, scale(rod.rack, rack));
    return turnedBack(bolted, unit(subtract(knucklePoint(side.corner, motion, rod.outer), inner)));
  };
}

interface WorstTilt {
  readonly extreme: Extreme;
  readonly direction: Vector;
  readonly field: Field;
}

/** The greatest tilt with a bolt, over all setups. */
function worstOf(kind: TiltKind, bolt: Vector, fields: readonly Field[]): WorstTilt | null {
  const tiltOf = (direction: Vector | null): number => (direction === null ? NaN : tiltBetween(kind, bolt, direction));
  let worst: WorstTilt | null = null;
  for (const field of fields) {
    const { side, envelope } = field.corner;
    const values = Float64Array.from(field.directions, tiltOf);
    const extreme = climb(side, envelope!, (motion, rack) => tiltOf(field.seen(motion, rack)), values);
    if (extreme === null || (worst !== null && extreme.value <= worst.extreme.value)) continue;
    worst = { extreme, direction: field.seen(extreme.motion, extreme.rack)!, field };
  }
  return worst;
}

/** The direction of the grids in which the tilt is greatest. */
function worstOnGrid(kind: TiltKind, bolt: Vector, fields: readonly Field[]): Vector {
  let worst: Vector = bolt;
  let most = -1;
  for (const { directions } of fields)
    for (const direction of directions) {
      if (direction === null) continue;
      const tilt = tiltBetween(kind, bolt, direction);
      if (tilt > most) [most, worst] = [tilt, direction];
    }
  return worst;
}
