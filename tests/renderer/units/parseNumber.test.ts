import { expect, test } from 'vitest';
import { parseNumber } from '../../../renderer/units/parseNumber';

test.each([
  ['-6', -6],
  ['−6', -6],
  ['+2.5', 2.5],
  ['2,5', 2.5],
  ['.5', 0.5],
  [' 330° ', 330],
  ['-6 mm', -6],
  ['2¼ turns', 2.25],
  ['⅝', 0.625],
  ['-5/8', -0.625],
  ['1 1/2 turn', 1.5],
  ['-0', 0],
])('%s is a number', (typed, value) => expect(parseNumber(typed)).toBe(value));

test.each(['', '-', 'abc', '1e3', '1.2.3', '1/0', '--5', '5 kg', 'NaN', 'Infinity'])(
  '"%s" is none, and nothing is guessed',
  (typed) => expect(parseNumber(typed)).toBeNull(),
);
