import { expect, test } from 'vitest';
import { ruleMarks } from '../../../renderer/viewport/ground';

test('the rule on the floor in millimetres: numerals every 200, the unit once on either side', () => {
  const marks = ruleMarks(-410, 650, 'mm');
  expect(marks.flatMap(({ mm, text }) => (text === null ? [] : [[mm, text]]))).toEqual([
    [-400, '400'],
    [-200, '200 mm'],
    [0, '0'],
    [200, '200 mm'],
    [400, '400'],
    [600, '600'],
  ]);
  expect(marks.filter(({ size }) => size === 'long').map(({ mm }) => mm)).toEqual([
    -400, -300, -200, -100, 0, 100, 200, 300, 400, 500, 600,
  ]);
});

test('in inches its marks are whole inches, and stand where they are', () => {
  const marks = ruleMarks(0, 600, 'in');
  expect(marks).toHaveLength(24);
  expect(marks.flatMap(({ mm, text }) => (text === null ? [] : [[mm, text]]))).toEqual([
    [0, '0'],
    [254, '10 in'],
    [508, '20'],
  ]);
});
