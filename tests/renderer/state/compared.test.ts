import { describe, expect, test } from 'vitest';
import { compareWithFile } from '../../../renderer/state/actions/compareWith';
import { chooseAgainst, chooseSetup, turnAdjuster, undoStep } from '../../../renderer/state/actions/editSetup';
import { chooseAxle, moveTo } from '../../../renderer/state/actions/lookAt';
import { comparedWith } from '../../../renderer/state/benchStore';
import { againstGroups } from '../../../renderer/setups/againstChoices';
import { carText, openedBench } from '../carUnderTest';

const bytesOf = (name: string): Uint8Array => new TextEncoder().encode(carText(name));
const benchNow = (store: ReturnType<typeof openedBench>) => {
  const { history } = store.getState();
  if (!history) throw new Error('a car is open');
  return history.present;
};

describe('compared with', () => {
  test('the setup on the bench with itself: nothing, and no zeros', () => {
    const store = openedBench();
    expect(comparedWith(store.getState())).toBeNull();
    const { shown } = store.getState();
    expect(shown?.against).toBeNull();
    expect(shown?.difference.left['camber']).toBeNull();
    expect(shown?.compared).toEqual({ ok: true, value: shown?.row });
  });

  test('another setup of the car, under its name', () => {
    const store = openedBench();
    chooseAgainst(store, 'Trial');
    const { shown } = store.getState();
    expect(shown?.against).toBe('Trial');
    expect(shown?.difference.left['camber']).not.toBe(0);
  });

  test('the car as saved: a trial turned twice is held against what was saved', () => {
    const store = openedBench();
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
    const trial = benchNow(store).document;
    const { file } = store.getState();
    if (!file) throw new Error('a car is open');
    store.setState({ file: { ...file, saved: { ...file.saved, document: trial } } });
    expect(againstGroups(benchNow(store), trial).map(({ label }) => label)).toEqual(['Setups of this car']);
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -8);
    const groups = againstGroups(benchNow(store), trial);
    expect(groups.map(({ label }) => label)).toEqual(['Setups of this car', 'As saved']);
    chooseAgainst(store, 'Trial 1', { kind: 'saved' });
    expect(comparedWith(store.getState())?.name).toBe('Trial 1 as saved');
    expect(store.getState().shown?.difference.left['camber']).not.toBeCloseTo(0, 3);
  });

  test('another file: its own numbers, its own axles, and a file with faults is refused', () => {
    const store = openedBench('car-21');
    expect(compareWithFile(store, 'other', bytesOf('car-23'))).toBe(true);
    expect(comparedWith(store.getState())?.name).toMatch(/of Check car 23$/);
    const other = openedBench('car-23');
    const { shown } = store.getState();
    expect(shown?.compared.ok && shown.compared.value.left['camber']).toBe(other.getState().shown?.row.left['camber']);
    // two files of one car are told apart by the file
    expect(compareWithFile(store, 'last-week.jounce.json', bytesOf('car-21'))).toBe(true);
    expect(comparedWith(store.getState())?.name).toMatch(/of Check car 21 in last-week\.jounce\.json$/);
    expect(compareWithFile(store, 'other', bytesOf('car-23'))).toBe(true);
    expect(compareWithFile(store, 'bad', new TextEncoder().encode('{'))).toBe(false);
    expect(store.getState().refused?.title).toBe('bad');
    expect(comparedWith(store.getState())?.name).toMatch(/of Check car 23$/);
  });

  test('an axle that the other car has not, or does not steer, is said and not thrown', () => {
    const store = openedBench('car-23');
    const { rear, setups, ...half } = JSON.parse(carText('car-21')) as Record<string, unknown>;
    expect([rear, setups]).not.toContain(undefined);
    expect(compareWithFile(store, 'half', new TextEncoder().encode(JSON.stringify(half)))).toBe(true);
    chooseAxle(store, 'rear');
    const { shown } = store.getState();
    expect(shown?.compared.ok).toBe(false);
    expect(shown && !shown.compared.ok && shown.compared.failure.message).toContain('no rear axle');
    chooseAxle(store, 'front');
    moveTo(store, { rack: 12 });
    expect(store.getState().shown?.compared.ok).toBe(true);
  });

  test('a setup that is gone gives way to the first', () => {
    const store = openedBench();
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
    chooseAgainst(store, 'Trial 1');
    chooseSetup(store, 'Trial');
    expect(comparedWith(store.getState())?.setup).toBe('Trial 1');
    undoStep(store);
    expect(store.getState().answer?.ok).toBe(true);
  });
});
