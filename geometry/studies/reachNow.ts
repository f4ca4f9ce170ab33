import type { SetupDocument } from '../car/document';
import type { QuestionDocument } from '../car/questionDocument';
import type { CarMechanism } from '../car/mechanism';
import { assembleCar } from '../setup/assembleCar';
import { resolveQuestion } from './question';
import { isMet, Scorer, type Scored } from './score';

/**
 * How near a setup is to what a question wants before anything is turned, toe reset as asked.
 * @returns null where it cannot be there, breaks a limit of the file, or a wanted reading has no value
 */
export function reachNow(
  mechanism: CarMechanism,
  asked: QuestionDocument,
  setup: SetupDocument,
): (Scored & { readonly met: boolean }) | null {
  const question = resolveQuestion(mechanism, asked, setup);
  const car = assembleCar(mechanism, question.setup);
  if (!car.ok) return null;
  for (const axle of question.axles) if (car.value[axle]?.toeReset?.inRange === false) return null;
  const scorer = new Scorer(mechanism, question);
  if (scorer.brokenLimits(car.value).length > 0) return null;
  const scored = scorer.scoreCar(car.value, Infinity);
  return scored === null ? null : { ...scored, met: isMet(question, scored) };
}
