import type { AxleName, SideName } from '../../geometry/index';

/** Size of the plan [px], as it is drawn. */
export const PLAN = { width: 158, height: 140 } as const;

/** How much more than it is a wheel's toe is turned, so that it is seen. */
const TOE_SCALE = 10;
const MOST_TURNED = 32;

/** The middle of a wheel in the plan: front up, left on the left. */
export const wheelPlace = (axle: AxleName, side: SideName): { readonly x: number; readonly y: number } => ({
  x: side === 'left' ? 54 : 104,
  y: axle === 'front' ? 34 : 106,
});

/** How far a wheel is turned in the plan [degrees, clockwise seen from above]: toe-in turns both fronts inboard. */
export const wheelTurn = (toeDeg: number | null, side: SideName): number => {
  const turned = Math.min(MOST_TURNED, Math.max(-MOST_TURNED, (toeDeg ?? 0) * TOE_SCALE));
  return side === 'left' ? turned : -turned || 0;
};
