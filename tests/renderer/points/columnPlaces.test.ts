import { expect, test } from 'vitest';
import { columnPlaces, withPlaces } from '../../../renderer/points/columnPlaces';

test('the points of a column stand under each other: every number has the decimals that the longest needs, at least two', () => {
  const column = ['−11.811', '0.3937', '0', '8.25'];
  const places = columnPlaces(column);
  expect(column.map((text) => withPlaces(text, places))).toEqual(['−11.8110', '0.3937', '0.0000', '8.2500']);
  expect(columnPlaces(['15', '362'])).toBe(2);
  expect(columnPlaces([])).toBe(2);
});

test('no digit is taken from a number, and one in no column keeps what it needs', () => {
  expect(withPlaces('0.39370', 2)).toBe('0.39370');
  expect(withPlaces('−1.65', 0)).toBe('−1.65');
  expect(withPlaces('12', 0)).toBe('12');
});
