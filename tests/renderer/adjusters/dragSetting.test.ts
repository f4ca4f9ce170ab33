import { expect, test } from 'vitest';
import type { AdjusterDocument } from '../../../geometry/index';
import { dragSetting } from '../../../renderer/adjusters/dragSetting';

const bush: AdjusterDocument = {
  kind: 'offset-bushing',
  moves: 'armRear',
  axis: [0, 0, 1],
  twelve: [0, 1, 0],
  offset: 6,
  index: 30,
};
const plate: AdjusterDocument = { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-12, 8], step: 1 };

test('a rotary part follows the hand about its centre, on its marks', () => {
  const [top, right] = [
    { x: 0, y: -40 },
    { x: 40, y: 0 },
  ];
  expect(dragSetting(bush, 300, top, right, 1)).toBe(30);
  expect(dragSetting(bush, 300, top, right, -1)).toBe(210);
  expect(dragSetting(bush, 0, right, top, 1)).toBe(270);
});

test('with Shift a part stands between its marks, to a tenth of one', () => {
  const from = { x: 0, y: 0 };
  expect(dragSetting(plate, 0, from, { x: 11, y: 0 }, 1, true)).toBe(2.2);
  expect(dragSetting(bush, 300, { x: 0, y: -40 }, { x: 40, y: -40 }, 1, true)).toBe(345);
});

test('a sliding part follows the hand to the right and upward and stops at its range', () => {
  expect(dragSetting(plate, 0, { x: 0, y: 0 }, { x: 10, y: 0 }, 1)).toBe(2);
  expect(dragSetting(plate, 0, { x: 0, y: 0 }, { x: 0, y: 15 }, 1)).toBe(-3);
  expect(dragSetting(plate, 0, { x: 0, y: 0 }, { x: 900, y: 0 }, 1)).toBe(8);
});

test('a slanting drag goes the way that the part slides: left and up along a slot is left, down and right of a stack is down', () => {
  const from = { x: 0, y: 0 };
  expect(dragSetting(plate, 8, from, { x: -200, y: -190 }, 1)).toBe(-12);
  expect(dragSetting(plate, 0, from, { x: -5, y: -20 }, 1)).toBe(4);
  const shims: AdjusterDocument = { ...plate, moves: 'rackEnd', along: [0, 0, 1], range: [0, 6], shims: [1] };
  expect(dragSetting(shims, 4, from, { x: 9, y: 10 }, 1)).toBe(2);
});
