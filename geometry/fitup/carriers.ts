import type { AxleMechanism } from '../car/mechanism';
import { turnAbout } from '../core/rotation';
import { add, mirror, scale, subtract, unit, type Vector } from '../core/vector';
import { followCarrier, type Carrier } from '../corner/carrier';
import { knuckleDirection } from '../corner/knucklePoint';
import { CENTRE, type Motion } from '../corner/motion';
import { barState } from '../readings/barReadings';
import { spanState } from '../readings/spanReadings';
import type { AssembledSide } from '../setup/assembleSide';
import { carrierOf } from '../setup/cornerParts';
import { onStrutTube } from '../setup/linkages';
import { anchor, atDesign, turned, writeLeastTurn, writeProduct, writeTurn, type Placement } from './placement';

/**
 * Where a carrier stands at a pose, in the corner's left-hand frame.
 * @param rack - [mm]
 * @returns false where it has no place: a bar whose link does not reach
 */
export type Follow = (motion: Motion, rack: number, out: Placement) => boolean;

/** Carriers that do not move against the body. */
export const isStill = (carrier: string): boolean => carrier === 'body' || carrier === 'ground';

/** Carriers that spin about the spindle: what hangs on them is a body of revolution. */
export const spinsWithWheel = (carrier: string): boolean => carrier === 'wheel' || carrier === 'hub';

const STILL = atDesign();

/**
 * The movement of one carrier of a corner.
 * @param carrier - a name that `parseCar` allows for a part of this axle
 * @throws RangeError for a name that the axle does not have
 */
export function followerOf(axle: AxleMechanism, side: AssembledSide, carrier: string): Follow {
  const { corner, mechanism, parts, adjustment } = side;
  const points = mechanism.points;
  switch (carrier) {
    case 'body':
    case 'ground':
      return (_motion, _rack, out) => {
        out.set(STILL);
        return true;
      };
    case 'knuckle':
    case 'trailingArm':
    case 'hub':
      return knuckleFrom(corner.linkage.wheelCentre);
    // A spacer carries the wheel along the spindle: what was at the wheel centre at design is where it is now.
    case 'wheel':
      return knuckleFrom(points['wheelCentre']);
    case 'strut':
    case 'strutFoot':
      return followStrut(side);
    case 'strutRod':
      return followStrutRod(side);
    case 'rack': {
      const { axis } = there(axle.steering, carrier);
      const along = mechanism.side === 'left' ? axis : mirror(axis);
      return (_motion, rack, out) => {
        out.set(STILL);
        anchor(out, [0, 0, 0], scale(along, rack));
        return true;
      };
    }
    case 'bar': {
      const bar = there(parts.bar, carrier);
      return (motion, rack, out) => {
        const state = barState(bar, corner, motion, rack);
        if (state === null) return false;
        writeTurn(bar.axis, state.turn, out);
        anchor(out, bar.pivot, bar.pivot);
        return true;
      };
    }
    case 'barLink': {
      const bar = there(parts.bar, carrier);
      const atRest = unit(subtract(axle.bar!.linkEnd, bar.armEnd));
      return (motion, rack, out) => {
        const state = barState(bar, corner, motion, rack);
        if (state === null) return false;
        writeLeastTurn(atRest, unit(subtract(state.linkEnd, state.armEnd)), out);
        anchor(out, bar.armEnd, state.armEnd);
        return true;
      };
    }
    case 'spring':
      return followSpan(axle, side, 'spring', 0.5);
    case 'damperUpper':
      return axle.damper?.points ? followSpan(axle, side, 'damper', 0) : followStrutRod(side);
    case 'damperLower':
      return axle.damper?.points ? followSpan(axle, side, 'damper', 1) : followStrut(side);
    case 'driveShaft':
      throw new RangeError('followerOf: the drive shaft is followed by driveShaftFollower, which knows its joints');
    default:
      if (carrier !== 'arm' || axle.layout !== 'strut') there(axle.rods.find(({ name }) => name === carrier) ?? null, carrier);
      return followRigid(side, (point) => carrierOf(axle, mechanism, adjustment, carrier, point));
  }
}

/** @throws RangeError for what the axle does not have */
function there<Part>(part: Part | null, carrier: string): Part {
  if (part === null) throw new RangeError(`followerOf: the axle has no ${carrier}`);
  return part;
}

