import type { LeafInput } from './fieldTree';
import { formatShort } from '../../units/format';
import { parseNumber } from '../../units/parseNumber';
import { unitsOf } from '../../units/typedUnits';

/** What was typed into a field: a value of the file, nothing, or why it is none. */
export type LeafValue = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly fault: string };

/** Digits that a number of the file is shown and kept with: a millionth of its unit. */
const DECIMALS = 6;

const shown = (value: number, factor: number): string =>
  formatShort(Number((value * factor).toFixed(DECIMALS)), DECIMALS).replaceAll(',', '');

/** A value of the file as it stands in its field. @param factor - what stands in the field is a length times this */
export const leafText = (input: LeafInput, value: unknown, factor: number): string => {
  if (value === undefined || value === null) return '';
  const numbers = (list: unknown): string => (list as readonly number[]).map((number) => shown(number, factor)).join(', ');
  switch (input.kind) {
    case 'number':
      return shown(value as number, factor);
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
      return typeof value === 'number' ? shown(value, factor) : Array.isArray(value) ? numbers(value) : String(value);
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

/** Numbers between commas with a blank behind, semicolons or blanks; a comma between digits is a decimal mark. */
const partsOf = (text: string): string[] =>
  text
    .replace(BEFORE_UNIT, '')
    .replace(/;/g, ' ')
    .replace(/,(?=\s|$)/g, ' ')
    .split(/\s+/)
    .filter((part) => part !== '');

const numbersOf = (text: string, unit: string, factor: number): number[] | null => {
  const numbers = partsOf(text).map((part) => {
    const typed = parseNumber(part, unitsOf(unit));
    return typed.kind === 'number' ? cleaned(typed.value / factor) : null;
  });
  return numbers.every((number) => number !== null) ? (numbers as number[]) : null;
};

const cleaned = (value: number): number => {
  const rounded = Number(value.toFixed(DECIMALS + 3));
  return rounded === 0 ? 0 : rounded;
};

/**
 * The value that was typed into a field.
 * @param unit - what a bare number is taken in: "mm", "in", "°"; empty where no unit may stand behind it
 * @param factor - what stands in the field is the file's number times this
 * @returns the value as the file has it; undefined where the field was emptied
 */
export const parseLeaf = (input: LeafInput, text: string, unit: string, factor: number): LeafValue => {
  const typed = text.trim();
  if (typed === '') return ok(undefined);
  switch (input.kind) {
    case 'number': {
      const number = parseNumber(typed, unitsOf(unit));
      if (number.kind === 'unit') return fault(`“${number.found}” is not a unit of this field.`);
      return number.kind === 'number' ? ok(cleaned(number.value / factor)) : fault('Not a number.');
    }
    case 'numbers': {
      const numbers = numbersOf(typed, unit, factor);
      const want = input.count === 2 ? 'two numbers' : 'three numbers: x, y, z';
      return numbers?.length === input.count ? ok(numbers) : fault(`Type ${want}.`);
    }
    case 'numberList': {
      const numbers = numbersOf(typed, unit, factor);
      return numbers ? ok(numbers) : fault('Type numbers with commas and blanks between.');
    }
    case 'pairList': {
      const pairs = typed.split(';').map((pair) => numbersOf(pair, unit, factor));
      return pairs.every((pair) => pair?.length === 2)
        ? ok(pairs)
        : fault('Type pairs of numbers with semicolons between: −80, 190; 40, 205.');
    }
    case 'directions': {
      const directions = typed.split(';').map((part) => numbersOf(part, unit, factor));
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
      const numbers = numbersOf(typed, unit, factor);
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
