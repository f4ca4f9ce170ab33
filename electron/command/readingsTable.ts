import {
  findReading,
  CONTRACT_UNITS,
  numbersOf,
  numberNamesOf,
  readingsOf,
  type AxleName,
  type ReadingEntry,
  type ReadingValue,
} from '../../geometry/index';
import { CAUTIONS } from './cautions';
import { isFailed, type ReadingsRow, type Row } from './rows';
import {
  formatDifference,
  formatFixed,
  formatPlain,
  heading,
  NO_VALUE,
  tableLine,
  wrap,
  type Column,
  type TextStyle,
} from './textTable';

export interface ReadingsAnswer {
  /** what is answered: the car, its setup, what is changed of it, and what it is compared with */
  readonly title: string;
  readonly axles: readonly { readonly axle: AxleName; readonly row: Row }[];
  readonly wholeCar: Readonly<Record<string, unknown>> | null;
}

type Readings = Readonly<Record<string, ReadingValue>>;

const NAME: Column = { title: '', width: 38, align: 'left' };
const value = (title: string): Column => ({ title, width: 11, align: 'right' });
const UNIT: Column = { title: 'unit', width: 8, align: 'left' };

/** `readings` as a table for 100 columns: left, right and, against another setup, the differences. */
export function readingsInWords(answer: ReadingsAnswer, style: TextStyle): string {
  const lines = wrap(answer.title, '  ').map((line) => heading(line, style));
  for (const { axle, row } of answer.axles) lines.push('', ...axleInWords(axle, row, style));
  if (answer.wholeCar) lines.push('', ...wholeCarInWords(answer.wholeCar, style));
  return [...lines, '', ...wrap(CAUTIONS)].join('\n');
}

function axleInWords(axle: AxleName, row: Row, style: TextStyle): string[] {
  const title = axle === 'front' ? 'Front axle' : 'Rear axle';
  if (isFailed(row)) return [heading(title, style), ...wrap(`  not answered: ${row.error.message}`, '  ')];
  return [heading(title, style), ...positionInWords(row), ...cornerTable(row, style), ...bothTable(row, style), ...remarks(row)];
}

function positionInWords(row: ReadingsRow): string[] {
  const pair = ({ left, right }: { left: number; right: number }): string =>
    formatPlain(left) === formatPlain(right) ? formatPlain(left) : `${formatPlain(left)} left, ${formatPlain(right)} right`;
  const lines = wrap(
    `  travel from standing ${pair(row.travelFromStanding)} mm, from design ${pair(row.travel)} mm, rack ${formatPlain(row.rack)} mm, roll ${formatPlain(row.roll)}°`,
    '  ',
  );
  const { toeReset } = row;
  if (toeReset)
    lines.push(
      ...wrap(
        `  toe set by ${toeReset.adjuster}: ${formatPlain(toeReset.left)} left, ${formatPlain(toeReset.right)} right${toeReset.inRange ? '' : ', out of its range'}`,
        '  ',
      ),
    );
  return lines;
}

/** Another setup in the same row, where it could be reached. */
const comparedIn = (row: ReadingsRow) => (row.against && !('error' in row.against) ? row.against : null);

function cornerTable(row: ReadingsRow, style: TextStyle): string[] {
  const against = comparedIn(row);
  const columns = [NAME, value('left'), value('right'), ...(against ? [value('Δ left'), value('Δ right')] : []), UNIT];
  const line = (entry: ReadingEntry): string[] => {
    const left = numbersOf(entry, row.left[entry.key] ?? null);
    const right = numbersOf(entry, row.right[entry.key] ?? null);
    const leftDifference = against ? numbersOf(entry, against.difference.left[entry.key] ?? null) : [];
    const rightDifference = against ? numbersOf(entry, against.difference.right[entry.key] ?? null) : [];
    return namesOf(entry).map((name, index) =>
      tableLine(columns, [
        `  ${name}`,
        formatFixed(left[index] ?? null, entry.decimals),
        formatFixed(right[index] ?? null, entry.decimals),
        ...(against
          ? [
              formatDifference(leftDifference[index] ?? null, entry.decimals),
              formatDifference(rightDifference[index] ?? null, entry.decimals),
            ]
          : []),
        unitOf(entry),
      ]),
    );
  };
  return groupedLines(readingsOf('corner'), columns, line, style);
}

