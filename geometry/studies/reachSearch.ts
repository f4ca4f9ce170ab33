import type { CarMechanism } from '../car/mechanism';
import { scoreWidth, type ScoreWidth } from './equalScores';
import { combinationAt, type Question } from './question';
import { Scorer, type KeptOut, type Scored } from './score';

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

export type CandidateOrder = (a: Candidate, b: Candidate) => number;

/** The better score first; of equals the earlier combination. */
export const candidateOrder =
  (width: ScoreWidth): CandidateOrder =>
  (a, b) => {
    const [one, other] = [a.scored.score, b.scored.score];
    return Math.abs(one - other) <= width(Math.min(one, other)) ? a.number - b.number : one - other;
  };

/** So many times the width of equals is let pass before a combination is given up: far below what it would cost to try more. */
const BOUND_WIDTHS = 10;

export function keepBest(best: Candidate[], candidate: Candidate, count: number, order: CandidateOrder): void {
  best.push(candidate);
  best.sort(order);
  if (best.length > count) best.pop();
}

/** Scores single combinations, and remembers the best and what limits kept out. */
export class Search {
  readonly best: Candidate[] = [];
  private readonly keptOut = new Map<object, KeptCandidate>();
  tried = 0;
  private readonly scorer: Scorer;
  private readonly width: ScoreWidth;
  private readonly order: CandidateOrder;

  /**
   * @param count - how many of the best are kept
   * @param most - a score that so many are known not to pass: what is past it is given up
   */
  constructor(
    mechanism: CarMechanism,
    question: Question,
    private readonly count: number,
    private readonly most = Infinity,
  ) {
    this.scorer = new Scorer(mechanism, question);
    this.width = scoreWidth(mechanism.document, question);
    this.order = candidateOrder(this.width);
  }

  /** @returns the score, or Infinity where this is no answer */
  try(number: number, values: readonly (number | null)[], bound: number): number {
    this.tried += 1;
    const made = this.scorer.score(values, bound);
    if (made === null) return Infinity;
    const candidate = { number, scored: made.scored };
    const broken = this.scorer.brokenLimits(made.car);
    if (broken.length === 0) {
      if (!this.best.some((known) => known.number === number)) keepBest(this.best, candidate, this.count, this.order);
      return made.scored.score;
    }
    const by = this.scorer.keptOutBy(broken);
    if (by !== null) {
      const known = this.keptOut.get(by.limit.limit);
      if (known === undefined || this.order(candidate, known.candidate) < 0) this.keptOut.set(by.limit.limit, { candidate, by });
    }
    return Infinity;
  }

  /**
   * Past this sum a combination is not among the answers. A little is let pass: of equals the earlier combination is the answer.
   */
  get bound(): number {
    const score = this.best.length < this.count ? this.most : Math.min(this.most, this.best[this.best.length - 1].scored.score);
    return score === Infinity ? score : score + BOUND_WIDTHS * this.width(score);
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
