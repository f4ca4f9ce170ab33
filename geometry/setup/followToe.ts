import type { SideName } from '../car/document';
import type { Adjuster, AxleMechanism } from '../car/mechanism';
import type { Settings } from '../adjusters/adjustment';
import type { GroundFrame } from '../axle/ground';
import { cross, dot, subtract, type Vector } from '../core/vector';
import type { Result } from '../core/result';
import { HEIGHT_STOP_MM, TOE_REACHED } from '../core/tolerances';
import type { Failure } from '../corner/failure';
import { SOLVED, type Motion } from '../corner/motion';
import { closeNear } from '../corner/solveCorner';
import { steerChange, steerOf, wheelStance } from '../readings/wheelStance';
import { turnNear, type AssembledSide } from './assembleSide';
import { frameFor, groundPointOf } from './axleGround';
import type { SideFound } from './setToe';
import type { ToeLaw } from './toeLaw';
import { turnedRod, type TurnedRod } from './turnRod';

/** So many corrections from a neighbour; what needs more starts anew. */
const MOST_ROUNDS = 10;
/** Where the parameter hardly moved a slope is not read off. */
const SMALLEST_MOVE = 1e-7;

/** A side whose toe was found from its neighbour's. */
export interface Followed {
  readonly side: AssembledSide;
  /** the pose where the wheel stands */
  readonly standing: Motion;
  readonly travel: number;
  readonly found: SideFound;
}

/**
 * A toe reset from that of a neighbouring setup: toe and standing height of both sides at once, by Newton from the poses that
 * were found there. Poses are closed from the neighbour's and kept only where the knuckle turned little, as when a linkage is
 * put together from design; what is found holds to the same tolerances as a reset from nothing.
 * @param put - puts a side together with its pose closed from a pose near it
 * @param areTwins - one side stands for both
 * @param groundBelow - ride height [mm]; null: the wheels stand at travel 0
 * @returns one of each side (of twins the left alone), or null where the way from the neighbour is not plain
 */
export function followToe(
  axle: AxleMechanism,
  adjuster: Adjuster,
  law: ToeLaw,
  wanted: number,
  settings: Readonly<Record<SideName, Settings>>,
  put: (side: SideName, settings: Settings, near: Motion) => Result<AssembledSide, Failure>,
  frame: GroundFrame,
  groundBelow: number | null,
  areTwins: boolean,
  from: Readonly<Record<SideName, SideFound>>,
): readonly Followed[] | null {
  const followers: Follower[] = [];
  for (const side of areTwins ? (['left'] as const) : (['left', 'right'] as const)) {
    const { parameter, poses } = from[side];
    if (poses === null) return null;
    const base = put(side, { ...settings[side], [adjuster.name]: law.setting(parameter) }, poses.home);
    const rod = base.ok ? turnedRod(axle, base.value, adjuster) : null;
    if (!base.ok || rod === null) return null;
    followers.push(new Follower(axle, base.value, rod, law, wanted, frame, from[side], groundBelow !== null));
  }
  const [left] = followers;
  const right = followers[areTwins ? 0 : 1];
  let wasThere = false;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    for (const follower of followers) if (!follower.stand()) return null;
    const ground = groundBelow === null ? null : groundPointOf(left.base, right.base);
    const point: Vector | null = ground === null || groundBelow === null ? null : [ground[0], 0, ground[2] - groundBelow];
    let isThere = true;
    for (const follower of followers) isThere = follower.judge(point) && isThere;
    // one correction more than needed leaves rounding alone: where the search came from is not seen in the answer
    if (isThere && wasThere) return followers.map((follower) => follower.end());
    wasThere = isThere;
    for (const follower of followers) if (!follower.correct()) return null;
  }
  return null;
}

