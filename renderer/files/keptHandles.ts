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

/** Handles in the browser's own database. A browser that keeps none is one that keeps none: nothing else fails. */
export const browserHandles: KeptHandles = {
  keep: (handle) =>
    inTable('readwrite', (table) => table.put(handle, handle.name)).then(
      () => true,
      () => false,
    ),
  find: (name) =>
    inTable<unknown>('readonly', (table) => table.get(name)).then(
      (found) => (found as PickedFile | undefined) ?? null,
      () => null,
    ),
  names: () =>
    inTable('readonly', (table) => table.getAllKeys()).then(
      (keys) => keys.filter((key) => typeof key === 'string'),
      () => [],
    ),
};
