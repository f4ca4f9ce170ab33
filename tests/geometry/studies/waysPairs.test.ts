import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  findReading,
  findSetup,
  judgeLimits,
  readingsOfCar,
  settingOf,
  toMechanism,
  ways,
  withSetting,
  type AdjusterDocument,
  type CarDocument,
  type SetupDocument,
  type WaysQuestion,
} from '../../../geometry/index';
import { mattersOf } from '../../../geometry/car/tolerances';
import { carNumberNames, carNumbers } from '../../../geometry/studies/carNumbers';
import { randomCar } from '../../laws/randomCars';
import { sampleNamed } from '../../samples/samples';
import { settingsOf } from './bruteForce';

/** The car in one setup, as the contract weighs it: misses in degrees or mm, weight Σ (change ÷ matters)² over all else. */
interface Stand {
  readonly missBy: number;
  readonly weight: number;
  readonly isLegal: boolean;
}

/** Every number of the car through the library's plain face; null where it cannot be there. */
const standing = (car: CarDocument, question: WaysQuestion): ((setup: SetupDocument) => Stand | null) => {
  const mechanism = toMechanism(car);
  const names = carNumberNames(car);
  const { axle, entry, side, value } = question;
  const owners = entry.of === 'axle' ? ['both'] : side === 'both' ? ['left', 'right'] : [side];
  const asked = owners.map((owner) => `${axle}.${owner}.${entry.key}`);
  const numbersOf = (setup: SetupDocument) => {
    const made = assembleCar(mechanism, setup);
    if (!made.ok) return null;
    const isLegal = judgeLimits(made.value).every(({ ok, name }) => ok || !/^(?:front|wholeCar)/.test(name));
    return { numbers: carNumbers(names, readingsOfCar(made.value)), isLegal };
  };
  const before = numbersOf(question.setup)!.numbers;
  return (setup) => {
    const after = numbersOf(setup);
    const values = asked.map((name) => after?.numbers[name] ?? null);
    if (after === null || values.includes(null)) return null;
    let weight = 0;
    for (const { name, entry: other } of names) {
      const matters = mattersOf(car, other.key);
      const [was, is] = [before[name] ?? null, after.numbers[name]];
      if (asked.includes(name) || matters === undefined || was === null || is === null) continue;
      weight += ((is - was) / matters) ** 2;
    }
    return { missBy: Math.max(...values.map((one) => Math.abs(one! - value))), weight, isLegal: after.isLegal };
  };
};

/** Marks that a part can be turned to: neither where it stands, nor out of the arm where a bushing is fitted. */
const turnedTo = (car: CarDocument, setup: SetupDocument, name: string): readonly (number | null)[] => {
  const now = settingOf(setup, 'front', name, 'left');
  const isBushing = car.front?.adjusters?.[name]?.kind === 'offset-bushing';
  return settingsOf(car, 'front', name).filter((mark) => mark !== (isBushing ? now : (now ?? 0)));
};

/** The best of the whole product of two parts, tried one by one; null where it is no pair that belongs in the list. */
const bestPair = (
  car: CarDocument,
  question: WaysQuestion,
  one: string,
  other: string,
  stand: (of: SetupDocument) => Stand | null,
) => {
  const { setup, side, tolerance: within = 0 } = question;
  const put = (name: string, mark: number | null, of: SetupDocument) => withSetting(of, 'front', name, side, mark);
  const alone = (name: string) =>
    new Map(turnedTo(car, setup, name).map((mark) => [mark, stand(put(name, mark, setup))] as const));
  const [first, second] = [alone(one), alone(other)];
  let best: (Stand & { readonly marks: readonly [number | null, number | null] }) | null = null;
  for (const a of first.keys())
    for (const b of second.keys()) {
      const found = stand(put(other, b, put(one, a, setup)));
      if (found === null || !found.isLegal) continue;
      const [is, was] = [found.missBy <= within, best !== null && best.missBy <= within];
      const isBetter = is !== was ? is : is ? found.weight < best!.weight : found.missBy < (best?.missBy ?? Infinity);
      if (isBetter) best = { ...found, marks: [a, b] };
    }
  if (best === null) return null;
  const { missBy, weight, marks } = best;
  const isDone = [first.get(marks[0]), second.get(marks[1])].some(
    (half) => half?.isLegal && half.missBy <= Math.max(within, missBy) && half.weight <= weight * (1 + 1e-9) + 1e-9,
  );
  const nearest = [...first.values(), ...second.values(), stand(setup)].flatMap((half) => (half?.isLegal ? [half.missBy] : []));
  return isDone || (missBy > within && missBy > Math.min(...nearest) - within) ? null : best;
};

