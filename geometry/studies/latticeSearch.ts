import type { Question } from './question';

/** Searches of a question that is too large to be tried whole; each is a chunk of its own. */
export const LATTICE_STARTS = 24;

/** How far one variable moves at once: the first that helps is taken, long strides first. */
const STRIDES = [16, 8, 4, 2, 1] as const;
/** Pairs go along long valleys, where moving one alone is worse. */
const PAIR = 4;
const MOST_ROUNDS = 200;

/** What of a search hangs on the setup that the question starts from. */
export interface Home {
  /** the combination nearest to the setup */
  readonly indexes: readonly number[];
  /** by variable: it changes nothing of what is wanted, and begins at home */
  readonly idle: readonly boolean[];
  readonly isEqual: (one: number, other: number) => boolean;
}

/**
 * A descent over the steps that the parts have, from one start: single strides, then pairs up to four steps each way, until no
 * neighbour is better; then every part that can goes home without loss. The first search starts at home; the others are spread
 * by the seed.
 * @param score - of a combination by its indexes; Infinity where it is no answer; a sum past the bound may be given up
 * @param isShort - single strides only: near, and quick
 */
export function latticeSearch(
  question: Question,
  start: number,
  score: (indexes: readonly number[], bound: number) => number,
  isShort = false,
  home: Home = nearestToZero(question),
): void {
  const { variables } = question;
  const seen = new Map<string, number>();
  const scoreAt = (indexes: readonly number[], bound: number): number => {
    const key = indexes.join();
    const known = seen.get(key);
    if (known !== undefined) return known;
    const made = score(indexes, bound);
    seen.set(key, made);
    return made;
  };
  const isInside = (indexes: readonly number[]): boolean =>
    indexes.every((index, i) => index >= 0 && index < variables[i].values.length);
  let at = startAt(question, start, home);
  let best = scoreAt(at, Infinity);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const better = bestNeighbour(at, variables.length, isShort, isInside, (tried) => scoreAt(tried, Infinity), best);
    if (better === null) break;
    [at, best] = [better.indexes, better.score];
  }
  if (best === Infinity) return;
  for (let i = 0; i < variables.length; i += 1) {
    const back = at.map((index, k) => (k === i ? home.indexes[i] : index));
    const made = scoreAt(back, Infinity);
    if (made < best || home.isEqual(made, best)) [at, best] = [back, made];
  }
}

function bestNeighbour(
  at: readonly number[],
  count: number,
  isShort: boolean,
  isInside: (indexes: readonly number[]) => boolean,
  score: (indexes: readonly number[]) => number,
  best: number,
): { readonly indexes: readonly number[]; readonly score: number } | null {
  let found: { indexes: readonly number[]; score: number } | null = null;
  const look = (indexes: readonly number[]): void => {
    if (!isInside(indexes)) return;
    const made = score(indexes);
    if (made < (found?.score ?? best)) found = { indexes, score: made };
  };
  const moved = (i: number, by: number, j = -1, other = 0): readonly number[] =>
    at.map((index, k) => index + (k === i ? by : 0) + (k === j ? other : 0));
  for (const stride of STRIDES)
    for (let i = 0; i < count; i += 1) {
      look(moved(i, stride));
      look(moved(i, -stride));
    }
  if (found !== null || isShort) return found;
  for (let i = 0; i < count; i += 1)
    for (let j = i + 1; j < count; j += 1)
      for (let a = -PAIR; a <= PAIR; a += 1)
        for (let b = -PAIR; b <= PAIR; b += 1) if (a !== 0 && b !== 0) look(moved(i, a, j, b));
  return found;
}

/** Without a setup: every part at its value nearest to zero. */
const nearestToZero = ({ variables }: Question): Home => ({
  indexes: variables.map(({ values }) => {
    const sizes = values.map((value) => Math.abs(value ?? 0));
    return sizes.indexOf(Math.min(...sizes));
  }),
  idle: [],
  isEqual: (one, other) => one === other,
});

/** The start of a search: the first at home, the others at random by the seed and their number. */
function startAt({ variables, seed }: Question, start: number, { indexes, idle }: Home): readonly number[] {
  if (start === 0) return indexes;
  const random = numbersFrom(seed, start);
  const drawn = variables.map(({ values }) => Math.floor(random() * values.length));
  return drawn.map((index, i) => (idle[i] === true ? indexes[i] : index));
}

/** Even numbers from 0 to 1 of one stream: a 32-bit mixer (Steele, Lea & Flood 2014, its constants from memory), the same on every engine. */
function numbersFrom(seed: number, stream: number): () => number {
  let state = (Math.imul(seed + 1, 0x9e3779b1) ^ Math.imul(stream + 1, 0x85ebca6b)) >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 4294967296;
  };
}
