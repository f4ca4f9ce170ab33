import { contours } from 'd3-contour';
import type { MapValues } from '../../../geometry/index';

/** A place on a map, in parts of its width and height: 0, 0 is the least of both. */
export type MapPoint = readonly [number, number];

/** Where a map's values are at a level or over it. */
export interface ContourArea {
  readonly level: number;
  /** closed rings, outer ones and holes */
  readonly rings: readonly (readonly MapPoint[])[];
  /** the edges of that area where it ends inside the map: not along its frame, nor along places without value */
  readonly lines: readonly (readonly MapPoint[])[];
}

const clamp = (value: number, most: number): number => Math.min(most, Math.max(0, value));

/**
 * Areas over levels and the lines round them, by marching squares with linear interpolation.
 * @param values - rows of a map, evenly spaced either way; null: no value, which no line is drawn round
 * @param levels - in the unit of the values
 */
export function contourAreas(values: MapValues, levels: readonly number[]): readonly ContourArea[] {
  const ny = values.length;
  const nx = values[0]?.length ?? 0;
  if (nx < 2 || ny < 2) return [];
  const flat = values.flatMap((row) => row.map((value) => value ?? NaN));
  const hasValue = (column: number, row: number): boolean => !Number.isNaN(flat[row * nx + column] ?? NaN);
  /** whether the middle of an edge lies in a square with a value at each corner, inside the frame */
  const isInside = (a: MapPoint, b: MapPoint): boolean => {
    const [x, y] = [(a[0] + b[0]) / 2 - 0.5, (a[1] + b[1]) / 2 - 0.5];
    if (x <= 0 || y <= 0 || x >= nx - 1 || y >= ny - 1) return false;
    const [column, row] = [Math.floor(x), Math.floor(y)];
    return hasValue(column, row) && hasValue(column + 1, row) && hasValue(column, row + 1) && hasValue(column + 1, row + 1);
  };
  /** a grid value sits in the middle of its square; the frame goes through the outermost values */
  const placed = ([x, y]: MapPoint): MapPoint => [clamp(x - 0.5, nx - 1) / (nx - 1), clamp(y - 0.5, ny - 1) / (ny - 1)];
  const made = contours()
    .size([nx, ny])
    .thresholds([...levels]);
  return made(flat).map(({ value, coordinates }) => {
    const rings = coordinates.flat() as unknown as readonly (readonly MapPoint[])[];
    return {
      level: value,
      rings: rings.map((ring) => ring.map(placed)),
      lines: rings.flatMap((ring) => piecesOf(ring, isInside)).map((line) => line.map(placed)),
    };
  });
}

/** The stretches of a closed ring whose edges are kept, in order; one that goes over the ring's seam is one stretch. */
function piecesOf(ring: readonly MapPoint[], isKept: (a: MapPoint, b: MapPoint) => boolean): readonly (readonly MapPoint[])[] {
  const pieces: MapPoint[][] = [];
  let open: MapPoint[] | null = null;
  for (let index = 0; index + 1 < ring.length; index += 1) {
    const [a, b] = [ring[index], ring[index + 1]];
    if (!a || !b || !isKept(a, b)) {
      open = null;
      continue;
    }
    if (open) open.push(b);
    else pieces.push((open = [a, b]));
  }
  const [first, last] = [pieces[0], pieces.at(-1)];
  const [seam] = ring;
  if (first && last && first !== last && last.at(-1) === ring.at(-1) && first[0] === seam) {
    pieces.pop();
    pieces[0] = [...last, ...first.slice(1)];
  }
  return pieces;
}

/** Least and greatest value of a map; null where there is none. */
export function rangeOfMap(values: MapValues): readonly [number, number] | null {
  let [low, high] = [Infinity, -Infinity];
  for (const row of values)
    for (const value of row) {
      if (value === null) continue;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  return low > high ? null : [low, high];
}

/** The value at a place of a map, between the four values round it; null where one of them is missing. */
export function valueAt(values: MapValues, [x, y]: MapPoint): number | null {
  const ny = values.length;
  const nx = values[0]?.length ?? 0;
  if (nx < 2 || ny < 2 || x < 0 || y < 0 || x > 1 || y > 1) return null;
  const [gx, gy] = [x * (nx - 1), y * (ny - 1)];
  const [column, row] = [Math.min(nx - 2, Math.floor(gx)), Math.min(ny - 2, Math.floor(gy))];
  const [u, v] = [gx - column, gy - row];
  const corners = [values[row]?.[column], values[row]?.[column + 1], values[row + 1]?.[column], values[row + 1]?.[column + 1]];
  const weights = [(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v];
  let sum = 0;
  for (const [index, corner] of corners.entries()) {
    const weight = weights[index] ?? 0;
    if (weight === 0) continue;
    if (corner === null || corner === undefined) return null;
    sum += weight * corner;
  }
  return sum;
}

/** Where a figure may stand on a line, in parts of its length: the first that is free is taken. */
const FIGURE_PLACES = [0.5, 0.66, 0.34, 0.8, 0.2];

export interface FigurePlace {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

interface Pixels {
  readonly width: number;
  readonly height: number;
}

const lengthOf = (line: readonly MapPoint[], { width, height }: Pixels): readonly number[] => {
  const along = [0];
  for (let index = 1; index < line.length; index += 1) {
    const [a, b] = [line[index - 1], line[index]];
    const step = a && b ? Math.hypot((b[0] - a[0]) * width, (b[1] - a[1]) * height) : 0;
    along.push((along.at(-1) ?? 0) + step);
  }
  return along;
};

/**
 * One figure a line, where it does not cover another one nor leave the frame; a short line has none.
 * @param size - of the frame [px]
 * @param taken - figures that are there already; the new ones are added
 * @returns places in pixels from the frame's top left
 */
export function figuresOn(
  lines: readonly { readonly line: readonly MapPoint[]; readonly text: string }[],
  size: Pixels,
  taken: FigurePlace[],
): readonly FigurePlace[] {
  const placed: FigurePlace[] = [];
  const isFree = (x: number, y: number, half: number): boolean =>
    x - half > 2 &&
    x + half < size.width - 2 &&
    y > 10 &&
    y < size.height - 10 &&
    taken.every((other) => Math.abs(other.x - x) > half + 4 * other.text.length || Math.abs(other.y - y) > 16);
  for (const { line, text } of lines) {
    const along = lengthOf(line, size);
    const whole = along.at(-1) ?? 0;
    if (whole < 50) continue;
    const half = 4 * text.length;
    for (const part of FIGURE_PLACES) {
      const index = along.findIndex((at) => at >= part * whole);
      const point = line[index];
      if (!point) continue;
      const [x, y] = [point[0] * size.width, (1 - point[1]) * size.height];
      if (!isFree(x, y, half)) continue;
      const figure = { x, y, text };
      taken.push(figure);
      placed.push(figure);
      break;
    }
  }
  return placed;
}
