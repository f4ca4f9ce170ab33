import {
  bringFailureWords,
  bringPoints,
  CAR_AXES,
  designPoints,
  frameOf,
  readPoints,
  type AxleName,
  type Brought,
  type CarDocument,
  type FrameAxes,
  type PointList,
  type PointUnit,
  type SideName,
} from '../../../geometry/index';

/** What the person has said of a list so far. */
export interface ListQuestion {
  readonly text: string;
  /** the file that it came from; null for what was pasted */
  readonly file: string | null;
  /** null: as its header says it, else asked for */
  readonly unit: PointUnit | null;
  readonly axes: FrameAxes;
  readonly side: SideName | 'both';
  readonly sides: 'each' | 'mirror' | 'average';
  /** named points of the car that the list is moved onto; empty: it is in the car's frame */
  readonly datum: readonly string[];
  readonly names: Readonly<Record<string, string | null>>;
}

export const EMPTY_QUESTION: ListQuestion = {
  text: '',
  file: null,
  unit: null,
  axes: CAR_AXES,
  side: 'left',
  sides: 'each',
  datum: [],
  names: {},
};

/** What stands in the way of taking the list: in one sentence, at a row where it is one. */
export interface Obstacle {
  readonly text: string;
  /** the row's name, where the person can say what it is */
  readonly name: string | null;
  readonly suggestion: string | null;
}

export interface ListAnswer {
  readonly list: PointList;
  readonly unit: PointUnit | null;
  readonly handed: 'right' | 'left' | null;
  readonly brought: Brought | null;
  readonly obstacles: readonly Obstacle[];
}

const plain = (text: string): Obstacle => ({ text, name: null, suggestion: null });

/** The list as it is understood now, every point of it, and what stands in its way. */
export const answerList = (car: CarDocument, axle: AxleName, question: ListQuestion): ListAnswer => {
  const list = readPoints(question.text);
  const unit = question.unit ?? list.headerUnit;
  const frame = frameOf(question.axes);
  const handed = frame.ok ? frame.value.handed : null;
  const base = { list, unit, handed, brought: null };
  if (question.text.trim() === '') return { ...base, obstacles: [] };
  const faults = list.faults.map(({ line, column, found, expected, hint }) =>
    plain(`Line ${line}, column ${column}: found ${found}, expected ${expected}${hint === null ? '.' : `; ${hint}.`}`),
  );
  if (faults.length > 0) return { ...base, obstacles: faults };
  if (unit === null) return { ...base, obstacles: [plain('In what unit is the list? Choose it beside “Unit”.')] };
  const own = designPoints(car, axle, question.side === 'right' ? 'right' : 'left');
  const datum = question.datum.flatMap((name) => (own[name] ? [{ name, at: own[name] }] : []));
  const { axes, side, sides, names } = question;
  const brought = bringPoints(car, list.rows, {
    axle,
    unit,
    axes,
    side,
    sides: side === 'both' ? (sides === 'average' ? sides : 'each') : sides === 'average' ? 'each' : sides,
    names,
    datum: question.datum.length === 0 ? null : datum,
  });
  if (!brought.ok) return { ...base, obstacles: [plain(bringFailureWords(brought.failure))] };
  const unknown = brought.value.rows
    .filter(({ state }) => state === 'unknown')
    .map(({ line, name, suggestion }) => ({ text: `Line ${line}, “${name}”: no point has this name.`, name, suggestion }));
  return { ...base, brought: brought.value, obstacles: unknown };
};
