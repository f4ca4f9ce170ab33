import type { Spring } from '../car/mechanism';

/** Force of a spring at one length, and its rate there. */
export interface SpringLoad {
  /** [N], pushing; 0 when loose */
  readonly force: number;
  /** [N/mm]: of main spring and helper together */
  readonly rate: number;
}

/**
 * A main spring with, where there is one, a helper in series until that is solid.
 * @param rate - of the main spring [N/mm]
 * @param length - between the seats [mm]
 */
export function springLoad(spring: Spring, rate: number, length: number): SpringLoad {
  const helper = spring.helper;
  const free = spring.freeLength!;
  if (helper === null) {
    const squeeze = free - length;
    return squeeze > 0 ? { force: rate * squeeze, rate } : { force: 0, rate: 0 };
  }
  const squeeze = free + helper.freeLength - length;
  if (!(squeeze > 0)) return { force: 0, rate: 0 };
  const together = (rate * helper.rate) / (rate + helper.rate);
  const helperStroke = helper.freeLength - helper.solidLength;
  const soft = together * squeeze;
  return soft < helper.rate * helperStroke ? { force: soft, rate: together } : { force: rate * (squeeze - helperStroke), rate };
}
