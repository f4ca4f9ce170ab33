import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clampRange,
  decimalsOfStep,
  keepRange,
  mainRange,
  minuteStep,
  minuteTick,
  motionStep,
  niceRange,
  panRange,
  rangeOfLines,
  ticksOf,
  valueStep,
  zoomRange,
  type Range,
} from '../../../renderer/curves/plotScale';

const SEED = 311;

describe('scales', () => {
  test.each([
    [0.3, 4, 5],
    [0.02, 4, 0.5],
    [1.5, 4, 30],
    [3.9, 4, 60],
    [9, 4, 300],
  ])('degrees and minutes, a span of %f° in %i parts: steps of %f minutes', (span, count, minutes) =>
    expect(60 * minuteStep(span, count)).toBeCloseTo(minutes, 9),
  );

  test('an axis in minutes is numbered in them, whole degrees as such', () => {
    const [low, high] = niceRange(-0.12, 0.21, 0.01, 4, minuteStep);
    expect([60 * low, 60 * high]).toEqual([expect.closeTo(-10, 9), expect.closeTo(15, 9)]);
    const step = minuteStep(0.5, 4);
    expect(ticksOf([-1 / 6, 1 / 3], step).map((tick) => minuteTick(tick, step))).toEqual(['−0°10′', '0°00′', '0°10′', '0°20′']);
    expect([-2, 0, 10].map((tick) => minuteTick(tick, 2))).toEqual(['−2°', '0°', '10°']);
    expect(minuteTick(0.5 / 60, 0.5 / 60)).toBe('0°00.5′');
  });

  test.each([
    [0.4, 4, 0.1],
    [160, 3, 100],
    [3, 3, 1],
    [0.07, 5, 0.02],
    [1e-6, 4, 5e-7],
  ])('a span of %f in %i parts: steps of %f', (span, count, step) => expect(valueStep(span, count)).toBeCloseTo(step, 12));

  test('a motion of 120 mm in four parts is numbered every 30', () => {
    expect(motionStep(120, 4)).toBe(30);
    expect(ticksOf([-60, 60], 30)).toEqual([-60, -30, 0, 30, 60]);
  });

  test.each([
    [1, 0],
    [0.5, 1],
    [0.02, 2],
    [25, 0],
  ])('steps of %f are told apart by %i decimals', (step, decimals) => expect(decimalsOfStep(step)).toBe(decimals));

  test('a range of whole steps holds its values and is not much wider', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        fc.integer({ min: 1, max: 8 }),
        (low, span, count) => {
          const [from, to] = niceRange(low, low + span, 0.01, count);
          const room = Math.max(span, 0.01);
          expect(from).toBeLessThanOrEqual(low + 1e-5 * room + 1e-9);
          expect(to).toBeGreaterThanOrEqual(low + span - 1e-5 * room - 1e-9);
          expect(to - from).toBeLessThanOrEqual(3 * valueStep(room, count) * Math.max(1, count) + 1e-9);
        },
      ),
      { seed: SEED },
    ));

  test('a straight line is not blown up', () => expect(niceRange(3.00001, 3.00002, 0.1, 4)).toEqual([2.95, 3.1]));
});

describe('the range that is shown', () => {
  const wanted = (low: number, high: number): Range => niceRange(low, high, 0.1, 4);
  test('stays under the hand, whatever the values do', () => {
    expect(keepRange([-1, 1], [-40, 90], true, wanted)).toEqual([-1, 1]);
  });
  test('follows when the hand is off: wider at once, narrower only when it is mostly empty', () => {
    expect(keepRange([-1, 1], [-40, 90], false, wanted)).toEqual([-50, 100]);
    expect(keepRange([-50, 100], [-20, 60], false, wanted)).toEqual([-50, 100]);
    expect(keepRange([-50, 100], [1, 2], false, wanted)).toEqual([1, 2]);
  });
  test('without values it is left alone', () => {
    expect(keepRange([-3, 0], null, false, wanted)).toEqual([-3, 0]);
    expect(keepRange(null, null, false, wanted)).toEqual([-1, 1]);
  });
});

describe('zoom', () => {
  test('the place under the pointer stays there', () => {
    expect(zoomRange([-60, 60], 30, 0.5)).toEqual([-15, 45]);
    expect(zoomRange(zoomRange([-60, 60], 30, 0.5), 30, 2)).toEqual([-60, 60]);
  });
  test('panning moves by a part of the width, and never out of the whole', () => {
    expect(panRange([0, 10], 0.1)).toEqual([1, 11]);
    expect(clampRange([50, 90], [-60, 60], 1)).toEqual([20, 60]);
    expect(clampRange([-500, 500], [-60, 60], 1)).toEqual([-60, 60]);
    expect(clampRange([3, 3.0001], [-60, 60], 2)).toEqual([2.00005, 4.00005]);
  });
  test('gaps have no part in the least and greatest value', () => {
    expect(rangeOfLines([Float64Array.of(NaN, 2, NaN), Float64Array.of(-1, NaN)])).toEqual([-1, 2]);
    expect(rangeOfLines([Float64Array.of(NaN)])).toBeNull();
  });
});

describe('what a plot shows by itself', () => {
  const line = (at: (x: number) => number) => Float64Array.from({ length: 61 }, (_, index) => at((index - 30) / 30));
  test('a line that bends, and one that jumps from flat, are shown whole', () => {
    expect(mainRange([line((x) => 3 * x * x)], 0.1)).toEqual([0, 3]);
    expect(mainRange([line((x) => (x < 0 ? 0 : 5))], 0.1)).toEqual([0, 5]);
  });
  test('an end that shoots off leaves the frame; most of the line stays legible in it', () => {
    const shooting = line((x) => 100 * x + 1 / (1.0001 - x));
    const [low, high] = mainRange([shooting], 10) ?? [0, 0];
    expect(low).toBeCloseTo(-100 + 1 / 2.0001, 9);
    expect(high).toBeLessThan(300);
    const inside = shooting.filter((value) => value >= low && value <= high).length;
    expect(inside / shooting.length).toBeGreaterThan(0.9);
  });
  test('a spike over a line that is flat within what counts leaves as much as counts', () => {
    const [low, high] = mainRange([line((x) => (x === 1 ? 900 : 0.01 * x))], 1) ?? [0, 0];
    expect(high).toBeLessThan(2);
    expect(low).toBeCloseTo(-0.01, 9);
  });
  test('nothing without a number', () => expect(mainRange([Float64Array.of(NaN)], 1)).toBeNull());
});
