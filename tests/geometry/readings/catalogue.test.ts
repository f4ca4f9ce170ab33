import { describe, expect, test } from 'vitest';
import { CATALOGUE, CONTRACT_UNITS, findReading, readingsOf } from '../../../geometry/readings/catalogue';

/** The keys of the command line's contract, as agreed with whoever reads its JSON. */
const CORNER_KEYS = [
  'camber',
  'toe',
  'steerAngle',
  'caster',
  'kingpinInclination',
  'mechanicalTrail',
  'scrubRadius',
  'trailAtWheelCentre',
  'scrubAtWheelCentre',
  'camberGain',
  'bumpSteer',
  'frontViewInstantCentre',
  'sideViewInstantCentre',
  'wheelCentre',
  'contactCentre',
  'longitudinalSlopeContact',
  'longitudinalSlopeWheelCentre',
  'lateralSlopeContact',
  'springRatio',
  'damperRatio',
  'barRatio',
  'damperTravel',
  'camberToBody',
  'casterBySwing',
  'swingArmLength',
  'sideViewSwingArmLength',
  'halfTrack',
  'wheelbaseChange',
  'bodyHeight',
  'springTravel',
  'springForce',
  'wheelRate',
  'barTwist',
  'bumpLeft',
  'solidLeft',
  'droopLeft',
  'jackingPerLateral',
  'jackingPerLongitudinal',
];
const AXLE_KEYS = [
  'rollCentreHeight',
  'rollCentreOffset',
  'track',
  'trackChange',
  'totalToe',
  'ackermann',
  'camberCompensation',
  'rollSteer',
  'antiDive',
  'antiLiftBraking',
  'antiLiftDrive',
  'antiSquat',
  'turningCircle',
  'steeringRatio',
  'springRollStiffness',
  'barRollStiffness',
  'rollStiffness',
  'rideFrequency',
  'loadTransferGeometric',
  'loadTransferElastic',
  'loadTransferUnsprung',
];
const CAR_KEYS = ['wheelbaseLeft', 'wheelbaseRight', 'rake', 'rollGradient', 'rollAxisInclination', 'rollAxisToCentreOfGravity'];

describe('the catalogue of readings', () => {
  test('holds exactly the keys of the contract', () => {
    const keysOf = (owner: 'corner' | 'axle' | 'car'): string[] =>
      readingsOf(owner)
        .map((entry) => entry.key)
        .sort();
    expect(keysOf('corner')).toEqual([...CORNER_KEYS].sort());
    expect(keysOf('axle')).toEqual([...AXLE_KEYS].sort());
    expect(keysOf('car')).toEqual([...CAR_KEYS].sort());
    expect(new Set(CATALOGUE.map((entry) => entry.key)).size).toBe(CATALOGUE.length);
  });

  test('says of every reading what it is, why one cares and where it is from, each in one sentence', () => {
    for (const entry of CATALOGUE) {
      for (const sentence of [entry.meaning, entry.why]) {
        expect(sentence, entry.key).toMatch(/^[A-Z].*\.$/);
        expect(sentence.slice(0, -1), entry.key).not.toMatch(/\. [A-Z]/);
      }
      expect(entry.formula, entry.key).not.toBe('');
      expect(entry.source, entry.key).not.toBe('');
      expect(entry.name.length, entry.key).toBeLessThanOrEqual(36);
      expect(entry.decimals).toBeGreaterThanOrEqual(0);
      expect(CONTRACT_UNITS[entry.quantity]).toBeDefined();
    }
  });

  test('keeps the readings of a group together', () => {
    for (const owner of ['corner', 'axle', 'car'] as const) {
      const groups = readingsOf(owner).map((entry) => entry.group);
      const runs = groups.filter((group, index) => group !== groups[index - 1]);
      expect(runs).toEqual([...new Set(groups)]);
    }
  });

  test('finds an entry by key and nothing by an unknown one', () => {
    expect(findReading('caster')?.name).toBe('Caster');
    expect(findReading('constructor')).toBeUndefined();
  });
});
