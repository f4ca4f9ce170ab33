import {
  differenceOfReadings,
  inContractUnits,
  placeAxle,
  readingsOfAxle,
  readingsOfCar,
  toRadians,
  type AssembledCar,
  type AxleName,
  type AxleRow,
  type CarDocument,
  type Failure,
  type PlacedAxle,
  type Position,
  type ReadingValues,
  type Result,
} from '../../geometry/index';
import { wholeCarInContractUnits } from './wholeCar';
import { assembleSetup } from './assembleBench';

export interface BenchQuestion {
  readonly document: CarDocument;
  readonly setup: string;
  readonly against: string;
  readonly axle: AxleName;
  /** wheel travel from standing [mm], roll [degrees], rack [mm] */
  readonly position: { readonly travel: number; readonly rollDeg: number; readonly rack: number };
}

/** Readings in mm, degrees and the other units of the catalogue. */
export interface BenchReadings {
  readonly left: ReadingValues;
  readonly right: ReadingValues;
  readonly both: ReadingValues;
  readonly wholeCar: ReadingValues;
}

/** One setup at one position. */
export interface BenchRow extends BenchReadings {
  readonly car: AssembledCar;
  readonly toeReset: AxleRow['toeReset'];
  /** reasons of the readings without value, by "left.caster", "both.ackermann", "wholeCar.rake" */
  readonly why: Readonly<Record<string, string>>;
  readonly placed: PlacedAxle;
  /** [mm] */
  readonly rack: number;
}

export interface BenchAnswered {
  readonly row: BenchRow;
  /** the compared setup at the same position, or why it has no answer */
  readonly compared: Result<BenchRow, Failure>;
  /** this setup less the compared one; null where either has no value */
  readonly difference: BenchReadings;
}

export type BenchAnswer = Result<BenchAnswered, Failure & { readonly setup: string }>;

const positionOf = ({ travel, rollDeg, rack }: BenchQuestion['position']): Position =>
  rollDeg === 0 ? { travel, rack } : { travel, rack, roll: toRadians(rollDeg) };

/** Readings and places of one setup at one position. */
export const answerSetup = (question: BenchQuestion, setup: string): Result<BenchRow, Failure> => {
  const assembled = assembleSetup(question.document, setup);
  if (!assembled.ok) return assembled;
  const car = assembled.value;
  const position = positionOf(question.position);
  const readings = readingsOfAxle(car, question.axle, position);
  if (!readings.ok) return readings;
  const placed = placeAxle(car, question.axle, position);
  if (!placed.ok) return placed;
  const { left, right, both, why, toeReset } = inContractUnits(readings.value);
  const whole = wholeCarInContractUnits(readingsOfCar(car, position));
  const value = {
    car,
    toeReset,
    left,
    right,
    both,
    wholeCar: whole.values,
    why: { ...why, ...whole.why },
    placed: placed.value,
    rack: readings.value.rack,
  };
  return { ok: true, value };
};

const differenceOf = (row: BenchReadings, other: Result<BenchReadings, Failure>): BenchReadings => {
  const those = other.ok ? other.value : { left: {}, right: {}, both: {}, wholeCar: {} };
  return {
    left: differenceOfReadings(row.left, those.left),
    right: differenceOfReadings(row.right, those.right),
    both: differenceOfReadings(row.both, those.both),
    wholeCar: differenceOfReadings(row.wholeCar, those.wholeCar),
  };
};

/**
 * Everything that the bench shows at one position: the setup on it, the compared one, and the difference.
 * @returns a failure only where the setup on the bench has no answer; its numbers say what is missing
 */
export const answerBench = (question: BenchQuestion): BenchAnswer => {
  const row = answerSetup(question, question.setup);
  if (!row.ok) return { ok: false, failure: { ...row.failure, setup: question.setup } };
  const compared = question.against === question.setup ? row : answerSetup(question, question.against);
  return { ok: true, value: { row: row.value, compared, difference: differenceOf(row.value, compared) } };
};
