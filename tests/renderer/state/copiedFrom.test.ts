import { expect, test } from 'vitest';
import { copiedFrom } from '../../../renderer/state/copiedFrom';
import { chooseSetup, turnAdjuster, undoStep } from '../../../renderer/state/actions/editSetup';
import { openedBench } from '../carUnderTest';

const sourceOf = (store: ReturnType<typeof openedBench>): string | null => {
  const { history } = store.getState();
  if (!history) throw new Error('a car is open');
  return copiedFrom(history);
};

test('a trial knows the setup that it was begun as a copy of, however far it is turned', () => {
  const store = openedBench();
  expect(sourceOf(store)).toBeNull();
  chooseSetup(store, 'Trial');
  turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
  expect(store.getState().history?.present.setup).toBe('Trial 1');
  expect(sourceOf(store)).toBe('Trial');
  turnAdjuster(store, 'plateAcross', 'plate across', 'both', -6);
  expect(sourceOf(store)).toBe('Trial');
  chooseSetup(store, 'Baseline');
  expect(sourceOf(store)).toBeNull();
  chooseSetup(store, 'Trial 1');
  expect(sourceOf(store)).toBe('Trial');
  undoStep(store);
  undoStep(store);
  expect(sourceOf(store)).toBeNull();
});
