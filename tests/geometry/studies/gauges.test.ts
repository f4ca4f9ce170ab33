import { describe, expect, test } from 'vitest';
import {
  acrossRim,
  assembleCar,
  bumpSteerGauge,
  correctForFloor,
  findSetup,
  inContractUnits,
  readingsOfAxle,
  setupNames,
  stringGauge,
  swingGauge,
  toDegrees,
  toMechanism,
  toRadians,
  type AssembledCar,
  type AxleName,
} from '../../../geometry/index';
import { AXLES, numberOf, readAt, SAMPLES, sampleNamed } from '../../samples/samples';

const CASES = SAMPLES.flatMap(({ name, document }) =>
  setupNames(document).flatMap((setup) =>
    AXLES.filter((axle) => document[axle] !== undefined).map((axle) => [name, setup, axle] as const),
  ),
);

const carOf = (name: string, setup: string): AssembledCar => {
  const { document } = sampleNamed(name);
  const car = assembleCar(toMechanism(document), findSetup(document, setup));
  if (!car.ok) throw new Error(car.failure.message);
  return car.value;
};
const toeAt = (car: AssembledCar, axle: AxleName, side: 'left' | 'right', travel: number): number =>
  toRadians(numberOf(readAt(car, axle, { travel }), side, 'toe'));

describe.each(CASES)('gauges on %s, %s, %s', (name, setup, axle) => {
  const car = carOf(name, setup);

  test('the dials differ by spacing · (tan toe − tan toe where the car stands)', () => {
    const gauge = bumpSteerGauge(car, axle, { spacing: 254, bumps: [-30, 0, 20] });
    if (!gauge.ok) throw new Error(gauge.failure.message);
    for (const { bump, dials } of gauge.value) {
      if (!dials.ok) throw new Error(dials.failure.message);
      for (const side of ['left', 'right'] as const) {
        const wanted = 254 * (Math.tan(toeAt(car, axle, side, bump)) - Math.tan(toeAt(car, axle, side, 0)));
        expect(dials.value[side].difference).toBeCloseTo(wanted, 9);
        if (bump === 0) expect(dials.value[side].front).toBeCloseTo(0, 9);
      }
    }
  });

  test('front less rear string is D · sin toe, wherever the string is', () => {
    for (const [offset, lip] of [
      [900, 0],
      [1100, 60],
    ]) {
      const strings = stringGauge(car, axle, { offset, diameter: 430, lip, bump: 10 });
      if (!strings.ok) throw new Error(strings.failure.message);
      for (const side of ['left', 'right'] as const) {
        const { front, rear } = strings.value[side];
        expect(front - rear).toBeCloseTo(acrossRim(toeAt(car, axle, side, 10), 430), 9);
      }
    }
  });
});

test('a bump that cannot be reached is a row with its reason, and the others stay', () => {
  const gauge = bumpSteerGauge(carOf('saltmarsh-hatch', 'Baseline'), 'front', { spacing: 250, bumps: [-900, 10] });
  if (!gauge.ok) throw new Error(gauge.failure.message);
  const [far, near] = gauge.value;
  expect(far.dials).toMatchObject({ ok: false, failure: { kind: 'unreachable' } });
  expect(near.dials.ok).toBe(true);
});

test('one dial: the plate moves out by half the track change of the hub and what camber adds below it', () => {
  const car = carOf('saltmarsh-hatch', 'Baseline');
  const wide = bumpSteerGauge(car, 'front', { spacing: 1e-6, bumps: [25] });
  if (!wide.ok || !wide.value[0].dials.ok) throw new Error('out of reach');
  const centre = (travel: number): readonly number[] => readAt(car, 'front', { travel }).left['wheelCentre'] as readonly number[];
  const [was, now] = [centre(0), centre(25)];
  const camber = toRadians(numberOf(readAt(car, 'front', { travel: 25 }), 'left', 'camber'));
  const toe = toeAt(car, 'front', 'left', 25);
  // the plane of the plate through the hub, met 25 mm under it and as far behind as the hub came forward
  const wanted = now[1] - was[1] - (25 * Math.tan(camber)) / Math.cos(toe) + (now[0] - was[0]) * Math.tan(toe);
  expect(wide.value[0].dials.value.left.front).toBeCloseTo(wanted, 6);
});

