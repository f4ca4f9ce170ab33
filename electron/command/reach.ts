import {
  findReading,
  parseCar,
  reachNow,
  turnedByReset,
  withToeReset,
  type CarDocument,
  type Fault,
  type Help,
  type KeptQuestionDocument,
  type QuestionDocument,
  type ReachAnswer,
  type ReachAnswerRow,
  type SetupDocument,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { CAUTIONS } from './cautions';
import { countOf, LARGEST_FILE, readFileCapped, readStandardInput, type LoadedCar } from './carSource';
import { CommandError, usageError } from './commandError';
import { changesInWords } from './influence';
import { meshesForGaps } from './meshesForGaps';
import type { Options } from './options';
import { changedSetup, titleOf } from './question';
import { UNITS } from './readings';
import { formatFixed, heading, wrap, type TextStyle } from './textTable';
import { gapInWords, settingsInWords, shortInWords } from './ways';

/** `reach`: the settings that come nearest to everything wanted at once. */
export async function answer({ car, options, study }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const kept = await questionOf(car, options.question);
  const question = options.locked === true ? { ...kept, locked: true } : kept;
  const { name, setup } = changedSetup(car, options.setup ?? question.setup, options.set);
  refuseTurnedByReset(car.document, question, setup);
  const meshes = await meshesForGaps(car);
  const { helped, ...answered } = await study({ study: 'reach', document: car.document, setup, question, meshes });
  const title = titleOf(car, name, options);
  const isThere = reachNow(car.mechanism, question, setup)?.met === true;
  return {
    document: { car: car.document.name, setup: name, units: UNITS, ...answered },
    words: (style) =>
      reachInWords(car.document, title, question, { ...answered, ...(helped === undefined ? {} : { helped }) }, isThere, style),
  };
}

/** What the toe reset turns cannot be moved beside it: every setting would have the same answer. */
function refuseTurnedByReset(document: CarDocument, { may, setToe }: QuestionDocument, setup: SetupDocument): void {
  const faults = may.flatMap((one, index): Fault[] => {
    if (!('adjuster' in one)) return [];
    const reset = withToeReset(document, setup, [one.axle], setToe === false ? undefined : setToe);
    const reason = turnedByReset(document, reset, one.axle, one.adjuster);
    if (reason === null) return [];
    const found = JSON.stringify(one.adjuster);
    return [
      { code: 'question-form', path: `may[${index}].adjuster`, line: null, column: null, found, expected: reason, hint: null },
    ];
  });
  if (faults.length > 0)
    throw new CommandError({ kind: 'usage', message: `the question is refused: ${countOf(faults.length, 'fault')}`, faults });
}

/** The question: a document, a file, or the name of one that the car file keeps. It is judged as if it stood in the car file. */
async function questionOf(car: LoadedCar, given: Options['question']): Promise<QuestionDocument> {
  if (given === undefined) throw usageError('reach needs a question');
  if (typeof given === 'object') return judged(car, JSON.stringify(given.document), null);
  const { questions = {} } = car.document;
  const kept = Object.fromEntries(Object.entries(questions).filter(([, one]) => isOfReach(one)));
  if (Object.hasOwn(kept, given)) return judged(car, JSON.stringify(kept[given]), null);
  const bytes = given === '-' ? await readStandardInput() : await readFileCapped(given).catch(orKept(Object.keys(kept)));
  const place = given === '-' ? 'standard input' : given;
  if (bytes.length > LARGEST_FILE) throw new CommandError({ kind: 'file', message: `${place} is larger than 16 MiB` });
  return judged(car, new TextDecoder().decode(bytes), place);
}

/** A name that is neither a file nor a question of the car: those that the car keeps are said. */
const orKept =
  (names: readonly string[]) =>
  (thrown: unknown): never => {
    if (!(thrown instanceof CommandError) || names.length === 0) throw thrown;
    const { document } = thrown;
    throw new CommandError({
      ...document,
      message: `${document.message}; the car keeps ${names.map((name) => `"${name}"`).join(', ')}`,
    });
  };

const isOfReach = (question: KeptQuestionDocument): question is QuestionDocument => (question.ask ?? 'reach') === 'reach';

const notOfReach = ({ ask = 'reach' }: KeptQuestionDocument): Fault => ({
  code: 'question-form',
  path: 'ask',
  line: null,
  column: null,
  found: `"${ask}"`,
  expected: 'a question of reach: `ask` "reach", or left out',
  hint: null,
});

const HELD = 'question';

/**
 * Reads a question as part of the car file: the same rules, and faults with their places in the question's own text.
 * @param place - where the text is from; null: faults have no line
 */
function judged(car: LoadedCar, text: string, place: string | null): QuestionDocument {
  const { questions: _kept, ...rest } = car.document;
  const head = JSON.stringify(rest).slice(0, -1);
  const read = parseCar(`${head},"questions":{"${HELD}":\n${text}\n}}`);
  const question = read.ok ? read.value.document.questions?.[HELD] : undefined;
  if (question !== undefined && isOneValue(text) && isOfReach(question)) return question;
  const faults = read.ok
    ? [question === undefined || isOfReach(question) ? NOT_ONE_VALUE : notOfReach(question)]
    : read.failure.faults.map((fault) => inQuestion(fault, place !== null));
  throw new CommandError({
    kind: place === null ? 'usage' : 'file',
    message: `the question${place === null ? '' : ` ${place}`} is refused: ${countOf(faults.length, 'fault')}`,
    faults,
  });
}

/** What was laid into the car file could have been more than one value of it. */
function isOneValue(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

const NOT_ONE_VALUE: Fault = {
  code: 'not-json',
  path: null,
  line: null,
  column: null,
  found: 'more than one value',
  expected: 'one question: { "wanted": [ … ], "may": [ … ] }',
  hint: null,
};

/** A fault with its place counted in the question: the first line of the text around it is not the reader's. */
function inQuestion(fault: Fault, hasLines: boolean): Fault {
  const path = fault.path?.replace(new RegExp(`^questions\\.${HELD}\\.?`), '') ?? null;
  return {
    ...fault,
    path: path === '' ? null : path,
    line: hasLines && fault.line !== null ? fault.line - 1 : null,
    column: hasLines ? fault.column : null,
  } as Fault;
}

function reachInWords(
  document: CarDocument,
  title: string,
  question: QuestionDocument,
  answered: ReachAnswer,
  isThere: boolean,
  style: TextStyle,
): string {
  const { reachable, answers, helps, helped, tried, all, starts, why = {} } = answered;
  const lines = wrap(title, '  ').map((line) => heading(line, style));
  const count = tried.toLocaleString('en');
  lines.push(
    ...wrap(
      all
        ? `  All ${count} combinations tried.`
        : `  ${count} combinations tried in ${starts?.of ?? 0} searches; ${starts?.agreed ?? 0} of them ended on the best answer. A better one cannot be ruled out.`,
      '  ',
    ),
  );
  if (isThere) lines.push('', '  Nothing to do: the setup has all of it already.');
  if (answers.length === 0)
    lines.push(
      '',
      '  No combination of the steps can be there, inside the ranges and the limits of the file.',
      ...Object.entries(why).flatMap(([reading, reason]) => wrap(`  ${reading}: ${reason}`, '    ')),
    );
  else if (!reachable) lines.push('', '  Not reachable: the nearest are');
  answers.forEach((row, index) => lines.push('', ...answerInWords(document, question, row, index + 1, style)));
  if (helps !== null)
    lines.push('', ...wrap(`  ${helpInWords(helps)}`, '  '), ...wantedInWords(question, helped ?? [], '  then '));
  return [...lines, '', ...wrap(CAUTIONS)].join('\n');
}

function answerInWords(
  document: CarDocument,
  question: QuestionDocument,
  { settings, points, score, met, wanted, changes, leastGap, leastSpare }: ReachAnswerRow,
  number: number,
  style: TextStyle,
): string[] {
  const parts = (['front', 'rear'] as const).flatMap((axle) => {
    const words = settingsInWords(settings, axle);
    const moved = Object.entries(points?.[axle]?.points ?? {}).map(
      ([name, at]) => `${name} at ${at.map((value) => formatFixed(value, 2)).join(', ')}`,
    );
    return [...(words === '' ? [] : [words]), ...moved].map((text) => `${axle} ${text}`);
  });
  const withAxle = new Set([...question.may, ...question.wanted].map(({ axle }) => axle)).size > 1;
  // all that is wanted is met, and it may not fit for all that
  const short = met ? shortInWords({ leastSpare }, withAxle) : null;
  const verdict = `${met ? ', met' : ''} (score ${formatFixed(score, 4)})${short === null ? '' : `; ${short}`}`;
  const lines = wrap(`  ${number}. ${parts.join('; ')}${verdict}`, '     ').map((line) => heading(line, style));
  lines.push(...wantedInWords(question, wanted, '     '));
  lines.push(...gapInWords({ leastGap, leastSpare }, '     ', withAxle));
  return [...lines, ...wrap(`     also ${changesInWords(document, changes)}`, '       ')];
}

/** What every wanted reading is, and by how much it is off. @param lead - before each */
function wantedInWords(question: QuestionDocument, wanted: ReachAnswerRow['wanted'], lead: string): string[] {
  return question.wanted.flatMap((one, index) => {
    const entry = findReading(one.reading);
    const result = wanted[index];
    if (!entry || !result) return [];
    const side = one.side === 'left' || one.side === 'right' ? ` ${one.side}` : '';
    const change = one.change === true ? 'change of ' : '';
    const miss = result.missBy === 0 ? '' : `, off by ${formatFixed(result.missBy, entry.decimals)}`;
    const whose = entry.of === 'car' ? 'whole car' : `${one.axle ?? ''}${side}`;
    return wrap(
      `${lead}${whose} ${change}${entry.name.toLowerCase()}: ${formatFixed(result.worst, entry.decimals)}${miss}`,
      ' '.repeat(lead.length + 2),
    );
  });
}

function helpInWords({ kind, axle, side, name, end, by, gain }: Help): string {
  const where = [axle, side === 'both' ? null : side].filter((word) => word !== null).join(' ');
  const what = kind === 'range' ? 'one step more of' : 'letting out the limit on';
  const points = Number.isFinite(gain) ? `; the score falls by ${formatFixed(gain, 4)}` : '';
  return `What would help most: ${what} ${where} ${name} at its ${end === 'min' ? 'lower' : 'upper'} end, by ${by}${points}.`;
}
