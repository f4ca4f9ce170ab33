import { expect, test } from 'vitest';
import { isClear, ringShare } from '../../../renderer/viewport/ringPlace';

test('the ring of a direction stands at its end where there is room, else nearer or behind its point', () => {
  const box = { width: 400, height: 300 };
  const asked = [{ x: 100, y: 10, width: 200, height: 30 }];
  expect(isClear([200, 150], box, asked)).toBe(true);
  // at the edge, under the words, out of sight
  expect(isClear([200, 5], box, [])).toBe(false);
  expect(isClear([200, 45], box, asked)).toBe(false);
  expect(isClear(null, box, [])).toBe(false);
  const above = (share: number) => isClear([200, 60 - 100 * share], box, asked);
  expect(ringShare(above)).toBe(-1);
  expect(ringShare((share) => share < 1)).toBe(0.6);
  expect(ringShare(() => false)).toBe(1);
});
