import { describe, expect, test } from 'vitest';
import type { AdjusterDocument } from '../../../geometry/index';
import { isInRange, isOffMark, nearestMark, stepSetting } from '../../../renderer/compute/adjusterSteps';

const plate: AdjusterDocument = { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-12, 8], step: 0.1 };
const bolt: AdjusterDocument = { kind: 'eccentric-bolt', moves: 'armFront', slot: [0, 1, 0], throw: 5, mark: 15 };
const bush: AdjusterDocument = {
  kind: 'offset-bushing',
  moves: 'armRear',
  axis: [0, 0, 1],
  twelve: [0, 1, 0],
  offset: 6,
  index: 30,
};

describe('steps of a part', () => {
  test('go to its next mark and stop at its range', () => {
    expect(stepSetting(bolt, 0, 1)).toBe(15);
    expect(stepSetting(bolt, 20, 1)).toBe(30);
    expect(stepSetting(bolt, 20, -1)).toBe(15);
    expect(stepSetting(bolt, 90, 5)).toBe(90);
    expect(stepSetting(bolt, -80, -1)).toBe(-90);
  });
  test('do not gather rounding', () => {
    let value: number = 0;
    for (let step = 0; step < 30; step += 1) value = stepSetting(plate, value, 1);
    expect(value).toBe(3);
  });
  test('between marks: a fraction moves by just that', () => {
    expect(stepSetting(bolt, 15, 0.1)).toBe(16.5);
    expect(isOffMark(bolt, 16.5)).toBe(true);
    expect(isOffMark(bolt, -45)).toBe(false);
  });
  test('a bushing goes round, and is fitted at its first mark', () => {
    expect(stepSetting(bush, 330, 1)).toBe(0);
    expect(stepSetting(bush, 0, -1)).toBe(330);
    expect(stepSetting(bush, null, 1)).toBe(0);
  });
  test('a drag stops on the nearest mark', () => {
    expect(nearestMark(bolt, 22)).toBe(15);
    expect(nearestMark(bolt, 23)).toBe(30);
    expect(nearestMark(bolt, 170)).toBe(90);
  });
  test('the range has its ends', () => {
    expect(isInRange(plate, 8)).toBe(true);
    expect(isInRange(plate, 8.01)).toBe(false);
  });
});
