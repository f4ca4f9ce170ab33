import { expect, test } from 'vitest';
import { ruleMarks } from '../../../renderer/motion/ruleMarks';

test('zero is heavy, a few marks are numbered with their sign', () => {
  const marks = ruleMarks(-80, 80);
  expect(marks.filter(({ size }) => size === 'zero')).toHaveLength(1);
  expect(marks.map(({ label }) => label).filter((label) => label !== null)).toEqual(['−80', '−40', '0', '+40', '+80']);
  expect(
    ruleMarks(-4, 4)
      .map(({ label }) => label)
      .filter((label) => label !== null),
  ).toEqual(['−4', '−2', '0', '+2', '+4']);
});

test('every mark lies within the rule, ends that are not round included', () => {
  for (const { value } of ruleMarks(-45, 95)) {
    expect(value).toBeGreaterThanOrEqual(-45);
    expect(value).toBeLessThanOrEqual(95);
  }
});

test('numerals stay clear of each other on a short rule', () => {
  for (const [min, max] of [
    [-80, 80],
    [-45, 95],
    [-4, 4],
    [-70, 70],
  ] as const)
    for (const width of [40, 70, 110, 160, 300]) {
      const numbered = ruleMarks(min, max, width).filter(({ label }) => label !== null);
      expect(numbered.map(({ label }) => label)).toContain('0');
      const places = numbered.map(({ value }) => ((value - min) / (max - min)) * width);
      for (const [index, place] of places.entries())
        if (index > 0) expect(place - (places[index - 1] ?? 0)).toBeGreaterThanOrEqual(32 - 1e-9);
    }
});
