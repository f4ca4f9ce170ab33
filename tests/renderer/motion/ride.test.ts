import { describe, expect, test } from 'vitest';
import { answerSetup } from '../../../renderer/compute/answerBench';
import { motionRanges, type MotionRanges } from '../../../renderer/compute/motionRanges';
import { standingRow } from '../../../renderer/compute/standing';
import { RIDE_KINDS, rideAt, rideSpan } from '../../../renderer/motion/ride';
import { carDocument } from '../carUnderTest';

const RANGES: MotionRanges = {
  travel: { min: -80, max: 60, stops: [-77, 58] },
  roll: { min: -4, max: 4, stops: null },
  rack: { min: -65, max: 65, stops: [-63, 63] },
};
const span = rideSpan(RANGES, 1500);
/** Moments of two whole rides [ms]. */
const MOMENTS = Array.from({ length: 400 }, (_, index) => index * 21);

describe('a ride', () => {
  test('goes to the dampers’ and the rack’s ends, and stands at its beginning', () => {
    for (const [kind, key, low, high] of [
      ['bump', 'travel', -77, 58],
      ['roll', 'rollDeg', -4, 4],
      ['steer', 'rack', -63, 63],
    ] as const) {
      const values = MOMENTS.map((moment) => rideAt(kind, span, moment, false)[key] ?? NaN);
      expect(values[0]).toBe(0);
      expect(Math.min(...values)).toBeCloseTo(low, 1);
      expect(Math.max(...values)).toBeCloseTo(high, 1);
      expect(Object.keys(rideAt(kind, span, 100, false))).toEqual([key]);
    }
  });

  test('rolls no farther than the dampers let either wheel go', () => {
    const short = rideSpan({ ...RANGES, travel: { min: -30, max: 25, stops: [-30, 25] } }, 1500);
    expect(750 * Math.tan((short.roll[1] * Math.PI) / 180)).toBeCloseTo(25, 6);
    expect(short.roll[0]).toBeCloseTo(-short.roll[1], 12);
    const rolled = MOMENTS.map((moment) => rideAt('combined', short, moment, false));
    for (const { travel = NaN, rollDeg = NaN } of rolled) {
      const wheel = Math.abs(750 * Math.tan((rollDeg * Math.PI) / 180));
      expect(travel + wheel).toBeLessThanOrEqual(25.01);
      expect(travel - wheel).toBeGreaterThanOrEqual(-30.01);
    }
  });

  test('an axle that is not steered keeps its rack', () => {
    const still = rideSpan({ ...RANGES, rack: null }, 1500);
    expect(Object.keys(rideAt('combined', still, 700, false)).sort()).toEqual(['rollDeg', 'travel']);
    expect(rideAt('steer', still, 700, false)).toEqual({});
  });

  test('with less movement asked for, a few still pictures', () => {
    const seen = new Set(Array.from({ length: 1200 }, (_, index) => JSON.stringify(rideAt('bump', span, index * 10, true))));
    expect(seen.size).toBeLessThanOrEqual(8);
    expect(rideAt('bump', span, 0, true)).toEqual(rideAt('bump', span, 1400, true));
    expect(rideAt('bump', span, 3100, true).travel).toBeCloseTo(58, 6);
  });

  test.each(['car-21', 'car-22', 'car-23'])('%s closes at every position of every ride', (name) => {
    const document = carDocument(name);
    for (const axle of ['front', 'rear'] as const) {
      if (!document[axle]) continue;
      const standing = standingRow({ document, setup: 'Baseline' }, axle);
      const track = standing?.both['track'];
      const own = rideSpan(motionRanges(document, axle, standing), typeof track === 'number' ? track : null);
      for (const kind of RIDE_KINDS)
        for (let moment = 0; moment < 8400; moment += 350) {
          const position = { travel: 0, rollDeg: 0, rack: 0, ...rideAt(kind, own, moment, false) };
          expect(answerSetup({ document, setup: 'Baseline', axle, position }).ok, `${axle} ${kind} ${moment}`).toBe(true);
        }
    }
  });
});
