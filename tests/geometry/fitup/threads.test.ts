import { describe, expect, it } from 'vitest';
import type { CarDocument, TurnbuckleDocument } from '../../../geometry/car/document';
import { threadsOf, threadVerdict, type ThreadRow } from '../../../geometry/fitup/stroke/threads';
import { sample, stand } from './loadedCars';

function threads(document: CarDocument, setup: string, axle: 'front' | 'rear', side: 'left' | 'right' = 'left'): ThreadRow[] {
  const car = stand(document, setup);
  return threadsOf(car[axle]!.mechanism, car[axle]![side], car.mechanism.mmPerUnit);
}

/** The hatch's front tie rod with a thread and turns of its own. */
function tieRod(thread: Partial<NonNullable<TurnbuckleDocument['thread']>>, turns: number, perTurn = 1.5): ThreadRow {
  const { questions: _, limits: __, onCar: ___, ...document } = sample('saltmarsh-hatch');
  const own = document.front!.adjusters!['tieRod'] as TurnbuckleDocument;
  const adjuster = { ...own, perTurn, range: [-40, 40] as const, thread: { ...own.thread!, ...thread } };
  const front = { ...document.front!, adjusters: { ...document.front!.adjusters, tieRod: adjuster } };
  const setups = { Turned: { front: { both: { tieRod: turns } } } };
  return threads({ ...document, front, setups }, 'Turned', 'front').find(({ name }) => name === 'tieRod')!;
}

describe('verdicts', () => {
  it.each([
    ['steel', 0.999, 'out'],
    ['steel', 1, 'watch'],
    ['steel', 1.499, 'watch'],
    ['steel', 1.5, 'enough'],
    ['aluminium', 1.499, 'out'],
    ['aluminium', 1.5, 'watch'],
    ['aluminium', 1.999, 'watch'],
    ['aluminium', 2, 'enough'],
    // without a material only what both would say
    [null, 0.99, 'out'],
    [null, 1.2, null],
    [null, 1.7, null],
    [null, 2.1, 'enough'],
  ] as const)('%s, %d × the diameter: %s', (material, times, verdict) => {
    expect(threadVerdict(times, material)).toBe(verdict);
  });

  // D11: length at which bolt and nut of one steel are equally strong, by a handbook's formula; two pages' rules of thumb
  it.each([
    [10, 1.5, 8.180472],
    [12, 1.75, 9.876473],
    [12, 1.5, 10.176704],
    [12, 1.25, 10.478053],
    [14, 2, 11.572509],
    [14, 1.5, 12.174092],
    [16, 1.5, 14.172177],
  ])('M%d × %d: steel is out before its thread is the weaker part', (diameter, pitch, equal) => {
    // Le = 2 At ÷ (½ π (D − 0.64952 p)), At = π/4 (D − 0.938194 p)²
    const area = (Math.PI / 4) * (diameter - 0.938194 * pitch) * (diameter - 0.938194 * pitch);
    expect((2 * area) / (0.5 * Math.PI * (diameter - 0.64952 * pitch))).toBeCloseTo(equal, 5);
    expect(threadVerdict(equal / diameter, 'steel')).toBe('out');
    // one page asks for 1.0 d in steel, the other for 1.5 d
    expect(threadVerdict(1, 'steel')).toBe('watch');
    expect(threadVerdict(1.5, 'steel')).toBe('enough');
  });
});

