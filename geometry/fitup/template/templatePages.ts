import type { PrintedPath, PrintedSheet, PrintedText } from '../../sheet/printedSheet';
import { sheetTypeface } from '../../sheet/typeface/typeface';
import { axisLine, offWords, type TemplateDrawing } from './drawing';
import { endOnWords } from './templateDxf';
import { MARGIN_MM, STRIP_MM, TEMPLATE_PAPERS, type TemplatePaper, type Tile, type TileGrid } from './tiles';

type Point = readonly [number, number];
type Mark = PrintedText | PrintedPath;

const POINTS_PER_MM = 72 / 25.4;
const BAR_MM = 100;
const CROSS_MM = 4;
const ARROW_MM = 9;
const INK = '#000000';
const LETTERS_A_LINE = 92;

/** A template on sheets of paper at true scale: a sheet of words, then the tiles. @param date - YYYY-MM-DD */
export function templatePages(drawing: TemplateDrawing, grid: TileGrid, paper: TemplatePaper, date: string): PrintedSheet {
  const { width, height } = TEMPLATE_PAPERS[paper];
  const { regular, bold } = sheetTypeface();
  const size = { width: width * POINTS_PER_MM, height: height * POINTS_PER_MM };
  return {
    title: drawing.title,
    date,
    fonts: { regular: regular.font.bytes, bold: bold.font.bytes },
    pages: [
      { ...size, marks: wordsPage(drawing, grid, paper) },
      ...grid.tiles.map((tile) => ({ ...size, marks: tilePage(drawing, grid, tile, height) })),
    ],
  };
}

const PRINT_IT = 'Print at 100 %, not fitted to the page, and measure both bars of every sheet: 100 mm each.';

function wordsPage(drawing: TemplateDrawing, { rows, columns, tiles }: TileGrid, paper: TemplatePaper): Mark[] {
  const sheets = `${tiles.length} ${tiles.length === 1 ? 'sheet' : 'sheets'} of ${paper} in ${rows} rows and ${columns} columns; neighbours overlap by 10 mm, their crosses on each other.`;
  const said = [...drawing.facts, ...endOnWords(drawing), PRINT_IT, sheets, ...drawing.cautions];
  const marks: Mark[] = [words('H1', drawing.title.slice(0, LETTERS_A_LINE / 2), [MARGIN_MM, 22], 14)];
  let y = 34;
  for (const sentence of said) {
    for (const line of lines(sentence)) {
      marks.push(words('P', line, [MARGIN_MM, y], 10));
      y += 5;
    }
    y += 3;
  }
  return marks;
}

/** A sentence in lines of so many letters. */
function lines(sentence: string): string[] {
  const made = [''];
  for (const word of sentence.split(/\s+/)) {
    const last = made[made.length - 1];
    if (last !== '' && last.length + 1 + word.length > LETTERS_A_LINE) made.push(word);
    else made[made.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return made;
}

function tilePage(drawing: TemplateDrawing, { rows, columns }: TileGrid, tile: Tile, height: number): Mark[] {
  const { min, max, row, column, marks } = tile;
  /** from the section to the sheet, y down [mm] */
  const at = ([x, y]: Point): Point => [MARGIN_MM + x - min[0], MARGIN_MM + max[1] - y];
  const made: Mark[] = [];
  const draw = (from: Point, to: Point, line: number, dash: readonly number[] | null = null): void => {
    const clipped = clip(from, to, tile);
    if (clipped !== null) made.push(path([at(clipped[0]), at(clipped[1])], line, dash));
  };
  for (const { points, isHole } of drawing.outlines)
    points.forEach((from, i) => draw(from, points[(i + 1) % points.length], 0.35, isHole ? [3, 2] : null));
  const cross = ([x, y]: Point, reach: number, line: number): void => {
    draw([x - reach, y], [x + reach, y], line);
    draw([x, y - reach], [x, y + reach], line);
  };
  for (const mark of marks) cross(mark, CROSS_MM, 0.15);
  const isHere = ([x, y]: Point): boolean => x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1];
  for (const { name, at: place, off } of drawing.points) {
    if (!isHere(place)) continue;
    cross(place, 2.5, 0.25);
    const [x, y] = at(place);
    made.push(words('P', `${name}, ${offWords(off)}`, [x + 2, y - 1.5], 7));
  }
  for (const axis of drawing.axes) {
    const ends = axisLine(axis);
    if (ends !== null) draw(ends[0], ends[1], 0.2, [6, 2, 1, 2]);
  }
  const foot = height - MARGIN_MM - STRIP_MM;
  const barY = foot + 9;
  made.push(...bar([MARGIN_MM, barY], [MARGIN_MM + BAR_MM, barY]), ...bar([MARGIN_MM, foot - BAR_MM], [MARGIN_MM, foot]));
  made.push(words('P', '100 mm: measure this bar and the upright one', [MARGIN_MM + 3, barY - 1.5], 8));
  made.push(
    words(
      'P',
      `Row ${row} of ${rows}, column ${column} of ${columns}, ${drawing.side} side. Print at 100 %.`,
      [MARGIN_MM, barY + 6],
      8,
    ),
  );
  made.push(words('P', drawing.title.slice(0, 70), [MARGIN_MM, barY + 11], 8));
  const heart: Point = [MARGIN_MM + 145, foot + 16];
  for (const { direction, right, up, seen } of drawing.arrows) {
    if (seen !== 'along') continue;
    const tip: Point = [heart[0] + ARROW_MM * right, heart[1] - ARROW_MM * up];
    made.push(path([heart, tip], 0.35, null), words('P', direction, [tip[0] + 1, tip[1]], 7));
  }
  return made;
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

/** @param line - its width, as everything here from the sheet's top left corner [mm] */
const path = (points: readonly Point[], line: number, dash: readonly number[] | null): PrintedPath => ({
  kind: 'path',
  commands: points.map(([x, y], i) => [i === 0 ? 'M' : 'L', x * POINTS_PER_MM, y * POINTS_PER_MM] as const),
  fill: null,
  stroke: INK,
  width: line * POINTS_PER_MM,
  dash,
  isRound: false,
});

const words = (tag: PrintedText['tag'], text: string, [x, y]: Point, size: number): PrintedText => ({
  kind: 'text',
  tag,
  text,
  x: x * POINTS_PER_MM,
  y: y * POINTS_PER_MM,
  size,
  weight: tag === 'H1' ? 'bold' : 'regular',
  colour: INK,
});

/** What of a line lies on a tile. */
function clip(from: Point, to: Point, { min, max }: Tile): readonly [Point, Point] | null {
  let [first, last] = [0, 1];
  for (const i of [0, 1] as const) {
    const way = to[i] - from[i];
    if (way === 0) {
      if (from[i] < min[i] || from[i] > max[i]) return null;
      continue;
    }
    const [a, b] = [(min[i] - from[i]) / way, (max[i] - from[i]) / way];
    first = Math.max(first, Math.min(a, b));
    last = Math.min(last, Math.max(a, b));
  }
  if (first > last) return null;
  const at = (share: number): Point => [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  return [at(first), at(last)];
}
