import { CONTRACT_UNITS, findReading, toDegrees, type AxleName, type ReadingValue } from '../../geometry/index';
import { CAUTIONS } from './cautions';
import type { ErrorDocument } from './commandError';
import { isFailed, type ReadingsRow, type Row } from './rows';
import type { SweepQuestion } from './sweepPositions';
import {
  formatDifference,
  formatFixed,
  formatPlain,
  heading,
  TABLE_WIDTH,
  tableLine,
  wrap,
  type Column,
  type TextStyle,
} from './textTable';

export interface SweepAnswer {
  /** what is answered: the car, its setup, what is changed of it, and what it is compared with */
  readonly title: string;
  readonly setup: string;
  readonly question: SweepQuestion;
  readonly axles: readonly { readonly axle: AxleName; readonly rows: readonly Row[] }[];
  /** the file that was written, if any */
  readonly csv: string | null;
}

/** The readings that a sweep is looked at for; all the others are in `--json` and `--csv`. */
const SHOWN: readonly { readonly of: 'corner' | 'both'; readonly key: string; readonly title: string }[] = [
  { of: 'corner', key: 'camber', title: 'camber' },
  { of: 'corner', key: 'toe', title: 'toe' },
  { of: 'corner', key: 'caster', title: 'caster' },
  { of: 'both', key: 'rollCentreHeight', title: 'roll c. height' },
  { of: 'both', key: 'trackChange', title: 'track change' },
];
const SIDES = ['left', 'right'] as const;

const column = (title: string): Column => ({ title, width: Math.max(8, title.length), align: 'right' });

/** What a cell is read from: a row, or its difference to another setup. */
type Sides = Pick<ReadingsRow, 'left' | 'right' | 'both'>;

interface Shown {
  readonly column: Column;
  readonly unit: string;
  readonly decimals: number;
  readonly value: (sides: Sides) => number | null;
}

const firstNumber = (value: ReadingValue | undefined): number | null => (typeof value === 'number' ? value : null);

const COLUMNS: readonly Shown[] = SHOWN.flatMap(({ of, key, title }): Shown[] => {
  const entry = findReading(key);
  if (!entry) return [];
  const { decimals, quantity } = entry;
  const unit = CONTRACT_UNITS[quantity];
  if (of === 'both') return [{ column: column(title), unit, decimals, value: ({ both }) => firstNumber(both[key]) }];
  return SIDES.map((side) => ({
    column: column(`${title} ${side === 'left' ? 'L' : 'R'}`),
    unit,
    decimals,
    value: (sides) => firstNumber(sides[side][key]),
  }));
});

/** `sweep` as a table for 100 columns: the readings most asked for, left and right. */
export function sweepInWords(answer: SweepAnswer, style: TextStyle): string {
  const { setup, question, axles } = answer;
  const lines = wrap(answer.title, '  ').map((line) => heading(line, style));
  if (question.readAs) lines.push(`  The list was read with ${question.readAs}.`);
  if (question.motion === 'list') lines.push('', ...positionsInWords(question));
  for (const { axle, rows } of axles) {
    const title = `${axle === 'front' ? 'Front axle' : 'Rear axle'}, ${question.motion}`;
    lines.push('', heading(title, style), ...table(question, rows, valuesOf), ...warningsInWords(rows));
    const other = rows.map((row) => (isFailed(row) ? undefined : row.against?.setup)).find((name) => name !== undefined);
    if (other !== undefined)
      lines.push('', heading(`${title}: ${setup} less ${other}`, style), ...table(question, rows, differencesOf));
  }
  if (answer.csv !== null) lines.push('', `every reading: ${answer.csv}`);
  return [...lines, '', ...wrap(CAUTIONS)].join('\n');
}

/** Each warning once, with the number of positions that it stands at when it is not all of them. */
function warningsInWords(rows: readonly Row[]): string[] {
  const found = new Map<string, { readonly message: string; count: number }>();
  for (const row of rows) {
    // both wheels may be warned of at one position
    const counted = new Set<string>();
    for (const { code, path, message } of isFailed(row) ? [] : row.warnings) {
      const key = `${code} ${path}`;
      const known = found.get(key);
      if (known && !counted.has(key)) known.count++;
      else if (!known) found.set(key, { message, count: 1 });
      counted.add(key);
    }
  }
  const answered = rows.filter((row) => !isFailed(row)).length;
  return [...found.values()].flatMap(({ message, count }) => {
    const where = count === answered ? '' : ` at ${count} of ${answered} positions, first`;
    return wrap(`  warning${where}: ${message}`, '    ');
  });
}

/** What each row of a list asks for. */
function positionsInWords({ inputs, positions }: SweepQuestion): string[] {
  const columns = ['row', 'travel L', 'travel R', 'rack', 'roll'].map(column);
  return [
    tableLine(
      columns,
      columns.map(({ title }) => title),
    ),
    tableLine(columns, ['', 'mm', 'mm', 'mm', 'deg']),
    ...positions.map(({ travel = 0, rack = 0, roll = 0 }, index) => {
      const [left, right] = typeof travel === 'number' ? [travel, travel] : [travel.left, travel.right];
      return tableLine(columns, [inputs[index] ?? 0, left, right, rack, roll === 0 ? 0 : toDegrees(roll)].map(formatPlain));
    }),
  ];
}

/** Why a row has no cells: what is missing first, for the line may be cut. */
const reasonOf = ({ message, missingMm }: ErrorDocument): string =>
  missingMm === undefined ? message : `${formatPlain(missingMm)} mm short: ${message}`;

/** The cells of a row, or why it has none. */
type Cells = (row: Row) => readonly string[] | { readonly reason: string };

const valuesOf: Cells = (row) =>
  isFailed(row) ? { reason: reasonOf(row.error) } : COLUMNS.map(({ value, decimals }) => formatFixed(value(row), decimals));

const differencesOf: Cells = (row) => {
  if (isFailed(row)) return { reason: reasonOf(row.error) };
  const { against } = row;
  if (!against) return { reason: '' };
  if ('error' in against) return { reason: `setup ${against.setup}: ${reasonOf(against.error)}` };
  return COLUMNS.map(({ value, decimals }) => formatDifference(value(against.difference), decimals));
};

function table(question: SweepQuestion, rows: readonly Row[], cellsOf: Cells): string[] {
  const input = column(question.motion === 'list' ? 'row' : question.motion);
  const columns = [input, ...COLUMNS.map((shown) => shown.column)];
  const reasonColumn: Column = { title: '', width: TABLE_WIDTH - input.width - 2, align: 'left' };
  const titles = columns.map(({ title }) => title);
  const units = [question.unit === '1' ? '' : question.unit, ...COLUMNS.map(({ unit }) => unit)];
  return [
    tableLine(columns, titles),
    tableLine(columns, units),
    ...rows.map((row) => {
      const at = formatPlain(row.input ?? 0);
      const cells = cellsOf(row);
      return 'reason' in cells ? tableLine([input, reasonColumn], [at, cells.reason]) : tableLine(columns, [at, ...cells]);
    }),
  ];
}
