import { rm, writeFile } from 'node:fs/promises';
import { expect, onTestFinished, test } from 'vitest';
import { FileDesk } from '../../../electron/files/fileDesk';
import { questionsBy, type FileAnswer, type FileService } from '../../../renderer/files/fileService';
import { beginWindow } from '../../../renderer/state/actions/beginWindow';
import { chooseAxle } from '../../../renderer/state/actions/lookAt';
import { chooseAgainst, chooseSetup } from '../../../renderer/state/actions/editSetup';
import { openCarText, openHanded } from '../../../renderer/state/actions/openCar';
import { openBefore, rememberOpen } from '../../../renderer/state/actions/rememberOpen';
import { benchOf, createBenchStore, type BenchStore } from '../../../renderer/state/benchStore';
import { carTitle } from '../../../renderer/state/carTitle';
import { temporaryFolder } from '../../electron/temporaryFolder';
import { carText } from '../carUnderTest';

/** A program that was started with one car, beside another one and a sample; its windows are reloaded one after the other. */
const program = async () => {
  const folder = await temporaryFolder({ 'first.jounce.json': carText('car-21'), 'mine.jounce.json': carText('car-23') });
  const desk = new FileDesk({ stateFolder: `${folder}/state`, handed: [`${folder}/first.jounce.json`] });
  onTestFinished(() => desk.close());
  const sample = carText('car-23').replace('"Check car 23"', '"A sample"');
  const files = {
    shell: 'served',
    ...questionsBy((method, asked) => desk.answer(method, asked) as Promise<FileAnswer<never>>),
    listSamples: async () => ({ ok: true, value: [{ name: 'saltmarsh-hatch' }] }),
    readSample: async (name: string) => ({ ok: true, value: { name, text: sample } }),
  } as unknown as FileService;
  const kept = new Map<string, string>();
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
  };
  const load = async (): Promise<BenchStore> => {
    const store = createBenchStore();
    const before = openBefore(storage);
    rememberOpen(store, storage);
    await beginWindow(store, files, before);
    return store;
  };
  return { load, files, kept, mine: desk.hand(`${folder}/mine.jounce.json`), first: desk.hand(`${folder}/first.jounce.json`) };
};

const title = (store: BenchStore) => carTitle(store.getState());

test('a reload comes back to the file that was open, its setups, axle and study, not to the one of the start', async () => {
  const { load, files, mine } = await program();
  const store = await load();
  expect(title(store)).toBe('Check car 21');
  await openHanded(store, files, mine);
  chooseSetup(store, 'Trial');
  chooseAgainst(store, 'Trial');
  chooseAxle(store, 'rear');
  store.setState({ study: 'map' });
  const again = await load();
  expect(title(again)).toBe('Check car 23');
  expect(benchOf(again.getState())).toMatchObject({ setup: 'Trial', against: 'Trial' });
  expect([again.getState().axle, again.getState().study]).toEqual(['rear', 'map']);
  expect(again.getState().files.notice).toBeNull();
});

test('a file that is gone after a reload, or has faults by then, is told, and what is open instead', async () => {
  const { load, files, mine, first } = await program();
  await openHanded(await load(), files, mine);
  await rm(`${mine.folder}/${mine.name}`);
  const instead = await load();
  expect([title(instead), instead.getState().refused?.isAtStart]).toEqual(['Check car 21', true]);
  expect(instead.getState().refused?.message).toContain('“mine.jounce.json” in ');
  expect(instead.getState().refused?.message).toContain('is not there any more');
  await writeFile(`${first.folder}/${first.name}`, '{}');
  const sample = await load();
  expect([title(sample), sample.getState().refused?.isAtStart]).toEqual(['A sample', true]);
  expect(sample.getState().refused?.faults.length).toBeGreaterThan(0);
});

test('a file that the browser gave to be read once is said to be chosen again', async () => {
  const { load } = await program();
  const store = await load();
  openCarText(store, 'given.jounce.json', null, carText('car-23'));
  const again = await load();
  expect(title(again)).toBe('Check car 21');
  expect(again.getState().files.notice).toMatchObject({ ways: ['openAgain'], name: 'given.jounce.json' });
});

test('what the storage of the window says is not trusted', async () => {
  const { load, kept } = await program();
  for (const text of ['{', '{"file":{}}', '3', '{"file":{"kind":"sample","name":"x"}}']) {
    kept.set('jounce.open', text);
    expect(title(await load()), text).toBe('Check car 21');
  }
});