test('the swing of 20 degrees is the reading; the rear axle has none', () => {
  const car = carOf('saltmarsh-hatch', 'Baseline');
  const gauge = swingGauge(car, 'front', { swing: toRadians(20), travel: 15 });
  if (!gauge.ok) throw new Error(gauge.failure.message);
  const row = readingsOfAxle(car, 'front', { travel: 15 });
  if (!row.ok) throw new Error(row.failure.message);
  const { left } = inContractUnits(row.value);
  expect(toDegrees(gauge.value.left?.bySwing ?? NaN)).toBeCloseTo(left['casterBySwing'] as number, 9);
  expect(toDegrees(gauge.value.left?.caster ?? NaN)).toBeCloseTo(left['caster'] as number, 12);
  const rear = swingGauge(car, 'rear', { swing: toRadians(20) });
  expect(rear.ok && rear.value).toEqual({ left: null, right: null });
  const far = swingGauge(car, 'front', { swing: toRadians(80) });
  expect(far.ok && far.value).toEqual({ left: null, right: null });
  expect(() => swingGauge(car, 'front', { swing: 0 })).toThrow(RangeError);
});

const FLOOR = { frontTrack: 1500, rearTrack: 1480, wheelbase: 2600 };

test('a floor that falls to one side turns both wheels of the axle by its angle, against each other', () => {
  const pads = { frontLeft: 6, frontRight: 0, rearLeft: 6, rearRight: 6 };
  const measured = { frontLeft: toRadians(-2), frontRight: toRadians(-1.5), rearLeft: null, rearRight: toRadians(-1) };
  const level = correctForFloor({ ...FLOOR, pads: { frontLeft: 3, frontRight: 3, rearLeft: 3, rearRight: 3 } }, measured);
  expect(level.cambers.frontLeft).toBeCloseTo(measured.frontLeft, 14);
  const { cambers, tilt, twist } = correctForFloor({ ...FLOOR, pads: { ...pads, rearLeft: 3, rearRight: 3 } }, measured);
  expect(cambers.frontLeft).toBeCloseTo(measured.frontLeft + Math.atan(6 / 1500), 12);
  expect(cambers.frontRight).toBeCloseTo(measured.frontRight - Math.atan(6 / 1500), 12);
  expect(cambers.rearLeft).toBeNull();
  expect(cambers.rearRight).toBeCloseTo(measured.rearRight, 12);
  expect([tilt.front, tilt.rear, twist]).toEqual([Math.atan(6 / 1500), 0, 6]);
});

test('a car turned with its floor reads the same: cambers are those of the level floor', () => {
  // the wheel's spindle in the car, the whole car turned by roll and pitch, what the plumb then shows
  const turned = ([x, y, z]: readonly number[], roll: number, pitch: number): readonly [number, number, number] => {
    const [y1, z1] = [y * Math.cos(roll) - z * Math.sin(roll), y * Math.sin(roll) + z * Math.cos(roll)];
    return [x * Math.cos(pitch) - z1 * Math.sin(pitch), y1, x * Math.sin(pitch) + z1 * Math.cos(pitch)];
  };
  const [roll, pitch] = [0.006, 0.009];
  const camber = toRadians(-2.4);
  const height = (x: number, y: number): number => turned([x, y, 0], roll, pitch)[2];
  const pads = {
    frontLeft: height(2600, 750),
    frontRight: height(2600, -750),
    rearLeft: height(0, 750),
    rearRight: height(0, -750),
  };
  const plumb = (side: 1 | -1): number => Math.asin(-turned([0, side * Math.cos(camber), -Math.sin(camber)], roll, pitch)[2]);
  const measured = { frontLeft: plumb(1), frontRight: plumb(-1), rearLeft: plumb(1), rearRight: plumb(-1) };
  const { cambers } = correctForFloor({ pads, frontTrack: 1500, rearTrack: 1500, wheelbase: 2600 }, measured);
  // the plumb line leans in the plane of a wheel that stands across the slope: second order, 3e-6 of the camber
  for (const corrected of Object.values(cambers)) expect(corrected).toBeCloseTo(camber, 5);
  expect(Math.abs(measured.frontLeft - camber)).toBeGreaterThan(0.005);
});
