import type { Labelled, Sheet, SheetSection } from '../sheet';
import { widthOf } from '../typeface/typeface';
import { baseline, BODY, column, HEADING, lineHeight, NAME, SOFT, TITLE, type Block, type Flow } from './block';
import { lineAt, textAt, type Primitive } from './primitives';
import { DENSITIES, type Density } from './density';
import { curvesFlow } from './curvesFlow';
import { settingsFlow } from './settingsFlow';
import { cornersFlow, targetsFlow } from './tableFlows';
import { cautionsFlow, changesFlow, figuresFlow, notesFlow } from './textFlows';
import { wrapWithin } from './wrapText';

export type PaperName = 'A4' | 'Letter';

/** A size of paper, upright [pt]. */
export interface Paper {
  readonly name: PaperName;
  readonly width: number;
  readonly height: number;
}

/** A4 is 210 × 297 mm, Letter 8½ × 11 in. */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  A4: { name: 'A4', width: 595.28, height: 841.89 },
  Letter: { name: 'Letter', width: 612, height: 792 },
};

export interface SheetPage {
  readonly paper: Paper;
  readonly number: number;
  readonly of: number;
  readonly primitives: readonly Primitive[];
}

/** Printers leave a rim of their own white; 10 mm hold on all of them. */
export const MARGIN = 30;
const FOOT = 19;

const flowOf = (section: SheetSection, width: number, density: Density): Flow => {
  switch (section.kind) {
    case 'settings':
      return settingsFlow(section, width, density);
    case 'changes':
      return changesFlow(section, width, density);
    case 'targets':
      return targetsFlow(section, width, density);
    case 'corners':
      return cornersFlow(section, width, density);
    case 'figures':
      return figuresFlow(section, width, density);
    case 'curves':
      return curvesFlow(section, width, density);
    case 'notes':
      return notesFlow(section, width, density);
    case 'cautions':
      return cautionsFlow(section, width, density);
  }
};

const PAIR_GAP = 12;
/** Between the car's name and what stands beside it. */
const BESIDE = 12;
/** No pair of the head is wider than this. */
const WIDEST_PAIR = 170;

interface Pair extends Block {
  readonly width: number;
}

/** A car's name is said on every page: a longer one is cut. */
const TITLE_LINES = 2;

const pairOf = ({ label, value }: Labelled): Pair => {
  const width = Math.max(
    widthOf(label, SOFT.size, SOFT.weight),
    Math.min(WIDEST_PAIR, widthOf(value, NAME.size, NAME.weight) + 0.5),
  );
  return {
    width,
    ...column(
      [
        [label, SOFT],
        [value, NAME],
      ],
      width,
    ),
  };
};

const rowsOfPairs = (pairs: readonly Pair[], width: number): readonly (readonly Pair[])[] => {
  const rows: Pair[][] = [];
  let used = 0;
  for (const pair of pairs) {
    const row = rows.at(-1);
    if (row !== undefined && used + PAIR_GAP + pair.width <= width) {
      row.push(pair);
      used += PAIR_GAP + pair.width;
    } else {
      rows.push([pair]);
      used = pair.width;
    }
  }
  return rows;
};

/** The car's name, and whose sheet it is: beside the name where there is room, else under it. */
const pageHead = (sheet: Sheet, width: number): Block => {
  const pairs = sheet.head.map(pairOf);
  const all = pairs.reduce((sum, pair) => sum + pair.width + PAIR_GAP, -PAIR_GAP);
  const titleWidth = widthOf(sheet.car, TITLE.size, TITLE.weight);
  const isBeside = titleWidth + BESIDE + all <= width;
  const room = isBeside ? width - all - BESIDE : width;
  const title = column(
    [
      ['Set-up sheet', NAME],
      ...wrapWithin(sheet.car, TITLE.size, TITLE.weight, room, TITLE_LINES).map((line) => [line, TITLE] as const),
    ],
    room,
  );
  const rows = isBeside ? [pairs] : rowsOfPairs(pairs, width);
  const heights = rows.map((row) => Math.max(0, ...row.map(({ height }) => height)));
  const below = heights.reduce((sum, height) => sum + height + 3, 0);
  const inner = isBeside ? Math.max(title.height, heights[0] ?? 0) : title.height + 2 + below;
  return {
    height: inner + 6,
    draw: (x, y) => {
      const drawn: Primitive[] = [...title.draw(x, isBeside ? y + inner - title.height : y)];
      let top = isBeside ? y + inner - (heights[0] ?? 0) - 2 : y + title.height + 2;
      rows.forEach((row, index) => {
        let from = isBeside ? x + width - all : x;
        for (const pair of row) {
          drawn.push(...pair.draw(from, top));
          from += pair.width + PAIR_GAP;
        }
        top += (heights[index] ?? 0) + 3;
      });
      drawn.push(lineAt(x, y + inner + 4, x + width, y + inner + 4, 2, 'ink'));
      return drawn;
    },
  };
};

