import type { BringOptions, Brought, BroughtRow, PointList, Warning } from '../../geometry/index';
import {
  formatDifference,
  formatFixed,
  harmless,
  heading,
  NO_VALUE,
  tableLine,
  wrap,
  type Column,
  type TextStyle,
} from './textTable';

export interface PointsInAnswer {
  readonly car: string;
  readonly place: string;
  readonly list: PointList;
  readonly asked: BringOptions;
  readonly brought: Brought;
  readonly warnings: readonly Warning[];
  readonly out: string | null;
}

const COLUMNS: readonly Column[] = [
  { title: 'line', width: 4, align: 'right' },
  { title: 'name', width: 14, align: 'left' },
  { title: 'point', width: 14, align: 'left' },
  { title: 'side', width: 5, align: 'left' },
  ...['x', 'y', 'z'].map((title): Column => ({ title, width: 8, align: 'right' })),
  ...['dx', 'dy', 'dz'].map((title): Column => ({ title, width: 7, align: 'right' })),
];
const FIT: readonly Column[] = [
  { title: 'reference point', width: 24, align: 'left' },
  { title: 'misses by', width: 10, align: 'right' },
];

/** `points` with a list, as tables for 100 columns: coordinates in the car's frame in mm, changes against the car as it is. */
export function pointsInWords(answer: PointsInAnswer, style: TextStyle): string {
  const { car, place, list, asked, brought, warnings, out } = answer;
  const { datum } = brought;
  const cells = brought.rows.map((row) => cellsOf(row, brought));
  // numbers are never cut: a list in a wrong unit is seen for what it is
  const columns = COLUMNS.map((column, i): Column =>
    column.align === 'left' ? column : { ...column, width: Math.max(column.width, ...cells.map((line) => line[i]?.length ?? 0)) },
  );
  const lines = [
    heading(`${car}, ${asked.axle} axle: ${list.rows.length} rows of ${place}`, style),
    ...wrap(
      `  ${list.separator}, decimal ${list.decimal}, ${asked.unit}; x ${asked.axes[0]}, y ${asked.axes[1]}, z ${asked.axes[2]}, ${brought.frame.handed}-handed; ${asked.side} measured, ${asked.sides}`,
      '  ',
    ),
    '',
    tableLine(
      columns,
      columns.map(({ title }) => title),
    ),
    ...cells.map((line) => tableLine(columns, line)),
  ];
  if (datum) {
    lines.push('', tableLine(FIT, ['reference point', 'misses by']));
    for (const { name, miss } of datum.points) lines.push(tableLine(FIT, [harmless(name), formatFixed(miss, 3)]));
    lines.push(tableLine(FIT, ['rms', formatFixed(datum.rms, 3)]));
  }
  for (const { code, message } of warnings) lines.push('', ...wrap(`  ${harmless(message)} [${code}]`, '  '));
  lines.push('', out === null ? 'Nothing was taken: --out writes the car with these points.' : `Written to ${out}.`);
  return lines.join('\n');
}

const STATES: Readonly<Record<BroughtRow['state'], string>> = {
  taken: '',
  unknown: 'no such point',
  reference: 'reference',
  leftOut: 'left out',
};

function cellsOf(row: BroughtRow, { points }: Brought): string[] {
  const taken = points.find((point) => point.point === row.point && point.lines.includes(row.line));
  const point = row.state === 'taken' ? (row.point ?? '') : row.suggestion === null ? STATES[row.state] : `${row.suggestion}?`;
  const change = taken?.change?.map((value) => formatDifference(value, 2)) ?? [NO_VALUE, NO_VALUE, NO_VALUE];
  return [
    String(row.line),
    harmless(row.name),
    point,
    row.onSide,
    ...row.at.map((value) => formatFixed(value, 2)),
    ...(row.state === 'taken' ? change : [NO_VALUE, NO_VALUE, NO_VALUE]),
  ];
}
