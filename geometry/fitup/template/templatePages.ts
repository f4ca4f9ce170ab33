import { fontsFor, inRuns, type PrintedPath, type PrintedSheet, type PrintedText } from '../../sheet/printedSheet';
import { wrapText } from '../../sheet/layout/wrapText';
import { inTypeface, widthOf } from '../../sheet/typeface/typeface';
import { axisLine, HATCHED, HATCHED_AT_LENGTH, offWords, shortTitleOf, titleOf, type TemplateDrawing } from './drawing';
import { besideBoxes, hatchOf, type Stroke } from './hatch';
import { clip, grown, seatNames, type Box, type Named } from './labels';
import { endOnWords } from './templateDxf';
import { MARGIN_MM, STRIP_MM, TEMPLATE_PAPERS, type TemplatePaper, type Tile, type TileGrid } from './tiles';

type Point = readonly [number, number];
type Mark = PrintedText | PrintedPath;

const POINTS_PER_MM = 72 / 25.4;
const BAR_MM = 100;
const CROSS_MM = 4;
const ARROW_MM = 9;
const INK = '#000000';

/** A template on sheets of paper at true scale: a sheet of words, then the tiles. @param date - YYYY-MM-DD */
export function templatePages(drawing: TemplateDrawing, grid: TileGrid, paper: TemplatePaper, date: string): PrintedSheet {
  const { width, height } = TEMPLATE_PAPERS[paper];
  const size = { width: width * POINTS_PER_MM, height: height * POINTS_PER_MM };
  const hatch = hatchOf(drawing.outlines);
  const tiles = grid.tiles.map((tile) => tilePage(drawing, hatch, grid, tile, paper, date));
  const unnamed = tiles.flatMap((tile) => tile.unnamed);
  const pages = [...wordsPages(drawing, grid, paper, date, unnamed), ...tiles.map(({ marks }) => marks)];
  return {
    title: titleOf(drawing),
    date,
    fonts: fontsFor(pages.flat()),
    pages: pages.map((marks) => ({ ...size, marks })),
  };
}

const PRINT_IT = 'Print at 100 %, not fitted to the page, and measure both bars of every sheet: 100 mm each.';

/** What is said before the tiles, on as many sheets as it takes. */
function wordsPages(
  drawing: TemplateDrawing,
  grid: TileGrid,
  paper: TemplatePaper,
  date: string,
  unnamed: readonly string[],
): Mark[][] {
  const { rows, columns, tiles } = grid;
  const { width, height } = TEMPLATE_PAPERS[paper];
  const sheets = `${tiles.length} ${tiles.length === 1 ? 'sheet' : 'sheets'} of ${paper} in ${rows} rows and ${columns} columns; neighbours overlap by 10 mm, their crosses on each other.${leftOutWords(grid)}`;
  const off = drawing.points.filter(({ at }) => !tiles.some((tile) => isOn(at, tile))).map(({ name }) => name);
  const said = [
    HATCHED_AT_LENGTH,
    ...drawing.facts,
    ...endOnWords(drawing),
    PRINT_IT,
    sheets,
    ...(off.length > 0 ? [`Beside these sheets, so not on them: ${off.join(', ')}.`] : []),
    ...(unnamed.length > 0 ? [`Marked without their names, for which there is no room: ${unnamed.join('; ')}.`] : []),
    ...drawing.cautions,
    `Template of ${date}.`,
  ];
  const across = (width - 2 * MARGIN_MM) * POINTS_PER_MM;
  const pages: Mark[][] = [[]];
  let y = MARGIN_MM + 6;
  const write = (text: string, tag: 'H1' | 'P', size: number, step: number): void => {
    for (const line of wrapText(text, size, tag === 'H1' ? 'bold' : 'regular', across)) {
      if (y > height - MARGIN_MM) {
        pages.push([]);
        y = MARGIN_MM + 6;
      }
      pages[pages.length - 1].push(words(tag, line, [MARGIN_MM, y], size));
      y += step;
    }
  };
  write(titleOf(drawing), 'H1', 14, 7);
  y += 4;
  for (const sentence of said) {
    write(sentence, 'P', 10, 5);
    y += 3;
  }
  return pages;
}

/** Sheets of the grid that are not printed, by what is on them. */
function leftOutWords({ leftOut }: TileGrid): string {
  const placesOf = (isHeld: boolean): string =>
    leftOut
      .filter((one) => one.isHeld === isHeld)
      .map(({ row, column }) => `row ${row}, column ${column}`)
      .join('; ');
  const [held, free] = [placesOf(true), placesOf(false)];
  return [
    ...(held === '' ? [] : [` Left out, all of it to be kept out of: ${held}.`]),
    ...(free === '' ? [] : [` Left out, nothing of it is swept: ${free}.`]),
  ].join('');
}

