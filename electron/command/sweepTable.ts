import { CONTRACT_UNITS, findReading, type AxleName, type ReadingValue } from '../../geometry/index';
import { CAUTIONS } from './cautions';
import { isFailed, type ReadingsRow, type Row } from './rows';
import type { SweepQuestion } from './sweepPositions';
import { formatFixed, formatPlain, heading, TABLE_WIDTH, tableLine, wrap, type Column, type TextStyle } from './textTable';

export interface SweepAnswer {
  readonly car: string;
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

interface Shown {
  readonly column: Column;
  readonly unit: string;
  readonly cell: (row: ReadingsRow) => string;
}

const firstNumber = (value: ReadingValue | undefined): number | null => (typeof value === 'number' ? value : null);

const COLUMNS: readonly Shown[] = SHOWN.flatMap(({ of, key, title }) => {
  const entry = findReading(key);
  if (!entry) return [];
  const unit = CONTRACT_UNITS[entry.quantity];
  if (of === 'both')
    return [{ column: column(title), unit, cell: (row: ReadingsRow) => formatFixed(firstNumber(row.both[key]), entry.decimals) }];
  return SIDES.map((side) => ({
    column: column(`${title} ${side === 'left' ? 'L' : 'R'}`),
    unit,
    cell: (row: ReadingsRow) => formatFixed(firstNumber(row[side][key]), entry.decimals),
  }));
});

/** `sweep` as a table for 100 columns: the readings most asked for, left and right. */
export function sweepInWords(answer: SweepAnswer, style: TextStyle): string {
  const { car, setup, question, axles } = answer;
  const lines = [heading(`${car}, setup ${setup}`, style)];
  for (const { axle, rows } of axles)
    lines.push(
      '',
      heading(`${axle === 'front' ? 'Front axle' : 'Rear axle'}, ${question.motion}`, style),
      ...table(question, rows),
    );
  if (answer.csv !== null) lines.push('', `every reading: ${answer.csv}`);
  return [...lines, '', ...wrap(CAUTIONS)].join('\n');
}

function table(question: SweepQuestion, rows: readonly Row[]): string[] {
  const input = column(question.motion === 'list' ? 'row' : question.motion);
  const columns = [input, ...COLUMNS.map((shown) => shown.column)];
  return [
    tableLine(
      columns,
      columns.map(({ title }) => title),
    ),
    tableLine(columns, [question.unit === '1' ? '' : question.unit, ...COLUMNS.map(({ unit }) => unit)]),
    ...rows.map((row) => {
      const at = formatPlain(row.input ?? 0);
      if (!isFailed(row)) return tableLine(columns, [at, ...COLUMNS.map(({ cell }) => cell(row))]);
      const reason: Column = { title: '', width: TABLE_WIDTH - input.width - 2, align: 'left' };
      return tableLine([input, reason], [at, row.error.message]);
    }),
  ];
}
