import { SYMBOLS } from '../../geometry/index';

interface SymbolEntry {
  readonly names: readonly string[];
  /** what it is made of, where it is given by a formula of its own */
  readonly made: string;
  readonly text: string;
}

const entryOf = (text: string): SymbolEntry => {
  const names = text
    .split(';')
    .map((part) => /^[^:=]*/.exec(part.trim())?.[0] ?? '')
    .flatMap((head) => head.split(','))
    .map((name) => name.trim())
    .filter((name) => name !== '');
  return { names, made: /=([^:.;]*)/.exec(text)?.[1] ?? '', text };
};

/** One entry a sentence: "s: unit vector along the spindle, outboard." */
const ENTRIES = SYMBOLS.split(/(?<=\.) /).map(entryOf);

/** A letter stands alone: the s of "s·n" and not that of "asin". */
const stands = (name: string, formula: string): boolean =>
  new RegExp(`(?<![\\p{L}\\p{M}'’])${name}(?![\\p{L}\\p{M}])`, 'u').test(formula);

/** What the letters of a formula stand for, in the order of the list; empty where it has none of them. */
export const symbolsIn = (formula: string): string => {
  const found = new Set<SymbolEntry>();
  const look = (written: string): void => {
    for (const entry of ENTRIES) {
      if (found.has(entry) || !entry.names.some((name) => stands(name, written))) continue;
      found.add(entry);
      look(entry.made);
    }
  };
  look(formula);
  return ENTRIES.filter((entry) => found.has(entry))
    .map(({ text }) => text)
    .join(' ');
};
