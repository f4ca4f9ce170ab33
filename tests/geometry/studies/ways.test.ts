import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  findReading,
  findSetup,
  inContractUnits,
  judgeLimits,
  parseCar,
  readingsOfAxle,
  readingsOfCar,
  realSettings,
  setWithin,
  stepScaleOf,
  toMechanism,
  ways,
  withSetting,
  type AxleName,
  type CarDocument,
  type SetupDocument,
  type Way,
  type WaysQuestion,
} from '../../../geometry/index';
import { mattersOf } from '../../../geometry/car/tolerances';
import { carNumberNames, carNumbers } from '../../../geometry/studies/carNumbers';
import { sampleNamed } from '../../samples/samples';
import { settingsOf } from './bruteForce';

const hatch = sampleNamed('saltmarsh-hatch').document;
const PLAIN = { side: 'both', toeReset: undefined, at: {}, pairs: false, withLocked: false } as const;

const asked = (
  document: CarDocument,
  setup: string,
  reading: string,
  value: number,
  more: Partial<WaysQuestion> = {},
): WaysQuestion => {
  const entry = findReading(reading);
  if (!entry) throw new Error(reading);
  return { setup: findSetup(document, setup), entry, value, axle: 'front', ...PLAIN, ...more };
};

const answered = (document: CarDocument, question: WaysQuestion) => {
  const made = ways(toMechanism(document), question);
  if (!made.ok) throw new Error(made.failure.message);
  return made.value;
};

const readAt = (document: CarDocument, setup: SetupDocument, axle: AxleName, key: string): number => {
  const car = assembleCar(toMechanism(document), setup);
  if (!car.ok) throw new Error(car.failure.message);
  const row = readingsOfAxle(car.value, axle, {});
  return row.ok ? (inContractUnits(row.value).left[key] as number) : NaN;
};

const everyNumber = (document: CarDocument, setup: SetupDocument) => {
  const car = assembleCar(toMechanism(document), setup);
  if (!car.ok) throw new Error(car.failure.message);
  return carNumbers(carNumberNames(document), readingsOfCar(car.value));
};

const isBroken = (document: CarDocument, setup: SetupDocument): boolean => {
  const car = assembleCar(toMechanism(document), setup);
  return !car.ok || judgeLimits(car.value).some(({ ok, name }) => !ok && name.startsWith('front'));
};

