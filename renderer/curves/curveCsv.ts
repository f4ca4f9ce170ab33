import type { SweptLines } from './plotContent';

const LINE_END = '\r\n';

/** A field of RFC 4180: quoted where it must be. A text that a spreadsheet would take for a formula is made plain. */
const csvField = (text: string): string => {
  const plain = /^[=+\-@\t\r]/.test(text) && !Number.isFinite(Number(text)) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
};

/** Rows as CSV: RFC 4180, CRLF, decimal points, full precision; an empty cell is no value. */
export const csvOf = (rows: readonly (readonly (string | number | null)[])[]): string =>
  rows
    .map((row) => row.map((cell) => (cell === null || Number.isNaN(cell) ? '' : csvField(String(cell)))).join(',') + LINE_END)
    .join('');

export interface CurveTable {
  /** "bump [mm]" */
  readonly input: string;
  /** the reading with its unit: "Toe [°]" */
  readonly reading: string;
  readonly setups: readonly { readonly name: string; readonly lines: SweptLines }[];
}

const sidesOf = ({ lines }: CurveTable['setups'][number]) =>
  lines.right
    ? ([['left', lines.left] as const, ['right', lines.right] as const] as const)
    : ([['', lines.left] as const] as const);

/** The curves of one plot: the motion, both sides of every setup, and why a cell is empty. */
export const curveCsv = ({ input, reading, setups }: CurveTable): string => {
  const columns = setups.flatMap((setup) => sidesOf(setup).map(([side, line]) => ({ setup: setup.name, side, line })));
  const head = [
    input,
    ...columns.map(({ setup, side }) => [reading, side, setup].filter((part) => part !== '').join(', ')),
    'reason',
  ];
  const inputs = setups[0]?.lines.inputs ?? new Float64Array();
  const body = Array.from(inputs, (at, index) => {
    const reasons = columns.flatMap(({ line }) => (Number.isNaN(line.values[index] ?? NaN) ? (line.why(index) ?? []) : []));
    return [at, ...columns.map(({ line }) => line.values[index] ?? null), [...new Set(reasons)].join('; ')];
  });
  return csvOf([head, ...body]);
};
