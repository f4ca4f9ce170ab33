import { expect, test } from 'vitest';
import { cleanSetting, realSettings } from '../../../geometry/index';

test('sums of steps lose what rounding added, and nothing else does', () => {
  expect(cleanSetting(0.1 + 0.2)).toBe(0.3);
  expect(cleanSetting(-1e-17)).toBe(0);
  expect(cleanSetting(5 / 25.4)).toBe(5 / 25.4);
});

// a range and a step of whole millimetres, written in inches
test.each([-5, -12, -18, 3, 10])('steps of a range of many decimals stay inside it: %d mm in inches', (end) => {
  const [min, max] = [Math.min(0, end) / 25.4, Math.max(0, end) / 25.4];
  const settings = realSettings({ min, max, step: 1 / 25.4, isRound: false });
  expect(settings).toHaveLength(Math.abs(end) + 1);
  expect(settings.every((setting) => setting >= min && setting <= max)).toBe(true);
});

test('a range of 8 mm in steps of 1 mm, written in inches with nine decimals, has its ends', () => {
  const [end, step] = [Number((8 / 25.4).toFixed(9)), Number((1 / 25.4).toFixed(9))];
  expect(8 * step).toBeGreaterThan(end);
  const settings = realSettings({ min: -end, max: end, step, isRound: false });
  expect(settings).toHaveLength(17);
  expect([settings[0], settings.at(-1)]).toEqual([-end, end]);
});
