import { describe, expect, test } from 'vitest';
import {
  answerStudy,
  assembleCar,
  findReading,
  findSetup,
  inContractUnits,
  influence,
  openStudy,
  readingsOfAxle,
  readingsOfCar,
  settingOf,
  toMechanism,
  ways,
  withSetting,
  type AdjusterDocument,
  type CarDocument,
  type QuestionDocument,
  type ReachAnswer,
  type SetupDocument,
  type WantedDocument,
} from '../../../geometry/index';
import { carNumberNames, carNumbers, changesBetween } from '../../../geometry/studies/carNumbers';
import { randomCar } from '../../laws/randomCars';
import { settingsOf } from './bruteForce';

/** Struts, wishbones and five rods in front, steered or not; every fourth car wild. */
const SEEDS = [1, 2, 3, 5, 8, 11, 12, 16] as const;

type Side = 'left' | 'right';

const readAt = (car: CarDocument, setup: SetupDocument, side: Side, key: string, travel = 0): number | null => {
  const made = assembleCar(toMechanism(car), setup);
  if (!made.ok || made.value.front?.toeReset?.inRange === false) return null;
  const row = readingsOfAxle(made.value, 'front', { travel });
  const value = row.ok ? inContractUnits(row.value)[side][key] : null;
  return typeof value === 'number' ? value : null;
};

/** A car's front adjusters with ranges cut to a few steps, so that every combination can be tried. */
const withFew = (car: CarDocument, steps: Readonly<Record<string, number>>): CarDocument => {
  const cut = (adjuster: AdjusterDocument, count: number): AdjusterDocument =>
    'range' in adjuster
      ? { ...adjuster, range: [adjuster.range[0] < 0 ? -count * adjuster.step : 0, count * adjuster.step] }
      : adjuster;
  const adjusters = Object.entries(car.front?.adjusters ?? {}).map(([name, one]) => [
    name,
    name in steps ? cut(one, steps[name]) : one,
  ]);
  return { ...car, front: { ...car.front!, adjusters: Object.fromEntries(adjusters) as Record<string, AdjusterDocument> } };
};

describe.each(SEEDS)('seeded car %i', (seed) => {
  const car = randomCar(seed);
  const setup = findSetup(car, 'Design');
  const now = readAt(car, setup, 'left', 'camber')!;

  test('ways are where halving between two marks ends, and every part whose marks pass the value is a way', () => {
    const value = now - 0.1;
    const entry = findReading('camber')!;
    const asked = { setup, entry, value, axle: 'front', side: 'left', toeReset: undefined, at: {}, pairs: false } as const;
    const found = ways(toMechanism(car), { ...asked, tolerance: 0.02, withLocked: false });
    if (!found.ok) throw new Error(found.failure.message);
    let crossed = 0;
    for (const name of Object.keys(car.front?.adjusters ?? {})) {
      const miss = (setting: number): number => {
        const camber = readAt(car, withSetting(setup, 'front', name, 'left', setting), 'left', 'camber');
        return camber === null ? NaN : camber - value;
      };
      const marks = (settingsOf(car, 'front', name) as number[]).map((mark) => [mark, miss(mark)] as const);
      const roots = found.value.ways
        .filter(({ adjusters }) => adjusters[0] === name)
        .map((way) => settingOf(way.continuous.settings, 'front', name, 'left')!);
      for (let i = 1; i < marks.length; i += 1) {
        const [[from, before], [to, after]] = [marks[i - 1], marks[i]];
        // what comes no nearer on a real mark than by what counts as reached is no way
        if (!(before * after < 0) || Math.min(Math.abs(before), Math.abs(after)) >= 0.1 - 0.02) continue;
        let [a, b] = [from, to];
        for (let k = 0; k < 50; k += 1) {
          const middle = (a + b) / 2;
          if (miss(middle) > 0 === before > 0) a = middle;
          else b = middle;
        }
        crossed += 1;
        expect(Math.min(...roots.map((root) => Math.abs(root - a))), `${name} at ${a}`).toBeLessThan(1e-5);
      }
    }
    expect(crossed).toBeGreaterThan(0);
  });

  test('influence is the difference of two readings, exactly', () => {
    const mechanism = toMechanism(car);
    const asked = { setup, axles: ['front'], side: 'right', toeReset: undefined, at: { travel: 6 }, withLocked: true } as const;
    const found = influence(mechanism, asked);
    if (!found.ok) throw new Error(found.failure.message);
    const names = carNumberNames(car);
    const numbers = (of: SetupDocument) => {
      const made = assembleCar(mechanism, of);
      return made.ok ? carNumbers(names, readingsOfCar(made.value, { travel: 6 })) : null;
    };
    const before = numbers(setup)!;
    let held = 0;
    for (const { adjuster, step, more } of found.value.rows) {
      if (more === null) continue;
      const after = numbers(withSetting(setup, 'front', adjuster, 'right', step))!;
      const exact = changesBetween(before, after);
      for (const [name, change] of Object.entries(more)) expect(change, `${adjuster} ${name}`).toBe(exact[name]);
      held += 1;
    }
    expect(held).toBeGreaterThan(2);
  });
});

