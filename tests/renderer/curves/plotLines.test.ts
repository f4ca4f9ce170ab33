import { describe, expect, test } from 'vitest';
import {
  gapsOf,
  inputOf,
  isSameLine,
  lastInside,
  linePath,
  markerIndexes,
  valueOf,
  xOf,
  yOf,
  type PlotFrame,
} from '../../../renderer/curves/plotLines';

const frame: PlotFrame = { left: 40, right: 140, top: 10, bottom: 110, x: [-50, 50], y: [0, 10] };
const inputs = Float64Array.from({ length: 11 }, (_, index) => -50 + 10 * index);

describe('frame', () => {
  test('up is more, right is more; the way back is the same', () => {
    expect([xOf(frame, 0), yOf(frame, 10), yOf(frame, 0)]).toEqual([90, 10, 110]);
    expect(inputOf(frame, xOf(frame, 17))).toBeCloseTo(17, 12);
    expect(valueOf(frame, yOf(frame, 3.3))).toBeCloseTo(3.3, 12);
  });
});

describe('lines', () => {
  test('are lifted over a gap; a lone point still shows', () => {
    const values = Float64Array.of(1, 2, NaN, 4, NaN, NaN, 7, 8, 9, 9, 9);
    const path = linePath(frame, inputs, values);
    expect(path.match(/M/g)).toHaveLength(3);
    expect(path.match(/L/g)).toHaveLength(1 + 4);
    expect(path).toContain('h0.1');
    expect(path).not.toContain('NaN');
  });

  test('left equals right only within the distance everywhere, gaps included', () => {
    const line = Float64Array.from(inputs, (input) => input / 10);
    const near = line.map((value) => value + 0.01);
    expect(isSameLine(line, near, 0.02)).toBe(true);
    expect(isSameLine(line, near, 0.005)).toBe(false);
    const gap = line.map((value, index) => (index === 4 ? NaN : value));
    expect(isSameLine(line, gap, 1)).toBe(false);
    expect(isSameLine(gap, gap, 0)).toBe(true);
  });

  test('gaps say from where to where, and why', () => {
    const values = Float64Array.of(NaN, NaN, 3, 4, 5, 6, NaN, 8, 9, NaN, NaN);
    const gaps = gapsOf(inputs, values, (index) => `reason ${index}`);
    expect(gaps).toEqual([
      { from: -50, to: -30, why: 'reason 0' },
      { from: 0, to: 20, why: 'reason 6' },
      { from: 30, to: 50, why: 'reason 9' },
    ]);
    expect(gapsOf(inputs, values.fill(NaN), () => null)).toEqual([{ from: -50, to: 50, why: 'no value here' }]);
  });

  test('markers of left, right and compared stand apart, one in each stretch of 20 mm', () => {
    const dense = Float64Array.from({ length: 61 }, (_, index) => -60 + 2 * index);
    const values = dense.map(() => 1);
    const places = (['left', 'right', 'compared'] as const).map((of) => markerIndexes(dense, values, 20, of));
    for (const indexes of places) {
      expect(indexes.length).toBeGreaterThanOrEqual(5);
      indexes.slice(1).forEach((index, at) => expect((index - (indexes[at] ?? 0)) * 2).toBeLessThanOrEqual(22));
    }
    expect(new Set(places.flat()).size).toBe(places.flat().length);
  });

  test('the letter stands at the last place that is inside', () => {
    const values = Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8, 12, NaN, NaN);
    expect(lastInside(frame, inputs, values)).toEqual({ x: 110, y: 30 });
    expect(lastInside(frame, inputs, values.fill(NaN))).toBeNull();
  });
});
