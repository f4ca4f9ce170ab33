import { readFile, writeFile } from 'node:fs/promises';
import { expect, onTestFinished, test } from 'vitest';
import { FileDesk } from '../../../electron/files/fileDesk';
import { questionsBy, type FileAnswer, type FileService } from '../../../renderer/files/fileService';
import { beginWindow } from '../../../renderer/state/actions/beginWindow';
import { setToe, turnAdjuster } from '../../../renderer/state/actions/editSetup';
import { keepCopies } from '../../../renderer/state/actions/keepCopies';
import { chooseSetup } from '../../../renderer/state/actions/editSetup';
import { takeBoth, takeCopy } from '../../../renderer/state/actions/recoverCar';
import { saveCar, saveOver } from '../../../renderer/state/actions/saveCar';
import { comparedWith, createBenchStore, type BenchStore } from '../../../renderer/state/benchStore';
import type { Offer } from '../../../renderer/state/filesState';
import { temporaryFolder } from '../../electron/temporaryFolder';
import { carText } from '../carUnderTest';

const MINE = 'mine.jounce.json';

/** Windows, one after the other, on one car of this disk. */
const windowsOn = async (text: string) => {
  const folder = await temporaryFolder({ [MINE]: text });
  const desk = new FileDesk({ stateFolder: `${folder}/state`, handed: [`${folder}/${MINE}`] });
  onTestFinished(() => desk.close());
  const files = {
    shell: 'served',
    ...questionsBy((method, asked) => desk.answer(method, asked) as Promise<FileAnswer<never>>),
    listSamples: async () => ({ ok: true, value: [] }),
  } as unknown as FileService;
  /** @param work - what is done in it before it is lost, with all of it kept */
  const inWindow = async (work: (store: BenchStore, offer: () => Offer) => Promise<void> | void): Promise<void> => {
    const store = createBenchStore();
    const keeper = keepCopies(store, files);
    await beginWindow(store, files);
    const offer = (): Offer => {
      const offered = store.getState().files.offer;
      if (!offered || 'unfinished' in offered) throw new Error('a copy is offered');
      return offered;
    };
    await work(store, offer);
    await keeper.keepNow();
    keeper.stop();
    await desk.windowWent(store.getState().files.window);
  };
  return { file: `${folder}/${MINE}`, files, inWindow };
};

test('somebody else’s version is asked about however often the kept copy is gone on with, until it was said to be written over', async () => {
  const mine = carText('car-23');
  const theirs = mine.replace('"Check car 23"', '"Check car of hers"');
  const { file, files, inWindow } = await windowsOn(mine);
  let openedAt: number | null = null;
  await inWindow((store) => {
    openedAt = store.getState().file?.saved.at ?? null;
    turnAdjuster(store, 'plateAcross', 'top plate', 'both', -5);
  });
  await writeFile(file, theirs);
  for (const toe of [0.1, 0.2]) {
    await inWindow((store, offer) => {
      const { isFileNewer, copy } = offer();
      expect([isFileNewer, copy.origin, copy.note.savedAt]).toEqual([true, mine, openedAt]);
      takeCopy(store, offer());
      setToe(store, toe);
    });
  }
  await inWindow(async (store, offer) => {
    expect(offer().isFileNewer).toBe(true);
    takeCopy(store, offer());
    expect(await saveCar(store, files)).toBe(false);
    expect(await readFile(file, 'utf8')).toBe(theirs);
    expect(store.getState().files.notice?.ways).toEqual(['saveOver', 'takeTheirs', 'saveAs']);
    expect(await saveOver(store, files)).toBe(true);
    setToe(store, 0.3);
  });
  // what was saved from here is one's own
  await inWindow((_store, offer) => {
    expect([offer().isFileNewer, offer().copy.origin]).toEqual([false, offer().savedText]);
  });
});

test('a copy that is gone on with has not ended when the window before did', async () => {
  const { inWindow } = await windowsOn(carText('car-23'));
  await inWindow((store) => turnAdjuster(store, 'plateAcross', 'top plate', 'both', -5));
  let first = 0;
  await inWindow(async (store, offer) => {
    first = offer().copy.note.endedAt ?? 0;
    takeCopy(store, offer());
    await new Promise((later) => setTimeout(later, 20));
    setToe(store, 0.1);
  });
  await inWindow((_store, offer) => {
    const { endedAt, keptAt } = offer().copy.note;
    expect(keptAt).toBeGreaterThan(first);
    expect(endedAt).toBeGreaterThanOrEqual(keptAt);
  });
});

test('opened beside the car as saved, a trial is held against the setup that it was begun from', async () => {
  const { inWindow } = await windowsOn(carText('car-23'));
  await inWindow((store) => {
    chooseSetup(store, 'Trial');
    turnAdjuster(store, 'plateAcross', 'top plate', 'both', -5);
    expect(store.getState().history?.present.setup).not.toBe('Trial');
  });
  await inWindow((store, offer) => {
    takeBoth(store, offer());
    expect(comparedWith(store.getState())?.name).toBe('Trial of Check car 23 as saved');
  });
});