/** One thing that may be moved: where it can stand, and the car with it there. */
interface Moved {
  readonly values: readonly (number | null)[];
  readonly put: (at: { readonly car: CarDocument; readonly setup: SetupDocument }, value: number | null) => typeof at;
}

const turned = (car: CarDocument, name: string, side: 'left' | 'right' | 'both'): Moved => ({
  values: settingsOf(car, 'front', name),
  put: (at, value) => ({ ...at, setup: withSetting(at.setup, 'front', name, side, value) }),
});

/** A free point of the left drawing that the right one mirrors. */
const drilled = (name: string, values: readonly number[]): Moved => ({
  values,
  put: (at, value) => {
    const { front } = at.car;
    const [x, y, z] = front!.points[name];
    return { ...at, car: { ...at.car, front: { ...front!, points: { ...front!.points, [name]: [x, y, z + (value ?? 0)] } } } };
  },
});

/** The score as the contract defines it: the sum over what is wanted of the mean of (miss ÷ tolerance)² over its places and sides. */
const scoreOf = (car: CarDocument, setup: SetupDocument, wanted: readonly WantedDocument[]): number | null => {
  let score = 0;
  for (const { reading, side, at, over, change, value, range, tolerance } of wanted) {
    const sides: readonly Side[] = side === 'left' || side === 'right' ? [side] : ['left', 'right'];
    const travels = over
      ? Array.from({ length: over.steps }, (_, i) => over.from + ((over.to - over.from) * i) / (over.steps - 1))
      : [(at?.travel as number | undefined) ?? 0];
    const misses: number[] = [];
    for (const one of sides) {
      const zero = change === true ? readAt(car, setup, one, reading) : 0;
      for (const travel of travels) {
        const read = readAt(car, setup, one, reading, travel);
        if (read === null || zero === null) return null;
        const [low, high] = range ?? [value!, value!];
        misses.push(Math.max((low ?? -Infinity) - (read - zero), read - zero - (high ?? Infinity), 0) / tolerance);
      }
    }
    score += misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length;
  }
  return score;
};

const best = (car: CarDocument, setup: SetupDocument, wanted: readonly WantedDocument[], moved: readonly Moved[]) => {
  const walk = (at: { car: CarDocument; setup: SetupDocument }, [first, ...rest]: readonly Moved[]): readonly number[] =>
    first === undefined
      ? [scoreOf(at.car, at.setup, wanted) ?? Infinity]
      : first.values.flatMap((value) => walk(first.put(at, value), rest));
  const scores = walk({ car, setup }, moved);
  return { count: scores.length, least: Math.min(...scores) };
};

const reached = (car: CarDocument, setup: SetupDocument, question: QuestionDocument): ReachAnswer => {
  const made = answerStudy(openStudy({ study: 'reach', document: car, setup, question }));
  if (!made.ok) throw new Error(made.failure.message);
  return made.value;
};

