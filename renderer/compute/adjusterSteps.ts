import { cleanSetting as clean, stepScaleOf, type AdjusterDocument } from '../../geometry/index';

/** What one adjuster's number is: its unit on the screen, its range, the step of the part itself, in the file's unit. */
export interface AdjusterScale {
  readonly measure: 'length' | 'clock' | 'turns';
  readonly min: number;
  readonly max: number;
  /** the part's own mark, index, shim or fraction of a turn */
  readonly step: number;
  /** what one step is called */
  readonly stepName: 'mark' | 'step' | 'flat' | 'shim';
}

const FULL_CLOCK = 360;

const NAMES: Readonly<Record<AdjusterDocument['kind'], Pick<AdjusterScale, 'measure' | 'stepName'>>> = {
  slide: { measure: 'length', stepName: 'step' },
  'eccentric-bolt': { measure: 'clock', stepName: 'mark' },
  'clamp-eccentric': { measure: 'clock', stepName: 'mark' },
  'offset-bushing': { measure: 'clock', stepName: 'mark' },
  turnbuckle: { measure: 'turns', stepName: 'step' },
  perch: { measure: 'turns', stepName: 'step' },
};

const stepNameOf = (adjuster: AdjusterDocument): AdjusterScale['stepName'] => {
  if (adjuster.kind === 'slide' && adjuster.shims) return 'shim';
  return adjuster.kind === 'turnbuckle' && adjuster.flats ? 'flat' : NAMES[adjuster.kind].stepName;
};

export const scaleOf = (adjuster: AdjusterDocument): AdjusterScale => {
  const { min, max, step } = stepScaleOf(adjuster);
  return { measure: NAMES[adjuster.kind].measure, min, max, step, stepName: stepNameOf(adjuster) };
};

/** A bushing's clock goes round; everything else stops at the end of its range. */
const within = (kind: AdjusterDocument['kind'], { min, max }: AdjusterScale, value: number): number => {
  if (kind === 'offset-bushing') return clean(((value % FULL_CLOCK) + FULL_CLOCK) % FULL_CLOCK);
  return clean(Math.min(max, Math.max(min, value)));
};

/**
 * The setting `steps` steps on from `value`; a whole step goes to the part's next mark, a fraction of one ("between
 * marks") moves by just that. @param value - null: nothing set; a bushing is then fitted at its first mark
 */
export const stepSetting = (adjuster: AdjusterDocument, value: number | null, steps: number): number => {
  const scale = scaleOf(adjuster);
  if (value === null && adjuster.kind === 'offset-bushing') return within(adjuster.kind, scale, steps > 0 ? 0 : -scale.step);
  const from = value ?? 0;
  if (!Number.isInteger(steps)) return within(adjuster.kind, scale, from + steps * scale.step);
  const marks = from / scale.step;
  const onMark = Math.abs(marks - Math.round(marks)) < 1e-6;
  const start = onMark ? Math.round(marks) : steps > 0 ? Math.floor(marks) : Math.ceil(marks);
  return within(adjuster.kind, scale, (start + steps) * scale.step);
};

/** The mark nearest to a setting that a drag passed over. */
export const nearestMark = (adjuster: AdjusterDocument, value: number): number => {
  const scale = scaleOf(adjuster);
  return within(adjuster.kind, scale, Math.round(value / scale.step) * scale.step);
};

/** The same between marks: to a tenth of one. */
export const nearestTenth = (adjuster: AdjusterDocument, value: number): number => {
  const scale = scaleOf(adjuster);
  const tenth = scale.step / 10;
  return within(adjuster.kind, scale, Math.round(value / tenth) * tenth);
};

/** Why a setting is refused, in the file's unit; null where it is in range. */
export const isInRange = (adjuster: AdjusterDocument, value: number): boolean => {
  const { min, max } = scaleOf(adjuster);
  return value >= min - 1e-9 && value <= max + 1e-9;
};

/** Whether a setting stands between two marks of the part. */
export const isOffMark = (adjuster: AdjusterDocument, value: number | null): boolean => {
  if (value === null) return false;
  const marks = value / scaleOf(adjuster).step;
  return Math.abs(marks - Math.round(marks)) > 1e-6;
};
