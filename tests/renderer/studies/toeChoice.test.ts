import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  findSetup,
  inContractUnits,
  readingsOfAxle,
  toMechanism,
  withSetting,
  type AxleName,
  type CarDocument,
  type SetupDocument,
} from '../../../geometry/index';
import { EMPTY_FIELD, fieldOf } from '../../../renderer/studies/question/fieldValue';
import { askedToe, ownToe, type ToeChoice } from '../../../renderer/studies/question/toeChoice';
import { beginWays, readWays } from '../../../renderer/studies/ways/waysForm';
import { sampleCar } from './sampleCar';

const document = sampleCar();
const OWN: ToeChoice = { kind: 'own', value: EMPTY_FIELD };

const toesOf = (car: CarDocument, setup: SetupDocument, axle: AxleName): readonly [number, number] => {
  const made = assembleCar(toMechanism(car), setup);
  if (!made.ok) throw new Error(made.failure.message);
  const row = readingsOfAxle(made.value, axle, {});
  if (!row.ok) throw new Error(row.failure.message);
  const { left, right } = inContractUnits(row.value);
  return [left['toe'] as number, right['toe'] as number];
};

/** Plates moved, and toe gone with them: nobody has set it since. */
const moved = withSetting(findSetup(document, 'Baseline'), 'front', 'plateAcross', 'both', -6);
const car: CarDocument = { ...document, setups: { ...document.setups, Moved: moved } };

describe('the setup’s own toe', () => {
  test('is what it sets', () => {
    const set = Object.entries(car.setups ?? {}).find(([, { front }]) => front?.setToe !== undefined);
    if (!set) throw new Error('the sample has a setup that sets toe');
    expect(ownToe(car, set[0], ['front'])).toEqual({
      asked: true,
      toes: [set[1].front?.setToe],
      isDrawn: false,
      isSet: true,
    });
  });

  test('is the drawing’s where nothing was turned', () => {
    expect(ownToe(car, 'Baseline', ['front'])).toEqual({
      asked: true,
      toes: [car.front?.wheel.toe],
      isDrawn: false,
      isSet: false,
    });
  });

  test('is where the car stands, where that is another', () => {
    const [left, right] = toesOf(car, moved, 'front');
    const own = ownToe(car, 'Moved', ['front']);
    expect(Math.abs(left - (car.front?.wheel.toe ?? NaN))).toBeGreaterThan(0.01);
    expect(own?.toes).toEqual([expect.closeTo((left + right) / 2, 4)]);
    expect(own?.asked).toBe(own?.toes[0]);
    expect(askedToe(OWN, own)).toBe(own?.toes[0]);
    expect(askedToe({ kind: 'follow', value: EMPTY_FIELD }, own)).toBeUndefined();
    expect(askedToe({ kind: 'value', value: fieldOf(0.3) }, own)).toBe(0.3);
  });

  test('of two axles is one number only where it is one', () => {
    const both = ownToe(car, 'Moved', ['front', 'rear']);
    expect(both).toMatchObject({ asked: true, isDrawn: true });
    expect(both?.toes).toEqual([car.front?.wheel.toe, car.rear?.wheel.toe]);
  });

  test('is none without a toe adjuster', () => {
    const { toeAdjuster: _, ...front } = car.front!;
    expect(ownToe({ ...car, front }, 'Baseline', ['front'])).toBeNull();
    expect(askedToe(OWN, null)).toBeUndefined();
  });

  test('is what ways are asked from: the value now is that of the setup', () => {
    const read = readWays({ ...beginWays(car, 'Moved'), value: fieldOf(-2) }, car, 'front');
    if ('faults' in read) throw new Error('no faults');
    const [left] = toesOf(car, moved, 'front');
    expect(read.order.question.toeReset).toBeCloseTo(left, 4);
  });
});
