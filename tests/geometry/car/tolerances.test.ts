import { expect, test } from 'vitest';
import { mattersOf, setWithin } from '../../../geometry/index';
import { sampleNamed } from '../../samples/samples';

const { document } = sampleNamed('saltmarsh-hatch');
const tolerances = {
  track: { set: 0.1, matters: 0.4 },
  camberGain: { matters: 0.005 },
  wheelRate: { matters: 2 },
  camber: { set: 0.1 },
};

test('lengths of a tolerance are in the unit of the file, all else is as it is', () => {
  const inches = { ...document, tolerances, units: { length: 'in' } } as const;
  expect(setWithin(inches, 'track')).toBeCloseTo(2.54, 12);
  expect(mattersOf(inches, 'track')).toBeCloseTo(10.16, 12);
  expect([mattersOf(inches, 'camberGain'), mattersOf(inches, 'wheelRate'), setWithin(inches, 'camber')]).toEqual([0.005, 2, 0.1]);
  // what the file does not say is said in millimetres
  expect(mattersOf(inches, 'rollCentreHeight')).toBe(10);
  expect(mattersOf({ ...document, tolerances }, 'track')).toBe(0.4);
});
