import { combinationAt, type Question } from './question';
import { type Scorer, type KeptOut, type Scored } from './score';

export interface Candidate {
  readonly number: number;
  readonly scored: Scored;
}

/** The best that a single limit keeps out. */
export interface KeptCandidate {
  readonly candidate: Candidate;
  readonly by: KeptOut;
}

/** What one chunk found: plain data. */
export interface ReachPart {
  readonly best: readonly Candidate[];
  readonly keptOut: readonly KeptCandidate[];
  readonly tried: number;
}

/** The better score first; of equals the earlier combination. */
export function inOrder(a: Candidate, b: Candidate): number {
  const least = Math.min(a.scored.score, b.scored.score);
  const isEqual = Math.abs(a.scored.score - b.scored.score) <= 1e-9 * least;
  return isEqual ? a.number - b.number : a.scored.score - b.scored.score;
}

/** Far past the digits in which equal scores differ, and far below what it would cost to try more. */
const BOUND_SLACK = 1e-6;

export function keepBest(best: Candidate[], candidate: Candidate, count: number): void {
  best.push(candidate);
  best.sort(inOrder);
  if (best.length > count) best.pop();
}

/** Scores single combinations, and remembers the best and what limits kept out. */
export class Search {
  readonly best: Candidate[] = [];
  private readonly keptOut = new Map<object, KeptCandidate>();
  tried = 0;

  /**
   * @param count - how many of the best are kept
   * @param most - a score that so many are known not to pass: what is past it is given up
   */
  constructor(
    private readonly scorer: Scorer,
    private readonly count: number,
    private readonly most = Infinity,
  ) {}

  /** @returns the score, or Infinity where this is no answer */
  try(number: number, values: readonly (number | null)[], bound: number): number {
    this.tried += 1;
    const made = this.scorer.score(values, bound);
    if (made === null) return Infinity;
    const candidate = { number, scored: made.scored };
    const broken = this.scorer.brokenLimits(made.car);
    if (broken.length === 0) {
      if (!this.best.some((known) => known.number === number)) keepBest(this.best, candidate, this.count);
      return made.scored.score;
    }
    const by = this.scorer.keptOutBy(broken);
    if (by !== null) {
      const known = this.keptOut.get(by.limit.limit);
      if (known === undefined || inOrder(candidate, known.candidate) < 0) this.keptOut.set(by.limit.limit, { candidate, by });
    }
    return Infinity;
  }

  /**
   * Past this sum a combination is not among the answers. A little is let pass: a score depends in its last digits on which
   * setting was put together before, and of equals the earlier combination is the answer.
   */
  get bound(): number {
    const score = this.best.length < this.count ? this.most : Math.min(this.most, this.best[this.best.length - 1].scored.score);
    return score * (1 + BOUND_SLACK);
  }

  part(): ReachPart {
    return { best: this.best, keptOut: [...this.keptOut.values()], tried: this.tried };
  }
}

export const valuesAt = (question: Question, indexes: readonly number[]): (number | null)[] =>
  question.variables.map(({ values }, i) => values[indexes[i]] ?? null);

/** The values of a combination by its number. */
export const valuesOf = (question: Question, number: number): (number | null)[] =>
  valuesAt(question, combinationAt(question, number));
