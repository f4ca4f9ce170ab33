import { suggest, type AxleName, type PaperName, type PointUnit, type TemplatePaper } from '../../geometry/index';
import { usageError } from './commandError';
import { VERBS, type OptionSpec, type VerbSpec } from './optionSpecs';

export type Motion = 'bump' | 'roll' | 'steer';
export interface TravelPair {
  readonly left: number;
  readonly right: number;
}
/** One `--set`: its dotted name and the value as given. */
export interface Setting {
  readonly name: string;
  readonly value: number | string | null;
}

/** The options of a call, read and of their kind. Lengths in mm and angles in degrees. */
export interface Options {
  setup?: string;
  /** of several setups: names with commas between them, or a list */
  setups?: string | readonly string[];
  set?: readonly Setting[];
  against?: string;
  axle?: AxleName;
  travel?: number | TravelPair;
  rack?: number;
  roll?: number;
  motion?: Motion;
  from?: number;
  to?: number;
  steps?: number;
  list?: string;
  csv?: string;
  /** a point whose way is asked for */
  path?: string;
  in?: string;
  car?: string;
  axes?: string;
  units?: PointUnit;
  datum?: string;
  side?: 'left' | 'right' | 'both';
  mirror?: true;
  average?: true;
  map?: readonly Setting[];
  out?: string;
  paper?: PaperName;
  /** the setup that is on the car now */
  onCar?: string;
  /** YYYY-MM-DD */
  date?: string;
  'toe-reset'?: true | number;
  locked?: true;
  ground?: true;
  /** parts whose sweep is asked for: names with commas between them, or a list */
  of?: string | readonly string[];
  grow?: number;
  /** six numbers: a point and a normal */
  plane?: string;
  /** paper of a template */
  sheets?: TemplatePaper;
  bound?: number;
  workers?: number;
  wanted?: string;
  tolerance?: number;
  pairs?: true;
  /** a document as given in a batch; else a path or a name */
  question?: string | { readonly document: object };
  case?: string;
  /** [lateral, longitudinal] in g, + to the left, + forward */
  g?: readonly [number, number];
  x?: string;
  y?: string;
  reading?: string;
  nx?: number;
  ny?: number;
  force?: true;
  json?: true;
  help?: true;
  version?: true;
}

/** More positions than this in one call are refused: split them, or use `batch`. */
export const MOST_STEPS = 100_000;
/** Millimetres and degrees past this are slips of the keyboard, not positions. */
const LARGEST_NUMBER = 1e9;

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/** A number as written on the command line, or null when it is none. */
export function parseNumber(text: string): number | null {
  if (!NUMBER.test(text.trim())) return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : null;
}

export const unknownOption = (given: string, verb: VerbSpec): string => {
  const hint = suggest(
    given,
    verb.options.map((option) => option.name),
  );
  if (hint) return `${verb.name} has no option "${given}"; ${hint}`;
  const others = VERBS.filter(({ options }) => options.some(({ name, idle }) => name === given && !idle)).map(({ name }) => name);
  const where = others.length > 0 ? `it is one of ${others.join(', ')}` : `jounce ${verb.name} --help lists those that it has`;
  return `${verb.name} has no option "${given}"; ${where}`;
};

const plainNumber = (value: number, name: string): number => {
  if (Math.abs(value) > LARGEST_NUMBER) throw usageError(`${name}: ${value} is out of any range`);
  return value === 0 ? 0 : value;
};

