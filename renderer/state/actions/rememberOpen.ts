import { setupNames, type AxleName } from '../../../geometry/index';
import type { FileService } from '../../files/fileService';
import { benchOf, changeFiles, type BenchState, type BenchStore, type StudyName } from '../benchStore';
import { chooseAxle } from './lookAt';
import { chooseAgainst, chooseSetup } from './editSetup';
import { openHanded, openPicked, openSample } from './openCar';
import { recentHandle } from './recentFiles';

/** What this window showed when it was reloaded. */
export interface OpenBefore {
  readonly file:
    | { readonly kind: 'handed'; readonly id: string; readonly name: string; readonly folder: string }
    | { readonly kind: 'sample'; readonly name: string }
    /** the browser opened it: with a handle that it may have kept, or not */
    | { readonly kind: 'picked' | 'given'; readonly name: string };
  readonly setup: string;
  readonly against: string;
  readonly axle: AxleName;
  readonly study: StudyName;
}

/** As much of the browser's storage of one window as is used here: it outlives a reload, and goes with the window. */
export type WindowStorage = Pick<Storage, 'getItem' | 'setItem'>;

const KEY = 'jounce.open';

const fileOf = ({ file }: BenchState): OpenBefore['file'] | null => {
  // a car in no file has a recovery copy, which is offered
  if (!file || file.isNeverSaved) return null;
  if (file.place.kind === 'handed') return { kind: 'handed', ...file.place.file };
  if (file.sample !== null) return { kind: 'sample', name: file.sample };
  return { kind: file.place.kind === 'picked' ? 'picked' : 'given', name: file.place.name };
};

const openOf = (state: BenchState): OpenBefore | null => {
  const [file, bench] = [fileOf(state), benchOf(state)];
  if (!file || !bench) return null;
  const { setup, against, againstCar } = bench;
  return { file, setup, against: againstCar.kind === 'own' ? against : '', axle: state.axle, study: state.study };
};

/** Notes what is open, for a reload of this window. */
export const rememberOpen = (store: BenchStore, storage: WindowStorage): void => {
  let noted = '';
  store.subscribe((state) => {
    // while nothing is open yet, what was is still to be read
    if (!state.file) return;
    const text = JSON.stringify(openOf(state));
    if (text === noted) return;
    noted = text;
    try {
      storage.setItem(KEY, text);
    } catch {
      // a full or forbidden storage: the window begins as at its first start
    }
  });
};

/** What this window showed before it was reloaded; null at its first start. Written by this window alone, and not trusted. */
export const openBefore = (storage: WindowStorage): OpenBefore | null => {
  try {
    const read = JSON.parse(storage.getItem(KEY) ?? 'null') as OpenBefore | null;
    const words = read && [read.file.name, read.setup, read.against, read.axle, read.study];
    return words?.every((word) => typeof word === 'string') ? read : null;
  } catch {
    return null;
  }
};

/** Why it was not opened again is told by the file itself, or here: the browser opens no file again unasked. */
const openFileAgain = async (store: BenchStore, files: FileService, file: OpenBefore['file']): Promise<void> => {
  switch (file.kind) {
    case 'handed':
      return openHanded(store, files, file);
    case 'sample':
      return openSample(store, files, file.name);
    case 'picked': {
      const handle = await recentHandle(file.name, 'silent');
      return handle ? openPicked(store, files, handle) : undefined;
    }
    case 'given':
      return undefined;
  }
};

/** Opens again what was open before a reload, with its setups and axle. @returns whether it is open */
export const openAgain = async (store: BenchStore, files: FileService, before: OpenBefore): Promise<boolean> => {
  await openFileAgain(store, files, before.file);
  const bench = benchOf(store.getState());
  if (!bench) return false;
  const names = setupNames(bench.document);
  if (names.includes(before.setup)) chooseSetup(store, before.setup);
  if (names.includes(before.against)) chooseAgainst(store, before.against);
  chooseAxle(store, before.axle);
  return true;
};

/** A file that the browser opened, and does not open again by itself: said with the way to it, where nothing else is told. */
export const tellNotOpenAgain = (store: BenchStore, { file }: OpenBefore): void => {
  if (file.kind === 'handed' || file.kind === 'sample') return;
  const { name } = file;
  const text = 'The browser opens it again only when you say so.';
  changeFiles(store, {
    notice: { title: `“${name}” was open before the reload.`, text, ways: ['openAgain'], news: 'mind', name },
  });
};
