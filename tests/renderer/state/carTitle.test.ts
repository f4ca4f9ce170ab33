import { expect, onTestFinished, test } from 'vitest';
import { parseCar } from '../../../geometry/index';
import type { FileService } from '../../../renderer/files/fileService';
import { windowTitle } from '../../../renderer/shell/useTitle';
import { editCar } from '../../../renderer/state/actions/editCar';
import { undoStep } from '../../../renderer/state/actions/editSetup';
import { beginCar } from '../../../renderer/state/actions/beginCar';
import { takeCopy } from '../../../renderer/state/actions/recoverCar';
import { saveCarAs } from '../../../renderer/state/actions/saveCar';
import { createBenchStore, type BenchStore } from '../../../renderer/state/benchStore';
import { carTitle, keptName } from '../../../renderer/state/carTitle';
import type { Offer } from '../../../renderer/state/filesState';
import { carDocument, carText, openedBench } from '../carUnderTest';

const rename = (store: BenchStore, name: string): void => editCar(store, 'Change name', (document) => ({ ...document, name }));

test('the window is called after the car as it is called now, undone with its name', () => {
  const store = openedBench();
  const said = () => [carTitle(store.getState()), windowTitle(store.getState())];
  expect(said()).toEqual(['Check car 23', 'Check car 23 – Jounce']);
  rename(store, 'Wet car');
  expect(said()).toEqual(['Wet car', '● Wet car – Jounce']);
  undoStep(store);
  expect(said()).toEqual(['Check car 23', 'Check car 23 – Jounce']);
});

test('what is kept of a car is called after it as it is called now, whatever it was opened as', () => {
  const store = openedBench();
  expect(keptName(store.getState(), 'points')).toBe('Check car 23 Baseline front points');
  rename(store, 'Wet car');
  expect(keptName(store.getState(), 'points')).toBe('Wet car Baseline front points');
  expect(keptName(store.getState(), 'lengths', 'Design')).toBe('Wet car Design front lengths');
});

test('a kept copy that is gone on with is called by its own name, not by the one in the file', () => {
  const store = openedBench();
  const renamed = carText('car-23').replace('"Check car 23"', '"Wet car"');
  const read = parseCar(renamed);
  if (!read.ok) throw new Error('the car has no faults');
  const note = { id: 'kept', title: 'Wet car', name: 'mine.jounce.json', file: null, folder: null, sample: null, steps: [] };
  takeCopy(store, {
    copy: {
      note: { ...note, setup: '', against: '', savedAt: 1, keptAt: 2, endedAt: null },
      text: renamed,
      origin: carText('car-23'),
    },
    document: read.value.document,
    saved: carDocument('car-23'),
    ...{ savedText: carText('car-23'), version: null, isReadOnly: false, isFileNewer: false },
  } as unknown as Offer);
  expect(carTitle(store.getState())).toBe('Wet car');
  undoStep(store);
  expect(carTitle(store.getState())).toBe('Check car 23');
});

test('a new car that got another name is offered it as its file’s', async () => {
  const store = createBenchStore();
  const names: unknown[] = [];
  const pickers = { showSaveFilePicker: (options: { suggestedName: string }) => (names.push(options.suggestedName), stay()) };
  const stay = () => Promise.reject(new DOMException('cancelled', 'AbortError'));
  Object.assign(globalThis, { window: pickers });
  onTestFinished(() => void Reflect.deleteProperty(globalThis, 'window'));
  beginCar(store, { name: 'New car' } as Parameters<typeof beginCar>[1], { ...carDocument('car-23'), name: 'New car' });
  await saveCarAs(store, { shell: 'served' } as FileService);
  rename(store, 'Wet car');
  await saveCarAs(store, { shell: 'served' } as FileService);
  expect(names).toEqual(['new-car.jounce.json', 'wet-car.jounce.json']);
});