function bothTable(row: ReadingsRow, style: TextStyle): string[] {
  const against = comparedIn(row);
  return singleTable('both', readingsOf('axle'), row.both, against ? against.difference.both : null, style);
}

function singleTable(
  title: string,
  entries: readonly ReadingEntry[],
  readings: Readings,
  difference: Readings | null,
  style: TextStyle,
): string[] {
  const columns = [NAME, value(title), ...(difference ? [value('Δ')] : []), UNIT];
  const line = (entry: ReadingEntry): string[] => [
    tableLine(columns, [
      `  ${entry.name}`,
      formatFixed(numbersOf(entry, readings[entry.key] ?? null)[0] ?? null, entry.decimals),
      ...(difference ? [formatDifference(numbersOf(entry, difference[entry.key] ?? null)[0] ?? null, entry.decimals)] : []),
      unitOf(entry),
    ]),
  ];
  return groupedLines(entries, columns, line, style);
}

/** Lines under the headings of their groups; the first heading carries the columns' titles. */
function groupedLines(
  entries: readonly ReadingEntry[],
  columns: readonly Column[],
  line: (entry: ReadingEntry) => string[],
  style: TextStyle,
): string[] {
  const lines: string[] = [];
  let group = '';
  for (const entry of entries) {
    if (entry.group !== group) {
      group = entry.group;
      lines.push(heading(tableLine(columns, [` ${group}`, ...columns.slice(1).map((column) => column.title)]), style));
    }
    lines.push(...line(entry));
  }
  return lines;
}

const namesOf = (entry: ReadingEntry): readonly string[] =>
  entry.components
    ? entry.components.map((component) => `${entry.name} ${component}`)
    : numberNamesOf(entry).map(() => entry.name);

const unitOf = (entry: ReadingEntry): string => (entry.quantity === 'ratio' ? '' : CONTRACT_UNITS[entry.quantity]);

/** Why there are dashes, limits that are broken, and warnings. */
function remarks(row: ReadingsRow): string[] {
  const lines = reasonsInWords(row.why);
  for (const limit of row.limits) {
    // of a setting the number is the file's own, and its unit that of its scale
    const entry = findReading(limit.name.split('.').at(-1) ?? '');
    const unit = entry === undefined || unitOf(entry) === '' ? '' : ` ${unitOf(entry)}`;
    const spare = limit.spare === null ? '' : `, ${limit.ok ? 'spare' : 'over by'} ${formatPlain(Math.abs(limit.spare))}${unit}`;
    lines.push(
      ...wrap(
        `  limit ${limit.name}: ${limit.ok ? 'kept' : 'BROKEN'}, ${limit.value === null ? 'no value' : `${formatPlain(limit.value)}${unit}`}${spare}`,
        '    ',
      ),
    );
  }
  for (const warning of row.warnings) lines.push(...wrap(`  warning: ${warning.message}`, '    '));
  if (row.against && 'error' in row.against)
    lines.push(...wrap(`  setup ${row.against.setup} is not reached here: ${row.against.error.message}`, '    '));
  return lines;
}

/** Reasons with the readings that they are given for, the same reason said once. */
function reasonsInWords(why: Readonly<Record<string, string>>): string[] {
  const byReason = new Map<string, string[]>();
  for (const [name, reason] of Object.entries(why)) byReason.set(reason, [...(byReason.get(reason) ?? []), name]);
  return [...byReason].flatMap(([reason, names]) => wrap(`  ${NO_VALUE} ${reason}: ${names.join(', ')}`, '    '));
}

function wholeCarInWords(wholeCar: Readonly<Record<string, unknown>>, style: TextStyle): string[] {
  const against = wholeCar['against'] as { readonly difference: Readings } | undefined;
  return [
    ...singleTable('car', readingsOf('car'), wholeCar as Readings, against ? against.difference : null, style),
    ...reasonsInWords(wholeCar['why'] as Readonly<Record<string, string>>),
  ];
}
