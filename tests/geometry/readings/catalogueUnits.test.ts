import { describe, expect, test } from 'vitest';
import { CATALOGUE, readingsOf } from '../../../geometry/readings/catalogue';
import {
  differenceOfReadings,
  inContractUnits,
  numberNamesOf,
  numbersOf,
  readingsInContractUnits,
  valueInContractUnits,
} from '../../../geometry/readings/contractUnits';

describe('contract units', () => {
  test('angles, rates and gradients leave in degrees', () => {
    expect(valueInContractUnits(Math.PI, 'angle')).toBeCloseTo(180, 12);
    expect(valueInContractUnits(Math.PI / 180, 'anglePerLength')).toBeCloseTo(1, 14);
    expect(valueInContractUnits(Math.PI / 90, 'anglePerG')).toBeCloseTo(2, 14);
    expect(valueInContractUnits(18000, 'momentPerAngle')).toBeCloseTo(100 * Math.PI, 10);
  });

  test('an angle per angle and everything that is not an angle stay as they are', () => {
    for (const quantity of [
      'anglePerAngle',
      'length',
      'ratio',
      'percent',
      'force',
      'forcePerLength',
      'forcePerG',
      'frequency',
    ] as const)
      expect(valueInContractUnits(12.345, quantity)).toBe(12.345);
  });

  test('no value stays no value, and −0 leaves as 0', () => {
    expect(valueInContractUnits(null, 'angle')).toBeNull();
    expect(Object.is(valueInContractUnits(-0, 'angle'), 0)).toBe(true);
    expect(valueInContractUnits([-0, 1], 'length')).toEqual([0, 1]);
  });

  test('a row has every key of the catalogue in its order, whatever the engine left out', () => {
    const row = inContractUnits({ roll: -0, left: { camber: Math.PI / 2 }, right: {}, both: { track: 1500 }, rack: 3 });
    expect(Object.keys(row.left)).toEqual(readingsOf('corner').map((entry) => entry.key));
    expect(Object.keys(row.both)).toEqual(readingsOf('axle').map((entry) => entry.key));
    expect(row.left['camber']).toBe(90);
    expect(row.right['camber']).toBeNull();
    expect(row.both['track']).toBe(1500);
    expect(Object.is(row.roll, 0)).toBe(true);
    expect(row.rack).toBe(3);
    expect(Object.keys(readingsInContractUnits({}, 'car'))).toEqual(readingsOf('car').map((entry) => entry.key));
  });

  test('a difference is taken number by number and is null where either side has none', () => {
    const difference = differenceOfReadings(
      { camber: -1, caster: null, toe: 2, wheelCentre: [1, 2, 3] },
      { camber: -3, caster: 4, toe: null, wheelCentre: [1, 1, 1] },
    );
    expect(difference).toEqual({ camber: 2, caster: null, toe: null, wheelCentre: [0, 1, 2] });
  });

  test('points are numbers by component, with empty components where there is no point', () => {
    const wheelCentre = CATALOGUE.find((entry) => entry.key === 'wheelCentre');
    const camber = CATALOGUE.find((entry) => entry.key === 'camber');
    if (!wheelCentre || !camber) throw new Error('entries are missing');
    expect(numberNamesOf(wheelCentre)).toEqual(['wheelCentre.x', 'wheelCentre.y', 'wheelCentre.z']);
    expect(numbersOf(wheelCentre, [1, 2, 3])).toEqual([1, 2, 3]);
    expect(numbersOf(wheelCentre, null)).toEqual([null, null, null]);
    expect(numbersOf(camber, -1)).toEqual([-1]);
  });
});