/** W + R (q − W₀), with W₀ the point of the carrier that is at the wheel centre. */
const knuckleFrom =
  (centre: Vector): Follow =>
  (motion, _rack, out) => {
    for (let i = 0; i < 9; i++) out[i] = motion[i];
    anchor(out, centre, [motion[CENTRE], motion[CENTRE + 1], motion[CENTRE + 2]]);
    return true;
  };

/** The strut's tube: a clamp turns it by −angle against the knuckle. */
function followStrut({ corner, mechanism, adjustment }: AssembledSide): Follow {
  const knuckle = knuckleFrom(corner.linkage.wheelCentre);
  const { clamp } = adjustment;
  if (clamp === null) return knuckle;
  const columns = AXES.map((axis) => turnAbout(axis, clamp.axis, -clamp.angle));
  const shift = onStrutTube(mechanism, adjustment, [0, 0, 0]);
  const inKnuckle = atDesign();
  writeColumns(inKnuckle, columns, shift);
  const now = atDesign();
  return (motion, rack, out) => {
    knuckle(motion, rack, now);
    writeProduct(now, inKnuckle, out);
    return true;
  };
}

/** Rod and upper seat of a strut: hung at the strut's top, along the axis. */
function followStrutRod({ corner, mechanism }: AssembledSide): Follow {
  const { strutTop, strutFoot } = mechanism.points;
  const guide = there(corner.linkage.guide, 'strutRod');
  const atRest = unit(subtract(strutTop, strutFoot));
  return (motion, _rack, out) => {
    writeLeastTurn(atRest, knuckleDirection(motion, guide.axis), out);
    anchor(out, strutTop, guide.top);
    return true;
  };
}

/**
 * A part of a spring or damper: along the line between its ends, with the least rotation from design.
 * @param share - where along the line it is held: 0 the upper end, 1 the lower, ½ midway
 */
function followSpan(axle: AxleMechanism, side: AssembledSide, which: 'spring' | 'damper', share: number): Follow {
  const { corner, mechanism, parts } = side;
  const span = there(parts[which], which);
  const ends = axle[which]!.points;
  const upper = mechanism.points[ends?.upper ?? 'strutTop'];
  const lower = mechanism.points[ends?.lower ?? 'strutFoot'];
  const atRest = unit(subtract(lower, upper));
  const held = add(scale(upper, 1 - share), scale(lower, share));
  return (motion, rack, out) => {
    const state = spanState(span, corner, motion, rack, null);
    writeLeastTurn(atRest, unit(subtract(state.lower, state.upper)), out);
    anchor(out, held, add(scale(state.upper, 1 - share), scale(state.lower, share)));
    return true;
  };
}

/**
 * The drive shaft: between its inner joint, which stays on the body, and its outer one, which the knuckle carries; it is held at
 * the outer joint and slides in the inner one.
 * @param inner - joint centre at design [mm], left-hand frame
 * @param outer - likewise
 */
export function driveShaftFollower({ corner }: AssembledSide, inner: Vector, outer: Vector): Follow {
  const knuckle = knuckleFrom(corner.linkage.wheelCentre);
  const now = atDesign();
  const atRest = unit(subtract(outer, inner));
  return (motion, rack, out) => {
    knuckle(motion, rack, now);
    const end: Vector = add(turned(now, outer), [now[9], now[10], now[11]]);
    writeLeastTurn(atRest, unit(subtract(end, inner)), out);
    anchor(out, outer, end);
    return true;
  };
}

const AXES: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** A rigid body by where it takes the origin and the three unit vectors. */
function followRigid({ corner }: AssembledSide, carrierAt: (point: Vector) => Carrier): Follow {
  const [origin, ...ends] = [[0, 0, 0] as Vector, ...AXES].map(carrierAt);
  return (motion, rack, out) => {
    const shift = followCarrier(origin, corner, motion, rack).at;
    const columns = ends.map((end) => subtract(followCarrier(end, corner, motion, rack).at, shift));
    writeColumns(out, columns, shift);
    return true;
  };
}

function writeColumns(out: Placement, columns: readonly Vector[], shift: Vector): void {
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) out[3 * row + column] = columns[column][row];
    out[9 + row] = shift[row];
  }
}
