import { expect, test } from 'vitest';
import { copiedFrom } from '../../../renderer/state/copiedFrom';
import { chooseSetup, turnAdjuster, undoStep } from '../../../renderer/state/actions/editSetup';
import { copySetup, deleteSetup, makeSetup, renameSetup } from '../../../renderer/state/actions/setups';
import { openedBench } from '../carUnderTest';

const sourceOf = (store: ReturnType<typeof openedBench>): string | null => {
  const { history } = store.getState();
  if (!history) throw new Error('a car is open');
  return copiedFrom(history.present);
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

test('a copy of a copy knows it by the name that it has now, and nothing of one that is gone', () => {
  const store = openedBench();
  const onBench = () => store.getState().history?.present.setup ?? '';
  copySetup(store, 'Trial');
  expect([onBench(), sourceOf(store)]).toEqual(['Trial 2', 'Trial']);
  renameSetup(store, 'Trial 2', 'Cam plate');
  expect(sourceOf(store)).toBe('Trial');
  copySetup(store, 'Cam plate');
  renameSetup(store, onBench(), 'Cam clamp');
  expect(sourceOf(store)).toBe('Cam plate');
  turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
  expect([onBench(), sourceOf(store)]).toEqual(['Cam clamp', 'Cam plate']);
  renameSetup(store, 'Cam plate', 'Plate');
  expect(sourceOf(store)).toBe('Plate');
  deleteSetup(store, 'Plate');
  expect(sourceOf(store)).toBeNull();
  undoStep(store);
  expect(sourceOf(store)).toBe('Plate');
  // another setup of the name of one that is gone is another one
  deleteSetup(store, 'Cam clamp');
  makeSetup(store, 'Cam clamp');
  expect([onBench(), sourceOf(store)]).toEqual(['Cam clamp', null]);
});
