import { changeFiles, type BenchStore } from '../benchStore';
import type { FileNotice } from '../filesState';

const TITLE = 'No recovery copy can be kept';

/** A copy that cannot be kept is said, unless it is because the program is gone, which is said anyway. */
export const tellNotKept = (store: BenchStore, code: string, way: string, ways: FileNotice['ways']): void => {
  const { notice, lostAt } = store.getState().files;
  if (code === 'disconnected') {
    if (lostAt === null) changeFiles(store, { lostAt: Date.now() });
  } else if (notice === null) {
    const why = code === 'full' ? 'the disk that holds them is full' : 'the folder that holds them cannot be written';
    const text = `Changes are not safe from a crash: ${why}. ${way}; Jounce tries again by itself.`;
    changeFiles(store, { notice: { title: TITLE, text, ways } });
  }
};

/** It could be kept after all. */
export const takeBackNotKept = (store: BenchStore): void => {
  if (store.getState().files.notice?.title === TITLE) changeFiles(store, { notice: null });
};
