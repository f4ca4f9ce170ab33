import { clip, type Box } from './labels';
import type { Outline } from './section';

type Point = readonly [number, number];
export type Stroke = readonly [Point, Point];

/** Between two lines of the hatching, square to them [mm]: told from an edge at a glance, with room for names between. */
export const HATCH_MM = 6;

/**
 * Straight lines at 45°, up to the right, over all that outlines hold and none of their holes: what is to be kept free.
 *
 * Each lies where x − y is a multiple of one distance, whatever the outlines are, so that the lines of two sheets run on.
 * @param outlines - closed lines that do not cross each other [mm]
 * @param pitch - from line to line [mm]
 */
export function hatchOf(outlines: readonly Pick<Outline, 'points'>[], pitch = HATCH_MM): readonly Stroke[] {
  const step = pitch * Math.SQRT2;
  const met = new Map<number, number[]>();
  for (const { points } of outlines)
    points.forEach((from, i) => {
      const to = points[(i + 1) % points.length];
      const [first, last] = [from[0] - from[1], to[0] - to[1]];
      // a line through a corner is crossed by one of the two that meet there, or by both or neither where it only touches
      const end = Math.ceil(Math.max(first, last) / step);
      for (let k = Math.ceil(Math.min(first, last) / step); k < end; k++) {
        const share = (k * step - first) / (last - first);
        const sum = from[0] + from[1] + share * (to[0] + to[1] - from[0] - from[1]);
        const known = met.get(k);
        if (known === undefined) met.set(k, [sum]);
        else known.push(sum);
      }
    });
  return [...met].flatMap(([k, sums]): Stroke[] => {
    const at = (sum: number): Point => [0.5 * (sum + k * step), 0.5 * (sum - k * step)];
    sums.sort((a, b) => a - b);
    return sums.flatMap((sum, i): Stroke[] => (i % 2 === 0 && i + 1 < sums.length ? [[at(sum), at(sums[i + 1])]] : []));
  });
}

/** What of straight lines lies in no box: hatching makes room for names and marks. */
export function besideBoxes(strokes: readonly Stroke[], boxes: readonly Box[]): readonly Stroke[] {
  return boxes.reduce<readonly Stroke[]>(
    (kept, box) =>
      kept.flatMap((stroke): readonly Stroke[] => {
        const inside = clip(...stroke, box);
        if (inside === null) return [stroke];
        const [[from, to], [enters, leaves]] = [stroke, inside];
        return [
          ...(isSame(from, enters) ? [] : [[from, enters] as const]),
          ...(isSame(leaves, to) ? [] : [[leaves, to] as const]),
        ];
      }),
    strokes,
  );
}

const isSame = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1];
