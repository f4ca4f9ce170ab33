import {
  realSettings,
  stepScaleOf,
  toRadians,
  type AdjusterDocument,
  type AdjusterKind,
  type AxleName,
  type Degrees,
  type Triple,
} from '../../../geometry/index';
import type { AimRange } from '../../state/viewing';

type Part = Readonly<Record<string, unknown>>;

const isPositive = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value) && value > 0;
const isNumbers = (value: unknown, count: number): value is readonly number[] =>
  Array.isArray(value) && value.length === count && value.every((part) => typeof part === 'number' && Number.isFinite(part));

/** The field that aims each kind whose point moves along a line, or to and fro beside one. */
const AIMED: Readonly<Partial<Record<AdjusterKind, string>>> = {
  slide: 'along',
  'eccentric-bolt': 'slot',
  'offset-bushing': 'twelve',
};

/** What the kind needs for its steps to be known; the ends are known without its step. */
const settingsOf = (part: Part): readonly number[] | null => {
  const whole = part as unknown as AdjusterDocument;
  switch (part['kind']) {
    case 'slide': {
      const { range, step } = part;
      if (!isNumbers(range, 2) || (range[0] ?? 0) >= (range[1] ?? 0)) return null;
      return isPositive(step) ? realSettings(stepScaleOf(whole)) : range;
    }
    case 'eccentric-bolt':
      if (!isPositive(part['throw'])) return null;
      return isPositive(part['mark']) ? realSettings(stepScaleOf(whole)) : [-90, 90];
    case 'offset-bushing':
      if (!isPositive(part['offset'])) return null;
      return isPositive(part['index']) ? realSettings(stepScaleOf(whole)) : [0, 180];
    default:
      return null;
  }
};

/**
 * How far along its aim a setting has the point: a slide by the setting itself, a cam by throw · sin, a bushing's hole by
 * offset · cos beside its line.
 * @param setting - in the file's unit, or degrees; null: as drawn
 * @returns in the file's unit
 */
export const alongAim = (part: Part, setting: number | null): number => {
  if (setting === null) return 0;
  const angle = (): number => toRadians(setting as Degrees);
  switch (part['kind']) {
    case 'eccentric-bolt':
      return Number(part['throw']) * Math.sin(angle());
    case 'offset-bushing':
      return Number(part['offset']) * Math.cos(angle());
    default:
      return setting;
  }
};

/** Steps that come to the same place are one. */
const SAME_MM = 1e-6;

/**
 * Where an adjuster that is being made can put its point, along its aim; null while its point, its aim or its range is not given,
 * and for kinds that aim an axis.
 * @param part - the adjuster as far as it is filled in
 * @param points - names of the axle's points
 * @param mm - in one unit of the file
 * @param setting - where it is tried at: the point is there now
 */
export const aimRangeOf = (
  part: Part,
  axle: AxleName,
  points: readonly string[],
  mm: number,
  setting: number | null,
): AimRange | null => {
  const key = AIMED[part['kind'] as AdjusterKind];
  const [point, direction] = [part['moves'], key === undefined ? undefined : part[key]];
  if (typeof point !== 'string' || !points.includes(point) || !isNumbers(direction, 3)) return null;
  const settings = direction.every((value) => value === 0) ? null : settingsOf(part);
  if (!settings) return null;
  const now = alongAim(part, setting);
  const marks = settings.map((one) => (alongAim(part, one) - now) * mm).sort((a, b) => a - b);
  const distinct = marks.filter((mark, index) => index === 0 || mark - (marks[index - 1] ?? 0) > SAME_MM);
  return {
    from: { axle, side: 'left', point },
    direction: direction as unknown as Triple,
    marks: distinct,
    design: now === 0 ? 0 : -now * mm,
  };
};