describe.each([3, 1, 2, 6] as const)('reach on seeded car %i', (seed) => {
  const car = withFew(randomCar(seed), { shim: 2, pin: 2, spacer: 2 });
  const plain = findSetup(car, 'Design');
  const now = readAt(car, plain, 'right', 'camber')!;
  const toe = { reading: 'toe', axle: 'front', side: 'both', change: true, range: [-0.02, 0.02], tolerance: 0.01 } as const;
  const steady: WantedDocument = { ...toe, over: { motion: 'bump', from: -20, to: 20, steps: 3 } };
  const camber = (side: 'left' | 'right' | 'both', by: number): WantedDocument => ({
    reading: 'camber',
    axle: 'front',
    side,
    value: now + by,
    tolerance: 0.05,
  });

  test('has the least score of the whole product: together, apart, a free point, and with toe set after every move', () => {
    const cases: readonly (readonly [SetupDocument, QuestionDocument, readonly Moved[]])[] = [
      [
        plain,
        {
          wanted: [camber('right', -0.15), steady],
          may: [
            { axle: 'front', adjuster: 'pin' },
            { axle: 'front', adjuster: 'shim' },
          ],
        },
        [turned(car, 'pin', 'both'), turned(car, 'shim', 'both')],
      ],
      [
        plain,
        { wanted: [camber('left', 0.1), camber('right', -0.1)], may: [{ axle: 'front', adjuster: 'pin', sides: 'apart' }] },
        [turned(car, 'pin', 'left'), turned(car, 'pin', 'right')],
      ],
      [
        { ...plain, front: { ...plain.front, setToe: 0.1 } },
        {
          setToe: 0.1,
          wanted: [camber('both', -0.1), steady],
          may: [
            { axle: 'front', adjuster: 'pin' },
            { axle: 'front', adjuster: 'spacer' },
          ],
        },
        [turned(car, 'pin', 'both'), turned(car, 'spacer', 'both')],
      ],
    ];
    for (const [setup, question, moved] of cases) {
      const answer = reached(car, plain, { ...question, count: 1 });
      const brute = best(car, setup, question.wanted, moved);
      expect(answer).toMatchObject({ all: true, tried: brute.count });
      const [first] = answer.answers;
      if (first === undefined) expect(brute.least).toBe(Infinity);
      // a toe reset leaves the last digits of toe open
      else expect(Math.abs(first.score - brute.least) / Math.max(1, brute.least)).toBeLessThan(setup === plain ? 1e-9 : 1e-6);
    }
  });

  test('moves a free point on the drawing of both sides', () => {
    const { right: _, ...front } = car.front!;
    const twin = { ...car, front };
    const wanted = [steady];
    const may = [{ axle: 'front', point: 'tieRodEnd', along: [0, 0, 1], range: [-6, 6], step: 2 }] as const;
    const [first] = reached(twin, plain, { count: 1, wanted, may }).answers;
    const brute = best(twin, plain, wanted, [drilled('tieRodEnd', [-6, -4, -2, 0, 2, 4, 6])]);
    expect(Math.abs(first.score - brute.least) / Math.max(1, brute.least)).toBeLessThan(1e-9);
  });

  test('a tighter tolerance is never nearer; what helps, let out by what it says, helps by what it says', () => {
    const question = (tolerance: number): QuestionDocument => ({
      count: 1,
      wanted: [{ ...camber('right', -3), tolerance }],
      may: [{ axle: 'front', adjuster: 'pin' }],
    });
    const scores = [0.4, 0.1, 0.05].map((tolerance) => reached(car, plain, question(tolerance)).answers[0]?.score ?? Infinity);
    expect(scores).toEqual([...scores].sort((a, b) => a - b));
    const { answers, helps } = reached(car, plain, question(0.1));
    const pin = car.front!.adjusters!['pin'];
    if (helps?.kind !== 'range' || !('range' in pin)) throw new Error('three degrees are past the end of the pin');
    const [min, max] = pin.range;
    const range = helps.end === 'min' ? ([min - helps.by, max] as const) : ([min, max + helps.by] as const);
    const longer = { ...car, front: { ...car.front!, adjusters: { ...car.front!.adjusters, pin: { ...pin, range } } } };
    const gained = answers[0].score - reached(longer, plain, question(0.1)).answers[0].score;
    expect(Math.abs(gained - helps.gain) / Math.max(1, helps.gain)).toBeLessThan(1e-9);
  });
});
