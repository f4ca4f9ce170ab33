import {
  bringFailureWords,
  bringPoints,
  CAR_AXES,
  designPoints,
  frameOf,
  readPoints,
  pointNamesOf,
  sideOfName,
  type AxleDocument,
  type AxleName,
  type Brought,
  type BringFailure,
  type BringOptions,
  type BroughtRow,
  type CarDocument,
  type FrameAxes,
  type PointList,
  type PointUnit,
  type SideName,
  type Vector,
} from '../../../geometry/index';
import { parseNumber } from '../../units/parseNumber';
import { unitsOf } from '../../units/typedUnits';
import { likelyPoints } from './likelyPoints';

type Sides = 'each' | 'mirror' | 'average';

/** What the person has said of a list so far. */
export interface ListQuestion {
  readonly text: string;
  /** the file that it came from; null for what was pasted */
  readonly file: string | null;
  /** null: as its header says it, else as a new car was said to be measured, else asked for */
  readonly unit: PointUnit | null;
  /** null: as its header says it, else the car's own */
  readonly axes: FrameAxes | null;
  /** null: as its rows say it, by a column or by their names */
  readonly side: SideName | 'both' | null;
  /** null: each as measured; onto a car of which nothing was measured yet, a right side mirrors */
  readonly sides: Sides | null;
  /** named points of the car that the list is moved onto; empty: it is in the car's frame */
  readonly datum: readonly string[];
  /** the list's own name of a point that it is moved by, where the person said which row it is */
  readonly datumRows: Readonly<Record<string, string>>;
  /** added to X, Y and Z of every row, in the list's own unit and axes, as it was typed */
  readonly shift: readonly [string, string, string];
  readonly names: Readonly<Record<string, string | null>>;
  /** rows whose point was filled in from the words of their names, and not yet said by hand */
  readonly guessed: readonly string[];
}

export const EMPTY_QUESTION: ListQuestion = {
  text: '',
  file: null,
  unit: null,
  axes: null,
  side: null,
  sides: null,
  datum: [],
  datumRows: {},
  shift: ['', '', ''],
  names: {},
  guessed: [],
};

/** What stands in the way of taking the list: in one sentence, at a row where it is one. */
export interface Obstacle {
  readonly text: string;
  /** the row's name, where the person can say what it is */
  readonly name: string | null;
  readonly suggestion: string | null;
  /** names of the rows that can be left out at once, where it is of several */
  readonly rows?: readonly string[];
  /** row → the point that its words fit best, where there are such */
  readonly likely?: Readonly<Record<string, string>>;
}

export interface ListAnswer {
  readonly list: PointList;
  readonly unit: PointUnit | null;
  readonly axes: FrameAxes;
  readonly side: SideName | 'both';
  readonly sides: Sides;
  readonly handed: 'right' | 'left' | null;
  /** every row as it is understood, also where something stands in the way; empty where nothing can be said of them */
  readonly rows: readonly BroughtRow[];
  readonly brought: Brought | null;
  readonly obstacles: readonly Obstacle[];
}

const plain = (text: string): Obstacle => ({ text, name: null, suggestion: null });

/** The side that the rows say they are of: some left and some right are both; without a word it is the left, as in the file. */
const sideOf = ({ rows }: PointList): SideName | 'both' => {
  const sides = rows.map(({ name, side }) => side ?? sideOfName(name));
  if (sides.includes('left') && sides.includes('right')) return 'both';
  return rows.length > 0 && sides.every((side) => side === 'right') ? 'right' : 'left';
};

/** What was typed to be added, in the list's unit; or the axis whose text is no length. */
const shiftOf = (typed: ListQuestion['shift'], unit: PointUnit): Vector | 'X' | 'Y' | 'Z' => {
  const lengthOf = (text: string): number => {
    if (text.trim() === '') return 0;
    const read = parseNumber(text, unitsOf(unit));
    return read.kind === 'number' ? read.value : NaN;
  };
  const [x, y, z] = [lengthOf(typed[0]), lengthOf(typed[1]), lengthOf(typed[2])];
  if (Number.isNaN(x)) return 'X';
  if (Number.isNaN(y)) return 'Y';
  return Number.isNaN(z) ? 'Z' : [x, y, z];
};

/** What stands in the way, in words of this page: a row can be said beside a reference point, and left out at its place. */
const obstacleOf = (failure: BringFailure): Obstacle => {
  if (failure.kind === 'no-reference') {
    const several = failure.names.length > 1;
    return plain(
      `Which ${several ? 'rows of the list are' : 'row of the list is'} ${failure.names.join(', ')}? Choose ${several ? 'them beside the ticks' : 'it beside the tick'}, or say it in the table.`,
    );
  }
  return plain(bringFailureWords(failure));
};

/** The rows where not all of the question can be answered: those of a failure, else without the datum that does not fit. */
const rowsDespite = (car: CarDocument, list: PointList, options: BringOptions, failure: BringFailure): readonly BroughtRow[] => {
  if (failure.kind === 'twice') return failure.rows;
  if (options.datum === null) return [];
  const without = { ...options, datum: null };
  const brought = bringPoints(car, list.rows, without);
  return brought.ok ? brought.value.rows : rowsDespite(car, list, without, brought.failure);
};