/** On every further page in one line: the car, and what the sheet is of. */
const shortHead = (sheet: Sheet, width: number): Block => {
  const said = sheet.head.map(({ label, value }) => `${label} ${value}`).join(' · ');
  const style = { ...NAME, size: HEADING.size };
  const [car] = wrapWithin(sheet.car, style.size, style.weight, width / 2, 1);
  const start = widthOf(car ?? '', style.size, style.weight) + 12;
  const [line] = wrapWithin(said, SOFT.size, SOFT.weight, width - start, 1);
  const height = lineHeight(style);
  return {
    height: height + 6,
    draw: (x, y) => [
      textAt(car ?? '', x, baseline(y, style), style),
      textAt(line ?? '', x + start, baseline(y, style), SOFT),
      lineAt(x, y + height + 3, x + width, y + height + 3, 2, 'ink'),
    ],
  };
};

const BLANK = 120;

/** In the foot of the last page: shorter than the room between its blanks and the number of the page. */
const NO_ROOM_FOR_CURVES = 'Curves left out: no room';

const pageFoot = (
  { number, of }: Pick<SheetPage, 'number' | 'of'>,
  leftOut: string,
  x: number,
  y: number,
  width: number,
): readonly Primitive[] => {
  const line = baseline(y + FOOT - lineHeight(BODY), BODY);
  const blank = (label: string, from: number): readonly Primitive[] => {
    const start = from + widthOf(label, BODY.size, BODY.weight) + 4;
    return [textAt(label, from, line, SOFT), lineAt(start, line + 1, start + BLANK, line + 1, 0.6, 'soft')];
  };
  return [
    ...blank('Set by', x),
    ...blank('Checked by', x + width / 2 - 80),
    textAt([leftOut, `${number} of ${of}`].filter((part) => part !== '').join(' · '), x + width, line, SOFT, 'end'),
  ];
};

/** Rows that stand alone at the foot of a page under their heading are no help: so many go with it. */
const TOGETHER = 2;

const pagesOf = (sheet: Sheet, paper: Paper, density: Density): readonly (readonly Primitive[])[] => {
  const width = paper.width - 2 * MARGIN;
  const [head, again] = [pageHead(sheet, width), shortHead(sheet, width)];
  const last = paper.height - MARGIN - FOOT - 3;
  const pages: Primitive[][] = [[...head.draw(MARGIN, MARGIN)]];
  const fresh = MARGIN + again.height;
  let y = MARGIN + head.height;
  const turnPage = (): void => {
    pages.push([...again.draw(MARGIN, MARGIN)]);
    y = fresh;
  };
  const put = (block: Block): void => {
    pages.at(-1)?.push(...block.draw(MARGIN, y));
    y += block.height;
  };
  for (const section of sheet.sections) {
    const flow = flowOf(section, width, density);
    const opening = flow.rows.slice(0, TOGETHER).reduce((sum, { height }) => sum + height, flow.head.height);
    if (y + opening > last && y > fresh) turnPage();
    put(flow.head);
    flow.rows.forEach((row, index) => {
      // under its own heading a row stays, however high it is
      if (y + row.height > last && index > 0) {
        turnPage();
        put(flow.continued);
      }
      put(row);
    });
  }
  return pages;
};

/** The roomiest of the fewest pages. */
const fewestPages = (sheet: Sheet, paper: Paper): readonly (readonly Primitive[])[] => {
  const ways = DENSITIES.map((density) => pagesOf(sheet, paper, density));
  const fewest = Math.min(...ways.map(({ length }) => length));
  return ways.find(({ length }) => length === fewest) ?? [];
};

/** More than these are no sheet that goes to the car, but for what has to stand on it. */
const USUAL_PAGES = 2;

/** What of a sheet is printed: all of it, but curves that would cost a page past the second; of those it says that they are missing. */
export const printedPart = (sheet: Sheet, paper: Paper): Sheet => {
  const sections = sheet.sections.filter(({ kind }) => kind !== 'curves');
  if (sections.length === sheet.sections.length) return sheet;
  const whole = fewestPages(sheet, paper).length;
  const without = { ...sheet, sections, leftOut: NO_ROOM_FOR_CURVES };
  return whole > USUAL_PAGES && fewestPages(without, paper).length < whole ? without : sheet;
};

/**
 * Lays a sheet out on pages: a section goes on on the next page where it has to, with its head said again; a page is begun only
 * when the last is full. Parts are drawn large unless a page
 * is saved by drawing them small. Every setting stands on a page: what there is no room for takes a further one.
 */
export const layOutSheet = (sheet: Sheet, paper: Paper): readonly SheetPage[] => {
  const width = paper.width - 2 * MARGIN;
  const printed = printedPart(sheet, paper);
  const pages = fewestPages(printed, paper);
  return pages.map((primitives, index) => {
    const place = { number: index + 1, of: pages.length };
    const leftOut = place.number === place.of ? (printed.leftOut ?? '') : '';
    const foot = pageFoot(place, leftOut, MARGIN, paper.height - MARGIN - FOOT, width);
    return { paper, ...place, primitives: [...primitives, ...foot] };
  });
};
