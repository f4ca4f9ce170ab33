import { describe, expect, test } from 'vitest';
import { isStillScrolling, WHEEL_REST } from '../../../renderer/adjusters/wheelGesture';

const drawing = { left: 20, right: 120, top: 200, bottom: 300 };
const notch = (timeStamp: number, clientX: number, clientY: number) => ({ timeStamp, clientX, clientY });

describe('a notch of the wheel over a drawing', () => {
  test('turns at once where nothing was scrolled, or the wheel has rested since', () => {
    expect(isStillScrolling(null, notch(1000, 70, 250), drawing)).toBe(false);
    expect(isStillScrolling(notch(1000, 70, 250), notch(1001 + WHEEL_REST, 70, 250), drawing)).toBe(false);
  });

  test('goes on scrolling where the drawing came under the pointer, which a hand on the mouse does not hold quite still', () => {
    expect(isStillScrolling(notch(1000, 70, 250), notch(1250, 71, 250), drawing)).toBe(true);
    expect(isStillScrolling(notch(1000, 70, 302), notch(1016, 70, 299), drawing)).toBe(true);
    expect(isStillScrolling(notch(1000, 70, 250), notch(1016, 90, 250), drawing)).toBe(true);
  });

  test('turns at once where the pointer was moved onto the drawing from beside it', () => {
    expect(isStillScrolling(notch(1000, 300, 250), notch(1100, 110, 250), drawing)).toBe(false);
  });
});
