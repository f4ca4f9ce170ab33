import { describe, it } from 'vitest';
import { CATALOGUE, sweepCar, type AxleRow, type Position } from '../../geometry/index';
import { AXLES, carsOf, randomPositions, steeredAxle } from './assembled';
import { Breaches } from './breaches';
import { SEEDS, SEEDS_IN_WORDS } from './randomCars';

/** Everything in an answer that is a number and no number. */
function* notFinite(value: unknown, path: string): Generator<string> {
  if (typeof value === 'number' && !Number.isFinite(value)) yield `${path} = ${value}`;
  else if (value === undefined) yield `${path} is undefined`;
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) yield* notFinite(inner, `${path}.${key}`);
}

const KEYS = {
  corner: CATALOGUE.filter((entry) => entry.of === 'corner'),
  axle: CATALOGUE.filter((entry) => entry.of === 'axle'),
  car: CATALOGUE.filter((entry) => entry.of === 'car'),
};

/** What is wrong with the reasons of a row: a null without, a reason without a null. */
function* wrongReasons(row: AxleRow): Generator<string> {
  const nulls = new Set<string>();
  for (const owner of ['left', 'right', 'both'] as const) {
    const readings = row[owner] as unknown as Readonly<Record<string, unknown>>;
    for (const { key } of owner === 'both' ? KEYS.axle : KEYS.corner) {
      if (!(key in readings)) yield `${owner}.${key} is left out`;
      if (readings[key] === null) nulls.add(`${owner}.${key}`);
    }
  }
  for (const name of nulls) if (!row.why[name]) yield `${name} is null and nothing says why`;
  for (const name of Object.keys(row.why)) if (!nulls.has(name)) yield `${name} is not null, and why says "${row.why[name]}"`;
}

describe('every row', () => {
  it(`holds finite numbers or a null with its reason, and no reason without a null, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS)) {
      // the front's positions for the whole car: an unsteered axle is asked with the rack centred
      const steered = document[steeredAxle(document)]!;
      const positions: Position[] = [{}, ...randomPositions(draw, steered, 2)];
      for (const [i, answer] of sweepCar(car, positions).entries()) {
        const where = `seed ${seed} ${setup} ${JSON.stringify(positions[i])}`;
        for (const axle of AXLES) {
          const row = answer[axle];
          if (row === null || !row.ok) continue;
          for (const fault of notFinite(row.value, axle)) breaches.check(false, () => `${where} ${fault}`);
          for (const fault of wrongReasons(row.value)) breaches.check(false, () => `${where} ${axle} ${fault}`);
          breaches.check(true, () => where);
        }
        const whole = answer.wholeCar as unknown as Readonly<Record<string, unknown>>;
        for (const fault of notFinite(whole, 'wholeCar')) breaches.check(false, () => `${where} ${fault}`);
        for (const { key } of KEYS.car) {
          breaches.check(
            (whole[key] === null) === (answer.why[key] !== undefined),
            () => `${where} wholeCar.${key}: ${String(whole[key])}, why "${answer.why[key]}"`,
          );
        }
      }
    }
    breaches.expectNone(20_000);
  });
});
