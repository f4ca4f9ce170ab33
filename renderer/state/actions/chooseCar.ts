import { chooseInBrowser } from '../../files/browserFiles';
import type { FileService } from '../../files/fileService';
import type { BenchStore } from '../benchStore';
import { openHanded, openPicked } from './openCar';
import { recentHandle } from './recentFiles';

/** Lets the person choose a car file, by the system's dialog or the browser's, and opens it. */
export const chooseCar = async (store: BenchStore, files: FileService): Promise<void> => {
  if (files.shell === 'desktop') {
    const answer = await files.chooseFile({ window: store.getState().files.window });
    if (answer.ok && answer.value) await openHanded(store, files, answer.value);
    return;
  }
  const handle = await chooseInBrowser();
  if (handle) await openPicked(store, files, handle);
};

/** Opens a recent file that the browser opened or saved before; it is chosen again where the browser kept no hold on it. */
export const openRecentPicked = async (store: BenchStore, files: FileService, name: string): Promise<void> => {
  const handle = await recentHandle(name, 'ask');
  await (handle ? openPicked(store, files, handle) : chooseCar(store, files));
};