const isOn = ([x, y]: Point, { min, max }: Box): boolean => x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1];

/** Size of the names on a tile [pt], and half of a point's cross [mm]. */
const NAME_PT = 7;
const POINT_MM = 2.5;
/** The hatching's lines, the thinnest that every printer draws, and the room that they leave around names and marks [mm]. */
const HATCH_LINE_MM = 0.1;
const HATCH_GAP_MM = 0.8;

/** A tile, and the points on it that have no name for want of room. */
function tilePage(
  drawing: TemplateDrawing,
  hatch: readonly Stroke[],
  { rows, columns }: TileGrid,
  tile: Tile,
  paper: TemplatePaper,
  date: string,
): { readonly marks: Mark[]; readonly unnamed: readonly string[] } {
  const { width, height } = TEMPLATE_PAPERS[paper];
  const { min, max, row, column, marks } = tile;
  /** from the section to the sheet, y down [mm] */
  const at = ([x, y]: Point): Point => [MARGIN_MM + x - min[0], MARGIN_MM + max[1] - y];
  const foot = height - MARGIN_MM - STRIP_MM;
  const made: Mark[] = [];
  const outlines: (readonly [Point, Point])[] = [];
  for (const { points, isHole } of drawing.outlines)
    for (const run of runsOn(points, tile)) {
      const drawn = run.map(at);
      made.push(path(drawn, 0.35, isHole ? [3, 2] : null));
      for (let i = 1; i < drawn.length; i++) outlines.push([drawn[i - 1], drawn[i]]);
    }
  const draw = (from: Point, to: Point, line: number, dash: readonly number[] | null = null): readonly [Point, Point] | null => {
    const clipped = clip(from, to, tile);
    if (clipped === null) return null;
    const drawn = [at(clipped[0]), at(clipped[1])] as const;
    made.push(path(drawn, line, dash));
    return drawn;
  };
  const cross = ([x, y]: Point, reach: number, line: number): Box => {
    draw([x - reach, y], [x + reach, y], line);
    draw([x, y - reach], [x, y + reach], line);
    const [px, py] = at([x, y]);
    return grown({ min: [px, py], max: [px, py] }, reach);
  };
  const upright: Box = { min: [MARGIN_MM - 2, foot - BAR_MM], max: [MARGIN_MM + 2, foot] };
  const kept: Box[] = [upright, ...marks.map((mark) => cross(mark, CROSS_MM, 0.15))];
  const here = drawing.points.filter(({ at: place }) => isOn(place, tile));
  for (const { at: place } of here) kept.push(cross(place, POINT_MM, 0.25));
  const lines = drawing.axes.flatMap((axis) => {
    const ends = axisLine(axis);
    const drawn = ends === null ? null : draw(ends[0], ends[1], 0.2, [6, 2, 1, 2]);
    return drawn === null ? [] : [drawn];
  });
  const said = here.map(({ name, off, at: place }) => {
    const hasBolt = drawing.axes.some((axis) => axis.name === name);
    return { text: inTypeface(`${name}${hasBolt ? ' and its bolt' : ''}, ${offWords(off)}`), at: at(place) };
  });
  const names = said.map(({ text, at: place }) => nameAt(text, place));
  const area: Box = { min: [MARGIN_MM, MARGIN_MM], max: [width - MARGIN_MM, foot] };
  const unnamed: string[] = [];
  const named: Box[] = [];
  seatNames(names, { area, marks: kept, lines, outlines }).forEach((seat, i) => {
    const { text } = said[i];
    if (seat === null) {
      unnamed.push(`${text} (row ${row}, column ${column})`);
      return;
    }
    const { box, leader } = seat;
    if (leader !== null) made.push(path(leader, 0.12, null));
    made.push(nameIn(text, box));
    named.push(box);
  });
  const strokes = hatch.flatMap((stroke): readonly Stroke[] => {
    const clipped = clip(...stroke, tile);
    return clipped === null ? [] : [[at(clipped[0]), at(clipped[1])]];
  });
  const room = [...named, ...kept].map((box) => grown(box, HATCH_GAP_MM));
  const drawn = strokesPath(besideBoxes(strokes, room), HATCH_LINE_MM);
  if (drawn !== null) made.push(drawn);
  made.push(...strip(drawing, `Row ${row} of ${rows}, column ${column} of ${columns}`, date, width, foot));
  return { marks: made, unnamed };
}

const nameAt = (text: string, at: Point): Named => ({
  at,
  width: widthOf(text, NAME_PT, 'regular') / POINTS_PER_MM,
  height: (1.2 * NAME_PT) / POINTS_PER_MM,
});

const nameIn = (text: string, { min, max }: Box): PrintedText =>
  words('P', text, [min[0], max[1] - (0.3 * NAME_PT) / POINTS_PER_MM], NAME_PT);

