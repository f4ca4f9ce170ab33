import { describe, expect, it } from 'vitest';
import { parseCar } from '../../geometry/index';
import { asExpected, missesOf } from './agreement';
import { GOLDEN_CARS, goldenDocument, goldenRows, goldenText, solvedRows } from './goldenCars';
import { inInches } from './inInches';

/** Moving a file to inches moves a reading by no more than this part of its tolerance. */
const THOUSANDTH = 1e-3;

describe.each(GOLDEN_CARS)('%s', (car) => {
  const expected = goldenRows(car);

  it('is read without a fault', () => {
    const parsed = parseCar(goldenText(car));
    expect(parsed.ok ? [] : parsed.failure.faults).toEqual([]);
  });

  it('covers every setup that it has, both axles, in bump, steer and roll', () => {
    const { setups } = goldenDocument(car);
    expect(new Set(expected.map((row) => row.setup))).toEqual(new Set(Object.keys(setups!)));
    for (const motion of ['bump', 'roll'])
      for (const axle of ['front', 'rear']) expect(expected.some((row) => row.motion === motion && row.axle === axle)).toBe(true);
    expect(expected.some((row) => row.motion === 'steer')).toBe(true);
  });

  it('agrees with the independent solver in every reading of every row', () => {
    const solved = solvedRows(goldenDocument(car), expected);
    expect(expected.flatMap((row, i) => missesOf(row, solved[i]))).toEqual([]);
  });

  it('agrees as well when its file is in inches', () => {
    const solved = solvedRows(inInches(goldenDocument(car)), expected);
    expect(expected.flatMap((row, i) => missesOf(row, solved[i]))).toEqual([]);
  });

  it('reads the same in inches and in millimetres, to a thousandth of the tolerances', () => {
    const inMm = solvedRows(goldenDocument(car), expected);
    const inInch = solvedRows(inInches(goldenDocument(car)), expected);
    const misses = expected.flatMap((row, i) => missesOf(asExpected(row, inMm[i]), inInch[i], THOUSANDTH));
    expect(misses).toEqual([]);
  });
});
