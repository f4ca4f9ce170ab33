import type { AxleName } from '../../car/document';
import type { CornerRow, CornersSection, TargetRow, TargetsSection } from '../sheet';
import { widthOf } from '../typeface/typeface';
import { BODY, column, lineHeight, middleOf, NAME, SOFT, STRONG, type Block, type Flow } from './block';
import type { Density } from './density';
import { headOf } from './heading';
import { boxAt, lineAt, sideMark, textAt, watchMark, type Primitive } from './primitives';

const PADDING = 1.5;
const GAP = 8;
const VALUE = 44;
const TOLERANCE = 54;
const RULE = 156;
const READ = 46;

interface TargetColumns {
  readonly name: number;
  /** right ends of the two values */
  readonly left: number;
  readonly right: number;
  readonly tolerance: number;
  readonly rule: number;
  readonly readLeft: number;
  readonly readRight: number;
}

const targetColumns = ({ hasRules, hasBoxes }: TargetsSection, width: number): TargetColumns => {
  const rule = hasRules ? RULE : 0;
  const read = hasBoxes ? READ : 0;
  const name = Math.min(width - 2 * VALUE - TOLERANCE - rule - 2 * read, 220);
  const left = name + VALUE;
  return {
    name,
    left,
    right: left + VALUE,
    tolerance: left + VALUE + 12,
    rule: left + VALUE + TOLERANCE,
    readLeft: width - 2 * read,
    readRight: width - read,
  };
};

const targetBlock = (row: TargetRow, section: TargetsSection, columns: TargetColumns, width: number, density: Density): Block => {
  const name = column([[row.unit === '' ? row.name : `${row.name}, ${row.unit}`, NAME]], columns.name - GAP);
  const mark = section.hasRules && row.isBroken ? 11 : 0;
  const rule = column([[section.hasRules ? row.rule : '', BODY]], RULE - GAP - mark);
  const height = Math.max(density.row, name.height + 2 * PADDING, rule.height + 2 * PADDING);
  return {
    height,
    draw: (x, y) => {
      const line = middleOf(y, height, STRONG);
      const drawn: Primitive[] = [...name.draw(x, y + (height - name.height) / 2)];
      if (typeof row.value === 'string')
        drawn.push(textAt(row.value, x + (columns.left + columns.right) / 2, line, STRONG, 'end'));
      else
        drawn.push(
          textAt(row.value.left, x + columns.left, line, STRONG, 'end'),
          textAt(row.value.right, x + columns.right, line, STRONG, 'end'),
        );
      if (row.tolerance !== '') drawn.push(textAt(row.tolerance, x + columns.tolerance, middleOf(y, height, BODY), BODY));
      if (mark > 0) drawn.push(...watchMark(x + columns.rule, middleOf(y, height, BODY)));
      drawn.push(...rule.draw(x + columns.rule + mark, y + (height - rule.height) / 2));
      drawn.push(lineAt(x, y + height, x + width, y + height, 0.5, 'line'));
      if (section.hasBoxes)
        for (const from of typeof row.value === 'string' ? [columns.readLeft] : [columns.readLeft, columns.readRight])
          drawn.push(lineAt(x + from, y, x + from, y + height, 0.5, 'line'));
      if (section.hasBoxes) drawn.push(lineAt(x + width, y, x + width, y + height, 0.5, 'line'));
      return drawn;
    },
  };
};

const targetsHead = (section: TargetsSection, columns: TargetColumns, width: number): Block => {
  const height = lineHeight(BODY) + 4;
  return {
    height,
    draw: (x, y) => {
      const line = middleOf(y, height, BODY);
      const side = (name: 'Left' | 'Right', end: number): Primitive[] => {
        const start = end - widthOf(name, BODY.size, BODY.weight) - 10;
        return [...sideMark(name === 'Left' ? 'left' : 'right', x + start, line), textAt(name, x + end, line, BODY, 'end')];
      };
      return [
        ...side('Left', columns.left),
        ...side('Right', columns.right),
        textAt('Tolerance', x + columns.tolerance, line, BODY),
        ...(section.hasRules ? [textAt('Rules allow', x + columns.rule, line, BODY)] : []),
        ...(section.hasBoxes
          ? [
              textAt('Read left', x + columns.readLeft + 4, line, BODY),
              textAt('Read right', x + columns.readRight + 4, line, BODY),
            ]
          : []),
        lineAt(x, y + height, x + width, y + height, 1.1, 'ink'),
      ];
    },
  };
};

/** What to set to: values, tolerances, rules, and boxes for what was read. */
export const targetsFlow = (section: TargetsSection, width: number, density: Density): Flow => {
  const columns = targetColumns(section, width);
  const table = targetsHead(section, columns, width);
  return {
    head: headOf(section.heading, section.note, width, table, density),
    continued: headOf(`${section.heading}, continued`, '', width, table, density),
    rows: section.rows.map((row) => targetBlock(row, section, columns, width, density)),
  };
};

const CORNER_NAME = 118;

const cornerNames = (axles: readonly AxleName[]): readonly string[] =>
  axles.flatMap((axle) => [`${axle === 'front' ? 'Front' : 'Rear'} left`, `${axle === 'front' ? 'Front' : 'Rear'} right`]);

const cornerBlock = (row: CornerRow, section: CornersSection, width: number, density: Density): Block => {
  const count = 2 * section.axles.length;
  const each = (width - CORNER_NAME) / count;
  const name = column([[row.unit === '' ? row.name : `${row.name}, ${row.unit}`, NAME]], CORNER_NAME - GAP);
  const values = row.values.map((value) => column([[value, STRONG]], each - 14 - (section.hasBoxes ? 44 : 0)));
  const height = Math.max(density.row, name.height + 2 * PADDING, ...values.map((value) => value.height + 2 * PADDING));
  return {
    height,
    draw: (x, y) => [
      ...name.draw(x, y + (height - name.height) / 2),
      ...values.flatMap((value, index) => {
        const from = x + CORNER_NAME + each * index;
        const box = section.hasBoxes ? [boxAt(from + each - 50, y + 1.5, 46, height - 3, { stroke: 'line', line: 0.6 })] : [];
        return [...value.draw(from, y + (height - value.height) / 2), ...box];
      }),
      lineAt(x, y + height, x + width, y + height, 0.5, 'line'),
    ],
  };
};

/** Numbers of the four corners, each with a box for what was read. */
export const cornersFlow = (section: CornersSection, width: number, density: Density): Flow => {
  const names = cornerNames(section.axles);
  const each = (width - CORNER_NAME) / names.length;
  const height = lineHeight(SOFT) + 4;
  const table: Block = {
    height,
    draw: (x, y) => [
      ...names.map((name, index) => textAt(name, x + CORNER_NAME + each * index, middleOf(y, height, SOFT), BODY)),
      lineAt(x, y + height, x + width, y + height, 1.1, 'ink'),
    ],
  };
  return {
    head: headOf(section.heading, section.note, width, table, density),
    continued: headOf(`${section.heading}, continued`, '', width, table, density),
    rows: section.rows.map((row) => cornerBlock(row, section, width, density)),
  };
};
