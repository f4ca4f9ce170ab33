import { describe, expect, it } from 'vitest';
import { readingsOfAxle, type AxleRow } from '../../../geometry/index';
import { assembled } from '../assembled';
import { randomCar } from '../randomCars';
import { mirrored } from '../transforms';

/** Seeds on which a law was once broken: they stay. */
const rowOf = (
  seed: number,
  setup: 'Design' | 'Set' | 'Toe' | 'Stance',
  axle: 'front' | 'rear',
  travel: number,
  rack = 0,
  roll = 0,
): AxleRow => {
  const row = readingsOfAxle(assembled(randomCar(seed), setup)!, axle, { travel, rack, roll });
  if (!row.ok) throw new Error(row.failure.message);
  return row.value;
};

describe('laws once broken', () => {
  it.each([
    [124, 'front', -40.386, 0, 0.2],
    [72, 'rear', -34.338, 0, 0.2],
    [84, 'front', -6.411, 121.666, 1.4],
    [292, 'rear', 43.141, 0, -0.6],
  ] as const)(
    'a wheel that finds no place to stand says how many mm are missing and what limits it, seed %s %s',
    (seed, axle, travel, rack, roll) => {
      const row = readingsOfAxle(assembled(randomCar(seed), 'Set')!, axle, { travel, rack, roll });
      expect(row).toMatchObject({
        ok: false,
        failure: { kind: 'unreachable', missingMm: expect.any(Number) as number, limitedBy: expect.any(String) as string },
      });
    },
  );

  it.each([
    [18, 'Set', 'front', -74.673, 29.8, 'rideFrequency'],
    [49, 'Design', 'rear', -70.308, 0, 'rideFrequency'],
    [19, 'Design', 'front', 79.495, 61.567, 'barRollStiffness'],
    [19, 'Design', 'front', 79.495, 61.567, 'rollStiffness'],
  ] as const)('a stiffness without value says why, seed %s %s %s', (seed, setup, axle, travel, rack, key) => {
    const { both, why } = rowOf(seed, setup, axle, travel, rack);
    expect(both[key]).toBeNull();
    expect(why[`both.${key}`]).toMatch(/\w/);
  });

  it.each([
    [34, 'Set', 'front'],
    [442, 'Set', 'front'],
    [173, 'Stance', 'rear'],
    [287, 'Stance', 'rear'],
  ] as const)('a mirrored car stands in the same place to the last bit, seed %s %s %s', (seed, setup, axle) => {
    const [one, other] = [assembled(randomCar(seed), setup)![axle]!, assembled(mirrored(randomCar(seed)), setup)![axle]!];
    expect(other.groundPoint).toEqual(one.groundPoint);
    expect({ left: other.standing.right, right: other.standing.left }).toEqual(one.standing);
  });

  it.each([168, 195, 219, 228, 336, 423, 624])('a clamp-eccentric at 0 changes no bit, seed %s', (seed) => {
    const document = randomCar(seed);
    const axle = document.front!.layout === 'strut' ? 'front' : 'rear';
    const at = (settings: object): AxleRow => {
      const row = readingsOfAxle(
        assembled({ ...document, setups: { Design: { [axle]: { both: settings } } } }, 'Design')!,
        axle,
        { travel: 20 },
      );
      if (!row.ok) throw new Error(row.failure.message);
      return row.value;
    };
    expect(at({ clamp: 0 }).left).toEqual(at({}).left);
  });
});
