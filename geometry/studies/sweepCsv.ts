import type { AxleName } from '../car/document';
import { CONTRACT_UNITS, readingsOf } from '../readings/catalogue';
import { numberNamesOf, numbersOf, type ReadingValues } from '../readings/contractUnits';
import type { ReadingEntry } from '../readings/readingEntry';

/** A position of a sweep that was reached: readings in contract units. */
export interface CsvReadings {
  readonly left: ReadingValues;
  readonly right: ReadingValues;
  readonly both: ReadingValues;
}

/** A row of one axle, or why it was not reached. */
export type CsvRow = CsvReadings | { readonly error: { readonly message: string } };

/** The rows of one axle; without a prefix when the sweep is of that axle alone. */
export interface CsvAxle {
  readonly axle: AxleName;
  readonly prefix: string;
  readonly rows: readonly CsvRow[];
}

/** The readings of the whole car at one position. */
export type CsvWholeCar = Readonly<Record<string, unknown>>;

const LINE_END = '\r\n';
const SIDES = ['left', 'right', 'both'] as const;

const entriesOf = (side: (typeof SIDES)[number]): readonly ReadingEntry[] => readingsOf(side === 'both' ? 'axle' : 'corner');

/** A field of RFC 4180: quoted where it must be. */
export const csvField = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

function headerOf(axles: readonly CsvAxle[], hasWholeCar: boolean, inputUnit: string): string[] {
  const names = [`input [${inputUnit}]`];
  for (const { prefix } of axles)
    for (const side of SIDES)
      for (const entry of entriesOf(side))
        for (const name of numberNamesOf(entry)) names.push(`${prefix}${side}.${name} [${CONTRACT_UNITS[entry.quantity]}]`);
  if (hasWholeCar) for (const entry of readingsOf('car')) names.push(`wholeCar.${entry.key} [${CONTRACT_UNITS[entry.quantity]}]`);
  names.push('error');
  return names;
}

const EMPTY_CELLS = SIDES.reduce((count, side) => count + entriesOf(side).flatMap(numberNamesOf).length, 0);

function cellsOf(row: CsvReadings): string[] {
  const cells: string[] = [];
  for (const side of SIDES)
    for (const entry of entriesOf(side))
      for (const number of numbersOf(entry, row[side][entry.key] ?? null)) cells.push(number === null ? '' : String(number));
  return cells;
}

const cellOf = (value: unknown): string => (typeof value === 'number' ? String(value) : '');

/**
 * A sweep as CSV, line by line: RFC 4180, CRLF, decimal points, full precision, no byte-order mark; an empty cell is no value.
 * Columns: the input, every reading of left, right and both in catalogue order, those of the whole car where the sweep is of
 * both axles, then the error of a row that was not reached.
 * @param wholeCar - one a row; null in a sweep of one axle
 */
export function* sweepCsvLines(
  inputs: readonly number[],
  inputUnit: string,
  axles: readonly CsvAxle[],
  wholeCar: readonly CsvWholeCar[] | null,
): Generator<string> {
  yield (
    headerOf(axles, wholeCar !== null, inputUnit)
      .map(csvField)
      .join(',') + LINE_END
  );
  for (const [index, input] of inputs.entries()) {
    const cells = [String(input)];
    const errors: string[] = [];
    for (const { axle, prefix, rows } of axles) {
      const row = rows[index];
      if (row && !('error' in row)) cells.push(...cellsOf(row));
      else {
        cells.push(...Array.from({ length: EMPTY_CELLS }, () => ''));
        if (row) errors.push(`${prefix === '' ? '' : `${axle}: `}${row.error.message}`);
      }
    }
    if (wholeCar !== null) for (const { key } of readingsOf('car')) cells.push(cellOf(wholeCar[index]?.[key]));
    cells.push(csvField(errors.join('; ')));
    yield cells.join(',') + LINE_END;
  }
}
