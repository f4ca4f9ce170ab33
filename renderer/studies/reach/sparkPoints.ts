import type { Stretch } from './stretches';

export interface SparkPoint {
  readonly x: number;
  readonly y: number;
  readonly isMissed: boolean;
}

/** Kept free at the sides, so that the dots of the ends are whole [px]. */
const EDGE = 6;
/** The band that is wanted takes this part of the height, unless the values go further. */
const BAND = 0.45;

/** Where a course over a stretch is drawn: its band, the line at zero of the motion, its points. Pixels, y downward. */
export const sparkPoints = ({ inputs, lines, least, greatest }: Stretch, width: number, height: number) => {
  const values = lines.flatMap((line) => line.values);
  const ends = [least, greatest].filter(Number.isFinite);
  const [low, high] = [Math.min(...values, ...ends), Math.max(...values, ...ends)];
  const isBand = ends.length === 2 && greatest > least;
  const middle = isBand ? (least + greatest) / 2 : (low + high) / 2;
  const half = Math.max(
    isBand ? (greatest - least) / 2 / BAND : 0,
    (high - middle) * 1.15,
    (middle - low) * 1.15,
    Math.max(Math.abs(middle), 1) * 1e-6,
  );
  const y = (value: number): number => height / 2 - ((value - middle) / half) * (height / 2 - 3);
  const [first = 0, last = 0] = [inputs[0], inputs.at(-1)];
  const x = (input: number): number =>
    last === first ? width / 2 : EDGE + ((input - first) / (last - first)) * (width - 2 * EDGE);
  const limited = (at: number): number => Math.min(height, Math.max(0, at));
  const top = limited(Number.isFinite(greatest) ? y(greatest) : 0);
  const bottom = limited(Number.isFinite(least) ? y(least) : height);
  const hair = 1e-9 * Math.max(1, Math.abs(low), Math.abs(high));
  return {
    band: ends.length === 0 ? null : { top, height: bottom - top },
    zero: first < 0 && last > 0 ? x(0) : null,
    lines: lines.map((line) => ({
      side: line.side,
      points: line.values.map((value, at): SparkPoint => ({
        x: x(inputs[at] ?? 0),
        y: y(value),
        isMissed: value < least - hair || value > greatest + hair,
      })),
    })),
  };
};
