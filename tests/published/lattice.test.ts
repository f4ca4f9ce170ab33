import { describe, expect, test } from 'vitest';
import { latticeSearch, LATTICE_STARTS } from '../../geometry/studies/latticeSearch';
import type { Question } from '../../geometry/studies/question';
import { realSettings } from '../../geometry/adjusters/stepScale';

/** Steps from −most to +most. */
const steps = (most: number, step: number): number[] => realSettings({ min: -most, max: most, step, isRound: false });

/** The best combinations that all searches find, each with its values. */
const bestOf = (lists: readonly (readonly number[])[], cost: (values: readonly number[]) => number) => {
  const variables = lists.map((values) => ({ kind: 'adjuster', axle: 'front', side: 'both', name: 'any', values }) as const);
  const question = { variables, seed: 1 } as unknown as Question;
  const found = new Map<string, { readonly values: readonly number[]; readonly cost: number }>();
  for (let start = 0; start < LATTICE_STARTS; start += 1)
    latticeSearch(question, start, (indexes) => {
      const values = indexes.map((index, i) => lists[i][index]);
      const made = { values, cost: cost(values) };
      found.set(values.join(), made);
      return made.cost;
    });
  return [...found.values()].sort((a, b) => a.cost - b.cost);
};

const cleanZeros = (values: readonly number[]): number[] => values.map((value) => value + 0);

