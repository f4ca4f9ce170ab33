/** Rest of the wheel by which one gesture ends and the next begins [ms]: longer than between two slow notches. */
export const WHEEL_REST = 300;

/** A hand that rests on the mouse while it turns the wheel moves it less than this between two notches [px]. */
const RESTING = 8;

/** A notch of the wheel: when [ms] and where the pointer was [px of the window]. */
export interface Notch {
  readonly timeStamp: number;
  readonly clientX: number;
  readonly clientY: number;
}

type Box = Pick<DOMRect, 'left' | 'right' | 'top' | 'bottom'>;

/**
 * Whether a notch over a drawing is still of the gesture that scrolled the list: the drawing came under the pointer, not the pointer
 * onto the drawing.
 * @param scrolled - the last notch that scrolled; null: none did
 * @param drawing - where the drawing is now [px of the window]
 */
export const isStillScrolling = (scrolled: Notch | null, notch: Notch, drawing: Box): boolean => {
  if (!scrolled || notch.timeStamp - scrolled.timeStamp > WHEEL_REST) return false;
  const { clientX: x, clientY: y } = scrolled;
  const wasOver = x >= drawing.left && x <= drawing.right && y >= drawing.top && y <= drawing.bottom;
  return wasOver || Math.max(Math.abs(notch.clientX - x), Math.abs(notch.clientY - y)) < RESTING;
};
