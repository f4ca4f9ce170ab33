import type { LabelBox } from './labelPlaces';
import { between, separation, type Point } from './points';

/** Screen place of a point [px] with its distance from the eye [mm]; null behind the eye. */
export type Project = (point: Point) => readonly [number, number, number] | null;
export type ScreenPoint = readonly [number, number];

const HALVINGS = 40;

const isInside = (place: readonly [number, number, ...number[]] | null, area: LabelBox): boolean =>
  place !== null &&
  place[0] >= area.x &&
  place[0] <= area.x + area.width &&
  place[1] >= area.y &&
  place[1] <= area.y + area.height;

export interface ClippedRay {
  readonly from: ScreenPoint;
  readonly to: ScreenPoint;
  /** from the edge of the view to the end that is not seen [mm]; 0 where it is seen */
  readonly further: number;
  /** the last point in view */
  readonly last: Point;
}

/**
 * A line from a point in view to one that may not be. The edge is found on the line in space, so that the distance is
 * true in perspective too.
 * @returns null where its beginning is out of view as well
 */
export const clipRay = (from: Point, to: Point, project: Project, area: LabelBox): ClippedRay | null => {
  const start = project(from);
  if (!start || !isInside(start, area)) return null;
  const end = project(to);
  if (end && isInside(end, area)) return { from: [start[0], start[1]], to: [end[0], end[1]], further: 0, last: to };
  let [seen, unseen] = [0, 1];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (seen + unseen) / 2;
    if (isInside(project(between(from, to, middle)), area)) seen = middle;
    else unseen = middle;
  }
  const last = between(from, to, seen);
  const edge = project(last) ?? start;
  return { from: [start[0], start[1]], to: [edge[0], edge[1]], further: separation(last, to), last };
};

/** Corners of the convex outline of points, going round once. */
export const convexHull = (points: readonly ScreenPoint[]): readonly ScreenPoint[] => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const turn = (o: ScreenPoint, a: ScreenPoint, b: ScreenPoint): number =>
    (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);
  const chain = (from: readonly ScreenPoint[]): ScreenPoint[] => {
    const kept: ScreenPoint[] = [];
    for (const point of from) {
      for (;;) {
        const [before, last] = [kept.at(-2), kept.at(-1)];
        if (!before || !last || turn(before, last, point) > 0) break;
        kept.pop();
      }
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
};
