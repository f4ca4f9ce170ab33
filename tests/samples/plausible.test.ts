import { describe, expect, it } from 'vitest';
import { judgeLimits, readingsOfCar, setupNames, toDegrees, type Radians } from '../../geometry/index';
import { BOUNDS, BUMP_STEER_OF_SETUPS, LOCK, ROLL_GRADIENT, SERVICE_GAIN, TOE_CURVE, TOE_DIAMETER_OVER_RIM, WHEEL_TRAVEL } from './bounds';
import { envelopeOf } from './envelope';
import { AXLES, numberOf, readAt, sampleNamed, SAMPLES, standing, type Sample } from './samples';

interface Range {
  readonly min: number;
  readonly max: number;
}

function expectWithin(value: number, { min, max }: Range, what: string): void {
  expect(value, what).toBeGreaterThanOrEqual(min);
  expect(value, what).toBeLessThanOrEqual(max);
}

const firstSetup = ({ document }: Sample): string => setupNames(document)[0]!;

describe.each(SAMPLES)('$name', (sample) => {
  const { document } = sample;
  const car = standing(sample, firstSetup(sample));
  const cases = AXLES.flatMap((axle) =>
    BOUNDS.filter(({ applies }) => applies(document[axle]!, axle, document.body!.drivenAxle!)).map((bound) => ({ axle, ...bound })),
  );

  it.each(cases)('$axle $key lies in $min … $max: $source', ({ axle, owner, key, min, max }) => {
    expectWithin(numberOf(readAt(car, axle), owner, key), { min, max }, key);
  });

  it.each(AXLES)('%s: travel, and toe over it', (axle) => {
    const { open, solid } = envelopeOf(car, axle);
    expectWithin(-open, WHEEL_TRAVEL.droop, 'droop');
    expectWithin(solid, WHEEL_TRAVEL.bump, 'bump');
    const toe = (travel: number): number => numberOf(readAt(car, axle, { travel }), 'left', 'toe');
    for (const travel of [-TOE_CURVE.at, TOE_CURVE.at]) expect(Math.abs(toe(travel) - toe(0)), `${travel} mm`).toBeLessThan(TOE_CURVE[axle]);
  });

  it('steers as cars do', () => {
    const [negative, positive] = car.front!.mechanism.steering!.travel!;
    expectWithin(positive, LOCK.rackEach, 'rack');
    expect(negative).toBe(-positive);
    const atEnd = readAt(car, 'front', { rack: positive });
    // a rack behind the axle steers to the right where one ahead steers to the left
    const sense = Math.sign(numberOf(atEnd, 'left', 'steerAngle'));
    const [inner, outer] = sense > 0 ? (['left', 'right'] as const) : (['right', 'left'] as const);
    expectWithin(sense * numberOf(atEnd, inner, 'steerAngle'), LOCK.inner, 'inner');
    expectWithin(sense * numberOf(atEnd, outer, 'steerAngle'), LOCK.outer, 'outer');
    for (const key of ['ackermann', 'steeringRatio', 'turningCircle'] as const) {
      expectWithin(Math.abs(numberOf(atEnd, 'both', key)), LOCK[key], key);
    }
  });

  it('rolls as cars do', () => {
    const { rollGradient, rollAxisToCentreOfGravity, rollAxisInclination } = readingsOfCar(car).wholeCar;
    expectWithin(toDegrees(rollGradient! as Radians), ROLL_GRADIENT, 'roll gradient');
    expectWithin(rollAxisToCentreOfGravity!, { min: 300, max: 500 }, 'roll axis to centre of gravity');
    // higher at the rear, as on most cars
    expectWithin(toDegrees(rollAxisInclination! as Radians), { min: 0, max: 3 }, 'roll axis');
  });

  it.each(setupNames(document))('%s: inside the limits of the file, bump steer small', (setup) => {
    const other = standing(sample, setup);
    expect(judgeLimits(other).filter(({ ok }) => !ok)).toEqual([]);
    for (const axle of AXLES) {
      const row = readAt(other, axle);
      for (const side of ['left', 'right'] as const) {
        expect(Math.abs(numberOf(row, side, 'bumpSteer')), `${axle} ${side}`).toBeLessThan(BUMP_STEER_OF_SETUPS.most);
      }
    }
  });

  it.each(AXLES)('%s: the wheel is one that there could be', (axle) => {
    const { loadedRadius, tyreRadius, tyreWidth, rimDiameter, rimWidth, toeDiameter } = document[axle]!.wheel;
    expectWithin(tyreRadius! - loadedRadius, { min: 8, max: 16 }, 'a tyre under load stands lower (common practice)');
    expectWithin((tyreRadius! - rimDiameter! / 2) / tyreWidth!, { min: 0.35, max: 0.65 }, 'height of the sidewall by width');
    expectWithin(rimWidth! / tyreWidth!, { min: 0.75, max: 1 }, 'width of the rim by that of the tyre');
    if (toeDiameter !== undefined) expectWithin(toeDiameter - rimDiameter!, TOE_DIAMETER_OVER_RIM, 'toe diameter');
  });
});

describe('camber over travel of the rear multi-links, against published curves', () => {
  it.each(['saltmarsh-hatch', 'marram-coupe'])('%s grows smoothly from rebound to bump', (name) => {
    const sample = sampleNamed(name);
    const car = standing(sample, firstSetup(sample));
    // the tables span about 20 mm either way
    const gains = [-20, -10, 0, 10, 20].map((travel) => 1000 * numberOf(readAt(car, 'rear', { travel }), 'left', 'camberGain'));
    for (const [i, gain] of gains.entries()) if (i > 0) expect(gain).toBeLessThan(gains[i - 1]!);
    const { rebound, bump, rounding } = SERVICE_GAIN;
    expectWithin(gains[0]!, { min: bump, max: rebound + rounding }, 'rebound');
    expectWithin(gains[4]!, { min: bump - rounding, max: rebound }, 'bump');
  });
});

describe('the coupe’s front axle', () => {
  it('has a virtual steering axis: no rods share a ball joint, and it meets the ground outboard of where the lower ones would put it', () => {
    const sample = sampleNamed('marram-coupe');
    const { points, rods } = sample.document.front!;
    const outer = Object.values(rods!).map(([, end]) => end);
    expect(new Set(outer).size).toBe(5);
    const row = readAt(standing(sample, firstSetup(sample)), 'front');
    const contact = row.left['contactCentre'] as readonly number[];
    // where a line through the middles of upper and lower ball joints meets the ground
    const middle = (a: string, b: string, i: number): number => 0.5 * (points[a]![i]! + points[b]![i]!);
    const [low, high] = [1, 2].map((i) => [middle('trackKnuckle', 'tensionKnuckle', i), middle('upperFrontKnuckle', 'upperRearKnuckle', i)]);
    const [lowY, highY] = low!;
    const [lowZ, highZ] = high!;
    const ground = lowY! + ((lowY! - highY!) * lowZ!) / (highZ! - lowZ!);
    expect(contact[1]! - ground).toBeGreaterThan(numberOf(row, 'left', 'scrubRadius') + 30);
  });

  it('wanders with the rack', () => {
    const sample = sampleNamed('marram-coupe');
    const car = standing(sample, firstSetup(sample));
    const scrub = [-60, 0, 60].map((rack) => numberOf(readAt(car, 'front', { rack }), 'left', 'scrubRadius'));
    expect(Math.max(...scrub) - Math.min(...scrub)).toBeGreaterThan(5);
  });
});