/** One side on its way: its rod's length and its standing travel, corrected together. */
class Follower {
  private readonly standing: Motion;
  private readonly ownFrame: GroundFrame;
  private parameter: number;
  private travel: number;
  /** change of toe per parameter at a travel [rad]; null where it was not seen yet */
  private slope: number | null;
  /** change of the contact's height over the ground per parameter at a travel [mm] */
  private lift: number;
  private toeMiss = NaN;
  private heightMiss = 0;
  /** change of toe and of the contact's height per mm of travel */
  private toePerTravel = 0;
  private rise = 1;
  private moved: { readonly parameter: number; readonly travel: number } | null = null;

  constructor(
    private readonly axle: AxleMechanism,
    /** put together at the neighbour's setting; its constants and its pose are this search's own, and changed */
    readonly base: AssembledSide,
    private readonly rod: TurnedRod,
    private readonly law: ToeLaw,
    private readonly wanted: number,
    frame: GroundFrame,
    from: SideFound,
    private readonly hasHeight: boolean,
  ) {
    this.ownFrame = frameFor(base, frame);
    this.parameter = from.parameter;
    this.travel = from.travel;
    this.slope = from.slope;
    this.lift = from.lift;
    this.standing = hasHeight ? from.poses!.standing.slice() : base.corner.home;
  }

  /** The wheel where it stands with the rod as it is. @returns whether that is near where it was */
  stand(): boolean {
    const { corner } = this.base;
    return !this.hasHeight || closeNear(corner.linkage.layout, corner.kernel, this.standing, this.travel) === SOLVED;
  }

  /** @param point - of the ground, y = 0; null where nothing has to stand on it @returns whether toe and height are there */
  judge(point: Vector | null): boolean {
    const { corner } = this.base;
    const { spindle, turn, contact, contactRise } = wheelStance(corner, this.standing, this.ownFrame);
    const toeMiss = -steerOf(spindle, this.ownFrame) - this.wanted;
    const heightMiss = point === null ? 0 : dot(subtract(contact, point), this.ownFrame.normal);
    const { moved } = this;
    if (moved !== null && Math.abs(moved.parameter) > SMALLEST_MOVE) {
      this.slope = (toeMiss - this.toeMiss - this.toePerTravel * moved.travel) / moved.parameter;
      this.lift = (heightMiss - this.heightMiss - this.rise * moved.travel) / moved.parameter;
    }
    this.toeMiss = toeMiss;
    this.heightMiss = heightMiss;
    this.toePerTravel = -steerChange(spindle, cross(turn, spindle), this.ownFrame);
    this.rise = contactRise;
    return Math.abs(toeMiss) < TOE_REACHED && Math.abs(heightMiss) < HEIGHT_STOP_MM;
  }

  /** One step of Newton in parameter and travel. @returns whether the side can be put together there, near where it was */
  correct(): boolean {
    const { slope, lift, rise, toePerTravel, toeMiss, heightMiss, hasHeight } = this;
    if (slope === null) return false;
    const determinant = hasHeight ? slope * rise - lift * toePerTravel : slope;
    const parameter = hasHeight ? (toePerTravel * heightMiss - rise * toeMiss) / determinant : -toeMiss / determinant;
    const travel = hasHeight ? (lift * toeMiss - slope * heightMiss) / determinant : 0;
    // the slope of the reset that this one follows is a few per cent off at worst: a long step is none of a neighbour
    if (!(Math.abs(parameter) < 8 * this.law.step)) return false;
    this.parameter += parameter;
    this.travel += travel;
    this.moved = { parameter, travel };
    const { kernel, home } = this.base.corner;
    return turnNear(this.axle, kernel, home, this.rod.index, this.rod.lengthAt(this.law.setting(this.parameter)));
  }

  end(): Followed {
    const { base, rod, law, parameter, travel, slope, lift, standing } = this;
    const side = rod.take(law.setting(parameter), base.corner);
    return { side, standing, travel, found: { parameter, slope, lift, travel, poses: { home: base.corner.home, standing } } };
  }
}
