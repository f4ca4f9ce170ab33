import { describe, expect, it } from 'vitest';
import { sampleNamed, standing, readAt, numberOf } from './samples';

/**
 * What the notes of the teaching car promise, worked out with pencil and ruler from its coordinates: plane geometry,
 * nothing of the program's.
 */
const DEGREES_PER_RADIAN = 180 / (4 * Math.atan(1));
const atan = (rise: number, run: number): number => Math.atan2(rise, run) * DEGREES_PER_RADIAN;
/** Figures are exact; the solver's poses are closed to 1e-9 mm. */
const DIGITS = 8;

const sample = sampleNamed('chalkboard');
const car = standing(sample, 'As drawn');
const front = readAt(car, 'front');
const rear = readAt(car, 'rear');

describe('the teaching car, by hand', () => {
  it('has coordinates in steps of 5 mm', () => {
    for (const axle of [sample.document.front!, sample.document.rear!]) {
      for (const point of Object.values(axle.points)) for (const coordinate of point) expect(Math.abs(coordinate % 5)).toBe(0);
    }
  });

  it.each([
    // from [0, 700, 200] to [-30, 650, 450], continued to the ground at [24, 740, 0]
    ['caster', atan(30, 250)],
    ['kingpinInclination', atan(50, 250)],
    ['mechanicalTrail', 24],
    ['scrubRadius', 10],
    // lines of the two arms meet 2500 mm inboard of the contact centre, 200 mm up
    ['camberGain', -DEGREES_PER_RADIAN / 2500],
    ['swingArmLength', Math.sqrt(2500 * 2500 + 200 * 200)],
    ['bumpSteer', 0],
    ['springRatio', ((250 / 350) * 2450) / 2500],
    ['damperRatio', ((250 / 350) * 2450) / 2500],
    ['barRatio', ((250 / 350) * 2450) / 2500],
    ['longitudinalSlopeContact', 0],
    ['lateralSlopeContact', 200 / 2500],
    ['jackingPerLateral', -200 / 2500],
  ])('front %s', (key, byHand) => {
    expect(numberOf(front, 'left', key)).toBeCloseTo(byHand, DIGITS);
  });

  it.each([
    // the line across the strut's top and the arm's line meet 4000 mm inboard, 415 mm up
    ['camberGain', -DEGREES_PER_RADIAN / 4000],
    ['swingArmLength', Math.sqrt(4000 * 4000 + 415 * 415)],
    ['kingpinInclination', atan(50, 580)],
    ['bumpSteer', 0],
    ['lateralSlopeContact', 415 / 4000],
  ])('rear %s', (key, byHand) => {
    expect(numberOf(rear, 'left', key)).toBeCloseTo(byHand, DIGITS);
  });

  it.each([
    ['front', front, (750 * 200) / 2500],
    ['rear', rear, (750 * 415) / 4000],
  ] as const)('%s roll centre', (_, row, byHand) => {
    expect(numberOf(row, 'both', 'rollCentreHeight')).toBeCloseTo(byHand, DIGITS);
    expect(numberOf(row, 'both', 'rollCentreOffset')).toBeCloseTo(0, DIGITS);
    expect(numberOf(row, 'both', 'track')).toBeCloseTo(1500, DIGITS);
  });

  it('has instant centres where the lines meet', () => {
    for (const [row, y, z] of [
      [front, -1750, 200],
      [rear, -3250, 415],
    ] as const) {
      const centre = row.left['frontViewInstantCentre'] as readonly number[];
      expect(centre[0]).toBeCloseTo(y, 5);
      expect(centre[1]).toBeCloseTo(z, 5);
    }
  });

  it('keeps its rear toe at every height, as the toe rod is parallel to the arm and as long', () => {
    for (const travel of [-80, -40, 40, 70]) expect(numberOf(readAt(car, 'rear', { travel }), 'left', 'toe')).toBeCloseTo(0, DIGITS);
  });

  it('sits on its springs with the weight that they carry', () => {
    // 500 kg at an axle, 40 kg of each wheel; g = 9.80665
    expect(numberOf(front, 'left', 'springForce')).toBeCloseTo((210 * 9.80665) / 0.7, 6);
    expect(numberOf(front, 'both', 'antiDive')).toBeCloseTo(0, DIGITS);
  });
});
