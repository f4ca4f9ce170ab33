import { expect, test } from 'vitest';
import { wheelSections } from '../../../renderer/viewport/wheelSection';

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