/** Plain halving between two settings that lie on both sides of the value. */
const halved = (low: number, high: number, miss: (setting: number) => number): number => {
  let [a, b] = [low, high];
  for (let i = 0; i < 80; i += 1) {
    const middle = (a + b) / 2;
    if (miss(middle) > 0 === miss(a) > 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
};

describe('ways', () => {
  test('agree with halving, and stand on the nearest real step', () => {
    const start = findSetup(hatch, 'Baseline');
    const made = answered(hatch, asked(hatch, 'Baseline', 'camber', -1.6));
    expect(made.from).toEqual({ left: expect.closeTo(-1, 6) as number, right: expect.closeTo(-1, 6) as number });
    const plate = made.ways.find(({ adjusters }) => adjusters.join() === 'plateAcross');
    if (!plate) throw new Error('the top plate can do it');
    const miss = (setting: number): number =>
      readAt(hatch, withSetting(start, 'front', 'plateAcross', 'both', setting), 'front', 'camber') + 1.6;
    const root = halved(-12, 0, miss);
    expect(plate.continuous.settings.front?.both?.['plateAcross']).toBeCloseTo(root, 6);
    expect(plate.continuous.value).toEqual({ left: expect.closeTo(-1.6, 8) as number, right: expect.closeTo(-1.6, 8) as number });
    const real = settingsOf(hatch, 'front', 'plateAcross') as number[];
    const nearest = [...real].sort((a, b) => Math.abs(miss(a)) - Math.abs(miss(b)))[0];
    expect(plate.settings).toEqual({ front: { both: { plateAcross: nearest } } });
    expect(plate.missBy).toBeCloseTo(Math.abs(miss(nearest)), 12);
    expect(plate.reaches).toBe(Math.abs(miss(nearest)) <= 0.1);
    expect(plate.rangeUsed).toEqual({ plateAcross: Math.abs(nearest) / 12 });
  });

  test('a clock that meets the value twice is two ways; side effects are those of the setting itself', () => {
    const made = answered(hatch, asked(hatch, 'Baseline', 'caster', 4.5, { tolerance: 0.2 }));
    const clocks = made.ways
      .filter(({ adjusters }) => adjusters.join() === 'rearBush')
      .map(({ settings }) => settings.front?.both?.['rearBush']);
    expect(clocks).toHaveLength(2);
    const [one] = made.ways.filter(({ adjusters }) => adjusters.join() === 'rearBush');
    const start = findSetup(hatch, 'Baseline');
    const before = readAt(hatch, start, 'front', 'mechanicalTrail');
    const after = readAt(
      hatch,
      withSetting(start, 'front', 'rearBush', 'both', one.settings.front?.both?.['rearBush'] ?? null),
      'front',
      'mechanicalTrail',
    );
    expect(one.changes['front.left.mechanicalTrail']).toBe(after - before);
    expect(one.changes).not.toHaveProperty('front.left.caster');
    expect(one.rangeUsed['rearBush']).toBeNull();
  });

  test('there already: nothing to do', () => {
    expect(answered(hatch, asked(hatch, 'Baseline', 'camber', -1.05)).ways).toEqual([]);
  });

  test('those that reach come first, then those that change least; locked parts and broken limits stay out', () => {
    const made = answered(hatch, asked(hatch, 'Baseline', 'camber', -2.4, { pairs: true, toeReset: true }));
    const reaches = made.ways.map((way) => way.reaches);
    expect(reaches).toEqual([...reaches].sort((a, b) => Number(b) - Number(a)));
    expect(reaches[0]).toBe(true);
    expect(made.ways.flatMap(({ adjusters }) => adjusters)).not.toContain('armBolt');
    // the toe reset turns the tie rod
    expect(made.ways.flatMap(({ adjusters }) => adjusters)).not.toContain('tieRod');
    const walled = { ...hatch, limits: [{ reading: 'camber', axle: 'front' as const, min: -1.5, max: 0 }] };
    for (const { value } of answered(walled, asked(walled, 'Baseline', 'camber', -1.6)).ways)
      expect((value as { left: number }).left).toBeGreaterThanOrEqual(-1.5 - 1e-9);
  });

  test('what would reach and breaks a limit is told where it is asked for, with what it breaks', () => {
    const track = { reading: 'track', axle: 'front', max: 1560 } as const;
    const plate = { setting: 'plateAcross', axle: 'front', min: -2 } as const;
    const walled: CarDocument = { ...hatch, limits: [track, plate] };
    const question = asked(walled, 'Baseline', 'camber', -1.6);
    const plain = answered(walled, question);
    expect(plain).not.toHaveProperty('walls');
    const { walls = [], ...rest } = answered(walled, { ...question, withWalls: true });
    expect(rest).toEqual(plain);
    expect(walls.map(({ adjusters }) => adjusters.join())).toContain('plateAcross');
    for (const { adjusters, settings, missBy, reaches, broken } of walls) {
      expect(reaches).toBe(true);
      expect(missBy).toBeLessThanOrEqual(0.1);
      // none of them has a way inside the limits
      expect(plain.ways.some((way) => way.reaches && way.adjusters.join() === adjusters.join())).toBe(false);
      const car = assembleCar(toMechanism(walled), { ...findSetup(walled, 'Baseline'), ...settings });
      if (!car.ok) throw new Error(car.failure.message);
      const judged = judgeLimits(car.value).filter(({ ok }) => !ok);
      expect(broken.map(({ of }) => of).sort()).toEqual(
        [...new Set(judged.map(({ limit }) => limit.reading ?? limit.setting ?? ''))].sort(),
      );
      for (const { of, by } of broken) {
        const spares = judged.filter(({ limit }) => (limit.reading ?? limit.setting) === of).map(({ spare }) => spare ?? 0);
        expect(by).toBeCloseTo(-Math.min(...spares), 9);
        expect(by).toBeGreaterThan(0);
      }
    }
  });

  test('a pair is more than one of its two alone', () => {
    const alone = answered(hatch, asked(hatch, 'Wet', 'camber', -2.4)).ways;
    const made = answered(hatch, asked(hatch, 'Wet', 'camber', -2.4, { pairs: true })).ways;
    const pairs = made.filter(({ adjusters }) => adjusters.length === 2);
    expect(made.filter(({ adjusters }) => adjusters.length === 1)).toEqual(alone);
    expect(pairs.length).toBeGreaterThan(0);
    // a spring perch changes neither camber nor anything else that matters
    expect(pairs.flatMap(({ adjusters }) => adjusters)).not.toContain('perch');
    const start = findSetup(hatch, 'Wet');
    const weight = (changes: Way['changes']): number =>
      Object.entries(changes).reduce((sum, [name, change]) => {
        const matters = mattersOf(hatch, name.split('.').at(-1) ?? '');
        return matters === undefined || name.endsWith('.camber') ? sum : sum + ((change ?? 0) / matters) ** 2;
      }, 0);
    const names = carNumberNames(hatch).map(({ name }) => name);
    for (const pair of pairs.filter(({ reaches }) => reaches))
      for (const name of pair.adjusters) {
        const half = withSetting(start, 'front', name, 'both', pair.settings.front?.both?.[name] ?? null);
        const camber = readAt(hatch, half, 'front', 'camber');
        const before = everyNumber(hatch, start);
        const after = everyNumber(hatch, half);
        const changes = Object.fromEntries(names.map((key) => [key, (after[key] ?? 0) - (before[key] ?? 0)]));
        expect(
          Math.abs(camber + 2.4) > 0.1 || isBroken(hatch, half) || weight(changes) > weight(pair.changes),
          `${name} of ${pair.adjusters.join()}`,
        ).toBe(true);
      }
  });

  test('one wheel alone, and a reading of the axle', () => {
    const left = answered(hatch, asked(hatch, 'Baseline', 'camber', -1.2, { side: 'left', tolerance: 0.05 }));
    const plate = left.ways.find(({ adjusters }) => adjusters.join() === 'plateAcross');
    expect(plate?.settings.front?.left).toBeDefined();
    expect(plate?.value).toBeTypeOf('number');
    // further than that the file's limit on the difference of the sides is a wall
    const wide = answered(hatch, asked(hatch, 'Baseline', 'camber', -1.6, { side: 'left' }));
    expect(wide.ways.every(({ value }) => (value as number) >= -1.3 - 1e-9)).toBe(true);
    const height = answered(hatch, asked(hatch, 'Baseline', 'rollCentreHeight', 95, { tolerance: 4 }));
    expect(height.ways.some(({ adjusters, reaches }) => adjusters.join() === 'pin' && reaches)).toBe(true);
  });

  test('a reading without a value says why', () => {
    const made = ways(toMechanism(hatch), asked(hatch, 'Baseline', 'ackermann', 20));
    expect(made.ok ? '' : made.failure.message).toContain('rack is centred');
  });
});

// the roll centre of this car goes through infinity on the way of its slots
test('an adjuster that is left out brings the value no nearer on any of its steps', async () => {
  const read = parseCar(await readFile(path.resolve(import.meta.dirname, '../../golden/cars/car-23.jounce.json'), 'utf8'));
  if (!read.ok) throw new Error('the reference car is read');
  const { document } = read.value;
  const question = asked(document, 'Trial', 'rollCentreHeight', 80);
  const { from, ways: found } = answered(document, question);
  const within = setWithin(document, 'rollCentreHeight') ?? 1e-9 * 80;
  const height = (setup: SetupDocument): number => {
    const car = assembleCar(toMechanism(document), setup);
    const row = car.ok ? readingsOfAxle(car.value, 'front', {}) : null;
    const isLegal = car.ok && judgeLimits(car.value).every(({ ok, name }) => ok || !name.startsWith('front'));
    return row?.ok && isLegal ? (inContractUnits(row.value).both['rollCentreHeight'] as number) : NaN;
  };
  const passed = Object.entries(document.front?.adjusters ?? {}).filter(
    ([name]) => !found.some((way) => way.adjusters.includes(name)),
  );
  expect(found.map(({ adjusters }) => adjusters[0])).toContain('jointSlot');
  for (const [name, adjuster] of passed)
    for (const setting of realSettings(stepScaleOf(adjuster))) {
      const miss = Math.abs(height(withSetting(question.setup, 'front', name, 'both', setting)) - 80);
      if (adjuster.locked === undefined && Number.isFinite(miss))
        expect(miss, `${name} ${setting}`).toBeGreaterThanOrEqual(Math.abs((from as number) - 80) - within - 1e-9);
    }
});
