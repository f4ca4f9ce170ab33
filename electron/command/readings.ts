import {
  judgeLimits,
  readingsOfCar,
  type AssembledCar,
  type AxleName,
  type CarReadings,
  type LimitJudgement,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import type { LoadedCar } from './carSource';
import type { CommandRowWarningCode } from './codes';
import { CommandError, usageError } from './commandError';
import { askedPosition, assembledSetup, axlesAsked, titleOf } from './question';
import { readingsInWords } from './readingsTable';
import { differenceOfWholeCar, isFailed, limitsOf, rowOf, wholeCarOf, type Row, type WholeCarAnswer } from './rows';

export const UNITS = { length: 'mm', angle: 'deg' } as const;

/** Another setup of the same car, put together. */
export interface Comparison {
  readonly setup: string;
  readonly car: AssembledCar;
}

/** The car of a call put together in its setup, and in the one it is compared with. */
export function assembledFor(call: Call): { car: LoadedCar; setup: string; assembled: AssembledCar; against: Comparison | null } {
  const { car, options } = call;
  if (!car) throw usageError('a car is needed');
  const { name, assembled } = assembledSetup(car, options.setup, options.set);
  if (options.against === undefined) return { car, setup: name, assembled, against: null };
  const other = assembledSetup(car, options.against);
  return { car, setup: name, assembled, against: { setup: other.name, car: other.assembled } };
}

/** `readings`: every reading at one position. */
export async function answer(call: Call): Promise<Answer> {
  const position = askedPosition(call.options);
  const { car, setup, assembled, against } = assembledFor(call);
  const axles = axlesAsked(car, call.options);
  const limits = judgeLimits(assembled);
  const here = readingsOfCar(assembled, position);
  const there = against ? readingsOfCar(against.car, position) : null;
  const answers = axles.map((axle) => {
    const row = rowAt(axle, undefined, here, limits, against, there);
    return { axle, row: warnedOfRack(row, car, call.options.axle, position.rack) };
  });
  refuseAllFailed(answers.map(({ row }) => row));

  const head = { car: car.document.name, setup };
  const title = titleOf(car, setup, call.options);
  if (call.options.axle !== undefined) {
    const document = { ...head, axle: call.options.axle, units: UNITS, rows: answers.map(({ row }) => row) };
    return { document, words: (style) => readingsInWords({ title, axles: answers, wholeCar: null }, style) };
  }
  const ofAxle = (axle: AxleName) => {
    const found = answers.find((candidate) => candidate.axle === axle);
    return found ? { axle, rows: [found.row] } : null;
  };
  const wholeCar = wholeCarAt(here, against, there);
  const document = { ...head, units: UNITS, front: ofAxle('front'), rear: ofAxle('rear'), wholeCar };
  return { document, words: (style) => readingsInWords({ title, axles: answers, wholeCar }, style) };
}

/** The row of an axle that the car has. */
export function rowAt(
  axle: AxleName,
  input: number | undefined,
  here: CarReadings,
  limits: readonly LimitJudgement[],
  against: Comparison | null,
  there: CarReadings | null,
): Row {
  const other = there?.[axle];
  return rowOf(present(here[axle]), {
    input,
    limits: limitsOf(limits, axle),
    ...(against && other ? { against: { setup: against.setup, result: other } } : {}),
  });
}

/** The row with a warning where the rack was asked of one axle by its name, which the rack does not move. */
export function warnedOfRack(row: Row, { document }: LoadedCar, alone: AxleName | undefined, rack = 0): Row {
  if (alone === undefined || document[alone]?.steering !== undefined || isFailed(row) || rack === 0) return row;
  const code: CommandRowWarningCode = 'axle-not-steered';
  const message = `The ${alone} axle is not steered: the rack leaves it as it is.`;
  return { ...row, warnings: [...row.warnings, { code, path: alone, message }] };
}

function present<Value>(value: Value | null): Value {
  if (value === null) throw new RangeError('this car has no such axle');
  return value;
}

/** An answer of which nothing was reached is no answer: it is the failure of its first row. */
export function refuseAllFailed(rows: readonly Row[]): void {
  const failed = rows.filter(isFailed);
  const first = failed[0];
  if (!first || failed.length < rows.length) return;
  throw new CommandError(first.error);
}

/** The readings that need both axles, with the difference to another setup where one is compared. */
export function wholeCarAt(here: CarReadings, against: Comparison | null, there: CarReadings | null): WholeCarAnswer {
  const these = wholeCarOf(here);
  if (!against || !there) return these;
  const those = wholeCarOf(there);
  return { ...these, against: { setup: against.setup, ...those, difference: differenceOfWholeCar(these, those) } };
}
