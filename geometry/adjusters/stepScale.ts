import type { AdjusterDocument } from '../car/document';

/** Where an adjuster's number can stand, in the file's unit: whole multiples of `step` from `min` to `max`. */
export interface StepScale {
  readonly min: number;
  readonly max: number;
  /** the part's own mark, index, shim or fraction of a turn */
  readonly step: number;
  /** a clock that goes round: `max` is `min` again */
  readonly isRound: boolean;
}

/** A cam turned past 90° comes back. */
const CAM_END = 90;
const FULL_CLOCK = 360;

export function stepScaleOf(adjuster: AdjusterDocument): StepScale {
  switch (adjuster.kind) {
    case 'eccentric-bolt':
    case 'clamp-eccentric':
      return { min: -CAM_END, max: CAM_END, step: adjuster.mark, isRound: false };
    case 'offset-bushing':
      return { min: 0, max: FULL_CLOCK, step: adjuster.index, isRound: true };
    case 'slide':
    case 'turnbuckle':
    case 'perch': {
      const [min, max] = adjuster.range;
      return { min, max, step: adjuster.step, isRound: false };
    }
  }
}

/** Multiples of steps end in 0.30000000000000004: that is taken off. A number that has more than nine decimals keeps them. */
export function cleanSetting(value: number): number {
  const rounded = Number(value.toFixed(9));
  if (rounded === 0 && Math.abs(value) < 1e-12) return 0;
  return Math.abs(rounded - value) <= 1e-13 * Math.max(1, Math.abs(value)) ? rounded : value;
}

/** A range and a step in mm, kept in inches with nine decimals each, part by less than this many steps. */
const SAME_STEP = 1e-6;

/** Every setting that the part really has, ascending: multiples of its step counted from zero, inside its range. */
export function realSettings({ min, max, step, isRound }: StepScale): number[] {
  const first = Math.ceil(min / step - SAME_STEP);
  const last = Math.floor(max / step + SAME_STEP);
  const settings: number[] = [];
  for (let k = first; k <= last; k += 1) {
    // a range of many decimals ends a hair before its last step
    const setting = Math.min(max, Math.max(min, cleanSetting(k * step)));
    if (!isRound || setting < max) settings.push(setting);
  }
  return settings;
}
