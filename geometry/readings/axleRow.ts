import { axleSetting, type AxleSetting } from '../axle/axleSetting';
import { axleSolver, isSameForBoth, placeTracks, type AxleSolver, type Placed } from '../axle/axleSolver';
import { mirrorFrame } from '../axle/ground';
import type { RollCentre } from '../axle/rollCentre';
import type { AxleName } from '../car/document';
import { succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { frameFor } from '../setup/axleGround';
import type { AssembledCar } from '../setup/assembleCar';
import type { NoAxis } from './steeringAxis';
import { axisTrackOf, axleReadings, type Straight } from './axleReadings';
import { casterBySwing } from './casterBySwing';
import { cornerReadings, solvedCorner, type SolvedCorner } from './cornerReadings';
import {
  AXIS_READINGS,
  BAR_OUT_OF_REACH,
  SPRINGS_LOOSE,
  FAR_FRONT,
  FAR_SIDE,
  NO_AXIS_REASONS,
  PARALLEL,
  NOT_TURNED,
  RACK_CENTRED,
  standingReasons,
  SWING_OUT_OF_REACH,
  type StandingReasons,
} from './reasons';
import type { AxleReadings, AxleRow, CornerReadings, PerSide, Position, RowWarning } from './rows';
import { standingWarnings, warningsAt } from './rowWarnings';
import { isReadOffOne, WHOLE_ROW, type Scope } from './scope';
import { NOTHING_SUSPENDED, suspendedState, type SuspendedState } from './suspendedReadings';

/** Everything that the rows of one axle share. */
export interface RowMaker {
  readonly solver: AxleSolver;
  readonly setting: AxleSetting;
  /** "left.casterBySwing" -> reason, for what no position can change */
  readonly why: Readonly<Record<string, string>>;
  /** the reasons that positions add, by which of them apply: filled as rows are made */
  readonly whyByBits: Map<number, Readonly<Record<string, string>>>;
  readonly warnings: readonly RowWarning[];
  readonly scope: Scope;
}

/** @param scope - readings that need a part left out are null in the rows, without a reason */
export function rowMaker(car: AssembledCar, name: AxleName, scope: Scope = WHOLE_ROW): Result<RowMaker, Failure> {
  const solver = axleSolver(car, name);
  if (!solver.ok) return solver;
  const setting = axleSetting(car, name, scope.springs || scope.reasons);
  return succeed({
    solver: solver.value,
    setting,
    why: scope.reasons ? dotted(standingReasons(solver.value, setting)) : {},
    whyByBits: new Map(),
    warnings: scope.reasons ? standingWarnings(solver.value, setting) : [],
    scope,
  });
}

function dotted({ corner, both }: StandingReasons): Record<string, string> {
  const why: Record<string, string> = {};
  for (const side of ['left', 'right']) for (const [key, reason] of Object.entries(corner)) why[`${side}.${key}`] = reason;
  for (const [key, reason] of Object.entries(both)) why[`both.${key}`] = reason;
  return why;
}

/** What the axle's own corners give, before what needs the other axle. */
export interface SolvedRow {
  readonly maker: RowMaker;
  readonly placed: Placed;
  readonly corners: PerSide<SolvedCorner>;
  readonly suspended: PerSide<SuspendedState>;
  readonly rollCentre: RollCentre | null;
  readonly row: AxleRow;
}

/** All readings of an axle at a position but load transfer, which needs both axles. */
export function solveRow(maker: RowMaker, position: Position): Result<SolvedRow, Failure> {
  const { solver, setting } = maker;
  const isOne = solver.axle.areTwins && isReadOffOne(maker.scope) && isSameForBoth(position);
  const placement = placeTracks(solver, solver.main, position, isOne);
  if (!placement.ok) return placement;
  const placed = placement.value;
  const corners = isOne ? twinCorners(solver, placed) : solvedCorners(solver, placed, solver.main);
  const suspended = {
    left: suspendedOf(maker, placed, corners.left, 'left'),
    right: suspendedOf(maker, placed, corners.right, 'right'),
  };
  const straight = placed.rack === 0 ? null : straightOf(maker, position);
  if (straight !== null && !straight.ok) return straight;
  const left = cornerRow(maker, placed, corners.left, suspended.left, suspended.right, 'left');
  const right = cornerRow(maker, placed, corners.right, suspended.right, suspended.left, 'right');
  const { own, rollCentre } = axleReadings(
    solver,
    setting,
    placed,
    corners,
    { left, right },
    suspended,
    straight === null ? null : straight.value,
    maker.scope.ratio,
  );
  const { standing } = solver.axle;
  const row: AxleRow = {
    axle: solver.axle.axle,
    travel: placed.travel,
    travelFromStanding: { left: placed.travel.left - standing.left, right: placed.travel.right - standing.right },
    rack: placed.rack,
    roll: placed.roll,
    left,
    right,
    both: own,
    why: maker.scope.reasons ? whyOf(maker, placed, corners, left, right, rollCentre, own) : maker.why,
    toeReset: solver.axle.toeReset,
    warnings: maker.scope.reasons ? warningsAt(solver, placed, { left, right }, maker.warnings) : maker.warnings,
  };
  return succeed({ maker, placed, corners, suspended, rollCentre, row });
}

function solvedCorners({ axle }: AxleSolver, { frame }: Placed, tracks: AxleSolver['main']): PerSide<SolvedCorner> {
  return {
    left: solvedCorner(axle.left, tracks.left.motion, frame),
    right: solvedCorner(axle.right, tracks.right.motion, frameFor(axle.right, frame)),
  };
}

/** The right of twins is what the left is, each in its own left-hand frame. */
function twinCorners({ axle, main }: AxleSolver, { frame }: Placed): PerSide<SolvedCorner> {
  const left = solvedCorner(axle.left, main.left.motion, frame);
  return { left, right: left };
}

function suspendedOf(
  { solver, setting, scope }: RowMaker,
  placed: Placed,
  corner: SolvedCorner,
  side: 'left' | 'right',
): SuspendedState {
  if (!scope.springs) return NOTHING_SUSPENDED;
  const { axle } = solver;
  const { spring, damper } = axle.mechanism;
  return suspendedState(
    axle[side],
    spring,
    damper,
    setting.springRate,
    setting.springDatum[side],
    solver.main[side].motion,
    placed.rack,
    frameFor(axle[side], placed.frame),
    corner.stance.contactRise,
  );
}

/** The same position with the rack centred; with roll the travels are found anew there. */
function straightOf({ solver }: RowMaker, position: Position): Result<Straight, Failure> {
  const centred = placeTracks(solver, solver.straight, { travel: position.travel, rack: 0, roll: position.roll });
  if (!centred.ok) return centred;
  const corners = solvedCorners(solver, centred.value, solver.straight);
  return succeed({
    steer: { left: corners.left.steer, right: corners.right.steer },
    axisTrack: axisTrackOf(corners, centred.value.frame.left),
  });
}

function cornerRow(
  { solver, scope }: RowMaker,
  placed: Placed,
  solved: SolvedCorner,
  own: SuspendedState,
  other: SuspendedState,
  side: 'left' | 'right',
): CornerReadings {
  const { axle, standing } = solver;
  const ground = side === 'left' ? placed.frame : mirrorFrame(placed.frame);
  const bySwing =
    scope.swing && axle[side].corner.isSteered
      ? casterBySwing(axle[side].corner, solver.swing[side], placed.travel[side], ground)
      : null;
  const twist = own.bar === null || other.bar === null ? null : barSense(axle[side].parts.bar!) * (own.bar.turn - other.bar.turn);
  const datum = {
    standingContact: standing.contact[side],
    groundPoint: placed.groundPoint,
    longer: axle.axle === 'front' ? 1 : -1,
  } as const;
  return cornerReadings(axle.mechanism[side], solved, ground, datum, own, bySwing, twist);
}

/** +1 where bump turns the arm by the right-hand rule about the bar's axis: an arm that lies ahead of the bar turns the other way than one behind. */
export function barSense(bar: {
  readonly pivot: readonly number[];
  readonly armEnd: readonly number[];
  readonly axis: readonly number[];
}): 1 | -1 {
  // rise of the arm's end per turn: (axis × arm)·Z
  const rise = bar.axis[0] * (bar.armEnd[1] - bar.pivot[1]) - bar.axis[1] * (bar.armEnd[0] - bar.pivot[0]);
  return rise < 0 ? -1 : 1;
}

/** The reasons of one row that depend on the position, as bits: rows of a sweep share their reasons object wherever these agree. */
const BIT = { noAxis: 3, farFront: 4, farSide: 8, noSwing: 16, noBarRatio: 32, noBarTwist: 64 } as const;
const SIDE_BITS = 7;
const PARALLEL_BIT = 1 << (2 * SIDE_BITS);
const CENTRED_BIT = PARALLEL_BIT << 1;
const NO_ACKERMANN_BIT = CENTRED_BIT << 1;
const NO_CIRCLE_BIT = NO_ACKERMANN_BIT << 1;
const NO_RATIO_BIT = NO_CIRCLE_BIT << 1;
const LOOSE_BIT = NO_RATIO_BIT << 1;
const BAR_BIT = LOOSE_BIT << 1;
const AXIS_FAULTS: readonly NoAxis[] = ['no-steering-rod', 'no-pure-turn', 'parallel-to-ground'];

function sideBits(readings: CornerReadings, solved: SolvedCorner, isSteered: boolean, hasBar: boolean): number {
  let bits = typeof solved.axis === 'string' ? AXIS_FAULTS.indexOf(solved.axis) + 1 : 0;
  if (readings.frontViewInstantCentre === null) bits |= BIT.farFront;
  if (readings.sideViewInstantCentre === null) bits |= BIT.farSide;
  if (readings.casterBySwing === null && isSteered) bits |= BIT.noSwing;
  // the twist needs both arms, the ratio only its own
  if (hasBar && readings.barRatio === null) bits |= BIT.noBarRatio;
  if (hasBar && readings.barTwist === null) bits |= BIT.noBarTwist;
  return bits;
}

function whyOf(
  maker: RowMaker,
  placed: Placed,
  corners: PerSide<SolvedCorner>,
  left: CornerReadings,
  right: CornerReadings,
  centre: RollCentre | null,
  own: AxleReadings,
): Readonly<Record<string, string>> {
  const { mechanism } = maker.solver.axle;
  const isSteered = mechanism.steering !== null;
  const hasBar = mechanism.bar !== null;
  let bits = sideBits(left, corners.left, isSteered, hasBar) | (sideBits(right, corners.right, isSteered, hasBar) << SIDE_BITS);
  if (centre === null) bits |= PARALLEL_BIT;
  if (isSteered) {
    if (placed.rack === 0) bits |= CENTRED_BIT;
    if (own.ackermann === null) bits |= NO_ACKERMANN_BIT;
    if (own.turningCircle === null) bits |= NO_CIRCLE_BIT;
    if (own.steeringRatio === null) bits |= NO_RATIO_BIT;
  }
  // what the file lacks has its reason already: these come on top where the file has all that is needed
  if (own.rideFrequency === null) bits |= LOOSE_BIT;
  if (hasBar && own.barRollStiffness === null) bits |= BAR_BIT;
  if (bits === 0) return maker.why;
  let why = maker.whyByBits.get(bits);
  if (why === undefined) {
    why = spelledOut(bits, maker.why);
    maker.whyByBits.set(bits, why);
  }
  return why;
}

function spelledOut(bits: number, standing: Readonly<Record<string, string>>): Record<string, string> {
  const why: Record<string, string> = { ...standing };
  const add = (owner: string, keys: readonly string[], reason: string): void => {
    for (const key of keys) why[`${owner}.${key}`] ??= reason;
  };
  for (const [side, shift] of [
    ['left', 0],
    ['right', SIDE_BITS],
  ] as const) {
    const own = bits >> shift;
    if ((own & BIT.noAxis) > 0) add(side, AXIS_READINGS, NO_AXIS_REASONS[AXIS_FAULTS[(own & BIT.noAxis) - 1]]);
    if (own & BIT.farFront) add(side, ['frontViewInstantCentre', 'swingArmLength'], FAR_FRONT);
    if (own & BIT.farSide) add(side, ['sideViewInstantCentre', 'sideViewSwingArmLength'], FAR_SIDE);
    if (own & BIT.noSwing) add(side, ['casterBySwing'], SWING_OUT_OF_REACH);
    if (own & BIT.noBarRatio) add(side, ['barRatio'], BAR_OUT_OF_REACH);
    if (own & BIT.noBarTwist) add(side, ['barTwist'], BAR_OUT_OF_REACH);
  }
  if (bits & PARALLEL_BIT) add('both', ['rollCentreHeight', 'rollCentreOffset'], PARALLEL);
  const unturned = bits & CENTRED_BIT ? RACK_CENTRED : NOT_TURNED;
  if (bits & NO_ACKERMANN_BIT) add('both', ['ackermann'], unturned);
  if (bits & NO_CIRCLE_BIT) add('both', ['turningCircle'], unturned);
  if (bits & NO_RATIO_BIT) add('both', ['steeringRatio'], unturned);
  if (bits & LOOSE_BIT) add('both', ['rideFrequency'], SPRINGS_LOOSE);
  if (bits & BAR_BIT) add('both', ['barRollStiffness', 'rollStiffness'], BAR_OUT_OF_REACH);
  return why;
}
