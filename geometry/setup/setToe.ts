import { toDegrees, toRadians } from '../core/angle';
import type { SideName } from '../car/document';
import type { Adjuster, AxleMechanism } from '../car/mechanism';
import type { Settings } from '../adjusters/adjustment';
import { fail, succeed, type Result } from '../core/result';
import { TOE_REACHED } from '../core/tolerances';
import type { GroundFrame } from '../axle/ground';
import type { Corner } from '../corner/corner';
import type { Failure } from '../corner/failure';
import { knuckleDirection } from '../corner/knucklePoint';
import { SOLVED, type Motion } from '../corner/motion';
import { startTrack, trackCorner } from '../corner/solveCorner';
import { steerOf } from '../readings/wheelStance';
import { toeLaw, type ToeLaw } from './toeLaw';
import { settingInFile } from './settings';
import { solveMonotone } from '../solve/solveMonotone';
import type { AssembledSide } from './assembleSide';
import { rodTurner, type RodTurner } from './turnRod';
import type { BothSides } from './assembleCar';
import { frameFor } from './axleGround';
import { withMinus } from '../words/minus';

/** What a toe reset did: settings reached, in the file's unit. */
export interface ToeReset {
  readonly adjuster: string;
  readonly left: number;
  readonly right: number;
  /** false where a setting has left the adjuster's range */
  readonly inRange: boolean;
}

/** Where the search of a toe reset ended, in the parameters of its adjuster's law. */
export type ToeFound = Readonly<Record<SideName, number>>;

type Put = (side: SideName, settings: Settings) => Result<AssembledSide, Failure>;
type Stand = (left: AssembledSide, right: AssembledSide) => Result<BothSides, Failure>;

/**
 * Turns the toe adjuster of both sides, continuously, until each wheel where the car stands has the wanted toe.
 * The ground point depends on the toe adjuster and the standing travel on the ground point: the sides are solved one after the
 * other on the standing travels of the round before, until nothing changes.
 * @param wantedDeg - toe per wheel, from the file
 * @param from - where the search starts, in the parameters of the adjuster's law; null where nothing near is known
 * @param areTwins - left and right are mirror images with the same settings: what is found for one is the other's to the last bit
 */
export function resetToe(
  axle: AxleMechanism,
  wantedDeg: number,
  settings: Readonly<Record<SideName, Settings>>,
  put: Put,
  stand: Stand,
  frame: GroundFrame,
  mm: number,
  areTwins: boolean,
  from: ToeFound | null,
): Result<{ both: BothSides; toeReset: ToeReset; toeFound: ToeFound }, Failure> {
  const adjuster = axle.toeAdjuster;
  if (adjuster === null)
    return fail({
      kind: 'unreachable',
      message: `The setup asks for a toe of ${withMinus(wantedDeg)}° at the ${axle.axle} axle, and the car names no toeAdjuster there.`,
    });
  const wanted = toRadians(wantedDeg);
  const law = toeLaw(adjuster);
  // a bushing's clock meets a toe twice: which of them is found must not hang on a neighbour
  const at = from === null || adjuster.kind === 'offset-bushing' ? { left: law.start, right: law.start } : { ...from };
  let travels: Readonly<Record<SideName, number>> = { left: 0, right: 0 };
  for (let round = 0; round < 30; round++) {
    const sides: Partial<Record<SideName, AssembledSide>> = {};
    for (const side of ['left', 'right'] as const) {
      if (side === 'right' && areTwins && travels.left === travels.right) {
        at.right = at.left;
        const right = put('right', { ...settings.right, [adjuster.name]: law.setting(at.right) });
        if (!right.ok) return right;
        sides.right = right.value;
        continue;
      }
      const search = { axle, adjuster, law, settings: settings[side], wanted, travel: travels[side], frame, side };
      const found = solveToe({ ...search, put: (changed) => put(side, changed) }, at[side]);
      if (!found.ok) return found;
      at[side] = found.value.parameter;
      sides[side] = found.value.side;
    }
    const both = stand(sides.left!, sides.right!);
    if (!both.ok) return both;
    travels = both.value.standing;
    const reached = (['left', 'right'] as const).every((side) => {
      const toe = toeAt(both.value[side], travels[side], frame);
      return toe !== null && Math.abs(toe - wanted) < TOE_REACHED;
    });
    if (reached) return succeed({ both: both.value, toeReset: toeResetOf(adjuster, law, at, mm), toeFound: at });
  }
  return fail({ kind: 'unreachable', message: `Toe and standing height of the ${axle.axle} axle do not settle on each other.` });
}

