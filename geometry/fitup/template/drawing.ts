import type { SideName } from '../../car/document';
import type { PaperArrow } from './plane';
import type { Outline } from './section';

type Point = readonly [number, number];

/** A pickup point on the paper. x to the right, y up, and how far it is off the paper, + towards the reader [mm]. */
export interface PaperPoint {
  readonly name: string;
  readonly at: Point;
  readonly off: number;
}

/** A bolt's axis on the paper: the point that it goes through, and its direction's share along the paper; below 1 where it leans. */
export interface PaperAxis extends PaperPoint {
  readonly way: Point;
}

/** What stands on a template, whatever it is written as. Lengths in mm. */
export interface TemplateDrawing {
  /** its name, and those of the parts that are swept */
  readonly car: string;
  readonly of: readonly string[];
  /** where it is read from, as "seen from the front" */
  readonly seen: string;
  readonly side: SideName;
  /** what is covered, and by how much it is too large: a sentence each */
  readonly facts: readonly string[];
  readonly cautions: readonly string[];
  readonly outlines: readonly Outline[];
  readonly points: readonly PaperPoint[];
  readonly axes: readonly PaperAxis[];
  readonly arrows: readonly PaperArrow[];
}

type Titled = Pick<TemplateDrawing, 'car' | 'of'>;

/** What a template is of, whole. */
export const titleOf = ({ car, of }: Titled): string => `${car}: keep-out of ${of.join(', ')}`;

/** The same with as many names as fit, and how many more there are. @param fits - whether a text has room */
export function shortTitleOf(drawing: Titled, fits: (text: string) => boolean): string {
  const { car, of } = drawing;
  const withNames = (count: number): string =>
    count === of.length ? titleOf(drawing) : `${titleOf({ car, of: of.slice(0, count) })} and ${of.length - count} more`;
  for (let count = of.length; count > 0; count--) if (fits(withNames(count))) return withNames(count);
  let least = `${car}: keep-out of ${of.length} parts`;
  if (fits(least)) return least;
  while (least !== '' && !fits(`${least}…`)) least = least.slice(0, -1);
  return `${least.trimEnd()}…`;
}

/** On every sheet, wherever it is drawn. */
export const HATCHED = 'Hatched: keep out.';
/** Before the sheets. */
export const HATCHED_AT_LENGTH = `${HATCHED} The line is the edge of it, dashed round a hole in it; what is not hatched is free of what is swept.`;

/** How an axis's line sticks out of its point on either side, at most [mm]. */
export const AXIS_REACH_MM = 30;
/** An axis that shows less of itself is a dot [mm]. */
export const LEAST_AXIS_MM = 2;

/** The ends of an axis's line on the paper; null where it is seen end on. */
export function axisLine({ at, way }: PaperAxis): readonly [Point, Point] | null {
  const [x, y] = [AXIS_REACH_MM * way[0], AXIS_REACH_MM * way[1]];
  if (Math.sqrt(x * x + y * y) < LEAST_AXIS_MM) return null;
  return [
    [at[0] - x, at[1] - y],
    [at[0] + x, at[1] + y],
  ];
}

/** How far a thing is off the paper, in words. */
export function offWords(off: number): string {
  const far = Math.abs(off).toFixed(1);
  if (far === '0.0') return 'on the plane';
  return off > 0 ? `${far} mm in front` : `${far} mm behind`;
}
