import { describe, it } from 'vitest';
import {
  toRadians,
  type AxleName,
  type CornerReadings,
  type PlacedCorner,
  type Position,
  type Vector,
} from '../../geometry/index';
import { cross, dot, scale, subtract, unit } from '../../geometry/core/vector';
import { goldenDocument } from '../golden/goldenCars';
import { placedAt, rowAt, stand } from './ask';
import { holdingForce, pushThroughArm, UP, wrench, type Wrench } from './balance';
import { expectWithin } from './near';
import { STATICS_RELATIVE } from './tolerances';

// Virtual work: what a motion ratio or a slope says of small movements, the balance of forces says of loads. The forces of the five
// links are solved from six equations of equilibrium, in which no velocity occurs.
const POSITIONS: readonly Position[] = [
  {},
  { travel: { left: 35, right: -20 } },
  { travel: -30, roll: toRadians(1.5) },
  { travel: 12, rack: -18 },
];

const CASES = (['car-21', 'car-22', 'car-23', 'car-24'] as const).flatMap((name) =>
  (['Baseline', 'Trial'] as const).flatMap((setup) => (['front', 'rear'] as const).map((axle) => [name, setup, axle] as const)),
);

/** Relative, and no finer than that part of 1. */
const expectSame = (found: number | null, wanted: number, what: string): void =>
  expectWithin(found, wanted, STATICS_RELATIVE * (1 + Math.abs(wanted)), what);

/** Force that the spring's or damper's seat would put on the knuckle with a push of one newton. */
const push = (ends: { readonly upper: Vector; readonly lower: Vector }): Wrench =>
  wrench(unit(subtract(ends.lower, ends.upper)), ends.lower);

/** Vertical force at the wheel centre that holds a load on the knuckle: its ratio per mm of travel. */
const ratioOf = (corner: PlacedCorner, load: Wrench): number => holdingForce(corner, wrench(UP, corner.wheelCentre), load);

function partsCase(name: string, axle: AxleName, corner: PlacedCorner, readings: CornerReadings): void {
  const document = goldenDocument(name)[axle]!;
  if (corner.damper !== null) {
    const { strut } = corner;
    const ends = document.damper?.lower === undefined ? { upper: strut!.top, lower: strut!.foot } : corner.damper;
    if (document.damper?.lower === undefined || document.damper.lowerOn === 'knuckle')
      expectSame(readings.damperRatio, ratioOf(corner, push(ends)), 'damper ratio');
  }
  if (document.spring?.seat === 'strut')
    expectSame(
      readings.springRatio,
      ratioOf(corner, push({ upper: corner.strut!.top, lower: corner.strut!.foot })),
      'spring ratio',
    );
  if (document.spring?.lowerOn === 'lowerRear') {
    const [front, rear] = ['lowerFront', 'lowerRear'].map((rod) => corner.rods.find((other) => other.name === rod)!);
    const { upper, lower } = corner.spring!;
    const load = pushThroughArm(front.inner, rear.inner, front.outer, unit(subtract(lower, upper)), lower);
    expectSame(readings.springRatio, ratioOf(corner, load), 'spring ratio, on the lower wishbone');
  }
  if (corner.bar !== null) {
    const { pivot, axis, armEnd, linkEnd } = corner.bar;
    const tangent = unit(cross(axis, subtract(armEnd, pivot)));
    const link = unit(subtract(linkEnd, armEnd));
    // the link pushes as hard as it takes for one newton along the path of the arm's end
    expectSame(readings.barRatio, Math.abs(ratioOf(corner, wrench(scale(link, 1 / dot(link, tangent)), linkEnd))), 'bar ratio');
  }
}

describe.each(CASES)('forces in balance, %s, %s, %s', (name, setup, axle) => {
  const { front, rear, body, setups } = goldenDocument(name);
  const car = stand({ front, rear, body, setups }, setup);

  it.each(POSITIONS)('%o', (asked) => {
    const position = axle === 'rear' ? { ...asked, rack: 0 } : asked;
    const row = rowAt(car, axle, position);
    const placed = placedAt(car, axle, position);
    const n = placed.ground.normal;
    const ahead = unit(subtract([1, 0, 0], scale(n, n[0])));
    for (const [side, outboard] of [
      ['left', 1],
      ['right', -1],
    ] as const) {
      const corner = placed[side];
      const readings = row[side];
      const held = wrench(n, corner.contactCentre);
      const under = (force: Vector): number => holdingForce(corner, held, wrench(force, corner.contactCentre));
      // what the ground pushes up beside a side force is what the links push the body up with
      expectSame(readings.jackingPerLateral, under(scale(cross(n, ahead), outboard)), `${side}: jacking per side force`);
      expectSame(readings.jackingPerLongitudinal, under(ahead), `${side}: jacking per lengthwise force`);
      partsCase(name, axle, corner, readings);
    }
  });
});
