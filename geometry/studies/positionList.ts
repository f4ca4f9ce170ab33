import type { Fault } from '../car/fault';
import { decodeText, LARGEST_FILE_BYTES } from '../car/text/decodeText';
import { fail, succeed, type Result } from '../core/result';
import { readTable, separatorOf, type Field, type Separator } from '../points/readTable';
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

/** A list as it was read. */
export interface PositionList {
  readonly positions: readonly AskedPosition[];
  /** in words, where its fields are not separated by commas: "semicolons between the fields, decimal commas"; else null */
  readonly readAs: string | null;
}

/**
 * The positions of a list: CSV with the header `travelLeft,travelRight,rack[,roll]`, travel in mm from where the car stands,
 * rack in mm, roll in degrees. Blank lines are skipped; quotes around a field and a byte-order mark are read. The header may
 * have semicolons or tabs in place of its commas: then all lines have, and numbers may have decimal commas, all of them.
 *
 * @returns the positions as they are asked for and how they were read, or every fault found
 */
export function readPositionList(bytes: Uint8Array): Result<PositionList, BadPositionList> {
  const faults: Fault[] = [];
  const report: Report = ({ line, column }, found, expected) => {
    faults.push({ code: 'bad-list', path: null, line, column, found, expected, hint: null });
  };
  const list = parse(bytes, report);
  if (faults.length === 0) return succeed(list);
  faults.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
  return fail({ message: countOf(faults.length, 'fault'), faults: faults.slice(0, MOST_FAULTS) });
}

type Report = (at: { readonly line: number; readonly column: number | null }, found: string, expected: string) => void;

const countOf = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

const NOTHING: PositionList = { positions: [], readAs: null };

const NAMES: Readonly<Record<Separator, string>> = { comma: 'commas', semicolon: 'semicolons', tab: 'tabs' };
/** What cannot stand in a number, and so was meant to separate. */
const OTHER_MARKS: Readonly<Record<Separator, RegExp>> = { comma: /[;\t]/, semicolon: /\t/, tab: /;/ };

function parse(bytes: Uint8Array, report: Report): PositionList {
  if (bytes.length > LARGEST_FILE_BYTES) {
    report({ line: 1, column: null }, 'more than 16 MiB', 'a shorter list');
    return NOTHING;
  }
  const text = decodeText(bytes);
  if (!text.ok) {
    report({ line: 1, column: null }, 'bytes that are not UTF-8', 'UTF-8 text');
    return NOTHING;
  }
  // the head line has no numbers in it: what is between its names separates the fields of all lines
  const separator = separatorOf(/\S[^\r\n]*/.exec(text.value)?.[0] ?? '');
  const { rows, unclosed } = readTable(text.value, separator);
  if (unclosed) report(unclosed, 'a quote that is not closed', 'a closing "');
  const [header = [], ...body] = rows;
  const known = [3, 4].includes(header.length) && header.every(({ text: name }, index) => name === LIST_COLUMNS[index]);
  if (!known) {
    const found = header.map(({ text: name }) => name).join(',');
    const expected = 'travelLeft,travelRight,rack or travelLeft,travelRight,rack,roll';
    report(header[0] ?? { line: 1, column: 1 }, found.slice(0, 60) || 'nothing', expected);
    return NOTHING;
  }
  const { line } = header[0];
  if (body.length === 0) report({ line, column: null }, 'no positions', 'at least one row');
  if (body.length > MOST_POSITIONS) {
    report({ line, column: null }, `${body.length} rows`, `at most ${MOST_POSITIONS}`);
    return NOTHING;
  }
  const numbers = new Numbers(separator, report);
  const positions = body.flatMap((row) => positionOfRow(row, header.length, numbers, report) ?? []);
  if (separator === 'comma') return { positions, readAs: null };
  const decimals = numbers.mark === null ? '' : `, decimal ${numbers.mark === ',' ? 'commas' : 'points'}`;
  return { positions, readAs: `${NAMES[separator]} between the fields${decimals}` };
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/** Reads the numbers of a list, no units: the first decimal mark in it is that of all. */
class Numbers {
  mark: '.' | ',' | null = null;
  private line = 0;

  constructor(
    readonly separator: Separator,
    private readonly report: Report,
  ) {}

  /** @param name - of its column @returns null where it is no number, and that is reported */
  read(field: Field, name: string): number | null {
    const { text } = field;
    const mark = text.includes(',') ? ',' : text.includes('.') ? '.' : null;
    const found = JSON.stringify(text.slice(0, 40));
    const other = OTHER_MARKS[this.separator].exec(text);
    const plain = this.separator === 'comma' ? text : text.replace(',', '.');
    const value = NUMBER.test(plain) ? Number(plain) : NaN;
    if (other !== null) {
      this.report(field, found, `${NAMES[this.separator]} between the fields, as in the head line`);
      return null;
    }
    if (!Number.isFinite(value)) {
      this.report(field, found, `a number for ${name}`);
      return null;
    }
    if (mark !== null && this.mark !== null && mark !== this.mark) {
      const known = this.mark === ',' ? 'commas' : 'points';
      this.report(field, found, `decimal ${known} in all numbers, as in line ${this.line}`);
      return null;
    }
    if (mark !== null && this.mark === null) [this.mark, this.line] = [mark, field.line];
    return value;
  }
}

function positionOfRow(row: readonly Field[], width: number, numbers: Numbers, report: Report): AskedPosition | null {
  const { separator } = numbers;
  const other = row.find(({ text }) => OTHER_MARKS[separator].test(text));
  if (row.length !== width) {
    const between = `${countOf(width, 'field')} with ${NAMES[separator]} between them, as in the head line`;
    const decimals = separator === 'comma' && row.length > width ? '; decimal commas need semicolons or tabs there' : '';
    report({ line: row[0].line, column: other?.column ?? null }, countOf(row.length, 'field'), `${between}${decimals}`);
    return null;
  }
  const values = row.map((field, index) => numbers.read(field, LIST_COLUMNS[index] ?? ''));
  const [left, right, rack, roll = 0] = values;
  if (values.includes(null)) return null;
  return { travel: { left: left ?? 0, right: right ?? 0 }, rack: rack ?? 0, roll: roll ?? 0 };
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
