import type { AssembledCar, AxleName, PlacedCorner, Position, SideName, Vector } from '../../../geometry/index';
import { add, cross, dot, length, scale, subtract, unit } from '../../../geometry/core/vector';
import type { CarDocument } from '../../../geometry/car/document';
import type { WheelForces } from '../../../geometry/fitup/loads/loadCase';
import { placed } from './loadedCars';

/**
 * Statics of one corner by another way: six equations in the car's frame, moments about the contact centre, from the places of the
 * points alone. What a loaded rod or arm hands on is found from how its point moves when its outer end is moved, by differences.
 * Only for setups that move no centre inside an arm.
 */
export interface Statics {
  /** tension of each rod, in the order of the file [N] */
  readonly rods: readonly number[];
  /** on the knuckle at the strut's top or the trailing arm's pivot [N] */
  readonly pivot: Vector | null;
  /** push of spring or stand-in [N] */
  readonly push: number;
  readonly barLink: number;
}

type Row = number[];

export function statics(
  document: CarDocument,
  car: AssembledCar,
  name: AxleName,
  side: SideName,
  position: Position,
  wheel: WheelForces,
): Statics {
  const corner = placed(car, name, side, position);
  const about = corner.contactCentre;
  const column = (force: Vector, at: Vector): Row => [...force, ...cross(subtract(at, about), force)];
  const columns: Row[] = corner.rods.map(({ inner, outer }) => column(unit(subtract(inner, outer)), outer));
  const held = corner.strut !== null ? unit(subtract(corner.strut.top, corner.strut.foot)) : corner.trailingArm?.axis;
  const at = corner.strut?.top ?? corner.trailingArm?.pivot;
  const lateral: Vector[] = [];
  if (held !== undefined && at !== undefined) {
    const first = unit(cross(held, [0.3, 0.5, 0.7]));
    lateral.push(first, cross(unit(held), first));
    for (const u of lateral) columns.push(column(u, at));
  }
  const axle = document[name]!;
  const handsOn = (on: string | undefined, point: Vector, force: Vector): Row =>
    throughPart(document, name, side, corner, on, point, force, column);
  // what balances the free travel: the spring, around the strut too, or the damper in its place
  const { spring, damper } = axle;
  const [carrier, ends] =
    spring?.upper !== undefined
      ? [spring.lowerOn, corner.spring!]
      : spring === undefined && damper?.upper !== undefined
        ? [damper.lowerOn, corner.damper!]
        : [undefined, null];
  if (ends !== null) columns.push(handsOn(carrier, ends.lower, unit(subtract(ends.lower, ends.upper))));
  else if (corner.strut !== null) columns.push(column(unit(subtract(corner.strut.foot, corner.strut.top)), corner.strut.top));
  else columns.push(column([0, 0, -1], corner.wheelCentre));

  const barLink = linkTension(document, car, name, side, position);
  const load = new Array<number>(6).fill(0);
  const onto = (row: Row): void => row.forEach((value, i) => (load[i] += value));
  const n = groundNormal(car, name, position);
  const ahead = unit(subtract([1, 0, 0], scale(n, n[0])));
  const left = cross(n, ahead);
  onto(column(add(scale(left, wheel.Fy), scale(n, wheel.Fz)), corner.contactCentre));
  onto(column(scale(ahead, wheel.Fx), wheel.driven ? corner.wheelCentre : corner.contactCentre));
  onto([0, 0, 0, ...scale(n, wheel.Mz)]);
  if (corner.bar !== null && barLink !== 0) {
    const { armEnd, linkEnd } = corner.bar;
    onto(handsOn(axle.antiRollBar!.linkOn, linkEnd, scale(unit(subtract(armEnd, linkEnd)), barLink)));
  }
  const found = solveSix(load.map((value, i) => [...columns.map((one) => one[i]), -value]));
  const pivot = lateral.length === 0 ? null : add(scale(lateral[0], found[3]), scale(lateral[1], found[4]));
  return { rods: found.slice(0, corner.rods.length), pivot, push: found[5], barLink };
}

/** The ground's normal from pitch and roll as the contract defines it. */
function groundNormal(car: AssembledCar, _name: AxleName, { roll = 0 }: Position): Vector {
  const c = Math.cos(car.pitch);
  return [-Math.sin(car.pitch), c * Math.sin(roll), c * Math.cos(roll)];
}

