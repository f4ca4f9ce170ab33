import { axleSetting, type AxleSetting } from '../../axle/axleSetting';
import { axleSolver, placeTracks, type AxleSolver, type Placed } from '../../axle/axleSolver';
import { mirrorFrame } from '../../axle/ground';
import type { AxleName, SideName } from '../../car/document';
import { fail, succeed, type Result } from '../../core/result';
import { mirror, type Vector } from '../../core/vector';
import type { Failure } from '../../corner/failure';
import { barState } from '../../readings/barReadings';
import type { PerSide, Position } from '../../readings/rows';
import { suspendedState, type SuspendedState } from '../../readings/suspendedReadings';
import { wheelStance } from '../../readings/wheelStance';
import { frameFor } from '../../setup/axleGround';
import type { AssembledCar } from '../../setup/assembleCar';
import { cornerLoads, type Carried, type CornerLoads } from './cornerLoads';
import type { LinkRow } from './linkRow';
import type { LoadCase, WheelForces } from './loadCase';
import { worstImbalance } from './residual';

/** A row of a case: what one link of one wheel carries, in the car's frame [mm, N, N·mm]. */
export interface LinkLoad extends LinkRow {
  readonly axle: AxleName;
  readonly side: SideName;
}

export interface CornerCarried extends Carried {
  readonly axle: AxleName;
  readonly side: SideName;
  /** what the ground and the shaft put on this wheel, in the car's frame */
  readonly given: CornerLoads['given'];
}

export interface CaseLoads {
  readonly case: LoadCase;
  readonly rows: readonly LinkLoad[];
  readonly carried: readonly CornerCarried[];
  /** what is left of forces and moments of the body that is least in balance, ÷ the largest load */
  readonly residual: number;
}

export type LoadWarningCode = keyof typeof LOAD_WARNING_CODES;

/** Codes of what an answer of link loads has to say; codes never change their meaning. */
export const LOAD_WARNING_CODES = {
  'nothing-holds': 'The file gives neither spring nor damper for a corner: a force at the wheel centre stands for them.',
  'spring-force-unknown': 'The spring’s own force is not known: the file gives neither its lengths nor the masses.',
  'spring-by-weight': 'The spring’s own force comes from the weight on its corner, for want of its lengths.',
  'spring-pulls': 'The balance asks a spring to pull: the case hangs the wheel on its droop stop, or stands at another travel.',
  'bar-left-out': 'The bar’s force is left out: the file gives no rate, or a link does not reach.',
  'bar-untwisted': 'The bar carries nothing, since both wheels stand alike at this position, though a case loads them unlike.',
  'guide-unknown':
    'The file has no `strutTube`: the bending of the strut is taken at its foot, where it is more than at the guide.',
  'arm-shared': 'What an arm’s inner joints take along the line between them cannot be told apart by balance: it is shared.',
  'blade-free': 'A trailing arm is held across its bolt alone: what its blade takes along it is not modelled.',
  'past-stop': 'The damper would be past solid or past fully open: no wheel gets there, and no spring carries what is said.',
  'past-lock': 'The rack would be past its stop.',
  assumed: 'Something of a case had to be assumed: it is said what.',
} as const satisfies Readonly<Record<string, string>>;

export interface LoadWarning {
  readonly code: LoadWarningCode;
  readonly path: string;
  readonly message: string;
}

export interface LinkLoads {
  readonly cases: readonly CaseLoads[];
  readonly warnings: readonly LoadWarning[];
}

const SIDES: readonly SideName[] = ['left', 'right'];

/**
 * What every link carries in every case, with rigid links in balance at one position.
 * @param position - as for `readingsOfCar`: travel from where the car stands [mm], rack [mm], roll [rad]
 * @param only - the axles asked for
 */
