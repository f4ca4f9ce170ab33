import { expect, test } from 'vitest';
import { formatShort } from '../../../renderer/units/format';
import { withinRange } from '../../../renderer/units/withinRange';

// −10 and 8 mm, kept in inches to nine decimals
const [least, most] = [-0.393700787 * 25.4, 0.31496063 * 25.4];

test('an end of a range as it is shown is the end itself, whatever the file rounded', () => {
  expect([formatShort(least), formatShort(most)]).toEqual(['−10', '8']);
  expect(withinRange(-10, least, most)).toBe(least);
  expect(withinRange(8.0001, least, most)).toBe(most);
  expect(withinRange(3, least, most)).toBe(3);
});

test('what is told to be outside is outside', () => {
  expect(withinRange(-10.001, least, most)).toBeNull();
  expect(withinRange(8.01, least, most)).toBeNull();
  expect(withinRange(1, 2, 3)).toBeNull();
});

test('a length of an inch file says no digits that it has not, and all that it has', () => {
  expect(formatShort(0.039370079 * 25.4)).toBe('1');
  expect(formatShort(0.0984251969 * 25.4)).toBe('2.5');
  expect(formatShort(9.999)).toBe('9.999');
  expect(formatShort(0.393700787, 9)).toBe('0.393700787');
});
