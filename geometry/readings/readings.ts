import type { AxleName } from '../car/document';
import { loadTransfers, rollGradient } from '../axle/loadTransfer';
import type { CarMasses } from '../axle/masses';
import { succeed, type Result } from '../core/result';
import { inCar } from '../axle/axleSolver';
import { dot, subtract } from '../core/vector';
import type { Failure } from '../corner/failure';
import type { AssembledCar } from '../setup/assembleCar';
import { LOAD_TRANSFERS, transferLacks } from './reasons';
import { rowMaker, solveRow, type RowMaker, type SolvedRow } from './axleRow';
import type { AxleReadings, AxleRow, CornerReadings, Position, WholeCarReadings, WholeCarRow } from './rows';
import { scopeOf, WHOLE_ROW, type Scope } from './scope';

/** Readings of the whole car at one position: a missing axle is null. */
export interface CarReadings {
  readonly front: Result<AxleRow, Failure> | null;
  readonly rear: Result<AxleRow, Failure> | null;
  readonly wholeCar: WholeCarReadings;
  /** "rollGradient" -> why it is null */
  readonly why: Readonly<Record<string, string>>;
}

/**
 * All readings of one axle at one position.
 * @param position - travel from where the car stands [mm], rack [mm], roll [rad]; default standing, rack centred, level
 * @returns the row, or why it cannot be reached
 * @throws RangeError on a position that makes no sense (not finite, rack on an unsteered axle, roll with unequal travels)
 */
export function readingsOfAxle(car: AssembledCar, axle: AxleName, position: Position = {}): Result<AxleRow, Failure> {
  return sweepAxle(car, axle, [position])[0];
}

/** The same at many positions, each from its neighbour: an unreachable one keeps its place with its reason. */
export function sweepAxle(car: AssembledCar, axle: AxleName, positions: readonly Position[]): Result<AxleRow, Failure>[] {
  const rows = carRows(car);
  return positions.map((position) => {
    const solved = rows.solve(axle, position);
    return solved.ok ? succeed(solved.value.row) : solved;
  });
}

/** Some readings of an axle at one position: those asked for, and whatever came with them. */
export interface SomeReadings {
  readonly left: Partial<CornerReadings>;
  readonly right: Partial<CornerReadings>;
  readonly both: Partial<AxleReadings>;
  /** "left.caster" -> why it is null, for the readings asked for */
  readonly why: AxleRow['why'];
}

/**
 * `sweepAxle` for a few readings: what only others need is not worked out.
 * @param keys - readings of a corner or of the axle, such as "camber", "rollCentreHeight"; any other may be null without a reason
 * @param reasons - false: numbers alone, no `why`
 */
export function sweepReadings(
  car: AssembledCar,
  axle: AxleName,
  positions: readonly Position[],
  keys: readonly string[],
  reasons = true,
): Result<SomeReadings, Failure>[] {
  const rows = carRows(car, scopeOf(keys, reasons));
  return positions.map((position) => {
    const solved = rows.solve(axle, position);
    return solved.ok ? succeed(solved.value.row) : solved;
  });
}

/** All readings of both axles and of the whole car at one position; the rack moves steered axles only. */
export function readingsOfCar(car: AssembledCar, position: Position = {}): CarReadings {
  return sweepCar(car, [position])[0];
}

export function sweepCar(car: AssembledCar, positions: readonly Position[]): CarReadings[] {
  const rows = carRows(car);
  return positions.map((position) => {
    const front = car.front === null ? null : rows.solve('front', position);
    const rear = car.rear === null ? null : rows.solve('rear', position);
    const row = (solved: Result<SolvedRow, Failure> | null): Result<AxleRow, Failure> | null =>
      solved === null ? null : solved.ok ? succeed(solved.value.row) : solved;
    const { readings, why } = wholeCarRow(car, front, rear);
    return { front: row(front), rear: row(rear), wholeCar: readings, why };
  });
}

interface CarRows {
  solve(axle: AxleName, position: Position): Result<SolvedRow, Failure>;
}

