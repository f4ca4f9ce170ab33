import type { FileService } from '../../files/fileService';
import type { PickedFile } from '../../files/places';
import { changeFiles, type BenchStore } from '../benchStore';

/**
 * Tells the program how the open file stands on the disk, and learns how many other windows have one like it. Windows of two
 * programs have nothing else in common, and a browser's handle does not say where its file is.
 */
export const notePicked = async (store: BenchStore, files: FileService, handle: PickedFile): Promise<void> => {
  const there = await handle.getFile().catch(() => null);
  if (!there) return;
  const { name } = handle;
  const look = { name: name.slice(0, 300), size: there.size, savedAt: there.lastModified };
  const answer = await files.notePicked({ window: store.getState().files.window, ...look });
  const { file, files: known } = store.getState();
  const isStill = file?.place.kind === 'picked' && file.place.handle === handle;
  if (answer.ok && isStill && answer.value.alike !== known.alike) changeFiles(store, { others: 0, alike: answer.value.alike });
};
