import type { FileService, HandedName } from '../../files/fileService';
import { browserHandles } from '../../files/keptHandles';
import type { PickedFile } from '../../files/places';
import { changeFiles, type BenchStore } from '../benchStore';

/** The shell keeps as many. */
const LONGEST_RECENT = 12;

/** Puts a file that the shell handed out at the head of the window's list; the shell's own has it by then. */
export const noteRecentHanded = (store: BenchStore, { id, name, folder }: HandedName): void => {
  const rest = store.getState().files.recent.filter((file) => file.id !== id);
  changeFiles(store, { recent: [{ id, name, folder, usedAt: Date.now() }, ...rest].slice(0, LONGEST_RECENT) });
};

/** Puts a file that the browser gave to be read only on the list: it has to be chosen again. */
export const noteRecent = async (store: BenchStore, files: FileService, name: string): Promise<void> => {
  const answer = await files.noteRecent({ name });
  if (answer.ok) changeFiles(store, { recent: answer.value });
};

/** Puts a file that the browser holds a handle on on the list, and keeps the handle so that it opens from there. */
export const noteRecentPicked = async (store: BenchStore, files: FileService, handle: PickedFile): Promise<void> => {
  const isKept = await browserHandles.keep(handle);
  await noteRecent(store, files, handle.name);
  const others = store.getState().files.reopenable.filter((name) => name !== handle.name);
  changeFiles(store, { reopenable: isKept ? [handle.name, ...others] : others });
};

/** Which recent files open without being chosen again: those of this run of the program. */
export const listReopenable = async (store: BenchStore): Promise<void> =>
  changeFiles(store, { reopenable: await browserHandles.names() });

/**
 * The handle on a recent file that the browser opened before.
 * @param mayAsk - the browser may ask the person whether the page may have the file: only while a click or a key is being answered
 * @returns null where there is none, or it may not be used
 */
export const recentHandle = async (name: string, mayAsk: 'ask' | 'silent'): Promise<PickedFile | null> => {
  const handle = await browserHandles.find(name);
  if (!handle) return null;
  const mode = { mode: 'read' } as const; // to write it is asked for when it is saved
  const state = await (mayAsk === 'ask' ? handle.requestPermission?.(mode) : handle.queryPermission?.(mode))?.catch(
    () => 'denied',
  );
  return state === undefined || state === 'granted' ? handle : null;
};
