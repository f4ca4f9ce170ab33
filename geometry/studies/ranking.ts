import type { CarMechanism } from '../car/mechanism';
import { scoreWidth, type ScoreWidth } from './equalScores';
import { nearerFirst, NearnessOf, type Nearness } from './nearness';
import type { Question } from './question';
import type { Scored } from './score';
import type { SeenParts } from './seenParts';

/** A combination and what it scores: plain data. */
export interface Candidate extends Nearness {
  readonly number: number;
  readonly scored: Scored;
}

export type CandidateOrder = (a: Candidate, b: Candidate) => number;

/** A wanted reading of two combinations that differs by less, of itself where it is large, is the same. */
const SAME_WORST = 1e-8;

/**
 * Which combinations are the best of a question: the better score first; of equals the one nearest to the setup that the
 * question starts from, then the earlier. Combinations that differ only in parts which change nothing of what is wanted are
 * one answer: the first of them.
 */
export class Ranking {
  readonly width: ScoreWidth;
  /** how many of the best are kept: no more than there are distinct ones */
  readonly count: number;
  /** the combination nearest to the setup, by index */
  readonly home: readonly number[];
  private readonly nearness: NearnessOf;

  constructor(mechanism: CarMechanism, question: Question, { idle, open }: SeenParts) {
    this.width = scoreWidth(question, open);
    this.nearness = new NearnessOf(mechanism, question, idle);
    this.home = this.nearness.home;
    const distinct = question.variables.reduce((product, { values }, i) => (idle[i] ? product : product * values.length), 1);
    this.count = Math.min(question.count, distinct);
  }

  candidate(number: number, scored: Scored): Candidate {
    return { number, scored, ...this.nearness.of(number) };
  }

  isEqual(one: number, other: number): boolean {
    return Math.abs(one - other) <= this.width(Math.min(one, other));
  }

  readonly order: CandidateOrder = (a, b) => {
    const [one, other] = [a.scored.score, b.scored.score];
    return this.isEqual(one, other) ? nearerFirst(a, b) || a.number - b.number : one - other;
  };

  /** Puts a candidate in its place among the best, and what is past their count out. */
  keep(best: Candidate[], candidate: Candidate): void {
    const at = best.findIndex((known) => this.isSameAnswer(known, candidate));
    if (at >= 0) {
      if (this.order(candidate, best[at]) >= 0) return;
      best.splice(at, 1);
    }
    best.push(candidate);
    best.sort(this.order);
    if (best.length > this.count) best.pop();
  }

  private isSameAnswer(a: Candidate, b: Candidate): boolean {
    if (a.number === b.number) return true;
    return (
      a.core === b.core &&
      this.isEqual(a.scored.score, b.scored.score) &&
      a.scored.wanted.every(
        ({ worst }, index) => Math.abs(worst - b.scored.wanted[index].worst) <= SAME_WORST * Math.max(1, Math.abs(worst)),
      )
    );
  }
}
