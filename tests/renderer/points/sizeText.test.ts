import { expect, test } from 'vitest';
import { parseSize, sizeText } from '../../../renderer/points/newCar/sizeText';

test('a size of a new car is taken in its unit or another, and comes back as it was typed', () => {
  expect(parseSize('2600', 'mm')).toEqual({ ok: true, mm: 2600 });
  expect(parseSize('104', 'in')).toEqual({ ok: true, mm: 104 * 25.4 });
  expect(parseSize('2600 mm', 'in')).toMatchObject({ ok: true, mm: expect.closeTo(2600, 6) as number });
  expect(sizeText(104 * 25.4, 'in')).toBe('104');
});

test('what is no size says why: no number, no unit of length, nothing or less, longer than a file can hold', () => {
  const faultIn = (typed: string, unit: 'mm' | 'in' = 'mm') => {
    const size = parseSize(typed, unit);
    return size.ok ? null : size.fault;
  };
  expect(faultIn('abc')).toBe('A number, please.');
  expect(faultIn('3 ft')).toBe('“ft” is no unit of length here: mm or in.');
  expect(faultIn('')).toBe('A number, please.');
  expect(faultIn('0')).toBe('A length over zero, please.');
  expect(faultIn('-3 in')).toBe('A length over zero, please.');
  expect(faultIn('1e9', 'in')).toBe('At most 50 m, please: 1,969 in.');
  expect(faultIn('50000')).toBeNull();
});
