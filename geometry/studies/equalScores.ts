import type { AxleName, CarDocument, SetupDocument } from '../car/document';
import type { Quantity } from '../readings/readingEntry';
import type { Question } from './question';

/** Scores that differ by this part of themselves are equal. */
const RELATIVE = 1e-9;

/**
 * By how much a reading of one setting may differ, in contract units, between a toe reset that starts from its neighbour's and
 * one from nothing: they end at different places within their tolerance. About three times the most that was seen over 500
 * questions of random cars.
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

/** A reset by a turnbuckle is followed until rounding alone is left. */
const FOLLOWED = 1 / 400;

/** How far scores of a question may be apart and still be equal. */
export type ScoreWidth = (score: number) => number;

/**
 * A score is a sum of squares of miss ÷ tolerance, so what is left open in the misses weighs as the root of the score
 * (by the inequality of Cauchy and Schwarz over the wanted): 2·ε·√score + ε², with ε² = Σ (exact to ÷ tolerance)².
 */
export function scoreWidth(document: CarDocument, { wanted, setup }: Pick<Question, 'wanted' | 'setup'>): ScoreWidth {
  const open = Math.max(...(['front', 'rear'] as const).map((axle) => openAfterReset(document, setup, axle)));
  let square = 0;
  for (const { entry, tolerance, from } of wanted) {
    // a change is the difference of two readings
    const part = ((from === null ? 1 : 2) * open * EXACT_TO[entry.quantity]) / tolerance;
    square += part * part;
  }
  const root = Math.sqrt(square);
  return (score) => RELATIVE * score + 2 * root * Math.sqrt(score) + square;
}

/** How much of that is left open on an axle; without a toe reset a setting has one answer. */
function openAfterReset(document: CarDocument, setup: SetupDocument, axle: AxleName): number {
  const { adjusters, toeAdjuster = '' } = document[axle] ?? {};
  if (setup[axle]?.setToe === undefined) return 0;
  return adjusters?.[toeAdjuster]?.kind === 'turnbuckle' ? FOLLOWED : 1;
}
