import type { AxleName, CarDocument, SetupDocument } from '../car/document';
import type { Quantity } from '../readings/readingEntry';
import type { Question } from './question';

/** Scores that differ by this part of themselves are equal. */
const RELATIVE = 1e-9;

/**
 * By how much a reading of one setting may differ at most, in contract units, between a toe reset that starts from its
 * neighbour's and one from nothing: they end at different places within their tolerance. About three times the most that was
 * seen over 500 questions of random cars. What a reading hangs on toe by is measured (`PartsLook`), and is mostly far less.
 */
export const EXACT_TO: Readonly<Record<Quantity, number>> = {
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

/** Between the ends of two resets toe may differ by so much [degrees], and a standing height [mm]. */
export const RESET_OPEN = { toeDeg: 2e-10, heightMm: 2e-10 };

/** A reset by a turnbuckle is followed until rounding alone is left. */
const FOLLOWED = 1 / 400;

/** How far scores of a question may be apart and still be equal. */
export type ScoreWidth = (score: number) => number;

/**
 * A score is a sum of squares of miss ÷ tolerance, so what is left open in the misses weighs as the root of the score
 * (by the inequality of Cauchy and Schwarz over the wanted): 2·ε·√score + ε², with ε² = Σ (open ÷ tolerance)².
 * @param open - by what is wanted, in contract units
 */
export function scoreWidth({ wanted }: Pick<Question, 'wanted'>, open: readonly number[]): ScoreWidth {
  const square = wanted.reduce((sum, { tolerance }, index) => sum + (open[index] / tolerance) * (open[index] / tolerance), 0);
  const root = Math.sqrt(square);
  return (score) => RELATIVE * score + 2 * root * Math.sqrt(score) + square;
}

/** How much of what a reset may leave open is left on an axle; without a toe reset a setting has one answer. */
export function openAfterReset(document: CarDocument, setup: SetupDocument, axle: AxleName): number {
  const { adjusters, toeAdjuster = '' } = document[axle] ?? {};
  if (setup[axle]?.setToe === undefined) return 0;
  return adjusters?.[toeAdjuster]?.kind === 'turnbuckle' ? FOLLOWED : 1;
}
