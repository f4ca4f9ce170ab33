import type { Fault } from '../../geometry/index';
import { countOf, LARGEST_FILE } from './carSource';
import type { CommandFaultCode } from './codes';
import { CommandError } from './commandError';
import { MOST_STEPS, parseNumber } from './options';
import type { AskedPosition } from './question';

const COLUMNS = ['travelLeft', 'travelRight', 'rack', 'roll'];
/** Faults past this many say nothing that the first ones do not. */
const MOST_FAULTS = 20;

/**
 * The positions of a list: CSV with the header `travelLeft,travelRight,rack[,roll]`, travel in mm from where the car stands,
 * rack in mm, roll in degrees. Blank lines are skipped; quotes around a field and a byte-order mark are read.
 *
 * @throws CommandError of kind file with every fault found
 */
export function readPositionList(bytes: Uint8Array, name: string): readonly AskedPosition[] {
  const faults: Fault[] = [];
  const report = (line: number, column: number | null, found: string, expected: string): void => {
    faults.push({ code: 'bad-list' satisfies CommandFaultCode, path: null, line, column, found, expected, hint: null });
  };
  const positions = parse(bytes, report);
  if (faults.length === 0) return positions;
  const message = `${name} is no list of positions: ${countOf(faults.length, 'fault')}`;
  throw new CommandError({ kind: 'file', message, faults: faults.slice(0, MOST_FAULTS) });
}

type Report = (line: number, column: number | null, found: string, expected: string) => void;

function parse(bytes: Uint8Array, report: Report): AskedPosition[] {
  if (bytes.length > LARGEST_FILE) {
    report(1, null, 'more than 16 MiB', 'a shorter list');
    return [];
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    report(1, null, 'bytes that are not UTF-8', 'UTF-8 text');
    return [];
  }
  const lines = text.split(/\r\n|\n|\r/);
  const headerAt = lines.findIndex((line) => line.trim() !== '');
  const header = fieldsOf(lines[headerAt] ?? '');
  const known = [3, 4].includes(header.length) && header.every((name, index) => name === COLUMNS[index]);
  if (!known) {
    report(
      Math.max(headerAt, 0) + 1,
      1,
      header.join(',').slice(0, 60) || 'nothing',
      'travelLeft,travelRight,rack or travelLeft,travelRight,rack,roll',
    );
    return [];
  }
  const positions: AskedPosition[] = [];
  for (let i = headerAt + 1; i < lines.length; i++) {
    const line = lines[i] ?? '';
    if (line.trim() === '') continue;
    const position = positionOfLine(line, i + 1, header.length, report);
    if (position) positions.push(position);
  }
  if (positions.length === 0) report(headerAt + 1, null, 'no positions', 'at least one row');
  if (positions.length > MOST_STEPS) report(headerAt + 1, null, `${positions.length} rows`, `at most ${MOST_STEPS}`);
  return positions;
}

const fieldsOf = (line: string): string[] => line.split(',').map((field) => field.trim().replace(/^"(.*)"$/, '$1'));

function positionOfLine(line: string, lineNumber: number, width: number, report: Report): AskedPosition | null {
  const fields = fieldsOf(line);
  if (fields.length !== width) {
    report(lineNumber, null, countOf(fields.length, 'field'), countOf(width, 'field'));
    return null;
  }
  const numbers: number[] = [];
  let column = 1;
  for (const [index, field] of fields.entries()) {
    const value = parseNumber(field);
    if (value === null) report(lineNumber, column, JSON.stringify(field.slice(0, 40)), `a number for ${COLUMNS[index]}`);
    else numbers.push(value);
    column += (line.split(',')[index]?.length ?? 0) + 1;
  }
  const [left, right, rack, roll = 0] = numbers;
  if (left === undefined || right === undefined || rack === undefined || numbers.length !== width) return null;
  return { travel: { left, right }, rack, roll };
}
