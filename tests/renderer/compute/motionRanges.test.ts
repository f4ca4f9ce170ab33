import { expect, test } from 'vitest';
import { motionRanges } from '../../../renderer/compute/motionRanges';
import { standingRow } from '../../../renderer/compute/standing';
import { carDocument } from '../carUnderTest';

test("bump goes from the damper's open end to solid, in wheel travel", () => {
  const document = carDocument('car-23');
  const standing = standingRow({ document, setup: 'Baseline' }, 'front');
  const { travel } = motionRanges(document, 'front', standing);
  const ratio = standing?.left['damperRatio'] as number;
  // stroke 150, droop stop at 70: open at -70 and solid at +80 of damper travel
  expect(travel.stops?.[1]).toBeCloseTo(80 / Math.max(ratio, standing?.right['damperRatio'] as number), 6);
  expect(travel.max).toBe(
    85 > (travel.stops?.[1] ?? 0) && (travel.stops?.[1] ?? 0) > 80 ? 85 : Math.ceil((travel.stops?.[1] ?? 0) / 5) * 5,
  );
  expect(travel.min).toBeLessThanOrEqual(travel.stops?.[0] ?? 0);
});

test("by the axle's travel where there is no damper, in inches too, and sketched where there is neither", () => {
  const document = carDocument('car-21');
  const { front } = document;
  if (!front) throw new Error('car 21 has a front axle');
  const { damper: _, ...plain } = front;
  const inches = { ...document, units: { length: 'in' }, front: { ...plain, travel: [-2, 3] } } as const;
  expect(motionRanges(inches, 'front', null).travel).toEqual({ min: -55, max: 80, stops: [-50.8, 76.19999999999999] });
  expect(motionRanges({ ...document, front: { ...plain, travel: undefined } }, 'front', null).travel.stops).toBeNull();
});

test('the rack goes as far as the file says, unequal ends included; an unsteered axle has none', () => {
  const document = carDocument('car-23');
  expect(motionRanges(document, 'front', null).rack).toEqual({ min: -60, max: 60, stops: [-60, 60] });
  expect(motionRanges(document, 'rear', null).rack).toBeNull();
  const front = { ...document.front!, steering: { axis: [0, 1, 0], travel: [-42, 58] } } as const;
  expect(motionRanges({ ...document, front }, 'front', null).rack).toEqual({ min: -45, max: 60, stops: [-42, 58] });
});
