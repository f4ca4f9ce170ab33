import { sweepCar, type AssembledCar, type Position } from '../../geometry/index';
import type { AxleRow } from '../../geometry/readings/rows';
import { AXLES } from './assembled';
import type { Breaches } from './breaches';

/** Compares two rows at what should be the same place. */
export type CompareRow = (row: AxleRow, other: AxleRow, where: string) => void;

/**
 * Rows of both axles of two cars, or of one car asked in two ways, at matching positions: reached alike and judged by `compare`.
 * @param positions - of the first car
 * @param others - of the second, in the same order; default: the same
 */
export function compareCars(
  breaches: Breaches,
  [one, other]: readonly [AssembledCar, AssembledCar],
  positions: readonly Position[],
  where: string,
  compare: CompareRow,
  others: readonly Position[] = positions,
): void {
  const there = sweepCar(other, others);
  for (const [i, answer] of sweepCar(one, positions).entries())
    compareAnswers(breaches, answer, there[i], `${where} ${JSON.stringify(positions[i])}`, compare);
}

type Answer = ReturnType<typeof sweepCar>[number];

export function compareAnswers(breaches: Breaches, one: Answer, other: Answer, where: string, compare: CompareRow): void {
  for (const axle of AXLES) {
    const [row, match] = [one[axle]!, other[axle]!];
    breaches.check(row.ok === match.ok, () => `${where} ${axle}: reached ${row.ok} and ${match.ok}`);
    if (row.ok && match.ok) compare(row.value, match.value, `${where} ${axle}`);
  }
}
