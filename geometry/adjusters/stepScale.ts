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

/** Sums of many steps end in 0.30000000000000004: settings keep nine decimals. */
export function cleanSetting(value: number): number {
  const rounded = Number(value.toFixed(9));
  return rounded === 0 ? 0 : rounded;
}

/** Every setting that the part really has, ascending: multiples of its step counted from zero, inside its range. */
export function realSettings({ min, max, step, isRound }: StepScale): number[] {
  const first = Math.ceil(min / step - 1e-9);
  const last = Math.floor(max / step + 1e-9);
  const settings: number[] = [];
  for (let k = first; k <= last; k += 1) {
    const setting = cleanSetting(k * step);
    if (!isRound || setting < max) settings.push(setting);
  }
  return settings;
}
