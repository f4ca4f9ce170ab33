import type { CarMechanism } from '../car/mechanism';
import type { Question } from './question';
import { Ranking, type Candidate } from './ranking';
import { Scorer, type KeptOut } from './score';
import type { SeenParts } from './seenParts';

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

/** So many times the width of equals is let pass before a combination is given up: far below what it would cost to try more. */
const BOUND_WIDTHS = 10;

/** Scores single combinations, and remembers the best and what limits kept out. */
export class Search {
  readonly best: Candidate[] = [];
  private readonly keptOut = new Map<object, KeptCandidate>();
  tried = 0;
  private readonly scorer: Scorer;
  private readonly ranking: Ranking;
  private readonly count: number;

  /**
   * @param seen - what was seen of the question's parts before
   * @param most - a score that so many are known not to pass: what is past it is given up
   */
  constructor(
    mechanism: CarMechanism,
    question: Question,
    seen: SeenParts,
    private readonly most = Infinity,
  ) {
    this.scorer = new Scorer(mechanism, question);
    this.ranking = new Ranking(mechanism, question, seen);
    this.count = this.ranking.count;
  }

  /** @returns the score, or Infinity where this is no answer */
  try(number: number, values: readonly (number | null)[], bound: number): number {
    this.tried += 1;
    const made = this.scorer.score(values, bound);
    if (made === null) return Infinity;
    const candidate = this.ranking.candidate(number, made.scored);
    const broken = this.scorer.brokenLimits(made.car);
    if (broken.length === 0) {
      this.ranking.keep(this.best, candidate);
      return made.scored.score;
    }
    const by = this.scorer.keptOutBy(broken);
    if (by !== null) {
      const known = this.keptOut.get(by.limit.limit);
      if (known === undefined || this.ranking.order(candidate, known.candidate) < 0)
        this.keptOut.set(by.limit.limit, { candidate, by });
    }
    return Infinity;
  }

  /**
   * Past this sum a combination is not among the answers. A little is let pass: of equals the one nearest to the setup is the
   * answer.
   */
  get bound(): number {
    const score = this.best.length < this.count ? this.most : Math.min(this.most, this.best[this.best.length - 1].scored.score);
    return score === Infinity ? score : score + BOUND_WIDTHS * this.ranking.width(score);
  }

  part(): ReachPart {
    return { best: this.best, keptOut: [...this.keptOut.values()], tried: this.tried };
  }
}