/** Stretches of a closed line that lie on a tile, each drawn at one go: dashes then run on from point to point. */
function runsOn(points: readonly Point[], tile: Tile): Point[][] {
  const runs: Point[][] = [];
  points.forEach((from, i) => {
    const clipped = clip(from, points[(i + 1) % points.length], tile);
    if (clipped === null) return;
    const last = runs[runs.length - 1]?.at(-1);
    if (last !== undefined && last[0] === clipped[0][0] && last[1] === clipped[0][1]) runs[runs.length - 1].push(clipped[1]);
    else runs.push([...clipped]);
  });
  return runs;
}

/** Bars, words and arrows along the bottom. */
function strip(drawing: TemplateDrawing, which: string, date: string, width: number, foot: number): Mark[] {
  const barY = foot + 9;
  const heart: Point = [width - MARGIN_MM - 38, foot + 15];
  const across = heart[0] - ARROW_MM - 17 - MARGIN_MM;
  const title = shortTitleOf(drawing, (text) => widthOf(inTypeface(text), 8, 'regular') <= across * POINTS_PER_MM);
  const made = [
    ...bar([MARGIN_MM, barY], [MARGIN_MM + BAR_MM, barY]),
    ...bar([MARGIN_MM, foot - BAR_MM], [MARGIN_MM, foot]),
    words('P', '100 mm: measure this bar and the upright one', [MARGIN_MM + 3, barY - 1.5], 8),
    words('P', `${which}, ${drawing.side} side, ${date}. Print at 100 %.`, [MARGIN_MM, barY + 6], 8),
    words('P', `${HATCHED} Paper ${drawing.seen}.`, [MARGIN_MM, barY + 11], 8, 'bold'),
    words('P', inTypeface(title), [MARGIN_MM, barY + 16], 8),
  ];
  const along = drawing.arrows.filter(({ seen }) => seen === 'along');
  const shafts = along.map(
    ({ right, up }) => [heart, [heart[0] + ARROW_MM * right, heart[1] - ARROW_MM * up]] as const satisfies readonly Point[],
  );
  for (const [from, to] of shafts) made.push(path([from, to], 0.35, null), ...head(from, to));
  // on a plane at an angle two of them can point the same way
  const seats = seatNames(
    along.map(({ direction }, i) => nameAt(direction, shafts[i][1])),
    {
      area: { min: [MARGIN_MM + across, foot], max: [width - MARGIN_MM, foot + STRIP_MM] },
      marks: [],
      lines: shafts,
      outlines: [],
    },
  );
  along.forEach(({ direction }, i) => {
    const seat = seats[i];
    if (seat !== null) made.push(nameIn(direction, seat.box));
  });
  return made;
}

/** The two short lines at an arrow's end. */
function head(from: Point, to: Point): Mark[] {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.sqrt(x * x + y * y);
  if (size < 1) return [];
  const [ux, uy] = [(1.8 * x) / size, (1.8 * y) / size];
  return [path([[to[0] - ux - 0.4 * uy, to[1] - uy + 0.4 * ux], to, [to[0] - ux + 0.4 * uy, to[1] - uy - 0.4 * ux]], 0.35, null)];
}

/** A line with a tick at each end. */
function bar(from: Point, to: Point): Mark[] {
  const [x, y] = from[1] === to[1] ? [0, 2] : [2, 0];
  const tick = (end: Point): Mark =>
    path(
      [
        [end[0] - x, end[1] - y],
        [end[0] + x, end[1] + y],
      ],
      0.25,
      null,
    );
  return [path([from, to], 0.25, null), tick(from), tick(to)];
}

/** @param line - its width, and its dashes; as everything here from the sheet's top left corner [mm] */
const path = (points: readonly Point[], line: number, dash: readonly number[] | null): PrintedPath => ({
  kind: 'path',
  commands: points.map(([x, y], i) => [i === 0 ? 'M' : 'L', x * POINTS_PER_MM, y * POINTS_PER_MM] as const),
  fill: null,
  stroke: INK,
  width: line * POINTS_PER_MM,
  dash: dash?.map((length) => length * POINTS_PER_MM) ?? null,
  isRound: false,
});

/** Many straight lines as one; null for none. */
const strokesPath = (strokes: readonly Stroke[], line: number): PrintedPath | null =>
  strokes.length === 0
    ? null
    : { ...path([], line, null), commands: strokes.flatMap((stroke) => path(stroke, line, null).commands) };

const words = (
  tag: PrintedText['tag'],
  text: string,
  [x, y]: Point,
  size: number,
  weight: PrintedText['weight'] = tag === 'H1' ? 'bold' : 'regular',
): PrintedText =>
  inRuns({
    kind: 'text',
    tag,
    text,
    x: x * POINTS_PER_MM,
    y: y * POINTS_PER_MM,
    size,
    weight,
    colour: INK,
  });
