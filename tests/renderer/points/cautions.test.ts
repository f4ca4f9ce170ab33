import { describe, expect, test } from 'vitest';
import type { CarDocument } from '../../../geometry/index';
import { cautionsOf } from '../../../renderer/points/cautions';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { carDocument } from '../carUnderTest';

const car = carDocument('car-21');
const wordsOf = (document: CarDocument, units = STANDARD_UNITS) => cautionsOf(document, units).map(({ words }) => words);
const inches = { ...STANDARD_UNITS, length: 'in' } as const;
const withWheel = (wheel: object): CarDocument => ({
  ...car,
  front: { ...car.front!, wheel: { ...car.front!.wheel, ...wheel } },
});

describe('what is odd about a car is said, in the chosen units', () => {
  const { loadedRadius } = car.front!.wheel;

  test('a tyre that the loaded radius contradicts, at its field', () => {
    const odd = withWheel({ tyreRadius: loadedRadius / 2, rimDiameter: undefined });
    const [caution] = cautionsOf(odd, inches).filter(({ path }) => path === 'front.wheel.loadedRadius');
    const inch = (mm: number) => (mm / 25.4).toFixed(3);
    expect(caution?.words).toBe(
      `The loaded radius ${inch(loadedRadius)} in is more than the tyre's own radius, ${inch(loadedRadius / 2)} in.`,
    );
    expect(wordsOf(withWheel({ rimDiameter: loadedRadius * 3 })).join()).toContain('would stand on its rim');
    expect(wordsOf(withWheel({ loadedRadius: 25_400_000, tyreRadius: undefined })).join()).toContain(
      'is not that of the wheel of a car',
    );
  });

  test('a spring that is longer fitted than free', () => {
    const { spring } = car.front!;
    const loose = { ...car, front: { ...car.front!, spring: { ...spring, freeLength: 200, installed: 500, solidLength: 90 } } };
    expect(wordsOf(loose as CarDocument)).toContain(
      'The spring is loose at design: it is installed longer than its free length.',
    );
  });

  test('axles that stand on two grounds: a slip of the datum is asked about, a little rake is said alone', () => {
    const lowered = (by: number): CarDocument => ({
      ...car,
      rear: {
        ...car.rear!,
        points: Object.fromEntries(Object.entries(car.rear!.points).map(([name, at]) => [name, [at![0], at![1], at![2] - by]])),
      } as CarDocument['rear'] & object,
    });
    const level = (by: number) => wordsOf(lowered(by)).find((words) => words.includes('contact centres'));
    expect(level(508)).toMatch(
      /^The front contact centres are \d+\.\d mm above the rear ones.* Were both axles measured from the same datum\?$/,
    );
    expect(level(10)).not.toContain('datum');
  });
});