export function linkLoads(
  car: AssembledCar,
  cases: readonly LoadCase[],
  position: Position = {},
  only: readonly AxleName[] = ['front', 'rear'],
): Result<LinkLoads, Failure> {
  const warnings = new Map<string, LoadWarning>();
  const warn = (code: LoadWarningCode, path: string, message: string): void => {
    if (!warnings.has(code + path)) warnings.set(code + path, { code, path, message });
  };
  const axles: StandingAxle[] = [];
  for (const name of only) {
    const axle = car[name];
    if (axle === null) continue;
    const made = axleSolver(car, name);
    if (!made.ok) return made;
    // the rack moves steered axles only
    const own = axle.mechanism.steering === null ? { ...position, rack: 0 } : position;
    const placed = placeTracks(made.value, made.value.main, own);
    if (!placed.ok) return placed;
    axles.push(standingAxle(made.value, placed.value, axleSetting(car, name), warn));
  }
  const answers: CaseLoads[] = [];
  for (const one of cases) {
    const rows: LinkLoad[] = [];
    const carried: CornerCarried[] = [];
    let residual = 0;
    for (const remark of one.remarks) warn('assumed', one.name, `${one.name}: ${remark}`);
    for (const axle of axles) {
      const wheels = one[axle.name];
      if (wheels === null) continue;
      warnOfBar(axle, wheels, one.name, warn);
      for (const side of SIDES) {
        const solved = solveSide(car, axle, side, wheels[side]);
        if (solved === null)
          return fail({
            kind: 'singular',
            axle: axle.name,
            side,
            message: `The links of the ${axle.name} ${side} wheel do not hold it here.`,
          });
        residual = Math.max(residual, worstImbalance(solved, axle.solver.axle[side].corner.loadedRadius));
        const turn = side === 'left' ? (v: Vector): Vector => v : mirror;
        const turnMoment = side === 'left' ? turn : mirrorMoment;
        rows.push(...solved.rows.map((row) => ({ axle: axle.name, side, ...inCarFrame(row, turn, turnMoment) })));
        carried.push({
          axle: axle.name,
          side,
          ...solved.carried,
          given: solved.given.map(({ at, force, moment }) => ({ at: turn(at), force: turn(force), moment: turnMoment(moment) })),
        });
        warnOf(axle.name, side, solved, one.name, warn);
      }
    }
    answers.push({ case: one, rows, carried, residual });
  }
  return succeed({ cases: answers, warnings: [...warnings.values()] });
}

/** An axle at the position, with what its springs and bar do there. */
interface StandingAxle {
  readonly name: AxleName;
  readonly solver: AxleSolver;
  readonly placed: Placed;
  readonly springForce: PerSide<number | null>;
  readonly barTorque: PerSide<number | null>;
  /** it has a rate on both sides: unhooked it carries nothing wherever the wheels stand */
  readonly isBarHooked: boolean;
}

type Warn = (code: LoadWarningCode, path: string, message: string) => void;

function standingAxle(solver: AxleSolver, placed: Placed, setting: AxleSetting, warn: Warn): StandingAxle {
  const { axle, main } = solver;
  const name = axle.axle;
  const { spring, damper, bar } = axle.mechanism;
  const forceOf = (side: SideName): number | null => {
    const ground = frameFor(axle[side], placed.frame);
    const { motion } = main[side];
    const { contactRise } = wheelStance(axle[side].corner, motion, ground);
    const datum = setting.springDatum[side];
    const state = suspendedState(axle[side], spring, damper, setting.springRate, datum, motion, placed.rack, ground, contactRise);
    warnOfStops(name, side, state, warn);
    return state.springForce;
  };
  warnOfLock(name, axle.mechanism.steering?.travel ?? null, placed.rack, warn);
  const springForce = { left: forceOf('left'), right: forceOf('right') };
  if (spring !== null) {
    if (setting.springDatum.left.by === 'weight')
      warn(
        'spring-by-weight',
        `${name}.spring`,
        `${name}: the spring’s own force is that of the weight on its corner ÷ its ratio where the car stands; give spring.freeLength and spring.installed for its own.`,
      );
    if (springForce.left === null)
      warn(
        'spring-force-unknown',
        `${name}.spring`,
        `${name}: the spring’s own force is not known; give its rate, freeLength and installed.`,
      );
  }
  const barTorque = barTorques(solver, placed, setting);
  if (bar !== null && barTorque.left === null)
    warn(
      'bar-left-out',
      `${name}.antiRollBar`,
      `${name}: the bar is left out, since ${setting.barRate.left === null ? 'it has no rate' : 'its link does not reach'}.`,
    );
  if (axle.mechanism.layout === 'strut' && solver.car.mechanism.document[name]!.strutTube === undefined)
    warn(
      'guide-unknown',
      `${name}.strutTube`,
      `${name}: without strutTube nobody knows where the guide is; bending is taken at strutFoot, where it is more.`,
    );
  if (axle.mechanism.trailingArm !== null)
    warn(
      'blade-free',
      `${name}.trailingArm`,
      `${name}: the trailing arm is held across its bolt alone; what the blade takes along the bolt is not modelled.`,
    );
  const isBarHooked = SIDES.every((side) => (setting.barRate[side] ?? 0) !== 0);
  return { name, solver, placed, springForce, barTorque, isBarHooked };
}

/** A bar that carries less than this is not twisted [N·mm]. */
const NO_TWIST = 1e-6;

/** A case of a corner is judged where the wheels stand alike: nobody should take the bar's share to be nothing. */
function warnOfBar({ name, barTorque, isBarHooked }: StandingAxle, wheels: PerSide<WheelForces>, of: string, warn: Warn): void {
  if (!isBarHooked || barTorque.left === null || Math.abs(barTorque.left) > NO_TWIST) return;
  if (wheels.left.Fz === wheels.right.Fz) return;
  warn(
    'bar-untwisted',
    `${name}.antiRollBar`,
    `${name}: both wheels stand alike here, so the bar carries nothing, in "${of}" too. Give the roll that goes with it.`,
  );
}

