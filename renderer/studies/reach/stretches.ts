import {
  assembleCar,
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

/**
 * What an answer gives over every stretch that was asked about; null for what is wanted at one place.
 * @param document - the car that was asked about
 */
export const stretchesOf = (
  document: CarDocument,
  question: QuestionDocument,
  from: string,
  row: ReachAnswerRow,
): readonly (Stretch | null)[] => {
  const none = question.wanted.map(() => null);
  if (question.wanted.every(({ over }) => over === undefined)) return none;
  const resolved = resolveQuestion(toMechanism(document), question, setupNamed(document, from));
  const toe = question.setToe === false ? undefined : question.setToe;
  const setup = answeredSetup(document, { from, settings: row.settings, toeOn: resolved.axles, toe, points: row.points });
  const needsBoth = resolved.wanted.some(({ axle }) => axle === 'wholeCar');
  const car = assembleCar(
    toMechanism(withAnswerPoints(document, row.points)),
    setup,
    needsBoth ? axlesOf(document) : resolved.axles,
  );
  if (!car.ok) return none;
  return resolved.wanted.map((wanted, index) => {
    const over = question.wanted[index]?.over;
    if (over === undefined) return null;
    const lines = wanted.owners.flatMap((owner) => {
      const values = valuesOf(car.value, wanted, owner, wanted.at, resolved.positions);
      const zero = wanted.from === null ? [0] : valuesOf(car.value, wanted, owner, [wanted.from], resolved.positions);
      if (values === null || zero === null) return [];
      const side = owner === 'left' || owner === 'right' ? owner : 'both';
      return [{ side, values: values.map((value) => value - (zero[0] ?? 0)) } as const];
    });
    const [one, other] = lines;
    const isAlike =
      one !== undefined &&
      other !== undefined &&
      one.values.every((value, at) => Math.abs(value - (other.values[at] ?? NaN)) < ALIKE);
    const inputs = wanted.at.map((_, at) =>
      over.steps === 1 ? over.from : over.from + ((over.to - over.from) * at) / (over.steps - 1),
    );
    return {
      inputs,
      lines: isAlike ? [{ side: 'both', values: one.values }] : lines,
      least: wanted.least - (wanted.isValue ? wanted.tolerance : 0),
      greatest: wanted.greatest + (wanted.isValue ? wanted.tolerance : 0),
    };
  });
};
