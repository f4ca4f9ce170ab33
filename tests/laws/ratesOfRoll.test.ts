import { describe, it } from 'vitest';
import { sweepAxle, toRadians, type AxleRow, type Position } from '../../geometry/index';
import { AXLES, axlesApart, carsOf, lockOf, steeredAxle } from './assembled';
import { Breaches } from './breaches';
import { derivative, OFFSETS } from './differences';
import { oneDozenIn, SEEDS, SEEDS_IN_WORDS } from './randomCars';

/** Roll [rad] and rack [mm] either side of the place. */
const ROLL_STEP = toRadians(0.25);
const RACK_STEP = 1;
/** Heights are searched for to 1e-10 mm, which over a step of roll is this much of an angle per angle. */
const FLOOR = 1e-8;
const SETTLED = 1e-5;

/** Rows around a place; null where any is out of reach. */
function rowsAround(rows: ReturnType<typeof sweepAxle>): AxleRow[] | null {
  const reached = rows.flatMap((row) => (row.ok ? [row.value] : []));
  return reached.length < rows.length ? null : reached;
}

describe('rates by roll and by rack', () => {
  it(`are the differences of rolled poses: camber compensation of the outer wheel and roll steer, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    let unsettled = 0;
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS, axlesApart)) {
      const axle = draw.pick(AXLES);
      const [low, high] = lockOf(document[axle]!);
      // level, the wheels are where they are put, on the ground or not: only a car that stands on it rolls out of that position
      const level = car[axle]!.rideHeight !== null && draw.chance(0.5);
      const rack = level || low === high || draw.chance(0.5) ? 0 : draw.between(low, high);
      const roll = level ? 0 : toRadians(draw.between(0.5, 4) * draw.pick([1, -1]));
      const travel = level ? 0 : draw.between(-25, 25);
      const positions = [0, ...OFFSETS].map((offset): Position => ({ travel, rack, roll: roll + offset * ROLL_STEP }));
      const rows = rowsAround(sweepAxle(car, axle, positions));
      if (rows === null) continue;
      const [{ both }, ...around] = rows;
      const where = `seed ${seed} ${setup} ${axle} travel ${travel} rack ${rack} roll ${roll}`;
      const rate = (pick: (row: AxleRow) => number): number => {
        const { value, unsure } = derivative(around.map(pick), ROLL_STEP);
        if (unsure > SETTLED * Math.max(0.1, Math.abs(value))) unsettled++;
        return unsure > SETTLED * Math.max(0.1, Math.abs(value)) ? NaN : value;
      };
      const steer = rate((row) => 0.5 * (row.left.steerAngle + row.right.steerAngle));
      // + roll: the left side goes up, the right wheel is the outer one
      const [asLeft, asRight] = [1 + rate((row) => row.left.camber), 1 - rate((row) => row.right.camber)];
      const camber = roll > 0 ? asRight : roll < 0 ? asLeft : 0.5 * (asLeft + asRight);
      if (!Number.isNaN(steer))
        breaches.limit(Math.abs(both.rollSteer - steer), 1e-7 * Math.abs(steer) + FLOOR, () => `${where} rollSteer`);
      if (!Number.isNaN(camber))
        breaches.limit(
          Math.abs(both.camberCompensation - camber),
          1e-7 * Math.abs(camber) + FLOOR,
          () => `${where} camberCompensation`,
        );
    }
    breaches.expectNone(1800);
    breaches.check(unsettled < 60, () => `${unsettled} differences did not settle`);
    breaches.expectNone(0);
  });

  it(`are the differences of steered poses: steering ratio with the rack centred, one dozen in two of ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(oneDozenIn(2), axlesApart)) {
      const axle = steeredAxle(document);
      const steering = document[axle]!.steering;
      if (steering?.perTurn === undefined) continue;
      const travel = draw.between(-60, 60);
      const rows = rowsAround(
        sweepAxle(
          car,
          axle,
          [0, ...OFFSETS].map((offset): Position => ({ travel, rack: offset * RACK_STEP })),
        ),
      );
      if (rows === null) continue;
      const [{ both }, ...around] = rows;
      const { value } = derivative(
        around.map((row) => 0.5 * (row.left.steerAngle + row.right.steerAngle)),
        RACK_STEP,
      );
      const ratio = Math.abs((2 * Math.PI) / steering.perTurn / value);
      breaches.limit(
        Math.abs((both.steeringRatio ?? NaN) - ratio),
        1e-7 * ratio,
        () => `seed ${seed} ${setup} ${axle} travel ${travel} steeringRatio`,
      );
    }
    breaches.expectNone(400);
  });
});
