import type { PartSetting, SettingRow, SettingsSection } from '../sheet';
import { lockedWords } from '../settingRows';
import {
  BODY,
  column,
  HEADING,
  lineHeight,
  middleOf,
  NAME,
  runOn,
  sideBySide,
  SOFT,
  STRONG,
  type Block,
  type Flow,
} from './block';
import type { Density } from './density';
import { headOf } from './heading';
import { boxAt, drawingAt, lineAt, sideMark, textAt, type Primitive } from './primitives';

const PART = 132;
const TORQUE = 42;
const DONE = 24;
const GAP = 8;
const BOX = 11;

interface Columns {
  readonly left: number;
  readonly right: number;
  readonly torque: number;
  readonly done: number;
  /** of a side, the drawing included */
  readonly side: number;
  readonly hasDrawings: boolean;
}

const columnsOf = (section: SettingsSection, width: number): Columns => {
  const side = (width - PART - TORQUE - DONE) / 2;
  return {
    left: PART,
    right: PART + side,
    torque: PART + 2 * side,
    done: width - DONE,
    side,
    hasDrawings: section.rows.some(({ left, right }) => left.drawing !== null || right.drawing !== null),
  };
};

/** What is drawn of a row: nothing where there is nothing to see. */
const drawingOf = (row: SettingRow, setting: PartSetting, density: Density): PartSetting['drawing'] =>
  row.isPlain && !density.drawsZero ? null : setting.drawing;

const sideCell = (row: SettingRow, side: 'left' | 'right', columns: Columns, density: Density): Block => {
  const setting = row[side];
  const drawing = drawingOf(row, setting, density);
  const indent = columns.hasDrawings ? density.drawing + 6 : 0;
  const width = columns.side - indent - GAP;
  const words = [setting.words, STRONG] as const;
  const detail = [setting.detail, SOFT] as const;
  const text = density.runsOn
    ? runOn(words, detail, width)
    : drawing === null
      ? sideBySide(words, detail, width)
      : column([words, detail], width);
  const height = Math.max(text.height, drawing === null ? 0 : density.drawing);
  return {
    height,
    draw: (x, y) => [
      ...(drawing === null ? [] : drawingAt(drawing, x, y + (height - density.drawing) / 2, density.drawing)),
      ...text.draw(x + indent, y + (height - text.height) / 2),
    ],
  };
};

const torqueCell = (torque: string | null | undefined): Block => {
  if (torque === undefined) return { height: 0, draw: () => [] };
  if (torque !== null) return column([[torque, BODY]], TORQUE - GAP);
  return {
    height: lineHeight(BODY),
    draw: (x, y) => [lineAt(x, y + lineHeight(BODY), x + TORQUE - GAP - 4, y + lineHeight(BODY), 0.6, 'line')],
  };
};

const settingBlock = (row: SettingRow, columns: Columns, width: number, density: Density): Block => {
  const isShort = row.isPlain && !density.drawsZero;
  const name = (density.runsOn ? runOn : sideBySide)([row.name, NAME], [isShort ? '' : row.detail, SOFT], PART - GAP);
  const locked =
    row.locked === null
      ? null
      : sideBySide([`Fixed by rule, ${lockedWords(row)}`, NAME], [row.locked, SOFT], 2 * columns.side + TORQUE - GAP);
  const [left, right] = [sideCell(row, 'left', columns, density), sideCell(row, 'right', columns, density)];
  const torque = torqueCell(row.torque);
  const cells = locked === null ? [name, left, right, torque] : [name, locked];
  const inner = Math.max(BOX, ...cells.map(({ height }) => height));
  const height = inner + 2 * density.padding;
  return {
    height,
    draw: (x, y) => {
      const top = (cell: { readonly height: number }): number => y + (height - cell.height) / 2;
      const drawn: Primitive[] = [...name.draw(x, top(name))];
      if (locked !== null) drawn.push(...locked.draw(x + columns.left, top(locked)));
      else
        drawn.push(
          ...left.draw(x + columns.left, top(left)),
          ...right.draw(x + columns.right, top(right)),
          ...torque.draw(x + columns.torque, top(torque)),
        );
      drawn.push(boxAt(x + width - BOX - 6, y + (height - BOX) / 2, BOX, BOX, { stroke: 'ink', line: 1 }));
      drawn.push(lineAt(x, y + height, x + width, y + height, 0.5, 'line'));
      return drawn;
    },
  };
};

/** @param over - a heading that stands where "Part" would */
const tableHead = (columns: Columns, width: number, over: string | null = null): Block => {
  const height = lineHeight(over === null ? BODY : HEADING) + 4;
  return {
    height,
    draw: (x, y) => {
      const line = middleOf(y, height, BODY);
      return [
        over === null ? textAt('Part', x, line, BODY) : textAt(over, x, line, HEADING),
        ...sideMark('left', x + columns.left, line),
        textAt('Left', x + columns.left + 10, line, BODY),
        ...sideMark('right', x + columns.right, line),
        textAt('Right', x + columns.right + 10, line, BODY),
        textAt('Torque', x + columns.torque, line, BODY),
        textAt('Done', x + width, line, BODY, 'end'),
        lineAt(x, y + height, x + width, y + height, 1.1, 'ink'),
      ];
    },
  };
};

const below = ({ height, draw }: Block, space: number): Block => ({
  height: height + space,
  draw: (x, y) => draw(x, y + space),
});

/** A row that the alignment has again with a number for each side: here one word for both will do. */
const isSaidInOne = ({ isTarget, left, right }: SettingRow): boolean => isTarget === true && left.words === right.words;

/** Two settings of the axle in one line, each with its box to tick. */
const pairBlock = (rows: readonly SettingRow[], width: number, density: Density): Block => {
  const each = (width - GAP) / 2;
  const cells = rows.map(({ name, left }) => runOn([name, NAME], [left.words, STRONG], each - BOX - 6 - GAP));
  const inner = Math.max(BOX, ...cells.map(({ height }) => height));
  const height = inner + 2 * density.padding;
  return {
    height,
    draw: (x, y) => [
      ...cells.flatMap((cell, index): readonly Primitive[] => {
        const from = x + index * (each + GAP);
        return [
          ...cell.draw(from, y + (height - cell.height) / 2),
          boxAt(from + each - BOX - 6, y + (height - BOX) / 2, BOX, BOX, { stroke: 'ink', line: 1 }),
        ];
      }),
      lineAt(x, y + height, x + width, y + height, 0.5, 'line'),
    ],
  };
};

const pairsOf = (rows: readonly SettingRow[], width: number, density: Density): readonly Block[] =>
  rows.flatMap((_, at) => (at % 2 === 0 ? [pairBlock(rows.slice(at, at + 2), width, density)] : []));

/** The settings of an axle: a part a row, as it stands on the left and on the right. */
export const settingsFlow = (section: SettingsSection, width: number, density: Density): Flow => {
  const columns = columnsOf(section, width);
  const table = tableHead(columns, width);
  // the second axle has no note: its heading stands in the head of the table where room is short
  const isOneLine = density.isPaired && section.note === '';
  const together = density.isPaired ? section.rows.filter(isSaidInOne) : [];
  const apart = section.rows.filter((row) => !together.includes(row));
  return {
    head: isOneLine
      ? below(tableHead(columns, width, section.heading), density.before)
      : headOf(section.heading, section.note, width, table, density),
    continued: headOf(`${section.heading}, continued`, '', width, table, density),
    rows: [...apart.map((row) => settingBlock(row, columns, width, density)), ...pairsOf(together, width, density)],
  };
};
