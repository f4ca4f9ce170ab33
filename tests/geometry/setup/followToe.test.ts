import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  findSetup,
  readingsOfCar,
  toMechanism,
  type AssembledCar,
  type AxleName,
  type CarDocument,
  type CarMechanism,
  type CarReadings,
  type SetupDocument,
} from '../../../geometry/index';
import { randomCar } from '../../laws/randomCars';
import { SAMPLES } from '../../samples/samples';

const AXLES: readonly AxleName[] = ['front', 'rear'];

/** A walk from setting to setting: small steps, then back to the start in one. */
const WALK = [0, 0.02, 0.05, 0.11, -0.04, -0.2, 0.01];

/** The setup with the first slide or cam that is no toe adjuster turned so far along its range, toe set after it. */
function turned(document: CarDocument, axle: AxleName, base: SetupDocument, share: number, isApart: boolean): SetupDocument {
  const { adjusters = {}, toeAdjuster } = document[axle] ?? {};
  const entries = Object.entries(adjusters).filter(([name]) => name !== toeAdjuster);
  const values = Object.fromEntries(
    entries.flatMap(([name, adjuster]) =>
      adjuster.kind === 'slide' ? [[name, share * (adjuster.range[1] - adjuster.range[0])]] : [],
    ),
  );
  const apart = isApart ? { right: Object.fromEntries(Object.keys(values).map((name) => [name, -0.5 * values[name]])) } : {};
  return { ...base, [axle]: { ...base[axle], both: { ...base[axle]?.both, ...values }, ...apart, setToe: 0.083 } };
}

function assembled(mechanism: CarMechanism, setup: SetupDocument, near: AssembledCar | null): AssembledCar | null {
  const car = assembleCar(mechanism, setup, AXLES, near);
  return car.ok ? car.value : null;
}

/** Numbers of a row where it stands and away from it; relative to 1 or to their own size. */
function worstGap(one: CarReadings, other: CarReadings, axle: AxleName): number {
  const [a, b] = [one[axle], other[axle]];
  if (a === null || b === null || !a.ok || !b.ok) return a?.ok === b?.ok ? 0 : Infinity;
  let worst = 0;
  // a reading that runs off where two lines get parallel says nothing of the poses
  for (const key of ['camber', 'toe', 'caster', 'halfTrack', 'camberGain', 'bumpSteer'] as const)
    for (const side of ['left', 'right'] as const) {
      const [x, y] = [a.value[side][key], b.value[side][key]];
      if (x !== null && y !== null) worst = Math.max(worst, Math.abs(x - y) / Math.max(1, Math.abs(x)));
      else if (x !== y) return Infinity;
    }
  return worst;
}

function walk(document: CarDocument, axle: AxleName, base: SetupDocument, isApart: boolean): { followed: number; of: number } {
  const mechanism = toMechanism(document);
  let near: AssembledCar | null = null;
  let followed = 0;
  let of = 0;
  for (const share of WALK) {
    const setup = turned(document, axle, base, share, isApart);
    const anew = assembled(mechanism, setup, null);
    const car: AssembledCar | null = assembled(mechanism, setup, near);
    expect(car === null).toBe(anew === null);
    if (car === null || anew === null) continue;
    const [own, from] = [car[axle], anew[axle]];
    if (own === null || from === null) throw new Error('the axle was asked for');
    for (const side of ['left', 'right'] as const) {
      expect(Math.abs(own.standing[side] - from.standing[side])).toBeLessThan(1e-7);
      expect(Math.abs((own.toeReset?.[side] ?? 0) - (from.toeReset?.[side] ?? 0))).toBeLessThan(1e-7);
    }
    for (const position of [{}, { travel: 20 }, { travel: { left: 10, right: -15 } }])
      expect(worstGap(readingsOfCar(car, position), readingsOfCar(anew, position), axle)).toBeLessThan(1e-8);
    if (near !== null) of += 1;
    if (own.stood !== null) followed += 1;
    near = car;
  }
  return { followed, of };
}

const cases = SAMPLES.flatMap(({ name, document }) =>
  AXLES.flatMap((axle) => {
    const { adjusters = {}, toeAdjuster = '' } = document[axle] ?? {};
    return adjusters[toeAdjuster]?.kind === 'turnbuckle' ? [{ name, document, axle }] : [];
  }),
);

describe.each(cases)('a toe reset that starts from a neighbour: $name $axle', ({ document, axle }) => {
  test.each(
    Object.keys(document.setups ?? {}).flatMap((setup) => [
      { setup, isApart: false },
      { setup, isApart: true },
    ]),
  )('finds what one from nothing finds, on $setup, sides apart: $isApart', ({ setup, isApart }) => {
    const { followed, of } = walk(document, axle, findSetup(document, setup), isApart);
    // and it was the short way that was taken, not the long one again
    expect(followed).toBe(of);
  });
});

test('on random cars with random heights, where links may not meet', () => {
  let followed = 0;
  for (let seed = 1; seed <= 60; seed += 1) {
    const document = randomCar(seed);
    for (const axle of AXLES) {
      if (document[axle]?.toeAdjuster === undefined) continue;
      const height = seed % 2 === 0 ? { [axle]: { rideHeight: -12 } } : {};
      followed += walk(document, axle, { ...height }, seed % 3 === 0).followed;
    }
  }
  expect(followed).toBeGreaterThan(100);
});
