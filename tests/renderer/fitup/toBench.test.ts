import { expect, test } from 'vitest';
import { takeToBench } from '../../../renderer/fitup/toBench';
import { chooseScope } from '../../../renderer/state/actions/viewing';
import { scopeOf, type Scope } from '../../../renderer/state/viewing';
import { openedBench } from '../carUnderTest';

test('a row is taken to the bench with its wheel looked at; where both are looked at they stay', () => {
  const store = openedBench();
  const looked = (before: Scope, side: 'left' | 'right'): Scope => {
    chooseScope(store, before);
    takeToBench(store, { axle: 'front', side, setup: 'Baseline', travel: 12, rack: -20 });
    return scopeOf(store.getState().preferences);
  };
  expect(looked('left', 'right')).toBe('right');
  expect(looked('right', 'left')).toBe('left');
  expect(looked('right', 'right')).toBe('right');
  expect(looked('axle', 'right')).toBe('axle');
  expect(looked('car', 'left')).toBe('car');
  expect(store.getState()).toMatchObject({ page: 'bench', axle: 'front', position: { travel: 12, rack: -20, rollDeg: 0 } });
});
