import type { AxleName, SideName } from '../car/document';
import { describe, shorten, type Fault } from '../car/fault';
import type { Vector } from '../core/vector';
import { AXIS_WORDS, frameOf, type AxisWord, type FrameAxes } from './frameAxes';
import { readTable, type Field, type Separator } from './readTable';

/** A point as the file has it: its numbers are in the file's own unit and axes. */
export interface PointRow {
  readonly line: number;
  readonly name: string;
  readonly read: Vector;
  /** where the file has a column that says so */
  readonly axle?: AxleName;
  readonly side?: SideName;
  /** where the file has the same point's design coordinates beside it, and they are others: it was read at a position */
  readonly posed?: true;
}

/** A list of points that was read, with how it was understood. */
export interface PointList {
  readonly rows: readonly PointRow[];
  readonly separator: Separator;
  readonly decimal: 'point' | 'comma';
  readonly header: boolean;
  /** the unit that the header names behind a coordinate, as in `x [mm]`; null where it names none */
  readonly headerUnit: PointUnit | null;
  /** where the header says that the coordinates point, as in `X back, Y right, Z up`; null where it does not say all three */
  readonly headerAxes: FrameAxes | null;
  /** rows that cannot be read, with line and column */
  readonly faults: readonly Fault[];
}

export type PointUnit = 'mm' | 'in' | 'cm' | 'm';
export const POINT_UNITS: readonly PointUnit[] = ['mm', 'in', 'cm', 'm'];
export const MM_PER_POINT_UNIT: Readonly<Record<PointUnit, number>> = { mm: 1, in: 25.4, cm: 10, m: 1000 };

/** More points than this are no car's. */
export const MOST_POINTS = 10_000;

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;
const isNumber = (text: string, decimal: 'point' | 'comma'): boolean => NUMBER.test(plain(text, decimal));
const plain = (text: string, decimal: 'point' | 'comma'): string => {
  const minus = text.replace(/^[−–]/, '-');
  return decimal === 'comma' ? minus.replace(',', '.') : minus;
};

/** Places of the columns: of a header by its names, else in this order. */
interface Columns {
  readonly name: number;
  readonly at: readonly [number, number, number];
  readonly axle: number | null;
  readonly side: number | null;
  /** `design x` and its like, of a list that this program wrote */
  readonly design: readonly [number, number, number] | null;
}
const IN_ORDER: Columns = { name: 0, at: [1, 2, 3], axle: null, side: null, design: null };

