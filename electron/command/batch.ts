import { suggest } from '../../geometry/index';
import type { Tell } from './answer';
import { CarCache } from './carCache';
import { LARGEST_FILE, type LoadedCar } from './carSource';
import { CommandError, errorOfThrown, usageError } from './commandError';
import { findVerb, VERB_NAMES, type VerbName, type VerbSpec } from './optionSpecs';
import { readJson, unknownOption, type Options } from './options';
import { rawValuesOf } from './rawValues';
import { readLines, type Line } from './readLines';
import { studyWith, StudyCrew } from './studyCrew';
import { loadVerb } from './verbModules';
import { signed } from './version';

const KEYS: readonly string[] = ['id', 'car', 'ask', 'options'];

/** What a batch needs of the world. */
export interface BatchWorld {
  readonly input: AsyncIterable<Uint8Array>;
  readonly write: (line: string) => Promise<void>;
  readonly progress: (lines: number) => Promise<void>;
}

/** What the lines share. */
interface Kept {
  readonly cars: CarCache;
  readonly crew: StudyCrew;
}

/**
 * `batch`: answers JSON lines with JSON lines, in order, one at a time. What is wrong with a line is that line's answer.
 *
 * @param defaults - setup and settings for the lines that do not give their own
 */
export async function runBatch(defaults: Options, world: BatchWorld): Promise<void> {
  const cars = new CarCache();
  const crew = new StudyCrew();
  let lines = 0;
  try {
    for await (const line of readLines(world.input, LARGEST_FILE)) {
      if ('text' in line && line.text.trim() === '') continue;
      await world.write(`${await answerLine(line, defaults, { cars, crew })}\n`);
      await world.progress(++lines);
    }
  } finally {
    crew.end();
  }
}

/** The answer to one line, as one line. */
async function answerLine(line: Line, defaults: Options, kept: Kept): Promise<string> {
  // the id goes back as it came, to the letter
  let id = 'null';
  try {
    const { values, question } = readQuestion(line);
    id = values.get('id') ?? 'null';
    return `{"id":${id},"answer":${JSON.stringify(await answerQuestion(question, values, defaults, kept))}}`;
  } catch (thrown) {
    return `{"id":${id},"error":${JSON.stringify(errorOfThrown(thrown))}}`;
  }
}

type Question = Readonly<Record<string, unknown>>;

function readQuestion(line: Line): { readonly values: ReadonlyMap<string, string>; readonly question: Question } {
  if ('fault' in line) throw usageError(line.fault);
  let question: unknown;
  try {
    question = JSON.parse(line.text);
  } catch (thrown) {
    throw usageError(`the line is not JSON: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  }
  if (typeof question !== 'object' || question === null || Array.isArray(question))
    throw usageError('the line is not a JSON object');
  const raw = rawValuesOf(line.text);
  if ('twice' in raw) throw usageError(`the line has "${raw.twice}" twice`);
  return { values: raw.values, question: question as Question };
}

async function answerQuestion(
  question: Question,
  values: ReadonlyMap<string, string>,
  defaults: Options,
  { cars, crew }: Kept,
): Promise<object> {
  for (const key of values.keys()) {
    if (KEYS.includes(key)) continue;
    const hint = suggest(key, KEYS);
    throw usageError(`a line has no key "${key}"${hint ? `; ${hint}` : ` (${KEYS.join(', ')})`}`);
  }
  const verb = verbOf(question['ask']);
  const options = { ...defaults, ...readOptions(verb, question['options']) };
  const car = await carOf(verb, question['car'], values.get('car'), cars);
  const { answer } = await loadVerb(verb.name);
  const tell: Tell = async () => {};
  const { document } = await answer({ car, options, reads: [], study: studyWith(crew, car, options, tell), progress: tell });
  return signed(document);
}

type AnsweringVerb = VerbSpec & { readonly name: Exclude<VerbName, 'batch'> };

function verbOf(ask: unknown): AnsweringVerb {
  if (typeof ask !== 'string') throw usageError(`"ask" has to be the name of a verb: ${VERB_NAMES.join(', ')}`);
  const verb = findVerb(ask);
  if (!verb) {
    const hint = suggest(ask, VERB_NAMES);
    throw usageError(`there is no verb "${ask}"${hint ? `; ${hint}` : ''}`);
  }
  if (verb.name === 'batch') throw usageError('batch cannot be asked within a batch');
  if (verb.writes) throw usageError(`${verb.name} writes a file, which a batch does not`);
  return verb as AnsweringVerb;
}

function readOptions(verb: VerbSpec, given: unknown): Options {
  if (given === undefined) return {};
  if (typeof given !== 'object' || given === null || Array.isArray(given)) throw usageError('"options" has to be an object');
  const values: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(given)) {
    const option = verb.options.find((candidate) => candidate.name === key && !candidate.printing);
    if (!option) throw usageError(unknownOption(key, verb));
    if (option.writes) throw usageError(`"${key}" writes a file, which a batch does not`);
    if (['list', 'in'].includes(option.name) && value === '-')
      throw usageError(`standard input is the batch itself: give "${key}" a path`);
    const read = readJson(option, value);
    if (read !== undefined) values[key] = read;
  }
  return values as Options;
}

async function carOf(verb: VerbSpec, car: unknown, text: string | undefined, cars: CarCache): Promise<LoadedCar | null> {
  if (!verb.takesCar && !verb.carByOption) {
    if (car !== undefined) throw usageError(`${verb.name} takes no car`);
    return null;
  }
  if (typeof car === 'string') {
    if (car === '-') throw usageError('standard input is the batch itself: give "car" a path or a document');
    return cars.file(car);
  }
  if (text === undefined) throw usageError('"car" is missing: a car document or the path of one');
  if (typeof car !== 'object' || car === null || Array.isArray(car))
    throw new CommandError({ kind: 'usage', message: '"car" has to be a car document or the path of one' });
  return cars.text(text);
}
