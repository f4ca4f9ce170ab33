import {
  assembleCar,
  reachNow,
  resolveQuestion,
  sweepCar,
  sweepReadings,
  toMechanism,
  valueInContractUnits,
  type AssembledCar,
  type CarDocument,
  type QuestionDocument,
  type ReachAnswerRow,
  type ReadingValue,
  type Wanted,
} from '../../../geometry/index';
import { answeredSetup, withAnswerPoints } from '../../state/answeredSetup';
import { setupNamed } from '../../state/settings';
import { axlesOf } from '../question/readingChoices';

/** A wanted reading over its stretch, as one answer gives it. In contract units. */
export interface Stretch {
  /** what is moved [mm, or degrees of roll] */
  readonly inputs: readonly number[];
  /** what counts: the value, or its change from zero; by wheel, one line where both are alike or the reading is the axle's */
  readonly lines: readonly { readonly side: 'left' | 'right' | 'both'; readonly values: readonly number[] }[];
  /** between which it is met; open ends −Infinity and Infinity */
  readonly least: number;
  readonly greatest: number;
}

const ALIKE = 1e-9;

/** Values of one owner at all positions of the question; null where one is missing. */
const valuesOf = (car: AssembledCar, wanted: Wanted, owner: string, at: readonly number[], positions: Positions) => {
  const asked = at.map((index) => positions[index] ?? {});
  const rows: readonly (object | null)[] =
    wanted.axle === 'wholeCar'
      ? sweepCar(car, asked).map(({ wholeCar }) => wholeCar)
      : sweepReadings(car, wanted.axle, asked, [wanted.entry.key], false).map((row) =>
          row.ok ? ((row.value as unknown as Readonly<Record<string, object>>)[owner] ?? null) : null,
        );
  const values = rows.map((row) => {
    const value = (row as Readonly<Record<string, ReadingValue>> | null)?.[wanted.entry.key] ?? null;
    return valueInContractUnits(value, wanted.entry.quantity);
  });
  return values.every((value) => typeof value === 'number') ? values : null;
};
type Positions = ReturnType<typeof resolveQuestion>['positions'];

/** What is set, and points that are moved, over the setup that was started from. */
type Laid = Pick<ReachAnswerRow, 'settings' | 'points'>;

/** Every wanted reading at its places, as what is laid on the setup gives it; null where it has no value. */
const coursesOf = (document: CarDocument, question: QuestionDocument, from: string, laid: Laid): readonly (Stretch | null)[] => {
  const resolved = resolveQuestion(toMechanism(document), question, setupNamed(document, from));
  const toe = question.setToe === false ? undefined : question.setToe;
  const setup = answeredSetup(document, { from, settings: laid.settings, toeOn: resolved.axles, toe, points: laid.points });
  const needsBoth = resolved.wanted.some(({ axle }) => axle === 'wholeCar');
  const mechanism = toMechanism(withAnswerPoints(document, laid.points));
  const car = assembleCar(mechanism, setup, needsBoth ? axlesOf(document) : resolved.axles);
  if (!car.ok) return question.wanted.map(() => null);
  return resolved.wanted.map((wanted, index) => courseOf(car.value, wanted, resolved.positions, question.wanted[index]?.over));
};

const courseOf = (
  car: AssembledCar,
  wanted: Wanted,
  positions: Positions,
  over: QuestionDocument['wanted'][number]['over'],
): Stretch | null => {
  const lines = wanted.owners.flatMap((owner) => {
    const values = valuesOf(car, wanted, owner, wanted.at, positions);
    const zero = wanted.from === null ? [0] : valuesOf(car, wanted, owner, [wanted.from], positions);
    if (values === null || zero === null) return [];
    const side = owner === 'left' || owner === 'right' ? owner : 'both';
    return [{ side, values: values.map((value) => value - (zero[0] ?? 0)) } as const];
  });
  if (lines.length < wanted.owners.length) return null;
  const [one, other] = lines;
  const isAlike =
    one !== undefined &&
    other !== undefined &&
    one.values.every((value, at) => Math.abs(value - (other.values[at] ?? NaN)) < ALIKE);
  const slack = wanted.isValue ? wanted.tolerance : 0;
  return {
    inputs: wanted.at.map((_, at) => {
      if (over === undefined) return 0;
      return over.steps === 1 ? over.from : over.from + ((over.to - over.from) * at) / (over.steps - 1);
    }),
    lines: isAlike ? [{ side: 'both', values: one.values }] : lines,
    least: wanted.least - slack,
    greatest: wanted.greatest + slack,
  };
};

/**
 * What an answer gives over every stretch that was asked about; null for what is wanted at one place.
 * @param document - the car that was asked about
 */
export const stretchesOf = (
  document: CarDocument,
  question: QuestionDocument,
  from: string,
  row: Laid,
): readonly (Stretch | null)[] => {
  if (question.wanted.every(({ over }) => over === undefined)) return question.wanted.map(() => null);
  return coursesOf(document, question, from, row).map((course, index) =>
    question.wanted[index]?.over === undefined ? null : course,
  );
};

/** Whether the setup that was started from, toe reset as asked, gives everything as it stands: then there is nothing to do. */
export const isMetAsItStands = (document: CarDocument, question: QuestionDocument, from: string): boolean =>
  reachNow(toMechanism(document), question, setupNamed(document, from))?.met === true;
