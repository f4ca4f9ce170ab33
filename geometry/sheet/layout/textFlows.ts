import type { AxleName } from '../../car/document';
import type { CautionsSection, ChangeItem, ChangesSection, ChangeStep, FiguresSection, Labelled, NotesSection } from '../sheet';
import { inTypeface, widthOf } from '../typeface/typeface';
import {
  baseline,
  BODY,
  column,
  HEADING,
  lineHeight,
  middleOf,
  NAME,
  runOn,
  SOFT,
  type Block,
  type Column,
  type Flow,
} from './block';
import type { Density } from './density';
import { headOf } from './heading';
import { boxAt, lineAt, textAt, watchMark, type Primitive } from './primitives';
import { wrapText } from './wrapText';

const TITLES = 102;
const TICK = 7;
const TICKED = 12;
const BETWEEN = 18;

/** Things to do, each with a box to tick, under each other. */
const ticked = (items: readonly ChangeItem[], width: number): Column => {
  const texts = items.map(({ text }) => column([[text, BODY]], width - TICKED));
  return {
    height: texts.reduce((sum, { height }) => sum + height + 1, 0),
    draw: (x, y) => {
      let top = y;
      return texts.flatMap((text) => {
        const drawn = [boxAt(x, top + 2, TICK, TICK, { stroke: 'ink', line: 0.8 }), ...text.draw(x + TICKED, top)];
        top += text.height + 1;
        return drawn;
      });
    },
  };
};

/** The same beside each other; null where they do not fit into one line. */
const tickedAcross = (items: readonly ChangeItem[], width: number): Column | null => {
  const widths = items.map(({ text }) => TICKED + widthOf(inTypeface(text), BODY.size, BODY.weight) + BETWEEN);
  if (items.length === 0 || widths.reduce((sum, one) => sum + one, -BETWEEN) > width) return null;
  return {
    height: lineHeight(BODY) + 1,
    draw: (x, y) => {
      let from = x;
      return items.flatMap(({ text }, index) => {
        const drawn = [
          boxAt(from, y + 2, TICK, TICK, { stroke: 'ink', line: 0.8 }),
          textAt(text, from + TICKED, baseline(y, BODY), BODY),
        ];
        from += widths[index] ?? 0;
        return drawn;
      });
    },
  };
};

/** A step's things in the columns of the axles that they are of; what is of the car as a whole, across them. */
const stepBlock = ({ title, items }: ChangeStep, number: number, axles: readonly AxleName[], width: number): Block => {
  const room = width - TITLES;
  const each = (room - BETWEEN * Math.max(0, axles.length - 1)) / Math.max(1, axles.length);
  const name = column([[`${number}. ${title}`, NAME]], TITLES - 6);
  // where there is nothing to do behind it, the first axle has the whole line
  const isAlone = items.every(({ axle }) => axle === null || axle === axles[0]);
  const sides = axles.map((axle) =>
    ticked(
      items.filter((item) => item.axle === axle),
      isAlone ? room : each,
    ),
  );
  const ofCar = items.filter(({ axle }) => axle === null);
  const across = tickedAcross(ofCar, room) ?? ticked(ofCar, room);
  const apart = Math.max(0, ...sides.map(({ height }) => height));
  const height = Math.max(name.height, apart + across.height) + 3;
  return {
    height,
    draw: (x, y) => [
      ...name.draw(x, y + 1.5),
      ...sides.flatMap((side, index) => side.draw(x + TITLES + index * (each + BETWEEN), y + 1.5)),
      ...across.draw(x + TITLES, y + 1.5 + apart),
      lineAt(x, y + height, x + width, y + height, 0.5, 'line'),
    ],
  };
};

const stepsHead = (axles: readonly AxleName[], width: number): Block | null => {
  if (axles.length === 0) return null;
  const each = (width - TITLES - BETWEEN * (axles.length - 1)) / axles.length;
  const height = lineHeight(BODY) + 3;
  return {
    height,
    draw: (x, y) => [
      ...axles.map((axle, index) =>
        textAt(axle === 'front' ? 'Front' : 'Rear', x + TITLES + index * (each + BETWEEN), middleOf(y, height, BODY), BODY),
      ),
      lineAt(x, y + height, x + width, y + height, 1.1, 'ink'),
    ],
  };
};

/** Steps of the work in their order, front and rear beside each other. */
export const changesFlow = ({ heading, note, axles, steps }: ChangesSection, width: number, density: Density): Flow => ({
  head: headOf(heading, note, width, stepsHead(axles, width), density),
  continued: headOf(`${heading}, continued`, '', width, stepsHead(axles, width), density),
  rows: steps.map((step, index) => stepBlock(step, index + 1, axles, width)),
});

const COLUMNS = 3;

const figure = ({ label, value }: Labelled, width: number): Block => {
  const valueWidth = widthOf(value, NAME.size, NAME.weight);
  const fits = widthOf(label, SOFT.size, SOFT.weight) + 8 + valueWidth <= width;
  const name = column([[label, SOFT]], width);
  const said = column([[value, NAME]], width);
  const height = (fits ? Math.max(name.height, said.height) : name.height + said.height) + 2;
  return {
    height,
    draw: (x, y) => [
      ...name.draw(x, y + 1),
      ...(fits
        ? [textAt(value, x + width, baseline(y + 1, SOFT), NAME, 'end')]
        : said.draw(x + Math.max(0, width - valueWidth), y + 1 + name.height)),
    ],
  };
};