/** A few parts of a random car, each of another kind, with so many steps to each side at most. */
const withKinds = (car: CarDocument, steps: number): CarDocument => {
  const kinds = new Map<string, [string, AdjusterDocument]>();
  for (const [name, adjuster] of Object.entries(car.front?.adjusters ?? {}))
    if (adjuster.locked === undefined && name !== 'perch' && !kinds.has(adjuster.kind))
      kinds.set(adjuster.kind, [name, adjuster]);
  const cut = ([name, adjuster]: [string, AdjusterDocument]): [string, AdjusterDocument] => {
    if (!('range' in adjuster)) return [name, adjuster];
    const [min, max] = adjuster.range;
    return [name, { ...adjuster, range: [Math.max(min, -steps * adjuster.step), Math.min(max, steps * adjuster.step)] }];
  };
  const { toeAdjuster: _, ...front } = car.front!;
  return { ...car, front: { ...front, adjusters: Object.fromEntries([...kinds.values()].map(cut)) } };
};

const PLAIN = { axle: 'front', toeReset: undefined, at: {}, pairs: true, withLocked: false } as const;

const held = (car: CarDocument, question: WaysQuestion): { readonly listed: number; readonly left: number } => {
  const found = ways(toMechanism(car), question);
  if (!found.ok) throw new Error(found.failure.message);
  const stand = standing(car, question);
  const names = Object.keys(car.front?.adjusters ?? {});
  let [listed, left] = [0, 0];
  names.forEach((one, index) =>
    names.slice(index + 1).forEach((other) => {
      const what = `${one} and ${other} to ${question.value}`;
      const best = bestPair(car, question, one, other, stand);
      const way = found.value.ways.find(({ adjusters }) => adjusters.join() === `${one},${other}`);
      expect(way === undefined, what).toBe(best === null);
      if (way === undefined || best === null) return void (left += 1);
      listed += 1;
      const side = question.side === 'right' ? 'right' : 'left';
      const marks = way.adjusters.map((name) => settingOf(way.settings, 'front', name, side));
      // of equals any: a cam turned to either side of its middle
      const stood = stand(
        way.adjusters.reduce((of, name, i) => withSetting(of, 'front', name, question.side, marks[i]), question.setup),
      )!;
      expect(stood.isLegal, what).toBe(true);
      expect(way.reaches, what).toBe(best.missBy <= (question.tolerance ?? 0));
      const [got, least] = way.reaches ? [stood.weight, best.weight] : [stood.missBy, best.missBy];
      expect(Math.abs(got - least) / Math.max(1, least), `${what}: ${marks.join()} for ${best.marks.join()}`).toBeLessThan(1e-8);
    }),
  );
  return { listed, left };
};

describe('the best of a pair is the best of the whole product of its marks', () => {
  const seeds = [1, 2, 5, 10] as const;
  const counted = { listed: 0, left: 0 };
  test.each(seeds)('seeded car %i, camber and roll centre, one wheel and both', (seed) => {
    const car = withKinds(randomCar(seed), 3);
    const setup = findSetup(car, 'Design');
    const made = assembleCar(toMechanism(car), setup);
    if (!made.ok) throw new Error(made.failure.message);
    const numbers = carNumbers(carNumberNames(car), readingsOfCar(made.value));
    const cases = [
      ['camber', 'left', -0.5, 0.15],
      ['caster', 'right', 0.3, 0.1],
      ['rollCentreHeight', 'both', 6, 2],
    ] as const;
    for (const [key, side, by, tolerance] of cases) {
      const now = numbers[`front.${key === 'rollCentreHeight' ? 'both' : side}.${key}`];
      if (now === null) continue;
      const { listed, left } = held(car, { ...PLAIN, setup, entry: findReading(key)!, value: now + by, side, tolerance });
      counted.listed += listed;
      counted.left += left;
    }
  });

  test('pairs were listed and left out', () => {
    expect(counted.listed).toBeGreaterThan(8);
    expect(counted.left).toBeGreaterThan(8);
  });
});

const hatch = sampleNamed('saltmarsh-hatch').document;

/** The sample with these parts alone. */
const withParts = (names: readonly string[], limits: CarDocument['limits']): CarDocument => {
  const { toeAdjuster: _, ...front } = hatch.front!;
  const adjusters = Object.fromEntries(Object.entries(front.adjusters ?? {}).filter(([name]) => names.includes(name)));
  return { ...hatch, limits, front: { ...front, adjusters } };
};

test('a scale of a hundred marks, a bushing that is not fitted yet, and limits in the way', () => {
  const setup: SetupDocument = {};
  const ask = (value: number, tolerance: number): WaysQuestion => ({
    ...PLAIN,
    setup,
    entry: findReading('caster')!,
    value,
    side: 'both',
    tolerance,
  });
  const long = withParts(['rearBush', 'tieRod'], []);
  held(long, ask(4.6, 0.05));
  // from a bushing that is not there, twelve o'clock is a move
  // the plate or the bolt alone makes the track too wide
  const now = standing(hatch, { ...ask(0, 1), entry: findReading('track')! })(setup)!.missBy;
  const track = { reading: 'track', axle: 'front', max: now + 5.9 } as const;
  const walled = withParts(['plateAcross', 'rodShim', 'clampBolt'], [track]);
  expect(held(walled, { ...ask(-1.9, 0.1), entry: findReading('camber')! }).listed).toBeGreaterThan(0);
});
