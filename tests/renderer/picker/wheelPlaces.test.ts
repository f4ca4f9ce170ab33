import { describe, expect, test } from 'vitest';
import { wheelFigures } from '../../../renderer/compute/wheelFigures';
import { PLAN, wheelPlace, wheelTurn } from '../../../renderer/picker/wheelPlaces';
import { chooseAxle, moveTo } from '../../../renderer/state/actions/lookAt';
import { openedBench } from '../carUnderTest';

describe('the plan of the car', () => {
  test('left and right mirror each other, front is up', () => {
    expect(wheelPlace('front', 'left').x + wheelPlace('front', 'right').x).toBe(PLAN.width);
    expect(wheelPlace('front', 'left').y).toBeLessThan(wheelPlace('rear', 'left').y);
  });
  test('toe-in turns both fronts inboard, ten times what it is, and no wheel turns over', () => {
    expect([wheelTurn(0.2, 'left'), wheelTurn(0.2, 'right')]).toEqual([2, -2]);
    expect([wheelTurn(-0.2, 'left'), wheelTurn(30, 'right'), wheelTurn(null, 'left')]).toEqual([-2, -32, 0]);
    expect(Object.is(wheelTurn(0, 'right'), 0)).toBe(true);
  });
});

describe('its figures', () => {
  test('are those of the table, on both axles', () => {
    const store = openedBench('car-23');
    moveTo(store, { travel: 12, rollDeg: 1 });
    const figures = () => {
      const { shown, position } = store.getState();
      if (!shown) throw new Error('it stands');
      return { shown, figures: wheelFigures(shown.row.car, position) };
    };
    for (const axle of ['front', 'rear'] as const) {
      chooseAxle(store, axle);
      const now = figures();
      for (const side of ['left', 'right'] as const) {
        const figure = now.figures.find((one) => one.axle === axle && one.side === side);
        expect(figure?.camber).toBe(now.shown.row[side]['camber']);
        expect(figure?.toe).toBe(now.shown.row[side]['toe']);
      }
    }
  });
});