function toeResetOf(adjuster: Adjuster, law: ToeLaw, at: Readonly<Record<SideName, number>>, mm: number): ToeReset {
  const setting = { left: law.setting(at.left), right: law.setting(at.right) };
  const range = 'range' in adjuster ? adjuster.range : null;
  const isInside = (value: number): boolean => range === null || (value >= range[0] - 1e-9 && value <= range[1] + 1e-9);
  return {
    adjuster: adjuster.name,
    left: settingInFile(adjuster, setting.left, mm),
    right: settingInFile(adjuster, setting.right, mm),
    inRange: isInside(setting.left) && isInside(setting.right),
  };
}

/** Toe of an assembled side at one travel, rack 0 [rad, + in]; null where that travel is out of reach. */
const toeAt = (side: AssembledSide, travel: number, frame: GroundFrame): number | null =>
  toeOf(side.corner, travel, frameFor(side, frame));

function toeOf(corner: Corner, travel: number, ownFrame: GroundFrame): number | null {
  const at = (motion: Motion): number => -steerOf(knuckleDirection(motion, corner.spindle), ownFrame);
  if (travel === 0) return at(corner.home);
  const track = startTrack(corner);
  return trackCorner(corner, track, travel, 0) === SOLVED ? at(track.motion) : null;
}

/** What a search for the toe of one side looks at. */
interface ToeSearch {
  readonly axle: AxleMechanism;
  readonly adjuster: Adjuster;
  readonly law: ToeLaw;
  readonly settings: Settings;
  readonly wanted: number;
  readonly travel: number;
  readonly put: (settings: Settings) => Result<AssembledSide, Failure>;
  readonly frame: GroundFrame;
  readonly side: SideName;
}

function solveToe(search: ToeSearch, start: number): Result<{ parameter: number; side: AssembledSide }, Failure> {
  const { axle, adjuster, law, settings, wanted, travel, put, frame, side } = search;
  let last: { readonly parameter: number; readonly side: AssembledSide } | null = null;
  let turner: RodTurner | null = null;
  let nearest = Infinity;
  const missOf = (toe: number | null): number | null => {
    if (toe === null) return null;
    nearest = Math.min(nearest, Math.abs(toe - wanted));
    return toe - wanted;
  };
  const miss = (parameter: number): number | null => {
    const setting = law.setting(parameter);
    if (turner !== null && last !== null) {
      const corner = turner.look(setting);
      return corner === null ? null : missOf(toeOf(corner, travel, frameFor(last.side, frame)));
    }
    const assembled = put({ ...settings, [adjuster.name]: setting });
    if (!assembled.ok) return null;
    last = { parameter, side: assembled.value };
    turner = rodTurner(axle, assembled.value, adjuster);
    return missOf(toeAt(assembled.value, travel, frame));
  };
  const found = solveMonotone(miss, start, law.step, law.limits, TOE_REACHED / 5);
  if (found !== null) {
    const turned = turner as RodTurner | null;
    if (turned !== null && turned.look(law.setting(found)) !== null) return succeed({ parameter: found, side: turned.take() });
    // most searches end on the parameter they tried last
    if (last === null || (last as { parameter: number }).parameter !== found) miss(found);
    return succeed(last!);
  }
  const ends = law.limits === null ? '' : ', for its law ends before';
  const short =
    nearest === Infinity ? 'the linkage closes at none of them' : `the nearest is ${toDegrees(nearest).toFixed(3)}° away`;
  return fail({
    kind: 'unreachable',
    side,
    message: `No setting of ${adjuster.name} gives the ${side} wheel a toe of ${withMinus(Number(toDegrees(wanted).toFixed(3)))}°${ends}: ${short}.`,
    limitedBy: adjuster.name,
  });
}