describe('the search over real steps', () => {
  // D39: exact, all 1681 combinations tried. The rounded continuous answer (1, 5) costs 62.5.
  test('D39: nearly dependent adjusters, where rounding is wrong', () => {
    const rows = [
      [0.2, 0.13],
      [0.05, 0.06],
    ];
    const wanted = [1, 0.4];
    const cost = (n: readonly number[]): number =>
      rows.reduce((sum, row, i) => sum + ((row[0] * n[0] + row[1] * n[1] - wanted[i]) / 0.02) ** 2, 0);
    expect(cost([1, 5])).toBeCloseTo(62.5, 9);
    const found = bestOf([steps(20, 1), steps(20, 1)], cost).slice(0, 4);
    const expected: readonly [readonly number[], number][] = [
      [[1, 6], 1.25],
      [[2, 5], 6.25],
      [[3, 3], 12.5],
      [[0, 8], 20],
    ];
    expected.forEach(([values, value], index) => {
      expect(cleanZeros(found[index].values)).toEqual(values);
      expect(found[index].cost).toBeCloseTo(value, 9);
    });
    const walled = bestOf([steps(20, 1), steps(20, 1).filter((n) => n <= 5)], cost)[0];
    expect([walled.values, walled.cost]).toEqual([[2, 5], expect.closeTo(6.25, 9)]);
  });

  // D40: planar strut, exact. The plate moves the top inboard and turns the whole strut about the ball joint; the clamp turns
  // the knuckle on the strut. 697 combinations; the rounded continuous answer (13 mm, 5 steps) is second.
  test('D40: camber and kingpin inclination by top plate and clamp', () => {
    const { atan, PI } = Math;
    const inclination = (plate: number): number => (atan((130 + plate) / 533) * 180) / PI;
    const camber = ([plate, clamp]: readonly number[]): number => -0.5 - (inclination(plate) - inclination(0)) - 0.25 * clamp;
    const cost = (n: readonly number[]): number => ((inclination(n[0]) - 15) / 0.1) ** 2 + ((camber(n) + 3) / 0.05) ** 2;
    const lists = [steps(20, 1), steps(8, 1)];
    expect(lists[0].length * lists[1].length).toBe(697);
    const found = bestOf(lists, cost).slice(0, 3);
    const expected = [
      [[12, 5], 14.918035004, -2.961074, 1.277919449],
      [[13, 5], 15.018360631, -3.061399627, 1.541676959],
      [[14, 4], 15.118592084, -2.91163108, 4.530034647],
    ] as const;
    expected.forEach(([values, kingpin, wheel, score], index) => {
      expect(cleanZeros(found[index].values)).toEqual(values);
      expect(inclination(values[0])).toBeCloseTo(kingpin, 8);
      expect(camber(values)).toBeCloseTo(wheel, 6);
      expect(found[index].cost).toBeCloseTo(score, 6);
    });
  });

  // P41: the six-hump camel (as in rdrr.io gek::camel6), minima on lattices by trying them all.
  test('P41: a landscape with false minima, both of the equal best', () => {
    const camel = ([a, b]: readonly number[]): number => (4 - 2.1 * a * a + a ** 4 / 3) * a * a + a * b + (4 * b * b - 4) * b * b;
    const [one, two] = bestOf([steps(3, 0.25), steps(2, 0.25)], camel);
    expect([one.cost, two.cost]).toEqual([-0.984375, -0.984375]);
    expect([one.values, two.values].map(cleanZeros).sort((p, q) => p[1] - q[1])).toEqual([
      [0, -0.75],
      [0, 0.75],
    ]);
    const [fine, equal] = bestOf([steps(3, 0.2), steps(2, 0.2)], camel);
    expect(fine.cost).toBeCloseTo(-0.9249386667, 9);
    expect(equal.cost).toBeCloseTo(-0.9249386667, 9);
    expect(Math.abs(fine.values[0])).toBeCloseTo(0.2, 12);
    // the minimum between the steps, published −1.031628, is below what any step reaches
    expect(fine.cost).toBeGreaterThan(-1.031628);
  });

  // P41: Hartmann 6 (as in the documentation of scikit-optimize): minimum −3.32237, a false one at −3.2032.
  test('P41: six variables, past the false minimum', () => {
    const alpha = [1, 1.2, 3, 3.2];
    const a = [
      [10, 3, 17, 3.5, 1.7, 8],
      [0.05, 10, 17, 0.1, 8, 14],
      [3, 3.5, 1.7, 10, 17, 8],
      [17, 8, 0.05, 10, 0.1, 14],
    ];
    const p = [
      [1312, 1696, 5569, 124, 8283, 5886],
      [2329, 4135, 8307, 3736, 1004, 9991],
      [2348, 1451, 3522, 2883, 3047, 6650],
      [4047, 8828, 8732, 5743, 1091, 381],
    ];
    const hartmann = (x: readonly number[]): number =>
      -alpha.reduce(
        (sum, weight, i) => sum + weight * Math.exp(-a[i].reduce((part, c, j) => part + c * (x[j] - p[i][j] / 1e4) ** 2, 0)),
        0,
      );
    expect(hartmann([0.20169, 0.150011, 0.476874, 0.275332, 0.311652, 0.657301])).toBeCloseTo(-3.3223680114, 6);
    const list = realSettings({ min: 0, max: 1, step: 0.05, isRound: false });
    const [best] = bestOf([list, list, list, list, list, list], hartmann);
    expect(best.cost).toBeLessThan(-3.2031619183);
    expect(best.values).toEqual([0.2, 0.15, 0.45, 0.3, 0.3, 0.65].map((value) => expect.closeTo(value, 1) as unknown as number));
  });

  // D41: e·sin a with e = 7 mm: two clocks give 3.5 mm, and 360° is 0.
  test('D41: a clock that meets the value twice', () => {
    const clocks = realSettings({ min: 0, max: 360, step: 30, isRound: true });
    expect(clocks).toHaveLength(12);
    const sideways = (degrees: number): number => 7 * Math.sin((degrees * Math.PI) / 180);
    const [first, second, third] = bestOf([clocks], ([clock]) => (sideways(clock) - 3.5) ** 2);
    expect([first.values[0], second.values[0]].sort((x, y) => x - y)).toEqual([30, 150]);
    expect(third.cost).toBeGreaterThan(1);
    const [nearest] = bestOf([clocks], ([clock]) => Math.abs(sideways(clock) - 7.5));
    expect([nearest.values[0], nearest.cost]).toEqual([90, expect.closeTo(0.5, 9)]);
  });
});
