import type { AxleName, CarDocument, SetupDocument } from '../car/document';

/**
 * Why an adjuster cannot be moved in a question: the toe reset turns it after every move, so that its settings would make no
 * difference. Null where it can.
 * @param setup - the toe reset that the question asks for included
 */
export function turnedByReset(document: CarDocument, setup: SetupDocument, axle: AxleName, adjuster: string): string | null {
  const toe = setup[axle]?.setToe;
  if (toe === undefined || document[axle]?.toeAdjuster !== adjuster) return null;
  return `${axle} ${adjuster} is turned by the toe reset (setToe) after every move, so its settings make no difference: leave it out, or take the toe reset of the ${axle} axle out of question and setup`;
}
