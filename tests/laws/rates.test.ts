import { describe, it } from 'vitest';
import {
  MOTION_WIDTH,
  solvePoses,
  sweepAxle,
  type AssembledCar,
  type AxleRow,
  type PoseTable,
  type Position,
} from '../../geometry/index';
import { add, cross, dot, length, reject, subtract, unit, type Vector } from '../../geometry/core/vector';
import type { AxleName } from '../../geometry/car/document';
import { AXLES, axlesApart, carsOf, lockOf, SIDES } from './assembled';
import { Breaches } from './breaches';
import { derivative, OFFSETS } from './differences';
import { SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { CENTRE_AGREEMENT } from './tolerances';

/** Travel either side of the place [mm]. */
const STEP = 2;
/** What rounding and the solver's closure leave of a difference: relative, and absolute by unit [mm/mm, rad/mm, N/mm]. */
const RELATIVE = 1e-7;
const FLOOR = { ratio: 3e-9, angle: 1e-11, rate: 1e-5 } as const;
/** A place where the extrapolation has not settled says nothing (near a fold, at the end of a spring). */
const SETTLED = 1e-5;
/** The same of a velocity [mm/mm]; what it leaves unsaid is below the slopes' own limit. */
const SETTLED_TWIST = 1e-7;

interface Place {
  readonly row: AxleRow;
  readonly around: readonly AxleRow[];
  readonly poses: PoseTable;
}

/** Rows and poses at a place, and at six on both sides of it with one wheel moved; null where any is out of reach. */
function placeOf(car: AssembledCar, axle: AxleName, side: 'left' | 'right', travel: number, rack: number): Place | null {
  const at = (d: number): Position => ({
    travel: { left: travel + (side === 'left' ? d : 0), right: travel + (side === 'right' ? d : 0) },
    rack,
  });
  const rows = sweepAxle(car, axle, [0, ...OFFSETS.map((offset) => offset * STEP)].map(at));
  const reached = rows.flatMap((row) => (row.ok ? [row.value] : []));
  if (reached.length < rows.length) return null;
  const [row, ...around] = reached;
  const travels = [0, ...OFFSETS.map((offset) => offset * STEP)].map((d) => row.travel[side] + d);
  return { row, around, poses: solvePoses(car[axle]![side].corner, { travel: travels, rack: travels.map(() => rack) }) };
}

/** Velocity and turn of the knuckle per mm of travel from poses alone, left-hand frame: d of the centre, and d of the rotation · its transpose; null where the differences have not settled. */
function twistOf({ poses }: Place): { readonly linear: Vector; readonly angular: Vector } | null {
  const at = (i: number, j: number): number => poses.motions[i * MOTION_WIDTH + j];
  const rates = Array.from({ length: 12 }, (_, j) =>
    derivative(
      OFFSETS.map((__, i) => at(i + 1, j)),
      STEP,
    ),
  );
  // rotations count as at the tyre, about 300 mm away
  if (rates.some(({ unsure }, j) => unsure * (j < 9 ? 300 : 1) > SETTLED_TWIST)) return null;
  const rate = (j: number): number => rates[j].value;
  const turn = (row: number, column: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + rate(3 * row + k) * at(0, 3 * column + k), 0);
  return {
    linear: [rate(9), rate(10), rate(11)],
    angular: [0.5 * (turn(2, 1) - turn(1, 2)), 0.5 * (turn(0, 2) - turn(2, 0)), 0.5 * (turn(1, 0) - turn(0, 1))],
  };
}

interface Looked {
  readonly breaches: Breaches;
  unsettled: number;
}

/** A reading against the derivative of another, times `sense`. */
function compare(
  looked: Looked,
  reading: number | null,
  values: readonly (number | null)[],
  sense: number,
  floor: number,
  where: () => string,
): void {
  if (reading === null) return;
  const numbers = values.filter((value) => value !== null);
  if (numbers.length < values.length) return;
  const found = derivative(numbers, STEP);
  const [value, unsure] = [sense * found.value, Math.abs(sense) * found.unsure];
  if (unsure > SETTLED * Math.abs(value) + floor) {
    looked.unsettled++;
    return;
  }
  looked.breaches.limit(Math.abs(reading - value), RELATIVE * Math.abs(value) + floor + 0.1 * unsure, where);
}

const each = <Value>(place: Place, pick: (row: AxleRow) => Value): Value[] => place.around.map(pick);

/** Radius of the bar's arm about its centre line [mm]. */
function barRadius(car: AssembledCar, axle: AxleName, side: 'left' | 'right'): number {
  const bar = car[axle]![side].parts.bar!;
  return length(reject(subtract(bar.armEnd, bar.pivot), bar.axis));
}

function comparePlace(
  looked: Looked,
  car: AssembledCar,
  axle: AxleName,
  side: 'left' | 'right',
  place: Place,
  where: string,
): void {
  const own = place.row[side];
  const at = (key: string) => (): string => `${where} ${side}.${key}`;
  compare(
    looked,
    own.camberGain,
    each(place, (row) => row[side].camber),
    1,
    FLOOR.angle,
    at('camberGain'),
  );
  compare(
    looked,
    own.bumpSteer,
    each(place, (row) => row[side].toe),
    1,
    FLOOR.angle,
    at('bumpSteer'),
  );
  compare(
    looked,
    own.springRatio,
    each(place, (row) => row[side].springTravel),
    1,
    FLOOR.ratio,
    at('springRatio'),
  );
  compare(
    looked,
    own.damperRatio,
    each(place, (row) => row[side].damperTravel),
    1,
    FLOOR.ratio,
    at('damperRatio'),
  );
  if (own.barTwist !== null && own.barRatio !== null) {
    const twists = each(place, (row) => row[side].barTwist);
    const rising = (twists[0] ?? 0) > (twists[1] ?? 0) ? 1 : -1;
    compare(looked, own.barRatio, twists, rising * barRadius(car, axle, side), FLOOR.ratio, at('barRatio'));
  }
  // the force at the wheel is springForce · springRatio, so its derivative holds d ratio / d travel; not where the spring comes loose
  const forces = each(place, (row) =>
    row[side].springForce === null || row[side].springRatio === null ? null : row[side].springForce * row[side].springRatio,
  );
  if (each(place, (row) => row[side].springForce).every((force) => force === null || force > 0))
    compare(looked, own.wheelRate, forces, 1, FLOOR.rate, at('wheelRate'));
  compareCentres(looked, car, side, place, at);
}

/** Slopes and instant centres from the twist that poses give. */
function compareCentres(
  looked: Looked,
  car: AssembledCar,
  side: 'left' | 'right',
  place: Place,
  at: (key: string) => () => string,
): void {
  const own = place.row[side];
  const twist = twistOf(place);
  if (twist === null) {
    looked.unsettled++;
    return;
  }
  const { linear, angular } = twist;
  const n: Vector = [-Math.sin(car.pitch), 0, Math.cos(car.pitch)];
  const ahead = unit(reject([1, 0, 0], n));
  const outboard = cross(n, ahead);
  const turn = side === 'left' ? 1 : -1;
  const [x, y, z] = own.contactCentre;
  const contact: Vector = [x, turn * y, z];
  const centre: Vector = [own.wheelCentre[0], turn * own.wheelCentre[1], own.wheelCentre[2]];
  const v = add(linear, cross(angular, subtract(contact, centre)));
  const slope = (
    key: 'longitudinalSlopeContact' | 'longitudinalSlopeWheelCentre' | 'lateralSlopeContact',
    value: number,
  ): void => {
    looked.breaches.limit(Math.abs(own[key] - value), 1e-6 * Math.max(0.1, Math.abs(value)), at(key));
  };
  slope('longitudinalSlopeContact', dot(v, ahead) / dot(v, n));
  slope('longitudinalSlopeWheelCentre', dot(linear, ahead) / dot(linear, n));
  slope('lateralSlopeContact', dot(v, outboard) / dot(v, n));
  looked.breaches.check(
    own.jackingPerLateral === -own.lateralSlopeContact || own.lateralSlopeContact === 0,
    at('jackingPerLateral'),
  );
  const near = (key: string, one: readonly number[], other: readonly number[]): void => {
    const far = Math.max(...other.map((value, i) => Math.abs(value - (key[0] === 'f' ? contact : [x, z])[i])));
    // twice as far away, four times as hard to find by differences
    for (let i = 0; i < 2; i++)
      looked.breaches.limit(Math.abs(one[i] - other[i]), CENTRE_AGREEMENT.absolute + 1e-7 * far + 1e-12 * far * far, at(key));
  };
  if (own.frontViewInstantCentre !== null && Math.abs(angular[0]) > 1e-6) {
    near(
      'frontViewInstantCentre',
      [turn * own.frontViewInstantCentre[0], own.frontViewInstantCentre[1]],
      [contact[1] - v[2] / angular[0], z + v[1] / angular[0]],
    );
  }
  if (own.sideViewInstantCentre !== null && Math.abs(angular[1]) > 1e-6) {
    near('sideViewInstantCentre', own.sideViewInstantCentre, [x + v[2] / angular[1], z - v[0] / angular[1]]);
  }
}

describe('rates', () => {
  it(`are the differences of what they are rates of: camber gain, bump steer, motion ratios, wheel rate, slopes, instant centres, ${SEEDS_IN_WORDS}`, () => {
    const looked: Looked = { breaches: new Breaches(), unsettled: 0 };
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS, axlesApart)) {
      const side = draw.pick(SIDES);
      for (const axle of AXLES) {
        const [low, high] = lockOf(document[axle]!);
        const travel = draw.between(-70, 70);
        const rack = low === high || draw.chance(0.4) ? 0 : draw.between(low, high);
        const place = placeOf(car, axle, side, travel, rack);
        if (place !== null)
          comparePlace(looked, car, axle, side, place, `seed ${seed} ${setup} ${axle} travel ${travel} rack ${rack}`);
      }
    }
    looked.breaches.expectNone(20_000);
    looked.breaches.check(
      looked.unsettled < 0.02 * looked.breaches.looked,
      () => `${looked.unsettled} differences did not settle`,
    );
    looked.breaches.expectNone(0);
  });
});
