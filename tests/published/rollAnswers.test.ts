import { describe, it } from 'vitest';
import { toRadians } from '../../geometry/index';
import { goldenDocument } from '../golden/goldenCars';
import { rowAt, stand, type Row } from './ask';
import { expectWithin } from './near';
import { DIFFERENCE_RELATIVE } from './tolerances';

const STEP_DEG = 0.4;

/** Derivative by central differences at a step and half of it, their leading error taken out. */
function slopeOf(f: (x: number) => number, at: number): number {
  const central = (h: number): number => (f(at + h) - f(at - h)) / (2 * h);
  return (4 * central(STEP_DEG / 2) - central(STEP_DEG)) / 3;
}

/** Roll steer and camber compensation by differences of rows in which only camber and steer angle are read. */
function expectAnswers(both: Row['both'], rowIn: (degrees: number) => Row, roll: number): void {
  const steer = slopeOf((degrees) => 0.5 * (rowIn(degrees).left.steerAngle + rowIn(degrees).right.steerAngle), roll);
  expectWithin(both.rollSteer, steer, DIFFERENCE_RELATIVE, 'roll steer');
  // + roll lifts the left side, so the right wheel is the outer one
  const asRight = 1 - slopeOf((degrees) => rowIn(degrees).right.camber, roll);
  const asLeft = 1 + slopeOf((degrees) => rowIn(degrees).left.camber, roll);
  const wanted = roll > 0 ? asRight : roll < 0 ? asLeft : 0.5 * (asLeft + asRight);
  expectWithin(both.camberCompensation, wanted, DIFFERENCE_RELATIVE, 'camber compensation');
}

const carOfSetup = (name: string, setup: string) => {
  const { front, rear, body, setups } = goldenDocument(name);
  return stand({ front, rear, body, setups }, setup);
};

const LEANING = (['car-21', 'car-22', 'car-23', 'car-24'] as const).flatMap((name) =>
  (['front', 'rear'] as const).flatMap((axle) => ([1.8, -2.4] as const).map((roll) => [name, axle, roll] as const)),
);
describe.each(LEANING)('%s, %s at %f deg of roll', (name, axle, roll) => {
  const car = carOfSetup(name, 'Baseline');
  it.each(axle === 'front' ? [{}, { travel: -15 }, { rack: 25 }] : [{}, { travel: -15 }])('%o', (position) => {
    const rowIn = (degrees: number): Row => rowAt(car, axle, { ...position, roll: toRadians(degrees) });
    expectAnswers(rowIn(roll).both, rowIn, roll);
  });
});

// Without roll the wheels are where travel says, in roll where heave leaves them on the ground. The two meet where the car stands, on
// cars that stand on their ground or are symmetrical; a car whose own contact centres are not level has no row that belongs to those beside it.
describe.each([
  ['car-22', 'Baseline', 'front'],
  ['car-22', 'Baseline', 'rear'],
  ['car-24', 'Baseline', 'rear'],
  ['car-23', 'Trial', 'front'],
  ['car-23', 'Trial', 'rear'],
  ['car-24', 'Trial', 'front'],
  ['car-24', 'Trial', 'rear'],
] as const)('%s, %s, %s without roll', (name, setup, axle) => {
  const car = carOfSetup(name, setup);
  it('where it stands', () => {
    expectAnswers(rowAt(car, axle).both, (degrees) => rowAt(car, axle, { roll: toRadians(degrees) }), 0);
  });
});

describe.each([
  ['car-22', 'front'],
  ['car-22', 'rear'],
  ['car-24', 'rear'],
] as const)('%s, %s without roll, a symmetrical axle', (name, axle) => {
  const car = carOfSetup(name, 'Baseline');
  it.each([-35, 20])('at %i mm of travel', (travel) => {
    // the heave that has the contact centres where this travel puts them
    const heave = rowAt(car, axle, { travel }).left.contactCentre[2] - rowAt(car, axle).left.contactCentre[2];
    expectAnswers(
      rowAt(car, axle, { travel }).both,
      (degrees) => rowAt(car, axle, { travel: heave, roll: toRadians(degrees) }),
      0,
    );
  });
});
