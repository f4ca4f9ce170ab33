import { describe, it } from 'vitest';
import { assembleCar, readingsOfAxle, toMechanism, type Failure } from '../../geometry/index';
import { AXLES, carsOf, documentsOf, lockOf, SIDES } from './assembled';
import { Breaches } from './breaches';
import { isWild, oneDozenIn, SEEDS_IN_WORDS, SETUPS } from './randomCars';

/** What a failure lacks that somebody who wants to mend it needs. */
function* lacks(failure: Failure): Generator<string> {
  if (failure.kind !== 'unreachable' && failure.kind !== 'singular') yield `kind "${String(failure.kind)}"`;
  if (!(failure.message.length > 20) || /NaN|undefined|Infinity|null/.test(failure.message)) yield `message "${failure.message}"`;
  if (failure.axle === undefined) yield 'no axle';
  for (const key of ['missingMm', 'condition'] as const) {
    const value = failure[key];
    if (value !== undefined && !(Number.isFinite(value) && value >= 0)) yield `${key} ${value}`;
  }
  if (failure.limitedBy === '') yield 'limitedBy nothing';
}

describe('what cannot be answered', () => {
  it(`is a failure with its kind, words and numbers, never a throw: positions far out of reach, wild cars of one dozen in two of ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    let failures = 0;
    for (const { seed, document, setup, car, draw } of carsOf(oneDozenIn(2).filter(isWild))) {
      for (const axle of AXLES) {
        const [low, high] = lockOf(document[axle]!);
        for (let i = 0; i < 2; i++) {
          const far = draw.pick([150, 400, 2000, 1e6]);
          const rack = low === high ? 0 : draw.pick([0, 2 * low, 2 * high, 10 * high]);
          const position = draw.chance(0.2)
            ? { travel: draw.between(-60, 60), rack, roll: draw.pick([0.2, -0.6, 1.4]) }
            : { travel: draw.between(-far, far), rack };
          const where = (): string => `seed ${seed} ${setup} ${axle} ${JSON.stringify(position)}`;
          let answer;
          try {
            answer = readingsOfAxle(car, axle, position);
          } catch (error) {
            breaches.check(false, () => `${where()} throws ${String(error)}`);
            continue;
          }
          breaches.check(true, where);
          if (answer.ok) continue;
          const { failure } = answer;
          failures++;
          for (const lack of lacks(failure)) breaches.check(false, () => `${where()}: ${lack}`);
          breaches.check(
            failure.missingMm !== undefined && failure.limitedBy !== undefined,
            () => `${where()}: no missing mm or no limiting link: ${failure.message}`,
          );
          breaches.check(failure.side !== undefined && SIDES.includes(failure.side), () => `${where()}: no side`);
        }
      }
    }
    breaches.expectNone(700);
    breaches.check(failures > 200, () => `only ${failures} failures were seen`);
    breaches.expectNone(0);
  });

  it(`is a failure with its kind, words and numbers where a setup cannot be put together, one dozen in three of ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    let failures = 0;
    for (const { seed, document, draw } of documentsOf(oneDozenIn(3))) {
      const mechanism = toMechanism(document);
      const name = SETUPS[1 + (Math.floor(seed / 36) % 3)];
      const setup = document.setups![name];
      // half of them with a ride height or a toe that few cars reach
      const asked = draw.chance(0.5)
        ? setup
        : {
            ...setup,
            front: { ...setup.front, rideHeight: draw.between(-300, 300) },
            rear: { ...setup.rear, ...(document.rear!.toeAdjuster === undefined ? {} : { setToe: draw.between(-30, 30) }) },
          };
      let made;
      try {
        made = assembleCar(mechanism, asked);
      } catch (error) {
        breaches.check(false, () => `seed ${seed} ${name} throws ${String(error)}`);
        continue;
      }
      breaches.check(true, () => '');
      if (made.ok) continue;
      failures++;
      for (const lack of lacks(made.failure))
        breaches.check(false, () => `seed ${seed} ${name}: ${lack}: ${made.failure.message}`);
    }
    breaches.expectNone(450);
    breaches.check(failures > 60, () => `only ${failures} failures were seen`);
    breaches.expectNone(0);
  });
});