/** Row makers of a car, with load transfer filled in where the file gives masses and rates of both axles. */
function carRows(car: AssembledCar, scope: Scope = WHOLE_ROW): CarRows {
  const makers: Partial<Record<AxleName, Result<RowMaker, Failure>>> = {};
  const makerOf = (axle: AxleName): Result<RowMaker, Failure> => (makers[axle] ??= rowMaker(car, axle, scope));
  let last: { position: Position; rows: Partial<Record<AxleName, Result<SolvedRow, Failure>>> } | null = null;
  const solveOwn = (axle: AxleName, position: Position): Result<SolvedRow, Failure> => {
    if (last?.position !== position) last = { position, rows: {} };
    const { rows } = last;
    return (rows[axle] ??= solveAt(makerOf(axle), car, axle, position));
  };
  return {
    solve(axle, position) {
      const own = solveOwn(axle, position);
      if (!own.ok || !scope.transfer || transferLacks(own.value.maker.setting) !== null) return own;
      const lacking = transferLacksAt(own.value);
      if (lacking !== null) return succeed(withTransfer(own.value, null, lacking));
      const otherName = axle === 'front' ? 'rear' : 'front';
      if (car[otherName] === null) return succeed(withTransfer(own.value, null, `the ${otherName} axle is not put together`));
      const other = solveOwn(otherName, position);
      if (!other.ok)
        return succeed(withTransfer(own.value, null, `the ${otherName} axle cannot be there: ${other.failure.message}`));
      return succeed(withTransfer(own.value, other.value, transferLacksAt(other.value)));
    },
  };
}

/** The rack moves steered axles only: an unsteered one is asked with the rack centred. */
function solveAt(
  maker: Result<RowMaker, Failure>,
  car: AssembledCar,
  axle: AxleName,
  position: Position,
): Result<SolvedRow, Failure> {
  if (!maker.ok) return maker;
  const isSteered = car[axle]!.left.corner.isSteered;
  return solveRow(maker.value, isSteered || (position.rack ?? 0) === 0 ? position : { ...position, rack: 0 });
}

/** What an axle lacks for load transfer at one position; null when nothing. */
function transferLacksAt(solved: SolvedRow): string | null {
  const name = solved.maker.solver.axle.axle;
  if (solved.row.both.rollStiffness === null)
    return `the roll stiffness of the ${name} axle is not known: ${solved.row.why['both.rollStiffness']}`;
  return solved.rollCentre === null ? `the ${name} axle has no roll centre here` : null;
}

/** Puts load transfer into a row that was just made and has not left this file. */
function withTransfer(solved: SolvedRow, other: SolvedRow | null, lacking: string | null): SolvedRow {
  const roll = other === null || lacking !== null ? null : rollOfCar(solved, other);
  const { row, maker } = solved;
  if (roll === null || roll.gradient === null) {
    const reason = lacking ?? 'the springs do not hold the body upright';
    const why = { ...row.why };
    for (const key of LOAD_TRANSFERS) why[`both.${key}`] = reason;
    return { ...solved, row: { ...row, why } };
  }
  const { own } = maker.setting;
  const sprung = own!.sprung.left + own!.sprung.right;
  const axle = {
    sprung,
    unsprung: own!.unsprung,
    unsprungHeight: wheelHeight(solved),
    rollCentreHeight: solved.rollCentre!.height,
    track: row.both.track,
    stiffness: row.both.rollStiffness!,
  };
  const transfer = loadTransfers(axle, roll.gradient);
  const both: { -readonly [Key in keyof AxleReadings]: AxleReadings[Key] } = row.both;
  both.loadTransferGeometric = transfer.geometric;
  both.loadTransferElastic = transfer.elastic;
  both.loadTransferUnsprung = transfer.unsprung;
  return solved;
}

/** Mean height of the wheel centres over the ground [mm]. */
function wheelHeight({ maker, placed, corners }: SolvedRow): number {
  const { axle } = maker.solver;
  const height = (side: 'left' | 'right'): number =>
    dot(subtract(inCar(axle[side], corners[side].stance.centre), placed.groundPoint), placed.frame.normal);
  return 0.5 * (height('left') + height('right'));
}

interface RollOfCar {
  readonly gradient: number | null;
  /** of the car's centre of gravity over the roll axis [mm] */
  readonly overAxis: number;
  /** + roll centre higher at the rear [rad] */
  readonly inclination: number;
}

