import type { AxleName } from '../car/document';
import type { Body, CarMechanism } from '../car/mechanism';
import { meanWheelCentreX } from '../car/toMechanism';

/** Standard gravity [m/s²] (3rd CGPM, 1901). */
export const GRAVITY = 9.80665;

/** Masses at one axle [kg]: what the two springs carry, and the two wheels. */
export interface AxleMasses {
  readonly sprung: { readonly left: number; readonly right: number };
  readonly unsprung: number;
}

/** Masses of the whole car: null where the file does not give enough. */
export interface CarMasses {
  readonly front: AxleMasses;
  readonly rear: AxleMasses;
  readonly total: number;
  /** over the ground at design [mm]; null where the file does not say */
  readonly centreOfGravityHeight: number | null;
  /** mm behind the front axle */
  readonly behindFront: number;
}

/**
 * Weight on each corner at design, with the point masses that `body.mass` does not include added where they sit.
 * Without a rear or front axle, and without mass, shares and unsprung masses, there is nothing to share out: null.
 */
export function carMasses(car: CarMechanism): CarMasses | null {
  const known = kept.get(car);
  if (known !== undefined) return known;
  const made = massesOf(car);
  kept.set(car, made);
  return made;
}

/** By car: no setup moves a mass. */
const kept = new WeakMap<CarMechanism, CarMasses | null>();

function massesOf(car: CarMechanism): CarMasses | null {
  const { body, front, rear, wheelbase } = car;
  if (front === null || rear === null || wheelbase === null) return null;
  if (body.mass === null || body.frontShare === null || body.unsprungFront === null || body.unsprungRear === null) return null;
  const corners = {
    front: shared(body, body.frontShare),
    rear: shared(body, 1 - body.frontShare),
  };
  const rearX = meanWheelCentreX(rear);
  let total = body.mass;
  let moment = body.mass * (body.centreOfGravityHeight ?? 0);
  for (const extra of car.document.masses ?? []) {
    if (extra.included === true) continue;
    const [x, y, z] = extra.at.map((value) => value * car.mmPerUnit);
    const toFront = (x - rearX) / wheelbase;
    total += extra.mass;
    moment += extra.mass * (z - groundHeight(car));
    for (const [name, share] of [
      ['front', toFront],
      ['rear', 1 - toFront],
    ] as const) {
      const axle = car[name]!;
      const left = axle.left.points['wheelCentre'][1];
      const right = axle.right.points['wheelCentre'][1];
      corners[name].left += (extra.mass * share * (right + y)) / (left + right);
      corners[name].right += (extra.mass * share * (left - y)) / (left + right);
    }
  }
  const frontShare = (corners.front.left + corners.front.right) / total;
  return {
    front: axleMasses(corners.front, body.unsprungFront),
    rear: axleMasses(corners.rear, body.unsprungRear),
    total,
    centreOfGravityHeight: body.centreOfGravityHeight === null ? null : moment / total,
    behindFront: (1 - frontShare) * wheelbase,
  };
}

const shared = (body: Body, share: number): { left: number; right: number } => ({
  left: body.mass! * share * body.leftShare,
  right: body.mass! * share * (1 - body.leftShare),
});

const axleMasses = (corner: { left: number; right: number }, unsprung: number): AxleMasses => ({
  sprung: { left: corner.left - unsprung, right: corner.right - unsprung },
  unsprung: 2 * unsprung,
});

/** Height of the ground at design in car coordinates, from the wheels [mm]. */
function groundHeight(car: CarMechanism): number {
  let sum = 0;
  let count = 0;
  for (const name of ['front', 'rear'] as const satisfies readonly AxleName[]) {
    const axle = car[name];
    if (axle === null) continue;
    for (const side of [axle.left, axle.right]) {
      sum += side.points['wheelCentre'][2] - side.wheel.loadedRadius * Math.cos(side.wheel.camber);
      count++;
    }
  }
  return sum / count;
}
