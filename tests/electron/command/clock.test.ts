import { describe, expect, test } from 'vitest';
import { clockFromHours, parseHours } from '../../../electron/command/clock';
import type { AdjusterDocument, SeenFrom, Triple } from '../../../geometry/index';

const bushing = (axis: Triple, seenFrom?: SeenFrom): AdjusterDocument => ({
  kind: 'offset-bushing',
  moves: 'armRear',
  axis,
  twelve: [0, 0, 1],
  offset: 4,
  index: 15,
  ...(seenFrom === undefined ? {} : { seenFrom }),
});
const degreesOf = (adjuster: AdjusterDocument, hours: number): number => {
  const clock = clockFromHours(adjuster, hours);
  if (!clock.ok) throw new Error(clock.reason);
  return clock.degrees;
};

describe('clock times', () => {
  test('are hours up to 12, halves too', () => {
    expect(parseHours('3h')).toBe(3);
    expect(parseHours('10.5h')).toBe(10.5);
    expect(parseHours('12h')).toBe(12);
    for (const text of ['13h', '-1h', 'h', '3', '3 h', '3hours', '']) expect(parseHours(text)).toBeNull();
  });

  test('count with the axis when the fitter looks along it, and when nobody says from where', () => {
    expect(degreesOf(bushing([1, 0, 0]), 3)).toBe(90);
    expect(degreesOf(bushing([1, 0, 0], 'rear'), 3)).toBe(90);
    expect(degreesOf(bushing([0, 1, 0], 'inboard'), 3)).toBe(90);
    expect(degreesOf(bushing([0, 0, 1], 'below'), 9)).toBe(270);
  });

  test('count the other way when the fitter looks against the axis', () => {
    expect(degreesOf(bushing([1, 0, 0], 'front'), 3)).toBe(270);
    expect(degreesOf(bushing([0, 1, 0], 'outboard'), 9)).toBe(90);
    expect(degreesOf(bushing([0, 0, 1], 'above'), 1)).toBe(330);
  });

  test('twelve is zero from either side', () => {
    for (const hours of [0, 12]) {
      expect(degreesOf(bushing([1, 0, 0], 'rear'), hours)).toBe(0);
      expect(degreesOf(bushing([1, 0, 0], 'front'), hours)).toBe(0);
    }
  });

  test('a cam turns at most a quarter each way, so nine is −90', () => {
    const bolt: AdjusterDocument = { kind: 'eccentric-bolt', moves: 'armRear', slot: [0, 1, 0], throw: 3, mark: 15 };
    expect(degreesOf(bolt, 9)).toBe(-90);
    expect(degreesOf(bolt, 2)).toBe(60);
    expect(degreesOf({ ...bolt, seenFrom: 'front' }, 2)).toBe(60);
    expect(degreesOf({ ...bolt, seenFrom: 'rear' }, 2)).toBe(-60);
    expect(clockFromHours({ ...bolt, seenFrom: 'outboard' }, 2).ok).toBe(false);
    expect(clockFromHours({ ...bolt, seenFrom: 'above' }, 2).ok).toBe(false);
    const clamp: AdjusterDocument = {
      kind: 'clamp-eccentric',
      pivot: 'a',
      bolt: 'b',
      axis: [-1, 0, 0],
      throw: 2,
      mark: 15,
      seenFrom: 'rear',
    };
    expect(degreesOf(clamp, 10)).toBe(60);
  });

  test('an axis square to the view has no hours, nor has a part without a clock', () => {
    expect(clockFromHours(bushing([1, 0, 0], 'above'), 3).ok).toBe(false);
    expect(clockFromHours({ kind: 'turnbuckle', rod: 'tieRod', perTurn: 1.5, range: [-4, 4], step: 0.5 }, 3).ok).toBe(false);
  });
});