const tenths = (mm: number): string => mm.toFixed(1);

/** A wheel at a travel that its damper does not let it have. */
function warnOfStops(name: AxleName, side: SideName, { solidLeft, droopLeft }: SuspendedState, warn: Warn): void {
  const past = (mm: number, stop: string): void =>
    warn(
      'past-stop',
      `${name}.${side}`,
      `${name} ${side}: the damper would be ${tenths(mm)} mm past ${stop} at this travel: the wheel does not get there. Ask at a travel between its stops.`,
    );
  if (solidLeft !== null && solidLeft < 0) past(-solidLeft, 'solid');
  else if (droopLeft !== null && droopLeft < 0) past(-droopLeft, 'fully open');
}

function warnOfLock(name: AxleName, travel: readonly [number, number] | null, rack: number, warn: Warn): void {
  if (travel === null || (rack >= travel[0] && rack <= travel[1])) return;
  const mm = rack < travel[0] ? travel[0] - rack : rack - travel[1];
  warn(
    'past-lock',
    `${name}.steering`,
    `${name}: the rack would be ${tenths(mm)} mm past its stop: the wheels do not get there.`,
  );
}

/**
 * What the bar puts on each arm about its axis [N·mm], each in its left-hand frame: torque = k (ψ left − ψ right), with k the rate
 * at an arm's end × arm². Arms of unlike holes act in series, half a bar each.
 */
function barTorques({ axle, main }: AxleSolver, { rack }: Placed, setting: AxleSetting): PerSide<number | null> {
  const state = (side: SideName): { turn: number; stiffness: number } | null => {
    const bar = axle[side].parts.bar;
    const rate = setting.barRate[side];
    const now = bar === null ? null : barState(bar, axle[side].corner, main[side].motion, rack);
    return bar === null || rate === null || now === null ? null : { turn: now.turn, stiffness: rate * bar.radius * bar.radius };
  };
  const [left, right] = [state('left'), state('right')];
  if (left === null || right === null) return { left: null, right: null };
  const [a, b] = [left.stiffness, right.stiffness];
  const together = a === b ? a : a === 0 || b === 0 ? 0 : 2 / (1 / a + 1 / b);
  const torque = together * (left.turn - right.turn);
  return { left: 0 - torque, right: torque };
}

function solveSide(
  car: AssembledCar,
  { name, solver, placed, springForce, barTorque }: StandingAxle,
  side: SideName,
  wheel: WheelForces,
) {
  const own = side === 'left' ? wheel : { ...wheel, Fy: 0 - wheel.Fy, Mz: 0 - wheel.Mz };
  const { mechanism } = car;
  return cornerLoads(
    solver.axle,
    mechanism.document[name]!,
    mechanism.mmPerUnit,
    solver.axle[side],
    solver.main[side].motion,
    placed.rack,
    side === 'left' ? placed.frame : mirrorFrame(placed.frame),
    { wheel: own, springForce: springForce[side], barTorque: barTorque[side] },
  );
}

/** A moment mirrored in the car's middle plane: it turns the other way about x and z. */
const mirrorMoment = ([x, y, z]: Vector): Vector => [0 - x, y, 0 - z];

function inCarFrame(row: LinkRow, turn: (v: Vector) => Vector, turnMoment: (v: Vector) => Vector): LinkRow {
  return {
    ...row,
    ends: row.ends.map((end) => ({
      ...end,
      at: turn(end.at),
      force: turn(end.force),
      moment: end.moment === null ? null : turnMoment(end.moment),
    })),
    bending: row.bending === null ? null : { ...row.bending, at: turn(row.bending.at) },
  };
}

function warnOf(axle: AxleName, side: SideName, { rows, carried }: CornerLoads, name: string, warn: Warn): void {
  if (carried.by === 'held')
    warn(
      'nothing-holds',
      axle,
      `${axle}: the file gives neither spring nor damper; a force along the car’s Z at the wheel centre stands for them ("held"). What the links carry depends on where the spring really is.`,
    );
  else if (carried.total < 0)
    warn(
      'spring-pulls',
      `${axle}.${side}`,
      `${name}, ${axle} ${side}: the ${carried.by} would have to pull with ${Math.round(-carried.total)} N; the wheel hangs on its droop stop, or is not at this travel.`,
    );
  for (const row of rows)
    if (row.kind === 'arm')
      warn(
        'arm-shared',
        `${axle}.${row.link}`,
        `${axle} ${row.link}: what its inner joints take along the line between them cannot be told apart by balance; the outer joint’s part goes as two legs would take it, the rest is halved.`,
      );
}
