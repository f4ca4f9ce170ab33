import { chooseInBrowser } from '../../files/browserFiles';
import type { FileService } from '../../files/fileService';
import type { BenchStore } from '../benchStore';
import { openHanded, openPicked } from './openCar';

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