/** The words of a header's field: "X back (in)" has x, back and in. */
const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word !== '');
const headOf = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\s*[[(].*$/, '')
    .trim();
const unitOfHead = (text: string): PointUnit | null => {
  const unit = /[[(](?:[^\])]*[\s,;/])?\s*(mm|cm|m|in|inch|inches|")\s*[\])]/i.exec(text)?.[1]?.toLowerCase();
  if (unit === undefined) return null;
  return unit === 'mm' || unit === 'cm' || unit === 'm' ? unit : 'in';
};

/** Other words for where an axis points. */
const DIRECTIONS: Readonly<Record<string, AxisWord>> = {
  ...(Object.fromEntries(AXIS_WORDS.map((word) => [word, word])) as Record<AxisWord, AxisWord>),
  ...{
    forwards: 'forward',
    fwd: 'forward',
    ahead: 'forward',
    backward: 'back',
    backwards: 'back',
    rearward: 'back',
    aft: 'back',
  },
  ...{ upward: 'up', upwards: 'up', downward: 'down', downwards: 'down' },
};
/** Where a coordinate's field of the header says that it points; null where it says nothing, or two things. */
const directionOf = (text: string): AxisWord | null => {
  const said = wordsOf(text).flatMap((word) => (Object.hasOwn(DIRECTIONS, word) ? [DIRECTIONS[word]] : []));
  return said.length === 1 ? said[0] : null;
};
/** Whether a field of the header is of this coordinate: "x", "X [mm]", "X back (in)". */
const isAxis = (text: string, axis: 'x' | 'y' | 'z'): boolean =>
  headOf(text) === axis || (wordsOf(text)[0] === axis && directionOf(text) !== null);

function columnsOf(header: readonly Field[]): Columns {
  const heads = header.map(({ text }) => headOf(text));
  const find = (...names: string[]): number => heads.findIndex((head) => names.includes(head));
  const axis = (of: 'x' | 'y' | 'z'): number => header.findIndex(({ text }) => isAxis(text, of));
  const [name, x, y, z] = [find('name', 'point'), axis('x'), axis('y'), axis('z')];
  if (name < 0 || x < 0 || y < 0 || z < 0) return IN_ORDER;
  const [axle, side] = [find('axle'), find('side')];
  const design = [find('design x'), find('design y'), find('design z')] as const;
  return {
    name,
    at: [x, y, z],
    axle: axle < 0 ? null : axle,
    side: side < 0 ? null : side,
    design: design.includes(-1) ? null : design,
  };
}

const isHeader = (row: readonly Field[]): boolean =>
  row.length >= 4 && row.slice(1, 4).every(({ text }) => !isNumber(text, 'point') && !isNumber(text, 'comma') && text !== '');

/** Commas in numbers are decimals where fields are not separated by commas and no number has a point. */
function decimalOf(rows: readonly (readonly Field[])[], separator: Separator): 'point' | 'comma' {
  if (separator === 'comma') return 'point';
  const texts = rows.flatMap((row) => row.slice(1)).map(({ text }) => text);
  const points = texts.some((text) => text.includes('.') && isNumber(text, 'point'));
  return !points && texts.some((text) => text.includes(',') && isNumber(text, 'comma')) ? 'comma' : 'point';
}

const faultAt = (
  { line, column }: { line: number; column: number },
  found: string,
  expected: string,
  hint: string | null = null,
) => ({
  code: 'bad-points',
  path: null,
  line,
  column,
  found,
  expected,
  hint,
});

const FORM = 'name, x, y, z';

/**
 * Reads a list of points: `name, x, y, z`, a file or a block copied from a spreadsheet.
 *
 * Fields are separated by commas, semicolons or tabs; with the last two a comma may be the decimal mark. A first row without
 * numbers is a header; one that names name, x, y and z may have them in any order and other columns beside them, `axle` and
 * `side` being read too, and may say where each coordinate points and its unit: `X back (in)`. A row that cannot be read is a fault with its line and column, and never read in part.
 *
 * @param text - decoded; a byte-order mark is read and dropped
 */
export function readPoints(text: string): PointList {
  const table = readTable(text);
  const { separator } = table;
  const [first] = table.rows;
  const header = first !== undefined && isHeader(first);
  const columns = header ? columnsOf(first) : IN_ORDER;
  const body = header ? table.rows.slice(1) : table.rows;
  const decimal = decimalOf(body, separator);
  const faults: Fault[] = [];
  const rows: PointRow[] = [];
  if (table.unclosed) faults.push(faultAt(table.unclosed, 'a quote that is not closed', 'a closing "'));
  for (const fields of body.slice(0, MOST_POINTS)) {
    const row = readRow(fields, columns, { decimal, separator, header }, faults);
    if (row) rows.push(row);
  }
  if (body.length > MOST_POINTS)
    faults.push(faultAt(body[MOST_POINTS][0], `${body.length} rows`, `at most ${MOST_POINTS} points`));
  if (body.length === 0) faults.push(faultAt({ line: 1, column: 1 }, 'no points', `rows of ${FORM}`));
  const headerUnit = header ? readHeaderUnit(first, columns, faults) : null;
  const headerAxes = header ? readHeaderAxes(first, columns) : null;
  faults.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
  return { rows, separator, decimal, header, headerUnit, headerAxes, faults };
}

/** Where a header says that its coordinates point; null where they would not be at right angles to one another. */
function readHeaderAxes(header: readonly Field[], { at }: Columns): FrameAxes | null {
  const [x, y, z] = at.map((column) => directionOf(header[column].text));
  if (x === null || y === null || z === null) return null;
  const axes: FrameAxes = [x, y, z];
  return frameOf(axes).ok ? axes : null;
}

/** The unit of a header's coordinates; columns that name different ones are a fault at the first that differs. */
function readHeaderUnit(header: readonly Field[], { at }: Columns, faults: Fault[]): PointUnit | null {
  let known: PointUnit | null = null;
  for (const column of at) {
    const field = header[column];
    const unit = unitOfHead(field.text);
    known ??= unit;
    if (unit === null || unit === known) continue;
    const hint = 'a list has one unit: convert the columns to it';
    faults.push(faultAt(field, describe(field.text), `${known}, as the other coordinates`, hint));
    return known;
  }
  return known;
}

interface Form {
  readonly decimal: 'point' | 'comma';
  readonly separator: Separator;
  readonly header: boolean;
}

function readRow(fields: readonly Field[], columns: Columns, form: Form, faults: Fault[]): PointRow | null {
  const before = faults.length;
  const width = form.header ? Infinity : 4;
  const given = fields.reduce((last, { text }, i) => (text === '' ? last : i + 1), 0);
  const needed = Math.max(columns.name, ...columns.at) + 1;
  if (given < needed || given > width) {
    const hint =
      form.separator === 'comma' && given > 4 && given <= 7
        ? 'with decimal commas, separate the fields by semicolons or tabs'
        : null;
    faults.push(faultAt(fields[0], `${given} field${given === 1 ? '' : 's'}`, FORM, hint));
    return null;
  }
  const name = fields[columns.name];
  if (name.text === '') faults.push(faultAt(name, 'no name', 'the name of a point'));
  const read = columns.at.map((column, i) => {
    const field = fields[column];
    if (isNumber(field.text, form.decimal)) {
      const value = Number(plain(field.text, form.decimal));
      if (Number.isFinite(value)) return value === 0 ? 0 : value;
    }
    const mixed = form.decimal === 'point' && form.separator !== 'comma' && isNumber(field.text, 'comma');
    const hint = mixed ? 'other numbers of this list have a decimal point' : null;
    faults.push(faultAt(field, field.text === '' ? 'nothing' : describe(field.text), `a number for ${'xyz'[i]}`, hint));
    return 0;
  });
  const axle = wordOf(fields, columns.axle, AXLE_WORDS, faults);
  const side = wordOf(fields, columns.side, SIDE_WORDS, faults);
  if (faults.length > before) return null;
  const at: Vector = [read[0], read[1], read[2]];
  const posed = columns.design?.some((column, i) => {
    const text = fields[column]?.text ?? '';
    return isNumber(text, form.decimal) && Number(plain(text, form.decimal)) !== at[i];
  });
  return {
    line: name.line,
    name: shorten(name.text),
    read: at,
    ...(axle ? { axle } : {}),
    ...(side ? { side } : {}),
    ...(posed ? { posed } : {}),
  };
}

/** What a column may say for each, the word itself first: the letter too, which is how lists are written on the floor. */
const AXLE_WORDS: Readonly<Record<AxleName, readonly string[]>> = { front: ['front', 'f'], rear: ['rear', 'r'] };
const SIDE_WORDS: Readonly<Record<SideName, readonly string[]>> = { left: ['left', 'l', 'lh'], right: ['right', 'r', 'rh'] };

function wordOf<Word extends string>(
  fields: readonly Field[],
  column: number | null,
  words: Readonly<Record<Word, readonly string[]>>,
  faults: Fault[],
): Word | null {
  const field = column === null ? undefined : fields[column];
  if (field === undefined || field.text === '') return null;
  const known = Object.keys(words) as Word[];
  const word = known.find((one) => words[one].includes(field.text.toLowerCase()));
  if (word === undefined) faults.push(faultAt(field, describe(field.text), known.map((one) => JSON.stringify(one)).join(' or ')));
  return word ?? null;
}
