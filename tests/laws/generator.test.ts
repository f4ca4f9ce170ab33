import { describe, expect, it } from 'vitest';
import { judgeMechanism, parseCar } from '../../geometry/index';
import { isWild, layoutsOf, randomCar, SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { LAYOUTS } from './randomLinkages';

describe('the random cars of the laws', () => {
  it(`are at least 500 of each kind of corner, ${SEEDS_IN_WORDS}`, () => {
    const counts = Object.fromEntries(LAYOUTS.map((layout) => [layout, 0]));
    for (const seed of SEEDS) {
      const { front, rear } = layoutsOf(seed);
      counts[front]++;
      counts[rear]++;
    }
    for (const layout of LAYOUTS) expect(counts[layout], layout).toBeGreaterThanOrEqual(500);
    expect(SEEDS.filter(isWild).length).toBeGreaterThan(300);
  });

  it('are files that are read without a fault, every seventh seed', () => {
    for (const seed of SEEDS) {
      if (seed % 7 !== 0) continue;
      const parsed = parseCar(JSON.stringify(randomCar(seed)));
      expect(parsed.ok ? [] : parsed.failure.faults, `seed ${seed}`).toEqual([]);
    }
  });

  it(`have links that hold the wheel at design, ${SEEDS_IN_WORDS}`, () => {
    expect(SEEDS.filter((seed) => judgeMechanism(randomCar(seed)).length > 0)).toEqual([]);
  });

  it('are the same for the same seed', () => {
    expect(randomCar(17)).toEqual(randomCar(17));
    expect(randomCar(17)).not.toEqual(randomCar(20));
  });
});
