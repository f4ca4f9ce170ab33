import { describe, expect, test } from 'vitest';
import { CATALOGUE, numberNamesOf, numbersOf } from '../../../geometry/index';
import { answerSetup, type BenchRow } from '../../../renderer/compute/answerBench';
import { sweepSetup, type CurveOver } from '../../../renderer/compute/curves';
import { carDocument } from '../carUnderTest';

const document = carDocument('car-23');
const ALL = CATALOGUE.flatMap(numberNamesOf);
const held = { travel: 7, rollDeg: 0.8, rack: 6 };

/** A point that lies far away is as exact as its distance. */
const sizeOf = (row: BenchRow, owner: 'left' | 'right' | 'both' | 'wholeCar', key: string): number => {
  const value = row[owner][key] ?? 0;
  return Math.max(1, ...(typeof value === 'number' ? [value] : value).map(Math.abs));
};

const at = (over: CurveOver, input: number, steered: boolean) => ({
  travel: over === 'bump' ? input : held.travel,
  rollDeg: over === 'roll' ? input : held.rollDeg,
  rack: over === 'steer' ? input : steered ? held.rack : 0,
});

const valueIn = (row: BenchRow, owner: 'left' | 'right' | 'both' | 'wholeCar', number: string): number | null => {
  const entry = CATALOGUE.find((one) => numberNamesOf(one).includes(number));
  if (!entry) return null;
  return numbersOf(entry, row[owner][entry.key] ?? null)[numberNamesOf(entry).indexOf(number)] ?? null;
};

describe('a setup swept over a span', () => {
  test.each([
    ['front', 'bump', -60, 60],
    ['rear', 'bump', -40, 60],
    ['front', 'roll', -3, 3],
    ['rear', 'roll', -3, 3],
    ['front', 'steer', -50, 50],
  ] as const)('%s over %s: every reading is that of the position itself', (axle, over, from, to) => {
    const swept = sweepSetup(document, 'Trial', axle, { over, from, to, held }, ALL);
    if (!swept.ok) throw new Error(swept.failure.message);
    for (const index of [0, 17, 30, 60]) {
      const input = swept.value.inputs[index] ?? NaN;
      const row = answerSetup({ document, setup: 'Trial', axle, position: at(over, input, axle === 'front') });
      if (!row.ok) throw new Error(row.failure.message);
      for (const entry of CATALOGUE)
        for (const number of numberNamesOf(entry)) {
          const curves = swept.value.curves.get(number);
          if (!curves) throw new Error(number);
          const { left, right } = curves;
          const owner = entry.of === 'corner' ? 'left' : entry.of === 'axle' ? 'both' : 'wholeCar';
          for (const [line, of] of [[left, owner] as const, ...(right ? [[right, 'right'] as const] : [])]) {
            const asked = valueIn(row.value, of, number);
            if (asked === null) {
              expect(line.values[index], `${number} ${of}`).toBeNaN();
              expect(line.why(index), `${number} ${of}`).toBeTruthy();
            } else
              expect(Math.abs((line.values[index] ?? NaN) - asked), `${number} ${of}`).toBeLessThanOrEqual(
                1e-9 * sizeOf(row.value, of, entry.key),
              );
          }
        }
    }
  });

  test('is kept while only the swept motion moves', () => {
    const span = { over: 'bump', from: -60, to: 60 } as const;
    const one = sweepSetup(document, 'Trial', 'front', { ...span, held }, ['camber']);
    const two = sweepSetup(document, 'Trial', 'front', { ...span, held: { ...held, travel: 33 } }, ['camber']);
    expect(one.ok && two.ok && one.value === two.value).toBe(true);
  });

  test('what cannot be reached has no number and says why', () => {
    const swept = sweepSetup(document, 'Baseline', 'front', { over: 'bump', from: -60, to: 400, held: { ...held, rollDeg: 0 } }, [
      'camber',
    ]);
    if (!swept.ok) throw new Error(swept.failure.message);
    const left = swept.value.curves.get('camber')?.left;
    if (!left) throw new Error('camber was asked for');
    expect(left.values[0]).not.toBeNaN();
    expect(left.values[60]).toBeNaN();
    expect(left.why(60)).toBeTruthy();
    expect(left.why(0)).toBeNull();
  });

  test('steer over an axle that is not steered, and an axle that is not there, are said', () => {
    const steer = sweepSetup(document, 'Baseline', 'rear', { over: 'steer', from: -50, to: 50, held }, ['camber']);
    expect(!steer.ok && steer.failure.message).toBe('this axle is not steered');
    const { rear, ...half } = document;
    expect(rear).toBeDefined();
    const none = sweepSetup(half, 'Baseline', 'rear', { over: 'bump', from: -50, to: 50, held }, ['camber']);
    expect(!none.ok && none.failure.message).toBe('this car has no rear axle');
  });
});
