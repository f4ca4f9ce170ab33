import { expect, test } from 'vitest';
import { parseCar, type Fault } from '../../../geometry/index';
import { offsetOf, sureMend } from '../../../renderer/files/mendFault';
import { openMended, recheckRefused } from '../../../renderer/state/actions/mendRefused';
import { openCarText } from '../../../renderer/state/actions/openCar';
import { createBenchStore, isUnsaved } from '../../../renderer/state/benchStore';
import { carText } from '../carUnderTest';

const faultsOf = (text: string): readonly Fault[] => {
  const read = parseCar(text);
  return read.ok ? [] : read.failure.faults;
};

test('a place is found in every kind of line', () => {
  const text = 'one\r\ntwo\nthree\rfour';
  expect(text.slice(offsetOf(text, 2, 1))).toBe('two\nthree\rfour');
  expect(text.slice(offsetOf(text, 4, 2))).toBe('our');
  expect(offsetOf(text, 9, 9)).toBe(text.length);
});

test('a name that is nearly one that is meant is mended where nothing else breaks by it', () => {
  const text = carText('car-21');
  const broken = text.replace('"ballJoint"', '"balJoint"');
  const faults = faultsOf(broken);
  const sure = faults.flatMap((fault) => sureMend(broken, faults, fault) ?? []);
  expect(sure).toHaveLength(1);
  expect(sure[0]?.words).toBe('balJoint → ballJoint');
  expect(sure[0]?.text).toBe(text);
});

test('what is not a name is left to a person', () => {
  const broken = carText('car-21').replace('"version": 1', '"version": "1"');
  const faults = faultsOf(broken);
  expect(faults.length).toBeGreaterThan(0);
  expect(faults.map((fault) => sureMend(broken, faults, fault)).every((mend) => mend === null)).toBe(true);
});

test('a refused text is judged anew, and opens as a car of no file when no fault is left', () => {
  const store = createBenchStore();
  openCarText(store, 'sample', 'sample', carText('car-23'));
  const before = store.getState().history;
  const broken = carText('car-21').replace('"ballJoint"', '"balJoint"');
  expect(openCarText(store, 'old.jounce.json', null, broken)).toBe(false);
  openMended(store);
  expect(store.getState().history).toBe(before);
  recheckRefused(store, carText('car-21').replace('"version": 1', '"version": 2.5'));
  expect(store.getState().refused).toMatchObject({ isMended: true });
  expect(store.getState().refused?.faults.length).toBeGreaterThan(0);
  recheckRefused(store, carText('car-21'));
  expect(store.getState().refused?.faults).toEqual([]);
  openMended(store);
  const { refused, file } = store.getState();
  expect(refused).toBeNull();
  expect(file).toMatchObject({ place: { kind: 'none', name: 'old-mended.jounce.json' }, isNeverSaved: true });
  expect(isUnsaved(store.getState())).toBe(true);
});
