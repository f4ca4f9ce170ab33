import { expect, test } from 'vitest';
import { inset, wheelSections } from '../../../renderer/viewport/wheelSection';

const wheel = {
  camber: -1,
  toe: 0,
  loadedRadius: 310,
  tyreRadius: 322,
  tyreWidth: 235,
  rimDiameter: 457.2,
  rimWidth: 203,
  shoulderRadius: 25,
};

test('the sections have the sizes of the file', () => {
  const { tyre, rim, tyreRadius } = wheelSections(wheel, 1);
  expect(tyreRadius).toBe(322);
  expect(Math.max(...tyre.map(([, radius]) => radius))).toBeCloseTo(322, 6);
  expect(Math.max(...tyre.map(([at]) => at))).toBeCloseTo(117.5, 6);
  expect(Math.min(...tyre.map(([, radius]) => radius))).toBeGreaterThan(457.2 / 2 - 1);
  expect(Math.max(...rim.map(([, radius]) => radius))).toBeLessThan(322);
});

test('inches become millimetres, and what is left out is sketched in proportion', () => {
  const inches = { camber: 0, toe: 0, loadedRadius: 12, tyreRadius: 12.5, tyreWidth: 9 };
  const { tyreRadius, width, rimRadius } = wheelSections(inches, 25.4);
  expect(tyreRadius).toBeCloseTo(317.5, 9);
  expect(width).toBeCloseTo(228.6, 9);
  expect(rimRadius).toBeGreaterThan(0.5 * tyreRadius);
  expect(wheelSections({ camber: 0, toe: 0, loadedRadius: 300 }, 1).tyreRadius).toBeGreaterThan(300);
});

test('an outline drawn in keeps its distance, whichever way it goes round', () => {
  const square = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ] as const;
  for (const outline of [square, [...square].reverse()])
    for (const [index, [x, y]] of inset(outline, 2).entries()) {
      const [from, to] = [outline[index] ?? [0, 0], [x, y]];
      expect(to).toEqual([from[0] === 0 ? 2 : 8, from[1] === 0 ? 2 : 8]);
    }
  const { tyre } = wheelSections(wheel, 1);
  for (const [at, radius] of inset(tyre, 2)) {
    expect(Math.abs(at)).toBeLessThan(117.5 - 1);
    expect(radius).toBeLessThan(322 - 1);
  }
});
