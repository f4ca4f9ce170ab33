import { toRadians } from '../core/angle';
import type { Shape } from './shape';

/** Point on a circle of the drawing, clockwise from its top [degrees]. */
export const onDial = (radius: number, clockDeg: number): readonly [number, number] => {
  const angle = toRadians(clockDeg);
  return [radius * Math.sin(angle), -radius * Math.cos(angle)];
};

const round = (value: number): number => Math.round(value * 100) / 100;
const scribed = (from: readonly [number, number], to: readonly [number, number]): Shape => ({
  kind: 'line',
  role: 'scribed',
  from,
  to,
});

/** More marks than this are no marks but a grey ring. */
const MOST_MARKS = 200;

/** Radial marks between two radii, every `every` degrees from `from` to `to`; each third one is longer. */
export const dialMarks = (dial: {
  readonly cx: number;
  readonly cy: number;
  readonly inner: number;
  readonly outer: number;
  readonly every: number;
  readonly from?: number;
  readonly to?: number;
}): readonly Shape[] => {
  const { cx, cy, inner, outer, every, from = 0, to = 360 - 1e-6 } = dial;
  const marks: Shape[] = [];
  for (let index = Math.ceil(from / every); index * every <= to && marks.length < MOST_MARKS; index += 1) {
    const reach = index % 3 === 0 ? inner : inner + (outer - inner) * 0.35;
    const [x1, y1] = onDial(outer, index * every);
    const [x2, y2] = onDial(reach, index * every);
    marks.push(scribed([round(cx + x1), round(cy + y1)], [round(cx + x2), round(cy + y2)]));
  }
  return marks;
};

/** A straight rule: `count` graduations `pitch` apart about `middle`, every fifth one long. */
export const rule = (graduated: {
  readonly middle: number;
  readonly pitch: number;
  readonly count: number;
  readonly base: number;
  readonly long: number;
  readonly short: number;
  readonly upright?: true;
}): readonly Shape[] => {
  const { middle, pitch, count, base, long, short, upright } = graduated;
  const half = Math.floor(count / 2);
  return Array.from({ length: 2 * half + 1 }, (_, index) => {
    const at = round(middle + (index - half) * pitch);
    const end = base + ((index - half) % 5 === 0 ? long : short);
    return upright ? scribed([base, at], [end, at]) : scribed([at, base], [at, end]);
  });
};

/** A hexagon of a nut, by half its width across corners. */
export const hexagon = (radius: number): string =>
  `M${[0, 60, 120, 180, 240, 300].map((at) => onDial(radius, at).map(round).join(',')).join('L')}Z`;
