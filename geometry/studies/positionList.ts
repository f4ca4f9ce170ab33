import type { Fault } from '../car/fault';
import { decodeText, LARGEST_FILE_BYTES } from '../car/text/decodeText';
import { fail, succeed, type Result } from '../core/result';
import type { Position } from '../readings/rows';
import { positionOf, type AskedPosition } from './askedPosition';

/** The columns of a list of positions; the last may be missing. */
export const LIST_COLUMNS = ['travelLeft', 'travelRight', 'rack', 'roll'] as const;
/** More positions than this are no question of one sweep. */
export const MOST_POSITIONS = 100_000;
/** Faults past this many say nothing that the first ones do not. */
const MOST_FAULTS = 20;

/** Why a text is no list of positions. */
export interface BadPositionList {
  /** "3 faults" in words */
  readonly message: string;
  /** the first of them */
  readonly faults: readonly Fault[];
}

/**
 * The positions of a list: CSV with the header `travelLeft,travelRight,rack[,roll]`, travel in mm from where the car stands,
 * rack in mm, roll in degrees. Blank lines are skipped; quotes around a field and a byte-order mark are read.
 *
 * @returns the positions as they are asked for, or every fault found
 */
export function readPositionList(bytes: Uint8Array): Result<readonly AskedPosition[], BadPositionList> {
  const faults: Fault[] = [];
  const report = (line: number, column: number | null, found: string, expected: string): void => {
    faults.push({ code: 'bad-list', path: null, line, column, found, expected, hint: null });
  };
  const positions = parse(bytes, report);
  if (faults.length === 0) return succeed(positions);
  return fail({ message: countOf(faults.length, 'fault'), faults: faults.slice(0, MOST_FAULTS) });
}

type Report = (line: number, column: number | null, found: string, expected: string) => void;

const countOf = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

function parse(bytes: Uint8Array, report: Report): AskedPosition[] {
  if (bytes.length > LARGEST_FILE_BYTES) {
    report(1, null, 'more than 16 MiB', 'a shorter list');
    return [];
  }
  const text = decodeText(bytes);
  if (!text.ok) {
    report(1, null, 'bytes that are not UTF-8', 'UTF-8 text');
    return [];
  }
  const lines = text.value.split(/\r\n|\n|\r/);
  const headerAt = lines.findIndex((line) => line.trim() !== '');
  const header = fieldsOf(lines[headerAt] ?? '');
  const known = [3, 4].includes(header.length) && header.every((name, index) => name === LIST_COLUMNS[index]);
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
  let rows = 0;
  for (let i = headerAt + 1; i < lines.length; i++) {
    const line = lines[i] ?? '';
    if (line.trim() === '') continue;
    rows += 1;
    const position = positionOfLine(line, i + 1, header.length, report);
    if (position) positions.push(position);
  }
  if (rows === 0) report(headerAt + 1, null, 'no positions', 'at least one row');
  if (positions.length > MOST_POSITIONS) report(headerAt + 1, null, `${positions.length} rows`, `at most ${MOST_POSITIONS}`);
  return positions;
}

const fieldsOf = (line: string): string[] => line.split(',').map((field) => field.trim().replace(/^"(.*)"$/, '$1'));

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/** A number as lists have it: a decimal point, no unit; null where it is none. */
function numberOf(text: string): number | null {
  if (!NUMBER.test(text.trim())) return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : null;
}

function positionOfLine(line: string, lineNumber: number, width: number, report: Report): AskedPosition | null {
  const fields = fieldsOf(line);
  if (fields.length !== width) {
    report(lineNumber, null, countOf(fields.length, 'field'), countOf(width, 'field'));
    return null;
  }
  const numbers: number[] = [];
  let column = 1;
  for (const [index, field] of fields.entries()) {
    const value = numberOf(field);
    if (value === null)
      report(lineNumber, column, JSON.stringify(field.slice(0, 40)), `a number for ${LIST_COLUMNS[index] ?? ''}`);
    else numbers.push(value);
    column += (line.split(',')[index]?.length ?? 0) + 1;
  }
  const [left, right, rack, roll = 0] = numbers;
  if (left === undefined || right === undefined || rack === undefined || numbers.length !== width) return null;
  return { travel: { left, right }, rack, roll };
}

/** The positions of a list for the engine; a row that is no position is named by its number. */
export function positionsOfList(asked: readonly AskedPosition[]): Result<readonly Position[], string> {
  const positions: Position[] = [];
  for (const [index, position] of asked.entries()) {
    const judged = positionOf(position);
    if ('fault' in judged) return fail(`row ${index + 1} of the list: ${judged.fault}`);
    positions.push(judged);
  }
  return succeed(positions);
}
