import { describe, expect, test } from 'vitest';
import { answerSetup } from '../../../renderer/compute/answerBench';
import { steerScale, steerWays } from '../../../renderer/compute/steerScale';
import type { CarDocument } from '../../../geometry/index';
import { carDocument } from '../carUnderTest';

const plain = carDocument('car-23');
const withPerTurn = (perTurn: number): CarDocument => {
  const { front } = plain;
  if (!front?.steering) throw new Error('the front is steered');
  return { ...plain, front: { ...front, steering: { ...front.steering, perTurn } } };
};
const range = { min: -60, max: 60, stops: null };

describe('steer as', () => {
  test('a turn of the hand wheel moves the rack by what the file says', () => {
    const scale = steerScale(withPerTurn(50), 'Baseline', 'front', 0, 0, range, 'handWheel');
    expect(scale.fromRack(25)).toBe(180);
    expect(scale.toRack(-90)).toBe(-12.5);
    expect(scale.range.max).toBe(432);
    expect(steerWays(plain, 'front')).toEqual(
      plain.front?.steering?.perTurn === undefined ? ['rack', 'meanAngle'] : ['rack', 'handWheel', 'meanAngle'],
    );
    expect(steerWays(withPerTurn(50), 'front')).toContain('handWheel');
  });

  test.each([
    [0, 0, 10],
    [15, 0, -17.3],
    [-10, 1.5, 4],
  ])('a mean angle is reached exactly: bump %i, roll %f, %f°', (travel, rollDeg, wanted) => {
    const scale = steerScale(plain, 'Trial', 'front', travel, rollDeg, range, 'meanAngle');
    const rack = scale.toRack(wanted);
    const answer = answerSetup({ document: plain, setup: 'Trial', axle: 'front', position: { travel, rollDeg, rack } });
    if (!answer.ok) throw new Error(answer.failure.message);
    const [left, right] = [answer.value.left['steerAngle'] as number, answer.value.right['steerAngle'] as number];
    expect((left + right) / 2).toBeCloseTo(wanted, 8);
    expect(scale.fromRack(rack)).toBeCloseTo(wanted, 8);
    expect(Math.sign(rack) === Math.sign(wanted)).toBe(!scale.isReversed);
  });

  test('the rack itself is left as it is', () => {
    const scale = steerScale(plain, 'Trial', 'front', 0, 0, range, 'rack');
    expect([scale.toRack(7), scale.fromRack(-3), scale.range]).toEqual([7, -3, range]);
  });
});