function throughPart(
  document: CarDocument,
  name: AxleName,
  side: SideName,
  corner: PlacedCorner,
  on: string | undefined,
  point: Vector,
  force: Vector,
  column: (force: Vector, at: Vector) => Row,
): Row {
  const axle = document[name]!;
  const rods = axle.rods ?? {
    armFront: ['armFront', 'ballJoint'],
    armRear: ['armRear', 'ballJoint'],
    tieRod: ['rackEnd', 'tieRodEnd'],
  };
  const own = on === 'arm' ? 'armFront' : on;
  if (own === undefined || !Object.hasOwn(rods, own)) return column(force, point);
  const [innerName, outerName] = rods[own];
  const twin = Object.entries(rods).find(([other, [, outer]]) => other !== own && outer === outerName);
  const now = corner.rods.find((rod) => rod.name === own)!;
  if (twin !== undefined) {
    // balance of the arm's moments about the line of its inner joints
    const other = corner.rods.find((rod) => rod.name === twin[0])!;
    const line = unit(subtract(other.inner, now.inner));
    const square = unit(cross(line, subtract(now.outer, now.inner)));
    const about = (f: Vector, p: Vector): number => dot(cross(subtract(p, now.inner), f), line);
    return column(scale(square, about(force, point) / about(square, now.outer)), now.outer);
  }
  // a rod: its point follows the least rotation from the design direction; work of the load when the outer end moves by h
  const design = (key: string): Vector => {
    const [x, y, z] = (side === 'right' ? axle.right?.points?.[key] : undefined) ?? axle.points[key];
    return side === 'right' && axle.right?.points?.[key] === undefined ? [x, -y, z] : [x, y, z];
  };
  const e0 = unit(subtract(design(outerName), design(innerName)));
  const offset = leastTurn(unit(subtract(now.outer, now.inner)), e0, subtract(point, now.inner));
  const h = 1e-3;
  const along = unit(subtract(now.outer, now.inner));
  const work = ([0, 1, 2] as const).map((axis) => {
    const step: Vector = [axis === 0 ? h : 0, axis === 1 ? h : 0, axis === 2 ? h : 0];
    const at = (sign: number): Vector => leastTurn(e0, unit(subtract(add(now.outer, scale(step, sign)), now.inner)), offset);
    return dot(force, subtract(at(1), at(-1))) / (2 * h);
  }) as unknown as Vector;
  return column(subtract(work, scale(along, dot(work, along))), now.outer);
}

/** Turns v by the least rotation from one unit vector to another: axis and angle (Rodrigues). */
function leastTurn(from: Vector, to: Vector, v: Vector): Vector {
  const k = cross(from, to);
  const sine = length(k);
  if (sine < 1e-15) return v;
  const axis = scale(k, 1 / sine);
  const angle = Math.atan2(sine, dot(from, to));
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return add(add(scale(v, c), scale(cross(axis, v), s)), scale(axis, dot(axis, v) * (1 - c)));
}

/** Tension of the bar's link: rate × arm² × difference of the arms' turns = moment of the link about the bar. */
function linkTension(document: CarDocument, car: AssembledCar, name: AxleName, side: SideName, position: Position): number {
  const bar = document[name]!.antiRollBar;
  const rate = car[name]!.setup?.barRate ?? bar?.rate ?? 0;
  if (bar === undefined || rate === 0) return 0;
  // everything of the right mirrored to the left, where the arms' turns can be compared
  const flip = (which: SideName, [x, y, z]: Vector): Vector => (which === 'left' ? [x, y, z] : [x, -y, z]);
  const axis = unit(bar.axis ?? [0, 1, 0]);
  const square = (v: Vector): Vector => subtract(v, scale(axis, dot(v, axis)));
  const atRest = square(subtract(bar.armEnd, bar.pivot));
  const turn = (which: SideName): number => {
    const end = flip(which, placed(car, name, which, position).bar!.armEnd);
    const arm = square(subtract(end, bar.pivot));
    return Math.atan2(dot(axis, cross(atRest, arm)), dot(atRest, arm));
  };
  const other = side === 'left' ? 'right' : 'left';
  const torque = -rate * dot(atRest, atRest) * (turn(side) - turn(other));
  const { armEnd, linkEnd } = placed(car, name, side, position).bar!;
  const [a, l] = [flip(side, armEnd), flip(side, linkEnd)];
  return -torque / dot(axis, cross(subtract(a, bar.pivot), unit(subtract(l, a))));
}

/** Gauss elimination with row exchange. @param rows - six equations, right-hand side last */
function solveSix(rows: number[][]): number[] {
  for (let i = 0; i < 6; i++) {
    let best = i;
    for (let k = i; k < 6; k++) if (Math.abs(rows[k][i]) > Math.abs(rows[best][i])) best = k;
    [rows[i], rows[best]] = [rows[best], rows[i]];
    for (let k = 0; k < 6; k++) {
      if (k === i) continue;
      const factor = rows[k][i] / rows[i][i];
      for (let j = i; j < 7; j++) rows[k][j] -= factor * rows[i][j];
    }
  }
  return rows.map((row, i) => row[6] / row[i]);
}
