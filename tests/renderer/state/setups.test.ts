import { describe, expect, test } from 'vitest';
import { parseCar, serializeCar, setupNames } from '../../../geometry/index';
import { undoStep } from '../../../renderer/state/actions/editSetup';
import {
  addRecordLine,
  copySetup,
  deleteSetup,
  freeCopyName,
  makeSetup,
  markOnCar,
  moveSetup,
  removeRecordLine,
  renameSetup,
  writeNotes,
  writeRecordValue,
} from '../../../renderer/state/actions/setups';
import { chooseAgainst } from '../../../renderer/state/actions/editSetup';
import { openCarText } from '../../../renderer/state/actions/openCar';
import { createBenchStore } from '../../../renderer/state/benchStore';
import { carText, openedBench } from '../carUnderTest';

type Opened = ReturnType<typeof openedBench>;
const present = (store: Opened) => {
  const { history } = store.getState();
  if (!history) throw new Error('a car is open');
  return history.present;
};
const names = (store: Opened) => setupNames(present(store).document);
const stepName = (store: Opened) => store.getState().history?.past.at(-1)?.name;

/** Nothing that the window writes is a fault when it is read again. */
const expectValid = (store: Opened) => {
  const read = parseCar(serializeCar(present(store).document));
  expect(read.ok ? [] : read.failure.faults).toEqual([]);
};

describe('the list of setups', () => {
  test('made, copied, renamed, moved and deleted: each one step with its name, and the file stays good', () => {
    const store = openedBench();
    const before = names(store);
    expect(makeSetup(store, ' Rain ')).toBeNull();
    expect([present(store).setup, stepName(store)]).toEqual(['Rain', 'Make setup Rain']);
    expect(names(store)).toEqual(['Baseline', 'Rain', ...before.slice(1)]);
    copySetup(store, 'Trial');
    expect([present(store).setup, stepName(store)]).toEqual(['Trial 2', 'Copy setup Trial']);
    expect(present(store).document.setups?.['Trial 2']).toEqual(present(store).document.setups?.['Trial']);
    expect(renameSetup(store, 'Trial 2', 'Sprint')).toBeNull();
    expect(present(store).setup).toBe('Sprint');
    moveSetup(store, 'Sprint', -99);
    expect(names(store)[0]).toBe('Sprint');
    moveSetup(store, 'Sprint', 1);
    expect(names(store).slice(0, 2)).toEqual(['Baseline', 'Sprint']);
    expect(deleteSetup(store, 'Sprint')).toBeNull();
    expect(present(store).setup).toBe('Rain');
    expectValid(store);
    for (let steps = store.getState().history?.past.length ?? 0; steps > 0; steps -= 1) undoStep(store);
    expect(present(store).document).toBe(store.getState().file?.asRead);
  });

  test('what is compared follows its setup, and gives way when that is deleted', () => {
    const store = openedBench();
    chooseAgainst(store, 'Trial');
    renameSetup(store, 'Trial', 'Second');
    expect(present(store).against).toBe('Second');
    deleteSetup(store, 'Second');
    expect(names(store)).toContain(present(store).against);
    expect(store.getState().answer?.ok).toBe(true);
  });

  test('names that a file cannot keep are refused with the reason, and nothing changes', () => {
    const store = openedBench();
    const { document } = present(store);
    expect(renameSetup(store, 'Trial', '  ')).toContain('needs a name');
    expect(renameSetup(store, 'Trial', 'Baseline')).toContain('already');
    expect(renameSetup(store, 'Trial', '12')).toContain('word');
    expect(renameSetup(store, 'Trial', 'x'.repeat(61))).toContain('60');
    expect(makeSetup(store, 'two\nlines')).toContain('line breaks');
    expect(renameSetup(store, 'Trial', 'Trial')).toBeNull();
    expect(present(store).document).toBe(document);
  });

  test('the last setup stays, and one that a measurement was made on', () => {
    const store = createBenchStore();
    const plain = JSON.parse(carText('car-23')) as Record<string, unknown>;
    const measured = { name: 'gauge', axle: 'front', setup: 'Trial', input: 'travel', reading: 'toe', rows: [[0, 0.1]] };
    openCarText(store, 'measured', null, JSON.stringify({ ...plain, onCar: 'Trial', measurements: [measured] }));
    expect(deleteSetup(store, 'Trial')).toContain('The measurement “gauge”');
    renameSetup(store, 'Trial', 'Second');
    expect(present(store).document.measurements?.[0]?.setup).toBe('Second');
    expect(present(store).document.onCar).toBe('Second');
    expectValid(store);
    deleteSetup(store, 'Turns');
    deleteSetup(store, 'Baseline');
    expect(deleteSetup(store, 'Second')).toContain('last setup');
    expect(names(store)).toEqual(['Second']);
  });

  test('a copy is numbered past the last of its name', () => {
    expect(freeCopyName(['Baseline', 'Trial 3'], 'Trial 3')).toBe('Trial 4');
    expect(freeCopyName(['Trial 3', 'Trial 7', 'Trial of Tom', 'Trials 12'], 'Trial 3')).toBe('Trial 8');
    expect(freeCopyName(['Wet'], 'Wet')).toBe('Wet 2');
  });

  test('a car that lists no setups has its plain one, which can be copied and renamed', () => {
    const store = createBenchStore();
    const { setups, ...bare } = JSON.parse(carText('car-23')) as Record<string, unknown>;
    expect(setups).toBeDefined();
    openCarText(store, 'bare', null, JSON.stringify(bare));
    copySetup(store, 'Baseline');
    expect(names(store)).toEqual(['Baseline', 'Baseline 2']);
    renameSetup(store, 'Baseline', 'As drawn');
    expect(names(store)).toEqual(['As drawn', 'Baseline 2']);
    expectValid(store);
  });

  test('the mark of the setup on the car is one step, and goes with its setup', () => {
    const store = openedBench();
    markOnCar(store, 'Trial');
    expect([present(store).document.onCar, stepName(store)]).toEqual(['Trial', 'Trial is on the car']);
    deleteSetup(store, 'Trial');
    expect(present(store).document.onCar).toBeUndefined();
    markOnCar(store, null);
    expect(stepName(store)).toBe('Delete setup Trial');
    expectValid(store);
  });

  test('copies are numbered on', () => {
    expect(freeCopyName(['Wet'], 'Wet')).toBe('Wet 2');
    expect(freeCopyName(['Wet', 'Wet 2'], 'Wet 2')).toBe('Wet 3');
    expect(freeCopyName([], 'x'.repeat(60))).toHaveLength(56);
  });
});

