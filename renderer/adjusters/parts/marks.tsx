import { toRadians } from '../../../geometry/index';

/** Point on a circle of the drawing, clockwise from its top [degrees]. */
export const onDial = (radius: number, clockDeg: number): readonly [number, number] => {
  const angle = toRadians(clockDeg);
  return [radius * Math.sin(angle), -radius * Math.cos(angle)];
};

const round = (value: number): number => Math.round(value * 100) / 100;

/** Radial marks between two radii, every `every` degrees from `from` to `to`; each third one is longer. */
export const DialMarks = (props: {
  readonly cx: number;
  readonly cy: number;
  readonly inner: number;
  readonly outer: number;
  readonly every: number;
  readonly from?: number;
  readonly to?: number;
}) => {
  const { cx, cy, inner, outer, every, from = 0, to = 360 - 1e-6 } = props;
  const marks: number[] = [];
  for (let index = Math.ceil(from / every); index * every <= to && marks.length < 200; index += 1) marks.push(index);
  return (
    <>
      {marks.map((index) => {
        const reach = index % 3 === 0 ? inner : inner + (outer - inner) * 0.35;
        const [x1, y1] = onDial(outer, index * every);
        const [x2, y2] = onDial(reach, index * every);
        return (
          <line key={index} className="scribed" x1={round(cx + x1)} y1={round(cy + y1)} x2={round(cx + x2)} y2={round(cy + y2)} />
        );
      })}
    </>
  );
};

/** A straight rule: `count` graduations `pitch` apart about `middle`, every fifth one long. */
export const Rule = (props: {
  readonly middle: number;
  readonly pitch: number;
  readonly count: number;
  readonly base: number;
  readonly long: number;
  readonly short: number;
  readonly upright?: true;
}) => {
  const { middle, pitch, count, base, long, short, upright } = props;
  const half = Math.floor(count / 2);
  return (
    <>
      {Array.from({ length: 2 * half + 1 }, (_, index) => {
        const at = round(middle + (index - half) * pitch);
        const end = base + ((index - half) % 5 === 0 ? long : short);
        return upright ? (
          <line key={index} className="scribed" x1={base} y1={at} x2={end} y2={at} />
        ) : (
          <line key={index} className="scribed" x1={at} y1={base} x2={at} y2={end} />
        );
      })}
    </>
  );
};

/** A hexagon of a nut, by half its width across corners. */
export const hexagon = (radius: number): string =>
  `M${[0, 60, 120, 180, 240, 300].map((at) => onDial(radius, at).map(round).join(',')).join('L')}Z`;
