import type { Quantity } from '../readings/readingEntry';
import type { Question } from './question';

/** Scores that differ by this part of themselves are equal. */
const RELATIVE = 1e-9;

/**
 * By how much a reading of one setting may differ, in contract units, between two ways of putting the car together: a toe reset
 * that starts from its neighbour's and one from nothing end at different places within their tolerance. About three times the
 * most that was seen over 500 questions of random cars.
 */
const EXACT_TO: Readonly<Record<Quantity, number>> = {
  angle: 2e-10,
  length: 5e-10,
  percent: 3e-9,
  anglePerLength: 5e-13,
  anglePerAngle: 2e-12,
  anglePerG: 2e-12,
  ratio: 2e-11,
  force: 1e-9,
  forcePerLength: 5e-11,
  forcePerG: 2e-10,
  momentPerAngle: 1e-10,
  frequency: 2e-12,
};

/** How far scores of a question may be apart and still be equal. */
export type ScoreWidth = (score: number) => number;

/**
 * A score is a sum of squares of miss ÷ tolerance, so what is left open in the misses weighs as the root of the score
 * (by the inequality of Cauchy and Schwarz over the wanted): 2·ε·√score + ε², with ε² = Σ (exact to ÷ tolerance)².
 */
export function scoreWidth({ wanted }: Pick<Question, 'wanted'>): ScoreWidth {
  let square = 0;
  for (const { entry, tolerance, from } of wanted) {
    // a change is the difference of two readings
    const open = ((from === null ? 1 : 2) * EXACT_TO[entry.quantity]) / tolerance;
    square += open * open;
  }
  const root = Math.sqrt(square);
  return (score) => RELATIVE * score + 2 * root * Math.sqrt(score) + square;
}
