import { expect, test } from 'vitest';
import { steerSense } from '../../../renderer/motion/steerSense';
import { carDocument } from '../carUnderTest';

const locksOf = (document: ReturnType<typeof carDocument>, axle: 'front' | 'rear' = 'front') =>
  steerSense({ document, setup: 'Baseline' }, axle);

test('the ends of the rack are named by where the wheels turn, whichever way the rack runs', () => {
  const car = carDocument('car-23');
  const ends = locksOf(car);
  expect(ends && [ends.min, ends.max].sort()).toEqual(['left lock', 'right lock']);
  const steering = car.front?.steering;
  if (!car.front || !steering) throw new Error('the front axle is steered');
  const [x, y, z] = steering.axis;
  const turned = { ...car, front: { ...car.front, steering: { ...steering, axis: [-x, -y, -z] as const } } };
  expect(locksOf(turned as typeof car)).toEqual(ends && { min: ends.max, max: ends.min });
});

test('an axle without steering has no locks', () => {
  expect(locksOf(carDocument('car-23'), 'rear')).toBeNull();
});