/** Names and values, three a row. */
export const figuresFlow = ({ heading, figures }: FiguresSection, width: number, density: Density): Flow => {
  const each = (width - BETWEEN * (COLUMNS - 1)) / COLUMNS;
  const rows: Block[] = [];
  for (let at = 0; at < figures.length; at += COLUMNS) {
    const cells = figures.slice(at, at + COLUMNS).map((one) => figure(one, each));
    const height = Math.max(...cells.map((cell) => cell.height));
    rows.push({
      height,
      draw: (x, y) =>
        cells.flatMap((cell, index): readonly Primitive[] => {
          const from = x + index * (each + BETWEEN);
          return [...cell.draw(from, y), lineAt(from, y + height, from + each, y + height, 0.5, 'line')];
        }),
    });
  }
  return {
    head: headOf(heading, '', width, null, density),
    continued: headOf(`${heading}, continued`, '', width, null, density),
    rows,
  };
};

const INDENT = 9;
const NOTHING: Block = { height: 0, draw: () => [] };

/** A paragraph that may go on on the next page: a block a line. */
const paragraph = (text: string, width: number, mark: (x: number, line: number) => readonly Primitive[], style = BODY): Block[] =>
  wrapText(text, style.size, style.weight, width - INDENT).map((line, index, all) => {
    const top = index === 0 ? 2 : 0;
    return {
      height: top + lineHeight(style) + (index === all.length - 1 ? 1 : 0),
      draw: (x, y) => {
        const at = baseline(y + top, style);
        return [...(index === 0 ? mark(x, at) : []), textAt(line, x + INDENT, at, style)];
      },
    };
  });

const dash = (x: number, line: number): readonly Primitive[] => [lineAt(x, line - 3, x + 5, line - 3, 0.8, 'soft')];

/** Notes of a line or two stand behind their heading where room is short. */
const fewNotes = (heading: string, lines: readonly string[], width: number, { before, isPaired }: Density): Block | null => {
  const said = runOn([heading, HEADING], [lines.join(' · '), BODY], width);
  if (!isPaired || said.height > lineHeight(HEADING) + 2 * lineHeight(BODY)) return null;
  return { height: before + said.height, draw: (x, y) => said.draw(x, y + before) };
};

export const notesFlow = ({ heading, lines }: NotesSection, width: number, density: Density): Flow => {
  const continued = headOf(`${heading}, continued`, '', width, null, density);
  const few = fewNotes(heading, lines, width, density);
  if (few !== null) return { head: NOTHING, continued, rows: [few] };
  return {
    head: headOf(heading, '', width, null, density),
    continued,
    rows: lines.flatMap((line) => paragraph(line, width, dash)),
  };
};

const BAR = 6;
const INSET = 10;

/** Cautions in two columns inside a frame that nobody overlooks. */
const framed = (heading: string, lines: readonly string[], width: number): Block => {
  const each = (width - BAR - 2 * INSET - BETWEEN) / 2;
  const cells = lines.map((line) => column([[line, BODY]], each - INDENT));
  const total = cells.reduce((sum, { height }) => sum + height, 0);
  let half = 0;
  let count = 0;
  while (count < cells.length && half + cells[count]!.height / 2 < total / 2) {
    half += cells[count]!.height;
    count += 1;
  }
  const sides = [cells.slice(0, count), cells.slice(count)];
  const title = lineHeight(HEADING);
  const inner = Math.max(...sides.map((side) => side.reduce((sum, { height }) => sum + height + 1, 0)));
  const height = title + inner + 9;
  return {
    height: height + 9,
    draw: (x, y) => {
      const top = y + 8;
      const drawn: Primitive[] = [
        boxAt(x + 0.6, top, width - 1.2, height, { stroke: 'ink', line: 1.2 }),
        boxAt(x, top - 0.6, BAR, height + 1.2, { fill: 'ink' }),
        textAt(heading, x + BAR + INSET, baseline(top + 4, HEADING), HEADING),
      ];
      sides.forEach((side, index) => {
        const from = x + BAR + INSET + index * (each + BETWEEN);
        let at = top + 5 + title;
        for (const cell of side) {
          drawn.push(...dash(from, baseline(at, BODY)), ...cell.draw(from + INDENT, at));
          at += cell.height + 1;
        }
      });
      return drawn;
    },
  };
};

/** The same, one after the other across the page. */
const framedTogether = (heading: string, lines: readonly string[], width: number): Block => {
  const said = runOn([`${heading}.`, HEADING], [lines.join(' · '), BODY], width - BAR - 2 * INSET);
  const height = said.height + 8;
  return {
    height: height + 7,
    draw: (x, y) => [
      boxAt(x + 0.6, y + 6, width - 1.2, height, { stroke: 'ink', line: 1.2 }),
      boxAt(x, y + 5.4, BAR, height + 1.2, { fill: 'ink' }),
      ...said.draw(x + BAR + INSET, y + 10),
    ],
  };
};

/** What is wrong with this very setup, under a heading of its own, then what has to be seen to on any car. */
export const cautionsFlow = ({ heading, faults, lines }: CautionsSection, width: number, density: Density): Flow => ({
  head: faults.length === 0 ? NOTHING : headOf('Look out', '', width, null, density),
  continued: NOTHING,
  rows: [
    ...faults.flatMap((fault) => paragraph(fault, width, (x, line) => watchMark(x - 1, line), NAME)),
    (density.runsOn ? framedTogether : framed)(heading, lines, width),
  ],
});