/** The value of an option as text on the command line. */
export function readText(option: OptionSpec, text: string): Options[keyof Options] {
  const name = `--${option.name}`;
  const number = (part: string): number => {
    const value = parseNumber(part);
    if (value === null) throw usageError(`${name}: "${part}" is not a number`);
    return plainNumber(value, name);
  };
  switch (option.kind) {
    case 'number':
    case 'number?':
      return number(text);
    case 'count':
      return readCount(number(text), name, option.most);
    case 'travel': {
      const parts = text.split(',');
      if (parts.length > 2) throw usageError(`${name}: "${text}" is neither one number nor left,right`);
      return parts.length === 1 ? number(text) : { left: number(parts[0] ?? ''), right: number(parts[1] ?? '') };
    }
    case 'pair': {
      const parts = text.split(',');
      if (parts.length !== 2) throw usageError(`${name}: "${text}" is not of the form ${option.value}`);
      return [number(parts[0] ?? ''), number(parts[1] ?? '')];
    }
    case 'settings': {
      const at = text.indexOf('=');
      if (at < 1 || at === text.length - 1)
        throw usageError(
          `${name}: "${text}" is not of the form ${option.value}, as in ${option.name === 'map' ? 'tieRod_out=tieRodEnd' : 'front.both.rearBush=90'}`,
        );
      return [{ name: text.slice(0, at).trim(), value: text.slice(at + 1).trim() }];
    }
    case 'text':
    case 'names':
    case 'document':
    case 'axle':
    case 'motion':
    case 'choice':
      return readChoice(option, text);
    case 'flag':
      throw usageError(`${name} takes no value`);
  }
}

/** The keys of a JSON object have no order that means anything: what is of both sides comes first, whatever the order. */
const isOfOneSide = ({ name }: Setting): boolean => /^[^.]+\.(left|right)\./.test(name);

/** The value of an option as a value of JSON, in `batch`; undefined means that it counts as not given. */
export function readJson(option: OptionSpec, value: unknown): Options[keyof Options] {
  const name = `option "${option.name}"`;
  const wrong = (expected: string): never => {
    throw usageError(`${name}: expected ${expected}, found ${JSON.stringify(value)?.slice(0, 60) ?? 'nothing'}`);
  };
  const number = (given: unknown): number =>
    typeof given === 'number' && Number.isFinite(given) ? plainNumber(given, name) : wrong('a number');
  switch (option.kind) {
    case 'number':
      return number(value);
    case 'number?':
      if (typeof value === 'boolean') return value ? true : undefined;
      return typeof value === 'number' ? number(value) : wrong('true, false or a number');
    case 'count':
      return readCount(number(value), name, option.most);
    case 'travel':
      if (!Array.isArray(value)) return typeof value === 'number' ? number(value) : wrong('a number or [left, right]');
      if (value.length !== 2) return wrong('a number or [left, right]');
      return { left: number(value[0]), right: number(value[1]) };
    case 'pair':
      if (!Array.isArray(value) || value.length !== 2) return wrong('two numbers [a, b]');
      return [number(value[0]), number(value[1])];
    case 'settings':
      if (typeof value !== 'object' || value === null || Array.isArray(value)) return wrong('an object of settings');
      return Object.entries(value)
        .map(([key, setting]) => {
          if (typeof setting === 'number' || typeof setting === 'string' || setting === null)
            return { name: key, value: setting };
          throw usageError(`${name}, "${key}": expected a number, a name, "none" or null`);
        })
        .sort((a, b) => Number(isOfOneSide(a)) - Number(isOfOneSide(b)));
    case 'document':
      if (typeof value === 'object' && value !== null && !Array.isArray(value)) return { document: value };
      return typeof value === 'string' ? readChoice(option, value) : wrong('a document or the path of one');
    case 'names':
      if (Array.isArray(value) && value.length > 0 && value.every((one) => typeof one === 'string')) return value as string[];
      return typeof value === 'string' ? readChoice(option, value) : wrong('a name or a list of names');
    case 'text':
    case 'axle':
    case 'motion':
    case 'choice':
      return typeof value === 'string' ? readChoice(option, value) : wrong('text');
    case 'flag':
      if (typeof value !== 'boolean') return wrong('true or false');
      return value ? true : undefined;
  }
}

function readCount(value: number, name: string, most = MOST_STEPS): number {
  if (!Number.isInteger(value) || value < 1 || value > most)
    throw usageError(`${name}: ${value} is not a whole number from 1 to ${most}`);
  return value;
}

function readChoice(option: OptionSpec, text: string): string {
  if (option.kind === 'text' || option.kind === 'names' || option.kind === 'document') {
    if (text === '') throw usageError(`"${option.name}" is empty`);
    return text;
  }
  const choices = option.value.split('|');
  if (choices.includes(text)) return text;
  const hint = suggest(text, choices);
  throw usageError(`"${option.name}": "${text}" is not one of ${choices.join(', ')}${hint ? `; ${hint}` : ''}`);
}
