import { axleSetting, type AxleSetting } from '../axle/axleSetting';
import { axleSolver, placeTracks, type AxleSolver, type Placed } from '../axle/axleSolver';
import type { RollCentre } from '../axle/rollCentre';
import type { AxleName } from '../car/document';
import { succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { frameFor } from '../setup/axleGround';
import type { AssembledCar } from '../setup/assembleCar';
import { axisTrackOf, axleReadings, type Straight } from './axleReadings';
import { casterBySwing } from './casterBySwing';
import { solvedCorner, type SolvedCorner } from './cornerReadings';
import { AXIS_READINGS, BAR_OUT_OF_REACH, FAR_FRONT, FAR_SIDE, NO_AXIS_REASONS, PARALLEL, RACK_CENTRED, standingReasons, SWING_OUT_OF_REACH, type StandingReasons } from './reasons';
import type { AxleRow, CornerReadings, PerSide, Position, RowWarning } from './rows';
import { suspendedState, type SuspendedState } from './suspendedReadings';

/** Everything that the rows of one axle share. */
export interface RowMaker {
  readonly solver: AxleSolver;
  readonly setting: AxleSetting;
  /** "left.casterBySwing" -> reason, for what no position can change */
  readonly why: Readonly<Record<string, string>>;
  readonly warnings: readonly RowWarning[];
}

export function rowMaker(car: AssembledCar, name: AxleName): Result<RowMaker, Failure> {
  const solver = axleSolver(car, name);
  if (!solver.ok) return solver;
  const setting = axleSetting(car, name);
  const reasons = standingReasons(solver.value, setting);
  return succeed({ solver: solver.value, setting, why: dotted(reasons), warnings: standingWarnings(solver.value, setting) });
}

function dotted({ corner, both }: StandingReasons): Record<string, string> {
  const why: Record<string, string> = {};
  for (const side of ['left', 'right']) for (const [key, reason] of Object.entries(corner)) why[`${side}.${key}`] = reason;
  for (const [key, reason] of Object.entries(both)) why[`both.${key}`] = reason;
  return why;
}

function standingWarnings({ axle }: AxleSolver, setting: AxleSetting): RowWarning[] {
  const warnings: RowWarning[] = [];
  if (setting.springDatum.left.by === 'weight') {
    warnings.push({ code: 'spring-force-from-weight', path: `${axle.axle}.spring`, message: 'Spring force is taken from the sprung corner weight, for the file does not give freeLength and installed.' });
  }
  if (axle.toeReset !== null && !axle.toeReset.inRange) {
    warnings.push({ code: 'toe-reset-out-of-range', path: `${axle.axle}.adjusters.${axle.toeReset.adjuster}`, message: `The toe reset needs ${axle.toeReset.adjuster} at ${axle.toeReset.left} left, ${axle.toeReset.right} right: outside its range.` });
  }
  return warnings;
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
  const placement = placeTracks(solver, solver.main, position);
  if (!placement.ok) return placement;
  const placed = placement.value;
  const corners = solvedCorners(solver, placed, solver.main);
  const suspended = { left: suspendedOf(maker, placed, corners.left, 'left'), right: suspendedOf(maker, placed, corners.right, 'right') };
  const straight = placed.rack === 0 ? null : straightOf(maker, placed, position);
  if (straight !== null && !straight.ok) return straight;
  const { own, rollCentre } = axleReadings(solver, setting, placed, corners, suspended, straight === null ? null : straight.value);
  const left = cornerRow(maker, placed, corners.left, suspended.left, suspended.right, 'left');
  const right = cornerRow(maker, placed, corners.right, suspended.right, suspended.left, 'right');
  const both = { ...own, loadTransferGeometric: null, loadTransferElastic: null, loadTransferUnsprung: null };
  const { standing } = solver.axle;
  const row: AxleRow = {
    axle: solver.axle.axle,
    travel: placed.travel,
    travelFromStanding: { left: placed.travel.left - standing.left, right: placed.travel.right - standing.right },
    rack: placed.rack,
    roll: placed.roll,
    left,
    right,
    both,
    why: whyOf(maker, placed, corners, left, right, rollCentre, own),
    toeReset: solver.axle.toeReset,
    warnings: maker.warnings,
  };
  return succeed({ maker, placed, corners, suspended, rollCentre, row });
}

function solvedCorners(solver: AxleSolver, placed: Placed, tracks: AxleSolver['main']): PerSide<SolvedCorner> {
  const { axle, standing } = solver;
  const longer = axle.axle === 'front' ? 1 : -1;
  const of = (side: 'left' | 'right'): SolvedCorner =>
    solvedCorner(axle[side], tracks[side].motion, frameFor(axle[side], placed.frame), { standingContact: standing.contact[side], groundPoint: placed.groundPoint, longer });
  return { left: of('left'), right: of('right') };
}

function suspendedOf({ solver, setting }: RowMaker, placed: Placed, corner: SolvedCorner, side: 'left' | 'right'): SuspendedState {
  const { axle } = solver;
  const { spring, damper } = axle.mechanism;
  return suspendedState(axle[side], spring, damper, setting.springRate, setting.springDatum[side], solver.main[side].motion, placed.rack, frameFor(axle[side], placed.frame), corner.stance.contactRise);
}

/** The same position with the rack centred; with roll the travels are found anew there. */
function straightOf({ solver }: RowMaker, placed: Placed, position: Position): Result<Straight, Failure> {
  const centred = placeTracks(solver, solver.straight, { ...position, rack: 0 });
  if (!centred.ok) return centred;
  const corners = solvedCorners(solver, centred.value, solver.straight);
  return succeed({
    steer: { left: corners.left.readings.steerAngle, right: -corners.right.readings.steerAngle },
    axisTrack: axisTrackOf(corners, solver, centred.value.frame.left),
  });
}

function cornerRow({ solver }: RowMaker, placed: Placed, solved: SolvedCorner, own: SuspendedState, other: SuspendedState, side: 'left' | 'right'): CornerReadings {
  const { axle, swing } = solver;
  const { corner } = axle[side];
  const r = solved.readings;
  const bySwing = corner.isSteered ? casterBySwing(corner, swing[side], placed.travel[side], frameFor(axle[side], placed.frame)) : null;
  const twist = own.bar === null || other.bar === null ? null : barSense(axle[side].parts.bar!) * (own.bar.turn - other.bar.turn);
  return {
    camber: r.camber,
    camberToBody: r.camberToBody,
    toe: r.toe,
    steerAngle: r.steerAngle,
    caster: r.caster,
    casterBySwing: bySwing,
    kingpinInclination: r.kingpinInclination,
    mechanicalTrail: r.mechanicalTrail,
    scrubRadius: r.scrubRadius,
    trailAtWheelCentre: r.trailAtWheelCentre,
    scrubAtWheelCentre: r.scrubAtWheelCentre,
    camberGain: r.camberGain,
    bumpSteer: r.bumpSteer,
    frontViewInstantCentre: r.frontViewInstantCentre,
    sideViewInstantCentre: r.sideViewInstantCentre,
    swingArmLength: r.swingArmLength,
    sideViewSwingArmLength: r.sideViewSwingArmLength,
    wheelCentre: r.wheelCentre,
    contactCentre: r.contactCentre,
    halfTrack: r.halfTrack,
    wheelbaseChange: r.wheelbaseChange,
    bodyHeight: r.bodyHeight,
    longitudinalSlopeContact: r.longitudinalSlopeContact,
    longitudinalSlopeWheelCentre: r.longitudinalSlopeWheelCentre,
    lateralSlopeContact: r.lateralSlopeContact,
    jackingPerLateral: r.jackingPerLateral,
    jackingPerLongitudinal: r.jackingPerLongitudinal,
    springRatio: own.springRatio,
    springTravel: own.springTravel,
    springForce: own.springForce,
    wheelRate: own.wheelRate,
    damperRatio: own.damperRatio,
    damperTravel: own.damperTravel,
    bumpLeft: own.bumpLeft,
    solidLeft: own.solidLeft,
    droopLeft: own.droopLeft,
    barRatio: own.bar === null ? null : own.bar.ratio,
    barTwist: twist === null || twist === 0 ? (twist === null ? null : 0) : twist,
  };
}

/** +1 where bump turns the arm by the right-hand rule about the bar's axis: an arm that lies ahead of the bar turns the other way than one behind. */
function barSense(bar: { readonly pivot: readonly number[]; readonly armEnd: readonly number[]; readonly axis: readonly number[] }): 1 | -1 {
  // rise of the arm's end per turn: (axis × arm)·Z
  const rise = bar.axis[0] * (bar.armEnd[1] - bar.pivot[1]) - bar.axis[1] * (bar.armEnd[0] - bar.pivot[0]);
  return rise < 0 ? -1 : 1;
}

function whyOf(maker: RowMaker, placed: Placed, corners: PerSide<SolvedCorner>, left: CornerReadings, right: CornerReadings, centre: RollCentre | null, own: Pick<AxleRow['both'], 'ackermann'>): Readonly<Record<string, string>> {
  let why: Record<string, string> | null = null;
  const add = (key: string, reason: string): void => {
    why ??= { ...maker.why };
    why[key] ??= reason;
  };
  for (const [side, readings, solved] of [['left', left, corners.left], ['right', right, corners.right]] as const) {
    if (typeof solved.axis === 'string') for (const key of AXIS_READINGS) add(`${side}.${key}`, NO_AXIS_REASONS[solved.axis]);
    if (readings.frontViewInstantCentre === null) for (const key of ['frontViewInstantCentre', 'swingArmLength']) add(`${side}.${key}`, FAR_FRONT);
    if (readings.sideViewInstantCentre === null) for (const key of ['sideViewInstantCentre', 'sideViewSwingArmLength']) add(`${side}.${key}`, FAR_SIDE);
    if (readings.casterBySwing === null && maker.solver.axle.left.corner.isSteered) add(`${side}.casterBySwing`, SWING_OUT_OF_REACH);
    if (readings.barRatio === null || readings.barTwist === null) for (const key of ['barRatio', 'barTwist'] as const) if (readings[key] === null) add(`${side}.${key}`, BAR_OUT_OF_REACH);
  }
  if (centre === null) for (const key of ['rollCentreHeight', 'rollCentreOffset']) add(`both.${key}`, PARALLEL);
  if (maker.solver.axle.mechanism.steering !== null && own.ackermann === null) {
    const reason = placed.rack === 0 ? RACK_CENTRED : 'the wheels are not turned, or the steering axes do not meet the ground';
    add('both.ackermann', reason);
    add('both.turningCircle', reason);
    add('both.steeringRatio', reason);
  }
  return why ?? maker.why;
}

