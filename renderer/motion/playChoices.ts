import type { RideKind } from './ride';

/** Name under which the chosen ride is kept. */
export const PLAY_KIND = 'motion.play';

export const PLAY_LABELS: Readonly<Record<RideKind, string>> = {
  bump: 'Bump',
  roll: 'Roll',
  steer: 'Steer',
  combined: 'Bump, roll and steer',
};
