import { expect, test } from 'vitest';
import { formatNumber, formatShort, formatSigned } from '../../../renderer/units/format';

test('a true minus, no signed nought, thousands apart', () => {
  expect(formatNumber(-2.471, 2)).toBe('−2.47');
  expect(formatNumber(-0.004, 2)).toBe('0.00');
  expect(formatSigned(0.004, 2)).toBe('0.00');
  expect(formatSigned(0.006, 2)).toBe('+0.01');
  expect(formatNumber(1570.56, 1)).toBe('1,570.6');
  expect(formatNumber(-1234567.8, 0)).toBe('−1,234,568');
});

test('as many decimals as the number has', () => {
  expect([330, 2.5, 0.125, -0.91].map((value) => formatShort(value))).toEqual(['330', '2.5', '0.125', '−0.91']);
});
