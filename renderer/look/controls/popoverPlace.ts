import type { Box } from './faultPlace';

interface Size {
  readonly width: number;
  readonly height: number;
}

const GAP = 2;
/** Kept free at the window's edges [px]. */
const EDGE = 4;

/** Where a card goes that a button opens: under it, or over it where the window ends; never beyond the window's edges. */
export const popoverPlace = (button: Box, card: Size, window: Size): { readonly left: number; readonly top: number } => {
  const under = button.bottom + GAP;
  const fits = under + card.height <= window.height - EDGE;
  return {
    left: Math.max(EDGE, Math.min(button.left, window.width - card.width - EDGE)),
    top: Math.max(EDGE, fits ? under : button.top - GAP - card.height),
  };
};
