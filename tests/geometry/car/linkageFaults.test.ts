import { describe, expect, it } from 'vitest';
import { parseCar } from '../../../geometry/index';
import { EVERYTHING, GOOD_CARS, readGolden, WISHBONES } from './fixtures';

/** A car whose points were replaced, and the faults found in it. */
function faultsOf(
  car: string,
  ...changes: readonly (readonly [string, string])[]
): { code: string; path: string | null; line: number | null }[] {
  let text = car;
  for (const [from, to] of changes) {
    expect(text).toContain(from);
    text = text.replace(from, to);
  }
  const outcome = parseCar(text);
  return outcome.ok ? [] : outcome.failure.faults.map(({ code, path, line }) => ({ code, path, line }));
}

describe('designs that are no linkage', () => {
  it.each(GOOD_CARS)('%s is one', (_name, text) => {
    expect(parseCar(text).ok).toBe(true);
  });

  it('a strut upside down', () => {
    const car = JSON.parse(readGolden('car-22')) as { front: { points: { strutTop: unknown; strutFoot: unknown } } };
    const { points } = car.front;
    [points.strutTop, points.strutFoot] = [points.strutFoot, points.strutTop];
    const outcome = parseCar(JSON.stringify(car, null, 2));
    const faults = outcome.ok ? [] : outcome.failure.faults;
    expect(faults).toMatchObject([{ code: 'strut-upside-down', path: 'front.points.strutTop', column: 19 }]);
  });

  it('a tie rod over centre: its outer end in line with the steering axis and its inner one', () => {
    // the tie rod's outer end on the line from rackEnd to a point of the steering axis (ballJoint)
    const faults = faultsOf(EVERYTHING, ['"tieRodEnd": [-127, 712, 254]', '"tieRodEnd": [-8.6, 689.7, 202.6]']);
    expect(faults).toContainEqual({ code: 'over-centre', path: 'front.points.tieRodEnd', line: 37 });
  });

  it('a strut whose top is under the ground', () => {
    const faults = faultsOf(EVERYTHING, ['"strutTop": [-31, 585, 836]', '"strutTop": [-31, 700, -400]']);
    expect(faults).toContainEqual({ code: 'strut-upside-down', path: 'front.points.strutTop', line: 32 });
  });

  it.each([0, 5280])('rear wheels level with the front ones, or %d mm farther forward than they are', (forward) => {
    const car = JSON.parse(readGolden('car-22')) as {
      rear: { points: Record<string, [number, number, number]> };
      front: typeof car.rear;
    };
    const level = car.front.points['wheelCentre'][0] - car.rear.points['wheelCentre'][0];
    for (const point of Object.values(car.rear.points)) point[0] += forward === 0 ? level : forward;
    const outcome = parseCar(JSON.stringify(car));
    expect(outcome.ok ? [] : outcome.failure.faults).toMatchObject([
      { code: 'axles-exchanged', path: 'rear.points.wheelCentre' },
    ]);
  });

  it('a rod given twice holds nothing the second time', () => {
    const faults = faultsOf(WISHBONES, [
      '"upperRear": ["upperRearBody", "upperKnuckle"]',
      '"upperRear": ["upperFrontBody", "upperKnuckle"]',
    ]);
    expect(faults).toEqual([{ code: 'singular-linkage', path: 'front.points', line: 8 }]);
  });
});
