import type { SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { fail, succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { readingsOfCar } from '../readings/readings';
import type { Position } from '../readings/rows';
import { assembleCar } from '../setup/assembleCar';
import { carNumberNames, carNumbers, changesBetween, type CarNumber, type Numbers } from './carNumbers';

/** A setup of a car, of the same one or of another. */
export interface ComparedSetup {
  readonly mechanism: CarMechanism;
  readonly setup: SetupDocument;
}

/** One setup at the position. */
export interface ComparedNumbers {
  /** by dotted name, in contract units */
  readonly values: Numbers;
  /** by the same names: why there is no value */
  readonly why: Readonly<Record<string, string>>;
}

export interface Comparison {
  /** every reading that is one number, of the axles of the first setup's car */
  readonly names: readonly CarNumber[];
  /** in the order of the setups; a failure where one cannot stand or cannot be there */
  readonly setups: readonly Result<ComparedNumbers, Failure>[];
  /** each setup less the first, in the same order; null where either has no answer */
  readonly differences: readonly (Numbers | null)[];
}

/** Setups held against the first of them, all at one position. @param setups - one at least */
export function compare(setups: readonly ComparedSetup[], position: Position): Comparison {
  const [first] = setups;
  if (first === undefined) throw new RangeError('compare: no setup is given.');
  const names = carNumberNames(first.mechanism.document);
  const answers = setups.map((one) => numbersAt(one, names, position));
  const [base] = answers;
  return {
    names,
    setups: answers,
    differences: answers.map((answer) => (base.ok && answer.ok ? changesBetween(base.value.values, answer.value.values) : null)),
  };
}

function numbersAt(
  { mechanism, setup }: ComparedSetup,
  names: readonly CarNumber[],
  position: Position,
): Result<ComparedNumbers, Failure> {
  const car = assembleCar(mechanism, setup);
  if (!car.ok) return car;
  const rows = readingsOfCar(car.value, position);
  for (const row of [rows.front, rows.rear]) if (row !== null && !row.ok) return fail(row.failure);
  const values = carNumbers(names, rows);
  const why: Record<string, string> = {};
  for (const { name, entry, axle, owner } of names) {
    if (values[name] !== null) continue;
    const row = axle === 'wholeCar' ? null : rows[axle];
    const reasons = axle === 'wholeCar' ? rows.why : row?.ok === true ? row.value.why : {};
    why[name] =
      row === null && axle !== 'wholeCar'
        ? `this car has no ${axle} axle`
        : (reasons[axle === 'wholeCar' ? entry.key : `${owner}.${entry.key}`] ?? 'it has no value here');
  }
  return succeed({ values, why });
}
