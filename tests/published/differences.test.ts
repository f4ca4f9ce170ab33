import { describe, expect, it } from 'vitest';
import { toDegrees, toRadians, type AxleName, type PerSide, type SideName } from '../../geometry/index';
import { cross, dot, length, subtract, unit, type Vector } from '../../geometry/core/vector';
import { goldenDocument } from '../golden/goldenCars';
import { placedAt, rowAt, stand } from './ask';
import { expectRelative, expectWithin } from './near';
import { CLOSED_DEG, DIFFERENCE_RELATIVE, SEARCHED_DEG } from './tolerances';
import { bisect } from './turn';

// Readings that the reference cars have parts for but no expectation of, against differences of other readings along the travel: the
// springs here stand on a strut, a lower wishbone and single rods, the links of the bars on strut and knuckle, bars with axes aslant.
const STEP_MM = 0.5;

/** Derivative by central differences at a step and half of it, their leading error taken out. */
function slopeOf(f: (x: number) => number, at: number, step = STEP_MM): number {
  const central = (h: number): number => (f(at + h) - f(at - h)) / (2 * h);
  return (4 * central(step / 2) - central(step)) / 3;
}

const carOfSetup = (name: string, setup: string) => {
  const { front, rear, body, setups } = goldenDocument(name);
  return stand({ front, rear, body, setups }, setup);
};

const CASES = (['car-23', 'car-24'] as const).flatMap((name) =>
  (['Baseline', 'Trial', 'Turns'] as const).flatMap((setup) =>
    (['front', 'rear'] as const).map((axle) => [name, setup, axle] as const),
  ),
);

/** Radius of the bar's arm about the bar's axis [mm]. */
function armRadius(name: string, axle: AxleName): number {
  const { pivot, axis = [0, 1, 0], armEnd } = goldenDocument(name)[axle]!.antiRollBar!;
  return length(cross(subtract(armEnd as Vector, pivot as Vector), unit(axis as Vector)));
}

describe.each(CASES)('%s, %s, %s along the travel', (name, setup, axle) => {
  const car = carOfSetup(name, setup);
  /** One wheel at its travel, the other where the car stands. */
  const at = (side: SideName, travel: number) =>
    rowAt(car, axle, { travel: { left: 0, right: 0, [side]: travel } as PerSide<number> });

  it.each([
    ['left', 0],
    ['left', -28],
    ['right', 33],
  ] as const)('%s wheel at %i mm', (side, travel) => {
    const corner = at(side, travel)[side];
    const atWheel = (z: number): number => at(side, z)[side].springForce! * at(side, z)[side].springRatio!;
    expectRelative(corner.wheelRate, slopeOf(atWheel, travel), DIFFERENCE_RELATIVE, 'wheel rate');
    expectRelative(
      corner.springRatio,
      slopeOf((z) => at(side, z)[side].springTravel!, travel),
      DIFFERENCE_RELATIVE,
      'spring ratio',
    );
    const turn = slopeOf((z) => toRadians(at(side, z)[side].barTwist!), travel);
    expectRelative(corner.barRatio, Math.abs(turn) * armRadius(name, axle), DIFFERENCE_RELATIVE, 'bar ratio');
    // + : this wheel is the more bumped of the two
    expect(turn).toBeGreaterThan(0);
  });
});

// Roll stiffness of the springs: Σ k y² with k the change of the load at the contact per mm that the contact rises; by virtual work that
// load is the force at the wheel centre per mm of travel over the rise of the contact per mm of travel.
describe.each([
  ['car-23', 'front'],
  ['car-23', 'rear'],
  ['car-24', 'front'],
  ['car-24', 'rear'],
] as const)('%s, %s: roll stiffness of the springs', (name, axle) => {
  const car = carOfSetup(name, 'Baseline');
  it.each([0, -25, 30])('at %i mm of travel', (travel) => {
    const { left, right, both } = rowAt(car, axle, { travel });
    const stiffness = (['left', 'right'] as const).map((side) => {
      const corner = (z: number) => rowAt(car, axle, { travel: z })[side];
      const rise = (z: number): number => slopeOf((t) => corner(t).contactCentre[2], z);
      const load = (z: number): number => (corner(z).springForce! * corner(z).springRatio!) / rise(z);
      const rate = slopeOf(load, travel, 2) / rise(travel);
      return (rate * { left, right }[side].halfTrack * { left, right }[side].halfTrack) / 1000;
    });
    expectRelative(both.springRollStiffness, toRadians(stiffness[0] + stiffness[1]), DIFFERENCE_RELATIVE);
    expectRelative(both.rollStiffness, both.springRollStiffness! + both.barRollStiffness!, DIFFERENCE_RELATIVE, 'with the bar');
  });
});

// Caster by swing on corners whose steering axis moves: the rack that gives ±20° is found by halving.
describe.each(['car-21', 'car-22', 'car-23', 'car-24'] as const)('%s: caster by swing', (name) => {
  const car = carOfSetup(name, 'Baseline');
  it.each(['left', 'right'] as const)('%s wheel', (side) => {
    const camberAt = (steer: number): number => {
      const rack = bisect((r) => rowAt(car, 'front', { rack: r })[side].steerAngle - steer, -75, 75);
      return rowAt(car, 'front', { rack })[side].camber;
    };
    const outward = side === 'left' ? 20 : -20;
    const wanted = (camberAt(outward) - camberAt(-outward)) / (2 * Math.sin(toRadians(20)));
    expectWithin(rowAt(car, 'front')[side].casterBySwing, wanted, SEARCHED_DEG);
  });
});

describe.each(['car-23', 'car-24'] as const)('%s: camber to the body and to the ground', (name) => {
  it.each([0, 2.5])('%f deg of roll', (degrees) => {
    const car = carOfSetup(name, 'Trial');
    const position = { roll: toRadians(degrees) };
    const row = rowAt(car, 'rear', position);
    const placed = placedAt(car, 'rear', position);
    for (const side of ['left', 'right'] as const) {
      expectWithin(row[side].camberToBody, toDegrees(Math.asin(-placed[side].spindle[2])), CLOSED_DEG, 'to the body');
      expectWithin(
        row[side].camber,
        toDegrees(Math.asin(-dot(placed[side].spindle, placed.ground.normal))),
        CLOSED_DEG,
        'to the ground',
      );
    }
  });
});
