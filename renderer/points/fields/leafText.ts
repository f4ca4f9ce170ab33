import type { LeafScale } from './fieldScale';
import type { LeafInput } from './fieldTree';
import { formatShort } from '../../units/format';
import { parseNumber } from '../../units/parseNumber';
import { unitsOf } from '../../units/typedUnits';

/** What was typed into a field: a value of the file, nothing, or why it is none. */
export type LeafValue = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly fault: string };

/** Digits that a number of the file is shown and kept with: a millionth of its unit. */
const DECIMALS = 6;

const shown = (value: number, scale: LeafScale): string =>
  formatShort(Number(scale.toShown(value).toFixed(DECIMALS)), DECIMALS).replaceAll(',', '');

/** A value of the file as it stands in its field. */
export const leafText = (input: LeafInput, value: unknown, scale: LeafScale): string => {
  if (value === undefined || value === null) return '';
  const numbers = (list: unknown): string => (list as readonly number[]).map((number) => shown(number, scale)).join(', ');
  switch (input.kind) {
    case 'number':
      return shown(value as number, scale);
    case 'numbers':
    case 'numberList':
      return numbers(value);
    case 'pairList':
    case 'directions':
      return (value as readonly (readonly number[])[]).map(numbers).join('; ');
    case 'names':
    case 'nameList':
      return (value as readonly string[]).join(', ');
    case 'free':
      return typeof value === 'number' ? shown(value, scale) : Array.isArray(value) ? numbers(value) : String(value);
    case 'text':
    case 'choice':
    case 'flag':
      return String(value);
  }
};

const ok = (value: unknown): LeafValue => ({ ok: true, value });
const fault = (text: string): LeafValue => ({ ok: false, fault: text });

/** A blank between a number and its unit: "8 mm". */
const BEFORE_UNIT = /(?<=\d)\s+(?=(?:[a-z]+|["″°′])(?:[\s,;]|$))/gi;

/** Brackets as the file writes them: what is said with them is said without them. */
const unbracketed = (text: string): string => text.replace(/\]\s*,\s*\[/g, ';').replace(/[[\]()]/g, ' ');

/** What stands between the two ends of a range, as the window writes it and as people do: "−5 … 5", "-5..5", "-5 to 5". */
const BETWEEN_ENDS = /\s*(?:…|\.{2,}|\bto\b)\s*/g;

/** Numbers between commas with a blank behind, semicolons or blanks; a comma between digits is a decimal mark. */
const partsOf = (text: string): string[] =>
  text
    .replace(BEFORE_UNIT, '')
    .replace(/;/g, ' ')
    .replace(/,(?=\s|$)/g, ' ')
    .split(/\s+/)
    .filter((part) => part !== '');

/** Commas without a blank that cannot be decimal marks: a sign comes after, or one of the two numbers has a decimal point. */
const CERTAIN_COMMA = /,(?=[-−–+.]|\d*\.)|(?<=\.\d*),/g;

/**
 * The numbers of a text; null where it has others, or another count of them.
 * @param count - how many there must be; null: any. "0,1,0" is three numbers where three are wanted
 */
const numbersOf = (text: string, unit: string, scale: LeafScale, count: number | null): number[] | null => {
  const take = (parts: readonly string[]): number[] | null => {
    const numbers = parts.map((part) => {
      const typed = parseNumber(part, unitsOf(unit));
      return typed.kind === 'number' ? cleaned(scale.fromShown(typed.value)) : null;
    });
    const isRight = numbers.every((number) => number !== null) && (count === null || numbers.length === count);
    return isRight ? (numbers as number[]) : null;
  };
  const plain = unbracketed(text);
  const parts = take(partsOf(plain));
  if (parts) return parts;
  const apart = take(partsOf(plain.replace(CERTAIN_COMMA, ' ')));
  if (apart || count === null || count === 2) return apart;
  const split = plain.split(',');
  return split.length === count ? take(split.map((part) => part.trim())) : null;
};

/** Each of several lists of numbers: with semicolons between, or each in brackets. */
const separated = (text: string): string[] => unbracketed(text).split(';');

/** What a comma without a blank is taken for. */
const BLANK_HINT = ', with a blank behind each comma';

/** The units that a field takes, to be said; nothing where it takes none. */
const unitWords = (unit: string, before = ''): string => {
  const names = unitsOf(unit).map(({ name }) => name);
  return names.length === 0 ? '' : `${before}: ${names.join(' or ')}`;
};

const cleaned = (value: number): number => {
  const rounded = Number(value.toFixed(DECIMALS + 3));
  return rounded === 0 ? 0 : rounded;
};

/**
 * The value that was typed into a field.
 * @param unit - what a bare number is taken in: "mm", "in", "°"; empty where no unit may stand behind it
 * @returns the value as the file has it; undefined where the field was emptied
 */
export const parseLeaf = (input: LeafInput, text: string, unit: string, scale: LeafScale): LeafValue => {
  const typed = text.trim();
  if (typed === '') return ok(undefined);
  switch (input.kind) {
    case 'number': {
      const number = parseNumber(typed, unitsOf(unit));
      if (number.kind === 'unit') return fault(`“${number.found}” is not a unit of this field${unitWords(unit)}.`);
      if (number.kind === 'number') return ok(cleaned(scale.fromShown(number.value)));
      return fault(`“${typed}” is not a number. Type one as 12.5 or 1 1/2${unitWords(unit, ', with a unit if you like')}.`);
    }
    case 'numbers': {
      const ends = input.count === 2 ? typed.replace(BETWEEN_ENDS, ' ') : typed;
      const numbers = numbersOf(ends, unit, scale, input.count);
      const want = input.count === 2 ? 'two numbers' : 'three numbers: x, y, z';
      return numbers?.length === input.count ? ok(numbers) : fault(`Type ${want}${BLANK_HINT}.`);
    }
    case 'numberList': {
      const numbers = numbersOf(typed, unit, scale, null);
      return numbers ? ok(numbers) : fault('Type numbers with commas and blanks between.');
    }
    case 'pairList': {
      const pairs = separated(typed).map((pair) => numbersOf(pair, unit, scale, 2));
      return pairs.every((pair) => pair?.length === 2)
        ? ok(pairs)
        : fault('Type pairs of numbers with semicolons between: −80, 190; 40, 205.');
    }
    case 'directions': {
      const directions = separated(typed).map((part) => numbersOf(part, unit, scale, 3));
      return directions.length === input.count && directions.every((direction) => direction?.length === 3)
        ? ok(directions)
        : fault('Type two directions of three numbers with a semicolon between: 1, 0, 0; 0, 1, 0.');
    }
    case 'nameList':
      return ok(typed.split(/[\s,;]+/).filter((part) => part !== ''));
    case 'names': {
      const names = typed.split(/[\s,;]+/).filter((part) => part !== '');
      return names.length === input.count ? ok(names) : fault(`Type ${input.count === 2 ? 'two' : input.count} names.`);
    }
    case 'free': {
      const numbers = numbersOf(typed, unit, scale, null) ?? numbersOf(typed, unit, scale, 3);
      if (numbers) return ok(numbers.length === 1 ? numbers[0] : numbers);
      return ok(typed);
    }
    case 'choice':
      return ok(input.options.find((option) => String(option) === typed) ?? typed);
    case 'flag':
      return ok(typed === 'true');
    case 'text':
      return ok(text);
  }
};
