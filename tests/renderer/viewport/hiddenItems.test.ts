import { expect, test } from 'vitest';
import { assembleCar, findSetup, placeAxle, toMechanism } from '../../../geometry/index';
import type { Point } from '../../../renderer/viewport/camera';
import { groundFrame } from '../../../renderer/viewport/groundFrame';
import { isBehindWheel } from '../../../renderer/viewport/hiddenItems';
import { along } from '../../../renderer/viewport/points';
import { carDocument } from '../carUnderTest';

const document = carDocument('car-23');
const car = assembleCar(toMechanism(document), findSetup(document, 'Baseline'));
if (!car.ok) throw new Error('stands');
const placed = placeAxle(car.value, 'rear', {});
if (!placed.ok) throw new Error('closes');
const { left } = placed.value;
const frame = groundFrame(placed.value.ground);
const RADIUS = 322;
/** A point inboard of the wheel, ahead of its centre or behind it. */
const inboard = (ahead: number): Point => frame.toGround(along(along(left.wheelCentre, left.spindle, -90), [1, 0, 0], ahead));
const eyeAt = (x: number, y: number, z: number): Point => along(frame.toGround(left.wheelCentre), [x, y, z], 1);

test('from behind and outside the front half of the wheel hides what lies inboard of it, the cut half does not', () => {
  const eye = eyeAt(-3000, 1800, 900);
  expect(isBehindWheel(eye, inboard(260), left, frame, RADIUS)).toBe(true);
  expect(isBehindWheel(eye, inboard(-260), left, frame, RADIUS)).toBe(false);
  expect(isBehindWheel(eye, inboard(700), left, frame, RADIUS)).toBe(false);
});

test('from before, from inside and flat on nothing is hidden by it', () => {
  expect(isBehindWheel(eyeAt(3000, 1800, 900), inboard(260), left, frame, RADIUS)).toBe(false);
  expect(isBehindWheel(eyeAt(-3000, -1800, 900), inboard(260), left, frame, RADIUS)).toBe(false);
  expect(isBehindWheel(eyeAt(10, 5000, 20), inboard(260), left, frame, RADIUS)).toBe(false);
});
