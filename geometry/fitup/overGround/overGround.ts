import type { AxleName, SideName } from '../../car/document';
import type { CarMechanism } from '../../car/mechanism';
import { toDegrees } from '../../core/angle';
import { leastFirst } from '../../core/order';
import { mirror, type Vector } from '../../core/vector';
import { SOLVED, type Motion } from '../../corner/motion';
import { startTrack, trackCorner } from '../../corner/solveCorner';
import type { AssembledCar } from '../../setup/assembleCar';
import type { AssembledSide } from '../../setup/assembleSide';
import { isStill } from '../carriers';
import { BOTH_SIDES, type StoodSetup } from '../corners';
import { envelopeOf } from '../envelope';
import { piecesOf, type PartMeshes, type Piece } from '../pieces';
import { atDesign, placed, turnedBack } from '../placement';
import { farthestPoint } from './farthest';
import { downSeenFrom, heightOver, standOn, type Foot, type GroundPlane } from './standOn';

/**
 * How the car is over the ground, rack centred:
 * - `standing`: where it stands
 * - `left-flat`, `right-flat`: both tyres of that side without air, on their rims; no wheel has moved against the body
 * - `solid`: every damper at its end
 */
export type Attitude = 'standing' | 'left-flat' | 'right-flat' | 'solid';

/** The lowest point of one part in one attitude. Lengths in mm, car frame. */
export interface GroundRow {
  readonly setup: string;
  readonly attitude: Attitude;
  readonly part: string;
  /** null: on the body, and of no axle */
  readonly axle: AxleName | null;
  readonly side: SideName;
  /** over the ground; negative where it would be under it */
  readonly height: number;
  /** the margin `ground` of the file, 0 where it has none; and what is left over it */
  readonly needs: number;
  readonly spare: number;
  /** `close`: less than a quarter of the margin is left; `cuts`: it would be under the ground */
  readonly verdict: 'clear' | 'close' | 'short' | 'cuts';
  readonly point: Vector;
}

/** How the ground lies under the body. */
export interface GroundStance {
  readonly setup: string;
  readonly attitude: Attitude;
  /** of the body over the ground [degrees], + left side up; + nose down */
  readonly roll: number;
  readonly pitch: number;
  /** how far a wheel is off the plane that is nearest to all of them [mm] */
  readonly unevenBy: number;
}

export interface OverGround {
  /** least spare first; of equal ones by setup, attitude, front before rear and left before right */
  readonly rows: readonly GroundRow[];
  readonly stances: readonly GroundStance[];
  /** sentences on what was left out */
  readonly missing: readonly string[];
}

const ATTITUDES: readonly Attitude[] = ['standing', 'left-flat', 'right-flat', 'solid'];
const AXLES: readonly AxleName[] = ['front', 'rear'];
/** What the car stands on, and what is flat when a tyre is. */
const ROUND_THE_RIM = ['tyre', 'rim'];

/**
 * The lowest point of every part over the ground, in every setup and attitude; tyres and rims are left out.
 * @param axles - whose parts are asked for, besides those of the body that are of no axle; the car stands on all its wheels
 */
export function overGround(
  mechanism: CarMechanism,
  setups: readonly StoodSetup[],
  axles: readonly AxleName[],
  sides: readonly SideName[],
  meshes: PartMeshes,
): OverGround {
  const rows: GroundRow[] = [];
  const stances: GroundStance[] = [];
  const missing = new Set<string>();
  const needs = (mechanism.document.margins?.['ground'] ?? 0) * mechanism.mmPerUnit;
  for (const { name: setup, car } of setups) {
    const corners = cornersOf(mechanism, car, meshes);
    for (const attitude of ATTITUDES) {
      const feet = feetOf(corners, attitude);
      if ('missing' in feet) {
        missing.add(feet.missing);
        continue;
      }
      const plane = standOn(feet);
      stances.push({ setup, attitude, ...leanOf(plane) });
      corners.forEach(({ axle, side, pieces }, index) => {
        const own = side.mechanism.side;
        if (!sides.includes(own)) return;
        for (const piece of pieces) {
          if (!axles.includes(axle) && !isOfNoAxle(piece)) continue;
          const point = lowestOf(piece, feet[index].motion, plane, own);
          if (point === null) continue;
          const height = heightOver(plane, point);
          const spare = height - needs;
          const of = { part: piece.name, axle: isOfNoAxle(piece) ? null : axle, side: own };
          rows.push({ setup, attitude, ...of, height, needs, spare, verdict: verdictOf(height, needs), point });
        }
      });
    }
  }
  return { rows: leastFirst(rows, ({ spare }) => spare), stances, missing: [...missing] };
}

