import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Triple } from '../../geometry/car/document';

/** Numbers from a seed: the same seed, the same numbers, on every machine. */
export interface Draw {
  /** three decimals, so that a car that fails can be written down */
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
  pick<Item>(items: readonly Item[]): Item;
  chance(probability: number): boolean;
  /** a point moved by up to `by` in each coordinate */
  near(point: Triple, by: number): Triple;
  /** a direction within about `by` radians of another, of some length between a half and two */
  leaning(direction: Triple, by: number): Triple;
}

const rounded = (value: number): number => Math.round(value * 1000) / 1000;

export function drawFrom(seed: number): Draw {
  const generator = xoroshiro128plus(seed);
  const next = (): number => uniformFloat64(generator);
  // the first few numbers of neighbouring seeds are alike
  for (let i = 0; i < 8; i++) next();
  const between = (low: number, high: number): number => rounded(low + (high - low) * next());
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    between,
    whole,
    pick: (items) => items[whole(0, items.length - 1)],
    chance: (probability) => next() < probability,
    near: ([x, y, z], by) => [rounded(x + between(-by, by)), rounded(y + between(-by, by)), rounded(z + between(-by, by))],
    leaning([x, y, z], by) {
      const size = between(0.5, 2);
      return [
        rounded(size * (x + between(-by, by))),
        rounded(size * (y + between(-by, by))),
        rounded(size * (z + between(-by, by))),
      ];
    },
  };
}
