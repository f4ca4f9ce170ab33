import type { AxleName } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { sweepAxle, sweepCar } from '../readings/readings';
import type { Position } from '../readings/rows';
import { assembleCar, type AssembledCar } from '../setup/assembleCar';
import type { Question, Wanted } from './question';

/** By dotted name of a wanted reading why it has no value. */
export type WhyNothing = Readonly<Record<string, string>>;

/**
 * Why nothing answers a question, as far as the setup that it starts from tells: a wanted reading has no value there, or
 * a position cannot be reached. Empty where all have their values: then ranges and limits are in the way.
 */
export function whyNothing(mechanism: CarMechanism, question: Question): WhyNothing {
  const car = assembleCar(mechanism, question.setup);
  if (!car.ok) return {};
  const why: Record<string, string> = {};
  for (const wanted of question.wanted)
    for (const index of [...(wanted.from === null ? [] : [wanted.from]), ...wanted.at])
      for (const owner of wanted.owners) {
        const name = wanted.axle === 'wholeCar' ? `wholeCar.${wanted.entry.key}` : `${wanted.axle}.${owner}.${wanted.entry.key}`;
        const reason = reasonAt(car.value, wanted, owner, question.positions[index]);
        if (reason !== null) why[name] ??= reason;
      }
  return why;
}

function reasonAt(car: AssembledCar, { axle, entry }: Wanted, owner: string, position: Position): string | null {
  if (axle === 'wholeCar') return sweepCar(car, [position])[0].why[entry.key] ?? null;
  return reasonOnAxle(car, axle, `${owner}.${entry.key}`, position);
}

function reasonOnAxle(car: AssembledCar, axle: AxleName, name: string, position: Position): string | null {
  const [row] = sweepAxle(car, axle, [position]);
  return row.ok ? (row.value.why[name] ?? null) : row.failure.message;
}