describe('what is written about a setup', () => {
  test('notes and record lines, each one step; an empty one leaves no trace', () => {
    const store = openedBench();
    const { document } = present(store);
    writeNotes(store, 'Trial', 'Rain from noon.');
    addRecordLine(store, 'Trial', ' pressure hot ', 'bar');
    writeRecordValue(store, 'Trial', 0, 'frontLeft', 2.1);
    writeRecordValue(store, 'Trial', 0, 'rearLeft', 'not read');
    const { notes, record } = present(store).document.setups?.['Trial'] ?? {};
    expect(notes).toBe('Rain from noon.');
    expect(record).toEqual([{ label: 'pressure hot', unit: 'bar', values: { frontLeft: 2.1, rearLeft: 'not read' } }]);
    expectValid(store);
    writeRecordValue(store, 'Trial', 0, 'rearLeft', null);
    writeRecordValue(store, 'Trial', 0, 'frontLeft', 2.1);
    expect(store.getState().history?.past).toHaveLength(5);
    writeRecordValue(store, 'Trial', 7, 'frontLeft', 1);
    addRecordLine(store, 'Trial', ' ', 'bar');
    removeRecordLine(store, 'Trial', 0);
    writeNotes(store, 'Trial', '');
    expect(present(store).document.setups?.['Trial']).toEqual(document.setups?.['Trial']);
  });
});
