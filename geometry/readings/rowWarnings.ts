import type { AxleSetting } from '../axle/axleSetting';
import type { AxleSolver, Placed } from '../axle/axleSolver';
import type { CornerReadings, PerSide, RowWarning } from './rows';
import type { RowWarningCode } from './rowWarningCodes';
import { withMinus } from '../words/minus';

/** How far past an end counts as on it: what is lost in adding the standing travel to a round number [mm]. */
const ON_THE_END = 1e-6;

const SIDES = ['left', 'right'] as const;

type CodedWarning = RowWarning & { readonly code: RowWarningCode };

const rounded = (setting: number): string => withMinus(Number(setting.toFixed(3)));
const millimetres = (length: number): string => `${withMinus(Number(length.toFixed(1)))} mm`;

/** What is odd about an axle in its setup, whatever the position. */
export function standingWarnings({ axle }: AxleSolver, setting: AxleSetting): readonly CodedWarning[] {
  const warnings: CodedWarning[] = [];
  if (setting.springDatum.left.by === 'weight') {
    warnings.push({
      code: 'spring-force-from-weight',
      path: `${axle.axle}.spring`,
      message: 'Spring force is taken from the sprung corner weight, for the file does not give freeLength and installed.',
    });
  }
  if (axle.toeReset !== null && !axle.toeReset.inRange) {
    warnings.push({
      code: 'toe-reset-out-of-range',
      path: `${axle.axle}.adjusters.${axle.toeReset.adjuster}`,
      message: `The toe reset needs ${axle.toeReset.adjuster} at ${rounded(axle.toeReset.left)} left, ${rounded(axle.toeReset.right)} right: outside its range.`,
    });
  }
  return warnings;
}

/**
 * The warnings of one position: rack and wheels past the ends that the file gives. An answer is given all the same.
 * @param standing - those that hold at every position: handed back as they are where nothing is past an end
 */
export function warningsAt(
  { axle }: AxleSolver,
  placed: Placed,
  readings: PerSide<CornerReadings>,
  standing: readonly RowWarning[],
): readonly RowWarning[] {
  const { steering, travel } = axle.mechanism;
  const own: CodedWarning[] = [];
  const ends = steering === null ? null : steering.travel;
  if (ends !== null && isOutside(placed.rack, ends[0], ends[1])) {
    const end = placed.rack < 0 ? ends[0] : ends[1];
    const message = `The rack at ${millimetres(placed.rack)} is past the end of its travel, ${millimetres(end)}.`;
    own.push({ code: 'rack-past-end', path: `${axle.axle}.steering.travel`, message });
  }
  for (const side of SIDES) {
    const past = pastEnd(readings[side], placed.travel[side], travel);
    if (past === null) continue;
    const message = `The ${side} wheel at travel ${millimetres(placed.travel[side])} from design is ${past.words}.`;
    own.push({ code: 'travel-past-end', path: `${axle.axle}.${past.by}`, message });
  }
  return own.length === 0 ? standing : [...standing, ...own];
}

const isOutside = (value: number, least: number, most: number): boolean =>
  value < least - ON_THE_END || value > most + ON_THE_END;

/** The damper's own ends come first; the axle's travel counts at an end that no damper gives. */
function pastEnd(
  { solidLeft, droopLeft }: CornerReadings,
  travel: number,
  ends: readonly [number, number] | null,
): { readonly by: 'damper' | 'travel'; readonly words: string } | null {
  if (solidLeft !== null && solidLeft < -ON_THE_END)
    return { by: 'damper', words: `${millimetres(-solidLeft)} of damper past solid` };
  if (droopLeft !== null && droopLeft < -ON_THE_END)
    return { by: 'damper', words: `${millimetres(-droopLeft)} of damper past its full length` };
  if (ends === null) return null;
  const [least, most] = ends;
  if ((solidLeft === null && travel > most + ON_THE_END) || (droopLeft === null && travel < least - ON_THE_END))
    return { by: 'travel', words: `past the end of its travel, ${millimetres(travel > most ? most : least)}` };
  return null;
}
