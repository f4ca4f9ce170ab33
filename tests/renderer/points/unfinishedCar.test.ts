import { describe, expect, test } from 'vitest';
import { parseCar, serializeCar, type AxleName } from '../../../geometry/index';
import { judgeEdit } from '../../../renderer/points/fields/judgeEdit';
import { FIRST_CHOICE, newCarDocument } from '../../../renderer/points/newCar/newCarDocument';
import { isTypical, stepsOf } from '../../../renderer/points/newCar/newCarSteps';
import { countGiven, documentOfGiven, emptyCar, missingOf, pointsOfLayout } from '../../../renderer/points/newCar/unfinishedCar';
import { beginGivenCar, keepUnfinished } from '../../../renderer/state/actions/beginCar';
import { benchOf, isUnsaved } from '../../../renderer/state/benchStore';
import type { GivenAxle, GivenPoint, LayoutName, NewCarChoice, UnfinishedCar } from '../../../renderer/state/begunCar';
import { openedBench } from '../carUnderTest';

const LAYOUTS: readonly LayoutName[] = ['strut', 'wishbones', 'trailingArm', 'fiveRods'];
const MM = { mm: 1, in: 25.4 } as const;

/** The same car with an axle given as somebody would have measured it: where an ordinary one has its points, moved a little. */
const measured = (car: UnfinishedCar, axle: AxleName): UnfinishedCar => {
  const points = newCarDocument(car.choice)[axle]?.points ?? {};
  const mm = MM[car.choice.unit];
  const given: Record<string, GivenPoint> = {};
  for (const [name, [x, y, z]] of Object.entries(points)) given[name] = [x * mm + 1, y * mm + 1, z * mm + 1];
  const whole: GivenAxle = { points: given, camber: -1, toe: 0.1, loadedRadius: 311 };
  return { ...car, [axle]: whole };
};

const choiceOf = (part: Partial<NewCarChoice>): NewCarChoice => ({ ...FIRST_CHOICE, name: 'Fen saloon', ...part });

describe('a new car on empty points', () => {
  test.each(LAYOUTS)(
    '%s: nothing is in it that was not given; every point that is missing is named, and is a fault',
    (layout) => {
      const car = emptyCar(choiceOf({ front: layout, rear: null }), null);
      const needed = pointsOfLayout(layout).filter(({ isOptional }) => !isOptional);
      const document = documentOfGiven(car);
      expect(document.front?.points).toEqual({});
      expect(document.front?.wheel).toEqual({});
      expect(JSON.stringify(document)).not.toMatch(/travel|perTurn|[2-9]\d/);
      expect(countGiven(car)).toEqual({ given: 0, of: needed.length });
      expect(missingOf(car)).toEqual([
        ...needed.map(({ name }) => `front ${name}`),
        'front camber',
        'front toe',
        'front loaded radius',
      ]);
      const said = judgeEdit(document).map(({ path, found, expected }) => `${path} ${found} ${expected}`);
      for (const { name } of needed) expect(said.join('\n'), name).toContain(name);
    },
  );

  test.each(['mm', 'in'] as const)(
    'in %s: given whole it is a car of these numbers alone, and none of them is typical',
    (unit) => {
      for (const layout of LAYOUTS) {
        const car = measured(emptyCar(choiceOf({ unit, front: layout, rear: null }), null), 'front');
        expect(missingOf(car)).toEqual([]);
        const document = documentOfGiven(car);
        expect(judgeEdit(document)).toEqual([]);
        expect(document.front?.points['wheelCentre']?.[2]).toBeCloseTo(
          (car.front?.points['wheelCentre']?.[2] ?? 0) / MM[unit],
          6,
        );
        const store = openedBench();
        keepUnfinished(store, car);
        expect(beginGivenCar(store, car.choice, document)).toBe(true);
        const { file, unfinished } = store.getState();
        const open = benchOf(store.getState())?.document;
        if (!open || !file?.begun) throw new Error('a car was begun');
        expect([unfinished, isUnsaved(store.getState()), file.title]).toEqual([null, true, 'Fen saloon']);
        expect(Object.keys(open.front?.points ?? {}).filter((point) => isTypical(file.begun, open, 'front', point))).toEqual([]);
        expect(stepsOf(file.begun, open)[1]?.note).toMatch(/^\d+ measured$/);
        expect(parseCar(serializeCar(open)).ok).toBe(true);
      }
    },
  );

  test('a point that was begun is to be finished, even one that may be left out; a spring is there with both its points', () => {
    const full = measured(emptyCar(choiceOf({ front: null, rear: 'fiveRods' }), null), 'rear');
    const without = (name: string, point: GivenPoint): UnfinishedCar => ({
      ...full,
      rear: full.rear && { ...full.rear, points: { ...full.rear.points, [name]: point } },
    });
    expect(documentOfGiven(full).rear?.spring).toBeDefined();
    const left = without('springUpper', [null, null, null]);
    expect([missingOf(left), documentOfGiven(left).rear?.spring]).toEqual([[], undefined]);
    expect(missingOf(without('springUpper', [1, null, null]))).toEqual(['rear springUpper']);
    expect(missingOf(without('rackEnd', [1, 2, null]))).toEqual(['rear rackEnd']);
    expect(documentOfGiven(without('rackEnd', [1, 2, null])).rear?.points['rackEnd']).toBeUndefined();
  });

  test('an axle that keeps its layout keeps what was given of it', () => {
    const car = measured(emptyCar(choiceOf({ front: 'strut', rear: 'fiveRods' }), null), 'front');
    const other = emptyCar({ ...car.choice, rear: 'wishbones' }, car);
    expect(other.front).toBe(car.front);
    expect(other.rear?.points['upperBall']).toEqual([null, null, null]);
    expect(emptyCar({ ...car.choice, front: 'wishbones' }, car).front?.camber).toBeNull();
  });
});
