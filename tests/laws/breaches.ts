import { expect } from 'vitest';

const SHOWN = 12;

/** Places where a law does not hold, kept in words; what was looked at is counted, so that no law holds of nothing. */
export class Breaches {
  private readonly shown: string[] = [];
  private count = 0;
  looked = 0;
  worst = 0;

  /** @param where - asked for only when the law is broken */
  check(holds: boolean, where: () => string): void {
    this.looked++;
    if (holds) return;
    this.count++;
    if (this.shown.length < SHOWN) this.shown.push(where());
  }

  /** `size` is to be no more than `limit`; not a number breaks the law too. */
  limit(size: number, limit: number, where: () => string): void {
    const used = size / limit;
    if (used > this.worst) this.worst = used;
    this.check(size <= limit, () => `${where()}: ${size.toExponential(2)}, allowed ${limit.toExponential(1)}`);
  }

  /** @param least - how many times the law has to have been looked at */
  expectNone(least: number): void {
    expect({ broken: this.count, places: this.shown }).toEqual({ broken: 0, places: [] });
    expect(this.looked).toBeGreaterThanOrEqual(least);
  }
}
