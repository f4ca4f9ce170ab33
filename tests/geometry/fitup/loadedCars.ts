import { readFileSync } from 'node:fs';
import {
  assembleCar,
  findSetup,
  parseCar,
  placeAxle,
  toMechanism,
  type AssembledCar,
  type AxleName,
  type PlacedCorner,
  type Position,
  type SideName,
} from '../../../geometry/index';
import { linkLoads, type CaseLoads, type LinkLoad, type LinkLoads } from '../../../geometry/fitup/loads/linkLoads';
import type { LoadCase, WheelForces } from '../../../geometry/fitup/loads/loadCase';
import type { CarDocument } from '../../../geometry/car/document';
import { goldenDocument } from '../../golden/goldenCars';

export const sample = (name: string): CarDocument =>
  JSON.parse(readFileSync(new URL(`../../../samples/${name}.jounce.json`, import.meta.url), 'utf8')) as CarDocument;

export function stand(document: CarDocument, setup?: string): AssembledCar {
  const parsed = parseCar(JSON.stringify(document));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const name = setup ?? Object.keys(document.setups ?? {})[0] ?? 'Baseline';
  const car = assembleCar(toMechanism(parsed.value.document), findSetup(document, name));
  if (!car.ok) throw new Error(car.failure.message);
  return car.value;
}

export const golden = (name: string, setup = 'Baseline'): AssembledCar => stand(goldenDocument(name), setup);

const NOTHING: WheelForces = { Fx: 0, Fy: 0, Fz: 0, Mz: 0, driven: false };
export const forces = (given: Partial<WheelForces>): WheelForces => ({ ...NOTHING, ...given });

/** The same on the left and the right wheel of both axles. */
export function caseOf(wheel: Partial<WheelForces>, right = wheel): LoadCase {
  const both = { left: forces(wheel), right: forces(right) };
  return { name: 'Given', invented: false, g: null, rule: null, front: both, rear: both, remarks: [] };
}

export function loadsOf(car: AssembledCar, one: LoadCase, position: Position = {}): CaseLoads {
  return answerOf(car, [one], position).cases[0];
}

export function answerOf(car: AssembledCar, cases: readonly LoadCase[], position: Position = {}): LinkLoads {
  const answer = linkLoads(car, cases, position);
  if (!answer.ok) throw new Error(answer.failure.message);
  return answer.value;
}

export const rowOf = (loads: CaseLoads, axle: AxleName, side: SideName, link: string): LinkLoad => {
  const row = loads.rows.find((one) => one.axle === axle && one.side === side && one.link === link);
  if (row === undefined) throw new Error(`no row ${axle} ${side} ${link}`);
  return row;
};

export const carriedOf = (loads: CaseLoads, axle: AxleName, side: SideName): CaseLoads['carried'][number] =>
  loads.carried.find((one) => one.axle === axle && one.side === side)!;

export function placed(car: AssembledCar, axle: AxleName, side: SideName, position: Position = {}): PlacedCorner {
  const own = car[axle]!.mechanism.steering === null ? { ...position, rack: 0 } : position;
  const answer = placeAxle(car, axle, own);
  if (!answer.ok) throw new Error(answer.failure.message);
  return answer.value[side];
}
