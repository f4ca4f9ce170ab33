import { toDegrees, toRadians } from '../core/angle';
import type { SideName } from '../car/document';
import type { Adjuster, AxleMechanism } from '../car/mechanism';
import type { Settings } from '../adjusters/adjustment';
import { fail, succeed, type Result } from '../core/result';
import { TOE_REACHED } from '../core/tolerances';
import { mirrorFrame, type GroundFrame } from '../axle/ground';
import type { Corner } from '../corner/corner';
import type { Failure } from '../corner/failure';
import { knuckleDirection } from '../corner/knucklePoint';
import { SOLVED, type Motion } from '../corner/motion';
import { startTrack, trackCorner } from '../corner/solveCorner';
import { steerOf } from '../readings/wheelStance';
import { groundPointOf } from './axleGround';
import { followToe } from './followToe';
import { toeLaw, type ToeLaw } from './toeLaw';
import { settingInFile } from './settings';
import { solveMonotone } from '../solve/solveMonotone';
import type { AssembledSide } from './assembleSide';
import { rodTurner, type RodTurner } from './turnRod';
import type { BothSides } from './assembleCar';
import { withMinus } from '../words/minus';

/** What a toe reset did: settings reached, in the file's unit. */
export interface ToeReset {
  readonly adjuster: string;
  readonly left: number;
  readonly right: number;
  /** false where a setting has left the adjuster's range */
  readonly inRange: boolean;
}

/** Where the search of a toe reset ended on one side. */
export interface SideFound {
  /** in the parameter of the adjuster's law */
  readonly parameter: number;
  /** change of toe per parameter there [rad]; null where it was not seen */
  readonly slope: number | null;
  /** change of the contact's height per parameter where the wheel stands [mm], as far as it is known */
  readonly lift: number;
  /** from design, where the wheel stands [mm] */
  readonly travel: number;
  /** at travel 0 and where the wheel stands */
  readonly poses: { readonly home: Motion; readonly standing: Motion } | null;
}

/** Where the search of a toe reset ended: that of a neighbouring setup may start from there. */
export type ToeFound = Readonly<Record<SideName, SideFound>>;

export interface ToeTask {
  readonly axle: AxleMechanism;
  /** toe per wheel, from the file [degrees] */
  readonly wantedDeg: number;
  readonly settings: Readonly<Record<SideName, Settings>>;
  /** @param near - a pose near the one at travel 0; null: none is known */
  readonly put: (side: SideName, settings: Settings, near?: Motion | null) => Result<AssembledSide, Failure>;
  readonly stand: (left: AssembledSide, right: AssembledSide) => Result<BothSides, Failure>;
  readonly frame: GroundFrame;
  readonly rideHeight: number | null;
  readonly mm: number;
  /** left and right are mirror images with the same settings: what is found for one is the other's to the last bit */
  readonly areTwins: boolean;
  /** where the search starts; null where nothing near is known */
  readonly from: ToeFound | null;
}

export interface ToeSet {
  /** of twins the left is both */
  readonly both: BothSides;
  readonly toeReset: ToeReset;
  readonly toeFound: ToeFound;
  /** from a neighbour's poses */
  readonly isFollowed: boolean;
}

/**
 * Turns the toe adjuster of both sides, continuously, until each wheel where the car stands has the wanted toe.
 * The ground point depends on the toe adjuster and the standing travel on the ground point: the sides are solved one after the
 * other on the standing travels of the round before, until nothing changes. Where a neighbour is known, all is solved at once from there.
 */
