import { expect, test } from 'vitest';
import { parseNumber } from '../../../renderer/units/parseNumber';
import { hoursOf, unitsOf } from '../../../renderer/units/typedUnits';

test.each([
  ['-6', 'mm', -6],
  ['−6', 'mm', -6],
  ['+2.5', 'mm', 2.5],
  ['2,5', 'mm', 2.5],
  ['.5', 'mm', 0.5],
  [' 330° ', '°', 330],
  ['-6 mm', 'mm', -6],
  ['2¼ turns', 'turn', 2.25],
  ['⅝', 'turn', 0.625],
  ['-5/8', 'turn', -0.625],
  ['1 1/2 turn', 'turn', 1.5],
  ['-0', 'mm', 0],
  ['1e3', 'mm', 1000],
  ['2.5E-1', '°', 0.25],
  ['1e9 mm', 'mm', 1e9],
  ['1/4 in', 'mm', 6.35],
  ['-0.5"', 'mm', -12.7],
  ['25.4 mm', 'in', 1],
  ['-1°28′', '°', -(1 + 28 / 60)],
  ["0° 30'", '°', 0.5],
  ['6 min', '°', 0.1],
])('%s in a field of %s is %d', (typed, unit, value) => {
  const read = parseNumber(typed, unitsOf(unit));
  expect(read.kind).toBe('number');
  if (read.kind === 'number') expect(read.value).toBeCloseTo(value, 8);
});

test.each(['', '-', 'abc', '1.2.3', '1/0', '--5', 'NaN', 'Infinity', '1 2', '1,234.5'])(
  '"%s" is none, and nothing is guessed',
  (typed) => expect(parseNumber(typed, unitsOf('mm'))).toEqual({ kind: 'none' }),
);

test.each([
  ['5 kg', 'mm', 'kg'],
  ['10 mm', '°', 'mm'],
  ['10°', 'mm', '°'],
  ['3 turns', '°', 'turns'],
  ['2 in', 'turn', 'in'],
])('%s is in no unit of a field of %s', (typed, unit, found) =>
  expect(parseNumber(typed, unitsOf(unit))).toEqual({ kind: 'unit', found }),
);

test('hours are a clock as the fitter sees it', () => {
  const units = [...unitsOf('°'), hoursOf((seen) => 360 - seen)];
  expect(parseNumber("11 o'clock", units)).toEqual({ kind: 'number', value: 30 });
  expect(parseNumber('11 h', unitsOf('°'))).toEqual({ kind: 'unit', found: 'h' });
});
