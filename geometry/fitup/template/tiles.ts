import { formatNumber } from '../../format/format';
import { clip } from './labels';
import type { Outline } from './section';

/** Sheets that a template is printed on, upright [mm]. */
export const TEMPLATE_PAPERS = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 215.9, height: 279.4 },
  Tabloid: { width: 279.4, height: 431.8 },
} as const;
export type TemplatePaper = keyof typeof TEMPLATE_PAPERS;

/** What neighbours show alike [mm]. */
export const OVERLAP_MM = 10;
/** No printer prints nearer to the edge than this [mm]. */
export const MARGIN_MM = 10;
/** Along the bottom of every sheet, for the bars and the words [mm]. */
export const STRIP_MM = 30;
/** Nobody glues more sheets than this. */
export const MOST_TILES = 60;

type Point = readonly [number, number];

/** One sheet of a template. Coordinates of the section, x to the right, y up [mm]. */
export interface Tile {
  /** counted from 1, from the top and from the left */
  readonly row: number;
  readonly column: number;
  readonly min: Point;
  readonly max: Point;
  /** crosses in the middle of the overlaps: each is on both neighbours */
  readonly marks: readonly Point[];
}

export interface TileGrid {
  readonly rows: number;
  readonly columns: number;
  /** those that a line crosses or a point is on; the rest of the grid is not printed */
  readonly tiles: readonly Tile[];
  /** the rest of the grid, and whether it is all inside what is swept or all beside it */
  readonly leftOut: readonly { readonly row: number; readonly column: number; readonly isHeld: boolean }[];
}

/** Too large for so many sheets. */
export interface TooManyTiles {
  readonly fault: 'too-many-tiles';
  readonly message: string;
}

/**
 * Cuts a section up into sheets, as few as there can be in their rows and columns, the section in their middle.
 * @param points - that a template is held by: sheets inside the section that one is on are printed too
 */
export function tilesOf(
  outlines: readonly Outline[],
  paper: TemplatePaper,
  points: readonly Point[] = [],
): TileGrid | TooManyTiles {
  const { width, height } = TEMPLATE_PAPERS[paper];
  const area: Point = [width - 2 * MARGIN_MM, height - 2 * MARGIN_MM - STRIP_MM];
  const min: [number, number] = [Infinity, Infinity];
  const max: [number, number] = [-Infinity, -Infinity];
  for (const outline of outlines)
    for (const point of outline.points)
      for (const i of [0, 1] as const) {
        min[i] = Math.min(min[i], point[i]);
        max[i] = Math.max(max[i], point[i]);
      }
  const countOf = (i: 0 | 1): number => Math.max(1, Math.ceil((max[i] - min[i] - OVERLAP_MM) / (area[i] - OVERLAP_MM)));
  const [columns, rows] = [countOf(0), countOf(1)];
  // lines cross at least as many sheets as the longer way has
  if (Math.max(columns, rows) > MOST_TILES) return tooMany(`at least ${Math.max(columns, rows)}`, paper, min, max);
  const spanOf = (i: 0 | 1, count: number): number => count * (area[i] - OVERLAP_MM) + OVERLAP_MM;
  const left = 0.5 * (min[0] + max[0] - spanOf(0, columns));
  const top = 0.5 * (min[1] + max[1] + spanOf(1, rows));
  const needed = Array.from({ length: rows }, (_, i) =>
    Array.from({ length: columns }, (__, k) => {
      const x = left + k * (area[0] - OVERLAP_MM);
      const y = top - i * (area[1] - OVERLAP_MM);
      const corners = { min: [x, y - area[1]], max: [x + area[0], y] } as const;
      const isCrossed = outlines.some((outline) => crosses(outline, corners));
      return { corners, isCrossed, isPrinted: isCrossed || points.some((point) => clip(point, point, corners) !== null) };
    }),
  );
  needed.forEach(bridge);
  const tiles = needed.flatMap((line, i) =>
    line.flatMap(({ corners, isPrinted }, k): Tile[] =>
      isPrinted ? [{ row: i + 1, column: k + 1, ...corners, marks: marksOf(corners, [k + 1, i + 1], [columns, rows]) }] : [],
    ),
  );
  const leftOut = needed.flatMap((line, i) =>
    line.flatMap(({ corners, isPrinted }, k) =>
      isPrinted ? [] : [{ row: i + 1, column: k + 1, isHeld: holds(outlines, corners.min) }],
    ),
  );
  return tiles.length > MOST_TILES ? tooMany(formatNumber(tiles.length, 0), paper, min, max) : { rows, columns, tiles, leftOut };
}

/** A sheet inside the section that a point is on hangs together with the line by the sheets of its row on the nearer side. */
function bridge(row: { readonly isCrossed: boolean; isPrinted: boolean }[]): void {
  const held = row.flatMap(({ isCrossed, isPrinted }, i) => (isPrinted && !isCrossed ? [i] : []));
  for (const i of held) {
    const ends = row.flatMap(({ isCrossed }, k) => (isCrossed ? [k] : []));
    if (ends.length === 0) continue;
    const end = ends.reduce((best, k) => (Math.abs(k - i) < Math.abs(best - i) ? k : best));
    for (let k = Math.min(i, end); k <= Math.max(i, end); k++) row[k].isPrinted = true;
  }
}

function tooMany(count: string, paper: TemplatePaper, min: Point, max: Point): TooManyTiles {
  const size = `${formatNumber(Math.ceil(max[0] - min[0]), 0)} × ${formatNumber(Math.ceil(max[1] - min[1]), 0)} mm`;
  return {
    fault: 'too-many-tiles',
    message: `the section of ${size} would take ${count} sheets of ${paper}; ${MOST_TILES} is the most: take larger paper, fewer parts, one side, or DXF`,
  };
}

type Corners = Pick<Tile, 'min' | 'max'>;

/** Two crosses on each side that has a neighbour, at a quarter and three quarters of it. */
function marksOf({ min, max }: Corners, [column, row]: Point, [columns, rows]: Point): Point[] {
  const half = 0.5 * OVERLAP_MM;
  const at = (i: 0 | 1, share: number): number => min[i] + share * (max[i] - min[i]);
  const xs = [...(column > 1 ? [min[0] + half] : []), ...(column < columns ? [max[0] - half] : [])];
  const ys = [...(row > 1 ? [max[1] - half] : []), ...(row < rows ? [min[1] + half] : [])];
  return [
    ...xs.flatMap((x) => [0.25, 0.75].map((share): Point => [x, at(1, share)])),
    ...ys.flatMap((y) => [0.25, 0.75].map((share): Point => [at(0, share), y])),
  ];
}

/** Whether a point is inside: a way from it to the right crosses lines an odd number of times. */
function holds(outlines: readonly Outline[], [x, y]: Point): boolean {
  let isHeld = false;
  for (const { points } of outlines)
    points.forEach(([x0, y0], i) => {
      const [x1, y1] = points[(i + 1) % points.length];
      if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) isHeld = !isHeld;
    });
  return isHeld;
}

const crosses = ({ points }: Outline, corners: Corners): boolean =>
  points.some((from, i) => clip(from, points[(i + 1) % points.length], corners) !== null);