/**
 * The list as it is understood now, every point of it, and what stands in its way.
 * @param measuredIn - what was said of the car when it was begun; null: the list's unit is asked for
 * @param isUnmeasured - every point of the axle still stands where a new car begins with it
 */
export const answerList = (
  car: CarDocument,
  axle: AxleName,
  question: ListQuestion,
  measuredIn: PointUnit | null = null,
  isUnmeasured = false,
): ListAnswer => {
  const list = readPoints(question.text);
  const unit = question.unit ?? list.headerUnit ?? measuredIn;
  const axes = question.axes ?? list.headerAxes ?? CAR_AXES;
  const side = question.side ?? sideOf(list);
  const said = question.sides ?? (side === 'right' && isUnmeasured ? 'mirror' : 'each');
  const sides = side === 'both' ? (said === 'average' ? said : 'each') : said === 'average' ? 'each' : said;
  const frame = frameOf(axes);
  const handed = frame.ok ? frame.value.handed : null;
  const base = { list, unit, axes, side, sides, handed, rows: [], brought: null };
  if (question.text.trim() === '') return { ...base, obstacles: [] };
  const faults = list.faults.map(({ line, column, found, expected, hint }) =>
    plain(`Line ${line}, column ${column}: found ${found}, expected ${expected}${hint === null ? '.' : `; ${hint}.`}`),
  );
  if (faults.length > 0) return { ...base, obstacles: faults };
  if (unit === null) return { ...base, obstacles: [plain('In what unit is the list? Choose it beside “Unit”.')] };
  const shift = shiftOf(question.shift, unit);
  const own = designPoints(car, axle, side === 'right' ? 'right' : 'left');
  const datum = question.datum.flatMap((name) => {
    const row = question.datumRows[name];
    return own[name] ? [{ name, at: own[name], ...(row === undefined ? {} : { row }) }] : [];
  });
  const { names } = question;
  const options: BringOptions = {
    axle,
    unit,
    axes,
    shift: typeof shift === 'string' ? [0, 0, 0] : shift,
    side,
    sides,
    names,
    datum: datum.length === 0 ? null : datum,
  };
  const brought = bringPoints(car, list.rows, options);
  if (!brought.ok) {
    const rows = rowsDespite(car, list, options, brought.failure);
    return { ...base, rows, obstacles: [obstacleOf(brought.failure)] };
  }
  const { rows } = brought.value;
  if (typeof shift === 'string') return { ...base, rows, obstacles: [plain(`What is added to ${shift} is no length.`)] };
  return { ...base, rows, brought: brought.value, obstacles: unknownOf(rows, car[axle]) };
};

/** Rows that are no point yet: those that may be meant by another name one by one, the others together. */
const unknownOf = (rows: readonly BroughtRow[], axle: AxleDocument | undefined): readonly Obstacle[] => {
  const unknown = rows.filter(({ state }) => state === 'unknown');
  const [alike, others] = [unknown.filter(({ suggestion }) => suggestion), unknown.filter(({ suggestion }) => !suggestion)];
  const oneByOne = (row: BroughtRow): Obstacle => ({
    text: `Line ${row.line}, “${row.name}”: no point has this name.`,
    name: row.name,
    suggestion: row.suggestion,
  });
  const taken = new Set(rows.map(({ point }) => point));
  const free = axle ? pointNamesOf(axle).filter((point) => !taken.has(point)) : [];
  const likely = axle
    ? likelyPoints(
        axle,
        others.map(({ name }) => name),
        free,
      )
    : {};
  if (others.length < 2 && Object.keys(likely).length === 0) return [...alike, ...others].map(oneByOne);
  const text = `${others.length === 1 ? '1 row has a name of its own' : `${others.length} rows have names of their own`}. Say under “Point” which point each is; what is said of the left is taken for the right.`;
  const together = { ...plain(text), rows: others.map(({ name }) => name), likely };
  // one press that names many comes before those that are asked one by one
  return Object.keys(likely).length > 0 ? [together, ...alike.map(oneByOne)] : [...alike.map(oneByOne), together];
};

/** A name as it is for the other side: "L LCA front bush" and "R LCA front bush"; null where it says no side. */
const otherSideOf = (name: string): string | null => {
  const other: Readonly<Record<string, string>> = { l: 'r', r: 'l', left: 'right', right: 'left' };
  const swapped = name.replace(/(?<![a-z])(left|right|l|r)(?![a-z])/i, (word) => other[word.toLowerCase()] ?? word);
  return swapped.toLowerCase() === name.toLowerCase() ? null : swapped.toLowerCase();
};

/** What is said by hand of a row, and with it of its like on the other side, where nothing was said of that yet. */
export const nameRow = (
  { names }: ListQuestion,
  rows: readonly BroughtRow[],
  row: string,
  point: string | null,
): ListQuestion['names'] => {
  const other = otherSideOf(row);
  const twin = rows.find(({ name, state }) => name.toLowerCase() === other && state === 'unknown' && !Object.hasOwn(names, name));
  return { ...names, [row]: point, ...(twin ? { [twin.name]: point } : {}) };
};
