import { expect, onTestFinished, test } from 'vitest';
import type { FileService } from '../../../renderer/files/fileService';
import { saveCarAs } from '../../../renderer/state/actions/saveCar';
import { openedBench } from '../carUnderTest';

test('a car that was saved through the browser’s own dialog is on the list of recent files', async () => {
  const store = openedBench();
  const written: string[] = [];
  const handle = {
    name: 'touring.jounce.json',
    getFile: async () => ({ lastModified: 5, size: 1 }),
    createWritable: async () => ({ write: async (text: string) => void written.push(text), close: async () => undefined }),
  };
  Object.assign(globalThis, { window: { showSaveFilePicker: async () => handle } });
  onTestFinished(() => void Reflect.deleteProperty(globalThis, 'window'));
  const recent = [{ id: null, name: handle.name, folder: null, usedAt: 6 }];
  const asked: unknown[] = [];
  const files = {
    shell: 'served',
    noteRecent: async (question: unknown) => (asked.push(question), { ok: true, value: recent }),
  } as unknown as FileService;
  expect(await saveCarAs(store, files)).toBe(true);
  expect(written).toHaveLength(1);
  await expect.poll(() => store.getState().files.recent).toEqual(recent);
  expect(asked).toEqual([{ name: handle.name }]);
  // nothing keeps handles here: it has to be chosen again, and the menu says so
  expect(store.getState().files.reopenable).toEqual([]);
});