export function resetToe(task: ToeTask): Result<ToeSet, Failure> {
  const { axle, wantedDeg, settings, put, stand, frame, mm, areTwins, from } = task;
  const adjuster = axle.toeAdjuster;
  if (adjuster === null)
    return fail({
      kind: 'unreachable',
      message: `The setup asks for a toe of ${withMinus(wantedDeg)}° at the ${axle.axle} axle, and the car names no toeAdjuster there.`,
    });
  const wanted = toRadians(wantedDeg);
  const law = toeLaw(adjuster);
  const followed = from === null ? null : followedFrom(task, adjuster, law, wanted, from);
  if (followed !== null) return succeed(followed);
  const seekerOf = (side: SideName): ToeSeeker => {
    // a bushing's clock meets a toe twice: which of them is found must not hang on a neighbour
    const start = from === null || adjuster.kind === 'offset-bushing' ? { parameter: law.start, slope: null } : from[side];
    return new ToeSeeker(axle, adjuster, law, side, settings[side], wanted, frame, (changed) => put(side, changed), start);
  };
  const left = seekerOf('left');
  const right = areTwins ? left : seekerOf('right');
  const seekers = areTwins ? [left] : [left, right];
  let travels: Readonly<Record<SideName, number>> = { left: 0, right: 0 };
  const begun = [left.begin(), right.begin()] as const;
  if (begun[0] !== null && begun[1] !== null) {
    const standing = stand(begun[0], begun[1]);
    if (standing.ok) travels = standing.value.standing;
  }
  for (let round = 0; round < 30; round++) {
    for (const seeker of seekers) {
      const failure = seeker.seek(travels[seeker.side]);
      if (failure !== null) return fail(failure);
    }
    const both = stand(left.found(), right.found());
    if (!both.ok) return both;
    travels = both.value.standing;
    if (!seekers.every((seeker) => seeker.isThere(travels[seeker.side]))) continue;
    const { poses } = both.value;
    return succeed({
      both: both.value,
      toeReset: toeResetOf(adjuster, law, { left: left.parameter, right: right.parameter }, mm),
      toeFound: { left: left.end(travels.left, poses.left), right: right.end(travels.right, poses.right) },
      isFollowed: false,
    });
  }
  return fail({ kind: 'unreachable', message: `Toe and standing height of the ${axle.axle} axle do not settle on each other.` });
}