/** Roll of the whole car from its two axles at one position. */
function rollOfCar(one: SolvedRow, other: SolvedRow): RollOfCar {
  const [front, rear] = one.maker.solver.axle.axle === 'front' ? [one, other] : [other, one];
  const masses = one.maker.setting.masses!;
  const wheelbase = one.maker.setting.wheelbase!;
  const stiffness = front.row.both.rollStiffness! + rear.row.both.rollStiffness!;
  const inclination = Math.atan2(rear.rollCentre!.height - front.rollCentre!.height, wheelbase);
  const sprung = sprungOf(masses, wheelHeight(front), wheelHeight(rear), wheelbase);
  const arm = overAxis(front, rear, wheelbase, sprung.behindFront, sprung.height);
  return {
    gradient: rollGradient(sprung.mass, arm, stiffness),
    overAxis: overAxis(front, rear, wheelbase, masses.behindFront, masses.centreOfGravityHeight!),
    inclination,
  };
}

/** Distance of a point in the middle plane from the roll axis [mm, + over it]. */
function overAxis(front: SolvedRow, rear: SolvedRow, wheelbase: number, behindFront: number, height: number): number {
  const [f, r] = [front.rollCentre!.height, rear.rollCentre!.height];
  const below = f + ((r - f) * behindFront) / wheelbase;
  return ((height - below) * wheelbase) / Math.sqrt(wheelbase * wheelbase + (r - f) * (r - f));
}

/** The body without its wheels: the unsprung masses sit at the height of their wheel centres. */
function sprungOf(
  masses: CarMasses,
  frontHeight: number,
  rearHeight: number,
  wheelbase: number,
): { mass: number; height: number; behindFront: number } {
  const { front, rear, total } = masses;
  const mass = total - front.unsprung - rear.unsprung;
  const height = (total * masses.centreOfGravityHeight! - front.unsprung * frontHeight - rear.unsprung * rearHeight) / mass;
  return { mass, height, behindFront: (total * masses.behindFront - rear.unsprung * wheelbase) / mass };
}

function wholeCarRow(
  car: AssembledCar,
  front: Result<SolvedRow, Failure> | null,
  rear: Result<SolvedRow, Failure> | null,
): WholeCarRow {
  const none: WholeCarReadings = {
    wheelbaseLeft: null,
    wheelbaseRight: null,
    rake: null,
    rollGradient: null,
    rollAxisInclination: null,
    rollAxisToCentreOfGravity: null,
  };
  const all = (reason: string): WholeCarRow => ({
    readings: none,
    why: Object.fromEntries(Object.keys(none).map((key) => [key, reason])),
  });
  if (front === null || rear === null) return all(`the car has no ${front === null ? 'front' : 'rear'} axle`);
  if (!front.ok) return all(`the front axle cannot be there: ${front.failure.message}`);
  if (!rear.ok) return all(`the rear axle cannot be there: ${rear.failure.message}`);
  const f = front.value;
  const r = rear.value;
  const ahead = f.placed.frame.ahead;
  const wheelbase = (side: 'left' | 'right'): number =>
    dot(
      subtract(
        inCar(f.maker.solver.axle[side], f.corners[side].stance.contact),
        inCar(r.maker.solver.axle[side], r.corners[side].stance.contact),
      ),
      ahead,
    );
  const known = {
    ...none,
    wheelbaseLeft: wheelbase('left'),
    wheelbaseRight: wheelbase('right'),
    rake: car.pitch === 0 ? 0 : car.pitch,
  };
  const centres = f.rollCentre !== null && r.rollCentre !== null;
  const why: Record<string, string> = {};
  if (!centres) {
    for (const key of ['rollGradient', 'rollAxisInclination', 'rollAxisToCentreOfGravity'])
      why[key] = `the ${f.rollCentre === null ? 'front' : 'rear'} axle has no roll centre here`;
    return { readings: known, why };
  }
  const inclination = Math.atan2(r.rollCentre!.height - f.rollCentre!.height, f.maker.setting.wheelbase!);
  const lacking = transferLacks(f.maker.setting) ?? transferLacksAt(f) ?? transferLacksAt(r);
  const masses = f.maker.setting.masses;
  if (masses === null || masses.centreOfGravityHeight === null) {
    why['rollGradient'] = why['rollAxisToCentreOfGravity'] = lacking!;
    return { readings: { ...known, rollAxisInclination: inclination }, why };
  }
  const distance = overAxis(f, r, f.maker.setting.wheelbase!, masses.behindFront, masses.centreOfGravityHeight);
  const gradient = lacking === null ? rollOfCar(f, r).gradient : null;
  if (gradient === null) why['rollGradient'] = lacking ?? 'the springs do not hold the body upright';
  return {
    readings: { ...known, rollAxisInclination: inclination, rollAxisToCentreOfGravity: distance, rollGradient: gradient },
    why,
  };
}
