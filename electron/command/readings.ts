import {
  judgeLimits,
  readingsOfAxle,
  readingsOfCar,
  differenceOfReadings,
  type AssembledCar,
  type AxleName,
  type Position,
  type ReadingValue,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import type { LoadedCar } from './carSource';
import { CommandError, usageError } from './commandError';
import { askedPosition, assembledSetup, axlesAsked } from './question';
import { readingsInWords } from './readingsTable';
import { isFailed, limitsOf, rowOf, wholeCarOf, type Row } from './rows';

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
  const limits = judgeLimits(assembled, car.document);
  const rowOfAxle = (axle: AxleName): Row =>
    rowOf(readingsOfAxle(assembled, axle, position), {
      input: undefined,
      limits: limitsOf(limits, axle),
      ...(against ? { against: { setup: against.setup, result: readingsOfAxle(against.car, axle, position) } } : {}),
    });
  const answers = axles.map((axle) => ({ axle, row: rowOfAxle(axle) }));
  const failed = answers.map(({ row }) => row).filter(isFailed);
  const first = failed[0];
  if (first && failed.length === answers.length) throw new CommandError(first.error);

  const head = { car: car.document.name, setup };
  const ofAxle = (axle: AxleName) => {
    const found = answers.find((candidate) => candidate.axle === axle);
    return found ? { axle, rows: [found.row] } : null;
  };
  if (call.options.axle !== undefined) {
    const document = { ...head, axle: call.options.axle, units: UNITS, rows: answers.map(({ row }) => row) };
    return { document, words: (style) => readingsInWords({ ...head, axles: answers, wholeCar: null }, style) };
  }
  const wholeCar = wholeCarAt(assembled, position, against);
  const document = { ...head, units: UNITS, front: ofAxle('front'), rear: ofAxle('rear'), wholeCar };
  return { document, words: (style) => readingsInWords({ ...head, axles: answers, wholeCar }, style) };
}

export type WholeCar = Readonly<Record<string, unknown>>;

/** The readings that need both axles, with the difference to another setup where one is compared. */
export function wholeCarAt(assembled: AssembledCar, position: Position, against: Comparison | null): WholeCar {
  const read = (car: AssembledCar) => {
    const { wholeCar, why } = readingsOfCar(car, position);
    return wholeCarOf(wholeCar, why);
  };
  const here = read(assembled);
  if (!against) return here;
  const there = read(against.car);
  const { why: _here, ...these } = here;
  const { why: _there, ...those } = there;
  const difference = differenceOfReadings(these as Record<string, ReadingValue>, those as Record<string, ReadingValue>);
  return { ...here, against: { setup: against.setup, ...there, difference } };
}