function followedFrom(
  { axle, settings, put, frame, rideHeight, mm, areTwins }: ToeTask,
  adjuster: Adjuster,
  law: ToeLaw,
  wanted: number,
  from: ToeFound,
): ToeSet | null {
  const followed = followToe(axle, adjuster, law, wanted, settings, put, frame, rideHeight, areTwins, from);
  if (followed === null) return null;
  const [left] = followed;
  const right = followed[areTwins ? 0 : 1];
  return {
    both: {
      left: left.side,
      right: right.side,
      groundPoint: groundPointOf(left.side, right.side),
      standing: { left: left.travel, right: right.travel },
      poses: { left: left.standing, right: right.standing },
    },
    toeReset: toeResetOf(adjuster, law, { left: left.found.parameter, right: right.found.parameter }, mm),
    toeFound: { left: left.found, right: right.found },
    isFollowed: true,
  };
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

/** Turns the toe adjuster of one side until the wheel has the wanted toe at a travel. */
class ToeSeeker {
  /** where the adjuster stands, in the parameter of its law */
  parameter: number;
  private slope: number | null;
  /** the side as it was put together last, and at which parameter */
  private known: { readonly parameter: number; readonly side: AssembledSide } | null = null;
  private turner: RodTurner | null = null;

  constructor(
    private readonly axle: AxleMechanism,
    private readonly adjuster: Adjuster,
    private readonly law: ToeLaw,
    readonly side: SideName,
    private readonly settings: Settings,
    /** [rad] */
    private readonly wanted: number,
    private readonly frame: GroundFrame,
    private readonly put: (settings: Settings) => Result<AssembledSide, Failure>,
    start: Pick<SideFound, 'parameter' | 'slope'>,
  ) {
    ({ parameter: this.parameter, slope: this.slope } = start);
  }

  /** The side where the search starts; null where it cannot be put together there. */
  begin(): AssembledSide | null {
    const { parameter, known } = this;
    return known?.parameter === parameter ? known.side : this.assemble(parameter);
  }

  /** @returns why no setting gives the toe at this travel; null where one was found */
  seek(travel: number): Failure | null {
    let nearest = Infinity;
    let before: { readonly at: number; readonly miss: number } | null = null;
    const miss = (parameter: number): number | null => {
      const toe = this.toeAt(parameter, travel);
      if (toe === null) return null;
      const off = toe - this.wanted;
      nearest = Math.min(nearest, Math.abs(off));
      if (before !== null && Math.abs(parameter - before.at) > 1e-9) this.slope = (off - before.miss) / (parameter - before.at);
      before = { at: parameter, miss: off };
      return off;
    };
    const { law } = this;
    const found = solveMonotone(miss, this.parameter, law.step, law.limits, TOE_REACHED / 5, this.slope);
    if (found === null) return this.failureOf(nearest);
    this.parameter = found;
    return null;
  }

  /** The side at the parameter that was found. */
  found(): AssembledSide {
    const { parameter, known, turner } = this;
    if (known?.parameter === parameter) return known.side;
    if (turner !== null && turner.look(this.law.setting(parameter)) !== null) {
      const side = turner.take();
      this.known = { parameter, side };
      return side;
    }
    const made = this.assemble(parameter);
    if (made === null) throw new Error('A toe was found at a setting where the side cannot be put together.');
    return made;
  }

  /** Whether the side that was found has the wanted toe at this travel. */
  isThere(travel: number): boolean {
    const toe = toeOf(this.found().corner, travel, this.ownFrame());
    return toe !== null && Math.abs(toe - this.wanted) < TOE_REACHED;
  }

  /** @param standing - the pose at the travel where the wheel stands */
  end(travel: number, standing: Motion): SideFound {
    const { parameter, slope } = this;
    return { parameter, slope, lift: 0, travel, poses: { home: this.found().corner.home, standing } };
  }

  /** Toe at a parameter and a travel, rack 0 [rad, + in]; null where that is out of reach. */
  private toeAt(parameter: number, travel: number): number | null {
    const { known, turner } = this;
    if (known?.parameter === parameter) return toeOf(known.side.corner, travel, this.ownFrame());
    if (turner !== null) {
      const corner = turner.look(this.law.setting(parameter));
      return corner === null ? null : toeOf(corner, travel, this.ownFrame());
    }
    const made = this.assemble(parameter);
    return made === null ? null : toeOf(made.corner, travel, this.ownFrame());
  }

  private assemble(parameter: number): AssembledSide | null {
    const made = this.put({ ...this.settings, [this.adjuster.name]: this.law.setting(parameter) });
    if (!made.ok) return null;
    this.known = { parameter, side: made.value };
    this.turner ??= rodTurner(this.axle, made.value, this.adjuster);
    return made.value;
  }

  private ownFrame(): GroundFrame {
    return this.side === 'left' ? this.frame : mirrorFrame(this.frame);
  }

  private failureOf(nearest: number): Failure {
    const { adjuster, law, side, wanted } = this;
    const ends = law.limits === null ? '' : ', for its law ends before';
    const short =
      nearest === Infinity ? 'the linkage closes at none of them' : `the nearest is ${toDegrees(nearest).toFixed(3)}° away`;
    return {
      kind: 'unreachable',
      side,
      message: `No setting of ${adjuster.name} gives the ${side} wheel a toe of ${withMinus(Number(toDegrees(wanted).toFixed(3)))}°${ends}: ${short}.`,
      limitedBy: adjuster.name,
    };
  }
}

/** @param ownFrame - the ground in the side's own frame */
function toeOf(corner: Corner, travel: number, ownFrame: GroundFrame): number | null {
  const at = (motion: Motion): number => -steerOf(knuckleDirection(motion, corner.spindle), ownFrame);
  if (travel === 0) return at(corner.home);
  const track = startTrack(corner);
  return trackCorner(corner, track, travel, 0) === SOLVED ? at(track.motion) : null;
}