const isOfNoAxle = ({ part }: Piece): boolean => part !== null && isStill(part.on) && part.axle === undefined;

interface GroundCorner {
  readonly axle: AxleName;
  readonly side: AssembledSide;
  /** travel from design where it stands, and with the damper at its end [mm]; null: not known */
  readonly standing: number;
  readonly solid: number | null;
  /** half the rim's diameter [mm] */
  readonly rimRadius: number | null;
  readonly pieces: readonly Piece[];
}

function cornersOf({ document, mmPerUnit }: CarMechanism, car: AssembledCar, meshes: PartMeshes): GroundCorner[] {
  const corners: GroundCorner[] = [];
  for (const name of AXLES) {
    const axle = car[name];
    if (axle === null) continue;
    const isFirst = corners.length === 0;
    for (const own of BOTH_SIDES) {
      const side = axle[own];
      const envelope = envelopeOf(axle.mechanism, '', side);
      const { rimDiameter } = side.wheel;
      const { pieces } = piecesOf(document, mmPerUnit, axle.mechanism, side, meshes);
      corners.push({
        axle: name,
        side,
        standing: axle.standing[own],
        solid: 'missing' in envelope ? null : envelope.solid,
        rimRadius: rimDiameter === null ? null : 0.5 * rimDiameter,
        pieces: pieces.filter((piece) => counts(piece, own) && (isFirst || !isOfNoAxle(piece))),
      });
    }
  }
  return corners;
}

/** What is on the body and on one side only is there for both wheels of a clearance; here it counts once. */
function counts(piece: Piece, side: SideName): boolean {
  const { part, carrier, touches } = piece;
  if (carrier === 'ground' || touches.includes('ground')) return false;
  if (part === null) return true;
  if (ROUND_THE_RIM.includes(part.shape.kind)) return false;
  return part.only !== true || (part.side ?? 'left') === side;
}

function feetOf(corners: readonly GroundCorner[], attitude: Attitude): readonly Foot[] | { readonly missing: string } {
  const feet: Foot[] = [];
  for (const { axle, side, standing, solid, rimRadius } of corners) {
    const { corner, mechanism } = side;
    const travel = attitude === 'solid' ? solid : standing;
    if (travel === null)
      return {
        missing: `Over the ground with every damper solid is left out: the file does not say where the ${axle} dampers end.`,
      };
    const isFlat = attitude === `${mechanism.side}-flat`;
    const radius = isFlat ? rimRadius : corner.loadedRadius;
    if (radius === null)
      return {
        missing: `Over the ground on flat tyres is left out: it needs rimDiameter of the ${axle} wheels, which they stand on.`,
      };
    const track = startTrack(corner);
    if (trackCorner(corner, track, travel, 0) !== SOLVED)
      return {
        missing: `Over the ground with every damper solid is left out: the ${axle} ${mechanism.side} wheel does not get there.`,
      };
    feet.push({ axle, side: mechanism.side, corner, motion: track.motion, radius });
  }
  return feet;
}

/** In the car frame; null where its carrier has no place. */
function lowestOf(piece: Piece, motion: Motion, plane: GroundPlane, side: SideName): Vector | null {
  const now = atDesign();
  if (!piece.follow(motion, 0, now)) return null;
  const point = placed(now, farthestPoint(piece.solid, turnedBack(now, downSeenFrom(plane, side))));
  return side === 'left' ? point : mirror(point);
}

/** n = (−sin β, cos β sin ρ, cos β cos ρ). */
const leanOf = ({ normal: [x, y, z], unevenBy }: GroundPlane): Pick<GroundStance, 'roll' | 'pitch' | 'unevenBy'> => ({
  roll: toDegrees(Math.atan2(y, z)),
  pitch: toDegrees(Math.asin(-x)),
  unevenBy,
});

/** Kept with less than this share of the margin to spare is close. */
const CLOSE_SHARE = 0.25;

function verdictOf(height: number, needs: number): GroundRow['verdict'] {
  if (height < 0) return 'cuts';
  if (height < needs) return 'short';
  return height < needs * (1 + CLOSE_SHARE) ? 'close' : 'clear';
}
