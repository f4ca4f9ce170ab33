import { expect, test } from 'vitest';
import { cardPlace } from '../../../renderer/viewport/cardPlace';

const [card, view] = [
  { width: 316, height: 190 },
  { width: 596, height: 382 },
];

test('the card of a chosen point does not lie over it, and stays where it is clear', () => {
  expect(cardPlace('lowerLeft', [500, 300], card, view)).toBe('lowerLeft');
  expect(cardPlace('lowerLeft', [180, 280], card, view)).toBe('lowerRight');
  expect(cardPlace('lowerRight', [180, 280], card, view)).toBe('lowerRight');
  expect(cardPlace('lowerRight', [500, 300], card, view)).toBe('lowerLeft');
  // in the middle both lower corners would cover it
  expect(cardPlace('lowerLeft', [298, 300], card, view)).toBe('upperLeft');
  expect(cardPlace('lowerLeft', [298, 100], card, view)).toBe('lowerLeft');
});
