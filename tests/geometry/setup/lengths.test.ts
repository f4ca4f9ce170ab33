import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  findSetup,
  lengthsOf,
  placeAxle,
  pointPlaces,
  tapeBetween,
  toMechanism,
  type AxleName,
  type Position,
} from '../../../geometry/index';
import { carDocument } from '../../renderer/carUnderTest';

const document = carDocument('car-23');

const placedAt = (axle: AxleName, setup: string, position: Position = {}) => {
  const car = assembleCar(toMechanism(document), findSetup(document, setup) ?? {});
  if (!car.ok) throw new Error('assembles');
  const placed = placeAxle(car.value, axle, position);
  if (!placed.ok) throw new Error('closes');
  return placed.value;
};

const byHand = (a: readonly number[], b: readonly number[]): number =>
  Math.sqrt([0, 1, 2].reduce((sum, axis) => sum + ((a[axis] ?? 0) - (b[axis] ?? 0)) ** 2, 0));

describe('lengths at design', () => {
  test.each(['front', 'rear'] as const)('are those between the points of the file, %s', (axleName) => {
    const axle = document[axleName];
    if (!axle) throw new Error('has the axle');
    const lengths = lengthsOf(placedAt(axleName, 'Baseline'));
    const lengthOf = (name: string) => lengths.find((one) => one.name === name)?.value.left;
    const { points } = axle;
    const ends: Record<string, readonly [string, string]> =
      axle.layout === 'strut'
        ? { armFront: ['armFront', 'ballJoint'], armRear: ['armRear', 'ballJoint'], tieRod: ['rackEnd', 'tieRodEnd'] }
        : { ...axle.rods };
    for (const [name, [inner, outer]] of Object.entries(ends))
      expect(lengthOf(name)).toBeCloseTo(byHand(points[inner] ?? [], points[outer] ?? []), 6);
    const bar = axle.antiRollBar;
    if (bar) expect(lengthOf('barLink')).toBeCloseTo(byHand(bar.armEnd, bar.linkEnd), 6);
  });
});

describe('lengths in motion', () => {
  test.each(['front', 'rear'] as const)('rods, legs and links keep theirs over bump, steer and roll, %s', (axle) => {
    const standing = lengthsOf(placedAt(axle, 'Baseline'));
    for (const position of [{ travel: 40 }, { travel: -40 }, { roll: 0.03 }, ...(axle === 'front' ? [{ rack: 25 }] : [])]) {
      const moved = lengthsOf(placedAt(axle, 'Baseline', position));
      for (const [index, { kind, name, value }] of moved.entries()) {
        if (kind === 'strut' || kind === 'spring' || kind === 'damper') continue;
        expect(value.left, name).toBeCloseTo(standing[index]?.value.left ?? NaN, 6);
        expect(value.right ?? NaN, name).toBeCloseTo(standing[index]?.value.right ?? NaN, 6);
      }
    }
  });
  test('a strut is shorter in bump', () => {
    const strut = (travel: number) =>
      lengthsOf(placedAt('front', 'Baseline', { travel })).find(({ kind }) => kind === 'strut')?.value.left ?? NaN;
    expect(strut(40)).toBeLessThan(strut(0));
    expect(strut(-40)).toBeGreaterThan(strut(0));
  });
});

test('a tape reads 3, 4 and 12 as 13', () => {
  const { length, apart } = tapeBetween([1, 1, 1], [4, 5, 13]);
  expect(length).toBe(13);
  expect(apart).toEqual([3, 4, 12]);
});

describe('points now and at design', () => {
  test('agree at design of a car with nothing set, the right mirrored', () => {
    const axle = document.front;
    if (!axle) throw new Error('has a front axle');
    const placed = placedAt('front', 'Baseline');
    for (const side of ['left', 'right'] as const)
      for (const { name, now, design } of pointPlaces(axle, placed, side, 1)) {
        expect(byHand(now, design), name).toBeLessThan(1e-6);
        if (name !== 'wheelCentre') expect(Math.sign(design[1])).toBe(side === 'left' ? 1 : -1);
      }
  });
  test('a right-hand side with a point of its own has that, and inches are millimetres', () => {
    const axle = document.front;
    if (!axle) throw new Error('has a front axle');
    const own = { ...axle, right: { points: { armFront: [1, -20, 3] as const } } };
    const places = pointPlaces(own, placedAt('front', 'Baseline'), 'right', 25.4);
    expect(byHand(places.find(({ name }) => name === 'armFront')?.design ?? [], [25.4, -508, 76.2])).toBeLessThan(1e-9);
  });
});