describe('a turnbuckle', () => {
  // D12: two ends of opposite hand move 2 × pitch a turn, each end loses one pitch
  it.each([1, 1.25, 1.5, 1.75, 2])(
    'of pitch %d: each end loses a pitch a turn, and the rod grows by what its ends lose',
    (pitch) => {
      const before = tieRod({ pitch, engaged: 30, ends: 2 }, 0, 2 * pitch);
      const after = tieRod({ pitch, engaged: 30, ends: 2 }, 3, 2 * pitch);
      expect(before.engaged - after.engaged).toBeCloseTo(3 * pitch, 12);
      expect(2 * (before.engaged - after.engaged)).toBeCloseTo(3 * 2 * pitch, 12);
      const single = tieRod({ pitch, engaged: 30, ends: 1 }, 3, pitch);
      expect(single.engaged).toBeCloseTo(30 - 3 * pitch, 12);
      expect(single).toMatchObject({ ends: 1, turns: 3, spacer: null });
    },
  );

  it('goes from enough over watch to out, and in again is more', () => {
    const at = (turns: number): string | null =>
      tieRod({ diameter: 14, pitch: 1.5, engaged: 30, material: 'steel' }, turns).verdict;
    // 30 − 1.5 n against 21 and 14
    expect([-4, 6, 7, 10, 11].map(at)).toEqual(['enough', 'enough', 'watch', 'watch', 'out']);
    expect(tieRod({ diameter: 14, pitch: 1.5, engaged: 30 }, -4).engaged).toBe(36);
  });

  it('is turned by a toe reset too', () => {
    const document = sample('saltmarsh-hatch');
    const car = stand(document, 'Sprint');
    const { toeReset } = car.front!;
    const row = threads(document, 'Sprint', 'front').find(({ name }) => name === 'tieRod')!;
    expect(Math.abs(toeReset!.left)).toBeGreaterThan(0.1);
    expect(row.turns).toBeCloseTo(toeReset!.left, 9);
    expect(row.engaged).toBeCloseTo(30 - 1.5 * toeReset!.left, 9);
  });
});

describe('studs', () => {
  it('lose what a spacer takes, on each side its own', () => {
    const { questions: _, limits: __, onCar: ___, ...document } = sample('saltmarsh-hatch');
    const setups = { Spaced: { rear: { left: { spacer: 5 }, right: { spacer: 15 } } } };
    const studs = { diameter: 14, pitch: 1.5, engaged: 26, material: 'steel' as const };
    const rear = { ...document.rear!, wheel: { ...document.rear!.wheel, studs } };
    const of = (side: 'left' | 'right') =>
      threads({ ...document, rear, setups }, 'Spaced', 'rear', side).find(({ name }) => name === 'studs')!;
    expect(of('left').engaged).toBeCloseTo(21, 9);
    expect(of('left')).toMatchObject({ verdict: 'enough', turns: null });
    expect(of('left').spacer).toBeCloseTo(5, 9);
    expect(of('right').engaged).toBeCloseTo(11, 9);
    expect(of('right').verdict).toBe('out');
  });
});

it('lengths of a file in inches are given in mm', () => {
  const inch = 25.4;
  const { questions: _, limits: __, setups: ___, onCar: ____, ...document } = sample('chalkboard');
  const convert = (value: unknown): unknown =>
    typeof value === 'number' ? value / inch : Array.isArray(value) ? value.map(convert) : value;
  const scaled = (points: object): Record<string, readonly [number, number, number]> =>
    Object.fromEntries(Object.entries(points).map(([name, point]) => [name, convert(point)])) as never;
  const { damper: _d, spring: _s, antiRollBar: _a, heightAt: _h, sections: _c, ...front } = document.front!;
  const wheel = {
    camber: 0,
    toe: 0,
    loadedRadius: 300 / inch,
    studs: { diameter: 0.5, pitch: 0.05, engaged: 0.75, material: 'steel' as const },
  };
  const adjusters = {
    tieRod: {
      ...(front.adjusters!['tieRod'] as TurnbuckleDocument),
      perTurn: 0.1,
      thread: { diameter: 0.5, pitch: 0.05, engaged: 1, ends: 2 as const },
    },
  };
  const car: CarDocument = {
    format: 'jounce-car',
    version: 1,
    name: 'Inches',
    units: { length: 'in' },
    front: {
      ...front,
      points: scaled(front.points),
      wheel,
      steering: { ...front.steering!, travel: 2.5, perTurn: 2 },
      adjusters,
    },
    setups: { Out: { front: { both: { tieRod: 4 } } } },
  };
  const [rod, studs] = threads(car, 'Out', 'front');
  expect(rod.engaged).toBeCloseTo(0.8 * inch, 9);
  expect(rod.times).toBeCloseTo(1.6, 9);
  expect(rod.verdict).toBeNull();
  expect(studs.engaged).toBeCloseTo(0.75 * inch, 9);
  expect(studs.verdict).toBe('enough');
});
