import { carMasses, GRAVITY, type CarMasses } from '../../axle/masses';
import type { AxleName } from '../../car/document';
import { readingsOfCar, type CarReadings } from '../../readings/readings';
import type { PerSide } from '../../readings/rows';
import type { AssembledCar } from '../../setup/assembleCar';
import type { LoadCase, WheelForces } from './loadCase';

/** What accelerations turn into wheel loads with: the car standing in its setup. */
export interface CarAtRest {
  /** load of each wheel [N] */
  readonly wheels: Readonly<Record<AxleName, PerSide<number> | null>>;
  /** load that goes across an axle per g to the side [N]; 0 where it is not known */
  readonly across: Readonly<Record<AxleName, number>>;
  /** load that goes from the rear axle to the front one per g of braking [N] */
  readonly ahead: number;
  /** the file gives no masses: the loads are made up */
  readonly isAssumed: boolean;
  readonly remarks: readonly string[];
}

/** A wheel where the file gives no masses [N]. Invented. */
const ASSUMED_WHEEL_N = 4000;

const AXLES: readonly AxleName[] = ['front', 'rear'];

export function carAtRest(car: AssembledCar): CarAtRest {
  const masses = carMasses(car.mechanism);
  if (masses === null) {
    const wheel = (axle: AxleName): PerSide<number> | null =>
      car[axle] === null ? null : { left: ASSUMED_WHEEL_N, right: ASSUMED_WHEEL_N };
    return {
      wheels: { front: wheel('front'), rear: wheel('rear') },
      across: { front: 0, rear: 0 },
      ahead: 0,
      isAssumed: true,
      remarks: [
        `The file does not give the masses of both axles: every wheel is taken to carry ${ASSUMED_WHEEL_N} N at rest, and no load moves from wheel to wheel.`,
      ],
    };
  }
  const remarks: string[] = [];
  const readings = readingsOfCar(car);
  const wheels = { front: wheelsOf(masses, 'front'), rear: wheelsOf(masses, 'rear') };
  const across = { front: transferOf(masses, readings, 'front', remarks), rear: transferOf(masses, readings, 'rear', remarks) };
  const height = masses.centreOfGravityHeight;
  const { wheelbase } = car.mechanism;
  if (height === null) remarks.push('body.centreOfGravityHeight is missing: no load moves between the axles.');
  const ahead = height === null || wheelbase === null ? 0 : (masses.total * GRAVITY * height) / wheelbase;
  return { wheels, across, ahead, isAssumed: false, remarks };
}

function wheelsOf(masses: CarMasses, axle: AxleName): PerSide<number> {
  const { sprung, unsprung } = masses[axle];
  return { left: (sprung.left + unsprung / 2) * GRAVITY, right: (sprung.right + unsprung / 2) * GRAVITY };
}

/** The three parts of the readings; else the axle's own weight on its track. */
function transferOf(masses: CarMasses, readings: CarReadings, axle: AxleName, remarks: string[]): number {
  const row = readings[axle];
  if (row === null || !row.ok) return 0;
  const { loadTransferGeometric: through, loadTransferElastic: elastic, loadTransferUnsprung: wheels, track } = row.value.both;
  if (through !== null && elastic !== null && wheels !== null) return through + elastic + wheels;
  if (masses.centreOfGravityHeight === null) {
    remarks.push(`body.centreOfGravityHeight is missing: no load moves across the ${axle} axle.`);
    return 0;
  }
  remarks.push(
    `The load transfer of the ${axle} axle has no value (${row.value.why['both.loadTransferElastic'] ?? 'not known'}): its own weight × height ÷ track is taken.`,
  );
  const { sprung, unsprung } = masses[axle];
  return ((sprung.left + sprung.right + unsprung) * GRAVITY * masses.centreOfGravityHeight) / track;
}

export const TRANSFER_RULE =
  'Loads at rest; across each axle its load transfer per g (geometric, elastic and unsprung, of the car standing); between the axles ' +
  'mass × g × height of the centre of gravity ÷ wheelbase, half to each wheel. A wheel that would lift carries nothing, the other ' +
  'one of its axle both. Sideways, an axle takes its share of the mass and each wheel of it as it is loaded; braking goes by ' +
  'body.brakeFrontShare and driving by the driven axle, half to each wheel.';

/**
 * Wheel loads of a steady acceleration.
 * @param g - [lateral, longitudinal], + to the left, + forward
 * @see W. F. Milliken, D. L. Milliken, Race Car Vehicle Dynamics, 1995, chapter 18 (from memory)
 */
export function caseOfG(
  car: AssembledCar,
  rest: CarAtRest,
  name: string,
  g: readonly [number, number],
  invented: boolean,
): LoadCase {
  const [lateral, longitudinal] = g;
  const remarks = [...rest.remarks];
  const axles = AXLES.map((axle) => axleForces(car, rest, axle, lateral, longitudinal, remarks));
  return { name, invented: invented || rest.isAssumed, g, rule: TRANSFER_RULE, front: axles[0], rear: axles[1], remarks };
}

function axleForces(
  car: AssembledCar,
  rest: CarAtRest,
  axle: AxleName,
  lateral: number,
  longitudinal: number,
  remarks: string[],
): PerSide<WheelForces> | null {
  const atRest = rest.wheels[axle];
  if (atRest === null) return null;
  // braking (longitudinal below 0) loads the front
  const fromOther = ((axle === 'front' ? -1 : 1) * longitudinal * rest.ahead) / 2;
  const toRight = lateral * rest.across[axle];
  let left = atRest.left + fromOther - toRight;
  let right = atRest.right + fromOther + toRight;
  const both = left + right;
  if (both <= 0) [left, right] = [0, 0];
  else if (left < 0) [left, right] = [0, both];
  else if (right < 0) [left, right] = [both, 0];
  if (both <= 0) remarks.push(`Both ${axle} wheels lift.`);
  else if (left === 0 || right === 0) remarks.push(`The ${axle} ${left === 0 ? 'left' : 'right'} wheel lifts.`);
  const sideways = (atRest.left + atRest.right) * lateral;
  const whole = AXLES.reduce((sum, one) => sum + (rest.wheels[one]?.left ?? 0) + (rest.wheels[one]?.right ?? 0), 0);
  const along = whole * longitudinal * shareOf(car, rest, axle, longitudinal, remarks);
  const driven = longitudinal > 0 && car.mechanism.body.driveFrontShare !== null;
  const on = (load: number): WheelForces => ({
    Fx: along / 2,
    Fy: both > 0 ? (sideways * load) / both : 0,
    Fz: load,
    Mz: 0,
    driven: driven && along !== 0,
  });
  return { left: on(left), right: on(right) };
}

/** An axle's share of the force along the car. */
function shareOf(car: AssembledCar, rest: CarAtRest, axle: AxleName, longitudinal: number, remarks: string[]): number {
  if (longitudinal === 0) return 0;
  if (car.front === null || car.rear === null) return 1;
  const { driveFrontShare, brakeFrontShare } = car.mechanism.body;
  const front = longitudinal > 0 ? driveFrontShare : brakeFrontShare;
  if (front !== null) return axle === 'front' ? front : 1 - front;
  const sum = (one: AxleName): number => rest.wheels[one]!.left + rest.wheels[one]!.right;
  if (axle === 'front')
    remarks.push(
      longitudinal > 0
        ? 'body.drivenAxle is missing: the drive is shared by weight and taken at the contact centre.'
        : 'body.brakeFrontShare is missing: braking is shared by weight.',
    );
  return sum(axle) / (sum('front') + sum('rear'));
}
