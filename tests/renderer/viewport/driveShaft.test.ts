import { describe, expect, test } from 'vitest';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { assembleCar, findSetup, parseCar, placeAxle, setupNames, toMechanism, toRadians } from '../../../geometry/index';
import { placeShaft, shaftRadius } from '../../../renderer/viewport/driveShaft';
import { isOnKnuckle } from '../../../renderer/viewport/joints';
import { knucklePointNow } from '../../../renderer/viewport/knucklePoint';
import { direction, separation, type Point } from '../../../renderer/viewport/points';
import { carDocument } from '../carUnderTest';

const SAMPLE = path.resolve(import.meta.dirname, '../../../samples/saltmarsh-hatch.jounce.json');
const read = parseCar(readFileSync(SAMPLE, 'utf8'));
if (!read.ok) throw new Error('the sample has faults');
const sample = read.value.document;
const front = sample.front;
const shaft = front?.driveShaft;
if (!front || !shaft) throw new Error('the sample says where its drive shafts run');

const placedIn = (setup: string, position: Parameters<typeof placeAxle>[2]) => {
  const car = assembleCar(toMechanism(sample), findSetup(sample, setup));
  if (!car.ok) throw new Error('stands');
  const placed = placeAxle(car.value, 'front', position);
  if (!placed.ok) throw new Error('closes');
  return placed.value;
};

const POSITIONS = [{}, { travel: 45, rack: 30 }, { travel: -40, roll: toRadians(1.5) }] as const;

describe.each(setupNames(sample))('a point fast on the knuckle, in the setup %s', (setup) => {
  const moved = Object.values(front.adjusters ?? {}).flatMap((one) => ('moves' in one ? [one.moves as string] : []));
  const fast = Object.keys(front.points).filter(
    (name) => isOnKnuckle(front, name) && !moved.includes(name) && !/^(strutFoot|clamp)/.test(name),
  );
  test.each(POSITIONS)('is where the engine has it, at %o', (position) => {
    const placed = placedIn(setup, position);
    expect(fast.length).toBeGreaterThan(0);
    for (const side of ['left', 'right'] as const)
      for (const name of fast) {
        const [x, y, z] = front.points[name] ?? [0, 0, 0];
        const now = knucklePointNow(front, 1, side, placed[side], [x, side === 'left' ? y : -y, z]);
        expect(separation(now, placed[side].points[name] ?? [0, 0, 0]), `${side} ${name}`).toBeLessThan(1e-6);
      }
  });
});

describe('a drive shaft', () => {
  test.each(POSITIONS)('has its inner joint on the body, its outer one on the knuckle: %o', (position) => {
    const placed = placedIn('Baseline', position);
    for (const side of ['left', 'right'] as const) {
      const sense = side === 'left' ? 1 : -1;
      const at = placeShaft(front, 1, side, placed[side]);
      if (!at) throw new Error('is drawn');
      expect(at.inner).toEqual([shaft.inner[0], sense * shaft.inner[1], shaft.inner[2]]);
      expect(at.inward[1] * sense).toBeCloseTo(-1, 9);
      // Bump and steer turn the knuckle; the joint keeps its distance from the wheel's centre.
      const [dx, dy, dz] = [0, 1, 2].map((axis) => (shaft.outer[axis] ?? 0) - (front.points['wheelCentre']?.[axis] ?? 0)) as [
        number,
        number,
        number,
      ];
      const design = Math.sqrt(dx * dx + dy * dy + dz * dz);
      expect(separation(at.outer, placed[side].wheelCentre)).toBeCloseTo(design, 6);
      // It lies inboard of the wheel's centre, next to the spindle.
      const toJoint: Point = direction(placed[side].wheelCentre, at.outer);
      const { spindle } = placed[side];
      expect(toJoint[0] * spindle[0] + toJoint[1] * spindle[1] + toJoint[2] * spindle[2]).toBeLessThan(-0.9);
    }
  });

  test('is absent where the file does not say where it runs, driven or not', () => {
    const document = carDocument('car-23');
    if (!document.front) throw new Error('has a front axle');
    expect(document.body?.drivenAxle).toBe('front');
    expect(placeShaft(document.front, 1, 'left', placedIn('Baseline', {}).left)).toBeNull();
  });

  test('is as thick as its section, in any unit of the file', () => {
    expect(shaftRadius(front, 1)).toBe(14);
    expect(shaftRadius({ ...front, sections: { driveShaft: { diameter: 1, wall: 0, modulus: 1, yield: 1 } } }, 25.4)).toBe(12.7);
  });
});
