import {
  differenceOfReadings,
  inContractUnits,
  placeAxle,
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
import type { Compared } from '../state/compared';
import { assembleSetup } from './assembleBench';
import { memoLast } from './memoLast';
import { wholeCarInContractUnits } from './wholeCar';

/** One setup of a car at one position of one axle. */
export interface SetupQuestion {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
  /** wheel travel from standing [mm], roll [degrees], rack [mm] */
  readonly position: { readonly travel: number; readonly rollDeg: number; readonly rack: number };
}

export interface BenchQuestion extends SetupQuestion {
  /** what it is held against, of this car or another; null: nothing */
  readonly compared: Compared | null;
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
  /** what was asked, and is shown */
  readonly position: SetupQuestion['position'];
  /** name of what it is held against; null: there is nothing to compare */
  readonly against: string | null;
  /** what it is held against at the same position, or why that has no answer; the row itself where there is nothing */
  readonly compared: Result<BenchRow, Failure>;
  /** this setup less the compared one; null where either has no value, and everywhere where nothing is compared */
  readonly difference: BenchReadings;
}

export type BenchAnswer = Result<BenchAnswered, Failure & { readonly setup: string }>;

const positionOf = ({ travel, rollDeg, rack }: SetupQuestion['position'], isSteered: boolean): Position => {
  const steered = isSteered ? rack : 0;
  return rollDeg === 0 ? { travel, rack: steered } : { travel, rack: steered, roll: toRadians(rollDeg) };
};

/** Readings and places of an assembled car at one position; the last ones are kept while only the other setup is turned. */
const answerAssembled = memoLast(
  (car: AssembledCar, axle: AxleName, asked: SetupQuestion['position']): Result<BenchRow, Failure> => {
    const assembled = car[axle];
    if (!assembled) return { ok: false, failure: { kind: 'unreachable', message: `this car has no ${axle} axle` } };
    const position = positionOf(asked, assembled.left.corner.isSteered);
    const both = readingsOfCar(car, position);
    const readings = both[axle];
    if (!readings) return { ok: false, failure: { kind: 'unreachable', message: `this car has no ${axle} axle` } };
    if (!readings.ok) return readings;
    const placed = placeAxle(car, axle, position);
    if (!placed.ok) return placed;
    const row = inContractUnits(readings.value);
    const whole = wholeCarInContractUnits(both);
    const value = {
      car,
      toeReset: row.toeReset,
      left: row.left,
      right: row.right,
      both: row.both,
      wholeCar: whole.values,
      why: { ...row.why, ...whole.why },
      placed: placed.value,
      rack: readings.value.rack,
    };
    return { ok: true, value };
  },
);

/** Readings and places of one setup at one position. */
export const answerSetup = ({ document, setup, axle, position }: SetupQuestion): Result<BenchRow, Failure> => {
  const assembled = assembleSetup(document, setup);
  return assembled.ok ? answerAssembled(assembled.value, axle, position) : assembled;
};

const NOTHING: BenchReadings = { left: {}, right: {}, both: {}, wholeCar: {} };

const differenceOf = (row: BenchReadings, those: BenchReadings): BenchReadings => ({
  left: differenceOfReadings(row.left, those.left),
  right: differenceOfReadings(row.right, those.right),
  both: differenceOfReadings(row.both, those.both),
  wholeCar: differenceOfReadings(row.wholeCar, those.wholeCar),
});

/**
 * Everything that the bench shows at one position: the setup on it, the compared one, and the difference.
 * @returns a failure only where the setup on the bench has no answer; its numbers say what is missing
 */
export const answerBench = (question: BenchQuestion): BenchAnswer => {
  const row = answerSetup(question);
  if (!row.ok) return { ok: false, failure: { ...row.failure, setup: question.setup } };
  const { compared: other } = question;
  const compared = other ? answerSetup({ ...question, document: other.document, setup: other.setup }) : row;
  const difference = differenceOf(row.value, other && compared.ok ? compared.value : NOTHING);
  return { ok: true, value: { row: row.value, position: question.position, against: other?.name ?? null, compared, difference } };
};
