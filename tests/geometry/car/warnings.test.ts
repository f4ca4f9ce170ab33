import { describe, expect, it } from 'vitest';
import { parseCar } from '../../../geometry/car/parseCar';
import type { Warning } from '../../../geometry/car/fault';
import { WARNING_CODES } from '../../../geometry/car/warningCodes';
import { EVERYTHING, WISHBONES } from './fixtures';

function warningsOf(car: string, from: string, to: string): readonly Warning[] {
  expect(car).toContain(from);
  const outcome = parseCar(car.replace(from, to));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure.faults));
  return outcome.value.warnings;
}

describe('warnings', () => {
  it.each([
    ['setting-off-step', 'setups.Wet.front.both.topPlate', EVERYTHING, '"topPlate": -4', '"topPlate": -4.5'],
    ['setting-off-step', 'setups.Wet.front.right.rearBush', EVERYTHING, '"rearBush": 90', '"rearBush": 100'],
    [
      'setting-off-step',
      'setups.Wet.rear.both.camberBolt',
      EVERYTHING,
      '"camberBolt": 15, "trailBush"',
      '"camberBolt": 20, "trailBush"',
    ],
    ['range-off-zero', 'front.adjusters.spacer.range', EVERYTHING, '"range": [0, 25]', '"range": [5, 25]'],
    ['marks-uneven', 'front.adjusters.rearBush.index', EVERYTHING, '"index": 30,', '"index": 45.5,'],
    ['shims-not-sorted', 'front.adjusters.rodShim.shims', EVERYTHING, '[5, 2, 1, 0.5]', '[0.5, 1, 2, 5]'],
    [
      'part-without-points',
      'front.spring',
      WISHBONES,
      '{ "upper": "springUpper", "lower": "springLower", "lowerOn": "lowerRear", "rate": 60 }',
      '{ "rate": 60 }',
    ],
    ['unused-point', 'front.points.spare', WISHBONES, '"wheelCentre"', '"spare": [1, 2, 3], "wheelCentre"'],
    ['left-point-on-right', 'front.points.tieRodBody', WISHBONES, '[-5.2, 14.0, 9.1]', '[-5.2, -1, 9.1]'],
    ['rate-not-listed', 'front.spring.rate', EVERYTHING, '"rate": 70,', '"rate": 75,'],
    ['spring-loose', 'front.spring.installed', EVERYTHING, '"installed": 172', '"installed": 210'],
    ['rack-without-ends', 'front.steering', EVERYTHING, '"travel": 70, "perTurn"', '"perTurn"'],
    ['loaded-radius-odd', 'front.wheel.loadedRadius', EVERYTHING, '"loadedRadius": 312', '"loadedRadius": 1'],
    ['loaded-radius-odd', 'setups.Wet.front.wheel.loadedRadius', EVERYTHING, '"loadedRadius": 306', '"loadedRadius": 200'],
    ['not-level', null, EVERYTHING, '"loadedRadius": 312', '"loadedRadius": 314'],
  ])('%s at %s', (code, path, car, from, to) => {
    expect(Object.keys(WARNING_CODES)).toContain(code);
    const warnings = warningsOf(car, from, to);
    expect(warnings.map((warning) => [warning.code, warning.path])).toContainEqual([code, path]);
    for (const { message } of warnings) expect(message).toMatch(/^[A-Z0-9-].*\.$/);
  });

  it('are not given for steps that only decimals blur', () => {
    expect(warningsOf(WISHBONES, '"upperShim": -0.1', '"upperShim": -0.30000000000000004')).toEqual([]);
    expect(warningsOf(EVERYTHING, '"tieRod": 1.25', '"tieRod": 7.875')).toEqual([]);
  });

  it('of a car that does not stand level say by how much, and half a millimetre is level', () => {
    // camber −1°: r is measured along the wheel, so 2 mm of radius are 2·cos 1° of height; the right toe changes nothing
    const [warning] = warningsOf(EVERYTHING, '"loadedRadius": 312', '"loadedRadius": 314');
    expect(warning.message).toContain('2.1 mm below');
    expect(warningsOf(EVERYTHING, '"loadedRadius": 312', '"loadedRadius": 312.3')).toEqual([]);
  });
});
