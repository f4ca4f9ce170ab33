import { expect, test } from 'vitest';
import { popoverPlace } from '../../../renderer/look/controls/popoverPlace';

const window = { width: 1280, height: 720 };
const card = { width: 200, height: 120 };

test('under its button; over it at the foot of the window; inside the edges', () => {
  expect(popoverPlace({ left: 100, top: 10, right: 160, bottom: 40 }, card, window)).toEqual({ left: 100, top: 42 });
  expect(popoverPlace({ left: 82, top: 670, right: 122, bottom: 708 }, card, window)).toEqual({ left: 82, top: 548 });
  expect(popoverPlace({ left: 1200, top: 10, right: 1260, bottom: 40 }, card, window).left).toBe(1076);
});
