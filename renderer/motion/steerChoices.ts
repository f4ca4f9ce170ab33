import type { SteerAs } from '../compute/steerScale';

/** Name under which the choice is kept. */
export const STEER_AS = 'motion.steerAs';

/** What steer can be read and typed in: what one press of an arrow key moves, in its own unit. */
export const STEER_WAYS: Readonly<
  Record<
    SteerAs,
    { readonly label: string; readonly spoken: string; readonly unit: string; readonly step: number; readonly decimals: number }
  >
> = {
  rack: { label: 'rack', spoken: 'Steer: rack travel, mm', unit: 'mm', step: 1, decimals: 1 },
  handWheel: { label: 'hand wheel', spoken: 'Steer: turn of the hand wheel, degrees', unit: '°', step: 5, decimals: 0 },
  meanAngle: {
    label: 'mean angle',
    spoken: 'Steer: mean steer angle of both wheels, degrees',
    unit: '°',
    step: 0.5,
    decimals: 2,
  },
};
