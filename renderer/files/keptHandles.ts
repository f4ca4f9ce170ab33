import type { PickedFile } from './places';

/**
 * The browser's handles on files that it opened or saved, by the files' names, so that one can be opened again without its dialog:
 * from the list of recent files, and after a reload. They are kept by the browser for this address alone, which is another one at
 * the next start: then the file has to be chosen again.
 */
export interface KeptHandles {
  /** @returns whether it is kept */
  keep(handle: PickedFile): Promise<boolean>;
  find(name: string): Promise<PickedFile | null>;
  names(): Promise<readonly string[]>;
}

const TABLE = 'handles';
/** Stands for files of one name in several folders: by the name alone the wrong one would be opened, so none is. */
const SEVERAL = 'several';

const settled = <Value>(request: IDBRequest<Value>): Promise<Value> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the browser keeps nothing'));
  });

const opened = (): Promise<IDBDatabase> => {
  const request = indexedDB.open('jounce', 1);
  request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
  return settled(request);
};

const inTable = async <Value>(mode: IDBTransactionMode, ask: (table: IDBObjectStore) => IDBRequest<Value>): Promise<Value> => {
  const database = await opened();
  try {
    return await settled(ask(database.transaction(TABLE, mode).objectStore(TABLE)));
  } finally {
    database.close();
  }
};

const kept = (name: string): Promise<unknown> => inTable<unknown>('readonly', (table) => table.get(name));
const isHandle = (value: unknown): value is PickedFile => typeof value === 'object' && value !== null;
const isSame = async (one: PickedFile, other: PickedFile): Promise<boolean> => (await one.isSameEntry?.(other)) ?? true;

/** Handles in the browser's own database. A browser that keeps none is one that keeps none: nothing else fails. */
export const browserHandles: KeptHandles = {
  keep: async (handle) => {
    try {
      const before = await kept(handle.name);
      const isOther = before !== undefined && (before === SEVERAL || !(await isSame(handle, before as PickedFile)));
      await inTable('readwrite', (table) => table.put(isOther ? SEVERAL : handle, handle.name));
      return !isOther;
    } catch {
      return false;
    }
  },
  find: (name) =>
    kept(name).then(
      (found) => (isHandle(found) ? found : null),
      () => null,
    ),
  names: () =>
    inTable<unknown[]>('readonly', (table) => table.getAll()).then(
      (all) => all.filter(isHandle).map(({ name }) => name),
      () => [],
    ),
};
