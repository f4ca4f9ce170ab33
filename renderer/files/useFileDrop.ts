import { useEffect } from 'react';
import { useWindow } from '../shell/benchContext';
import { openGiven, openHanded, openPicked } from '../state/actions/openCar';
import { droppedFile } from './browserFiles';

const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** A car file can be dropped anywhere on the window, but where a panel takes files of its own. */
export const useFileDrop = (): void => {
  const { store, files } = useWindow();
  useEffect(() => {
    const onDragOver = (event: DragEvent) => {
      if (holdsFiles(event)) event.preventDefault();
    };
    const onDrop = (event: DragEvent) => {
      if (event.defaultPrevented || !event.dataTransfer || !holdsFiles(event)) return;
      event.preventDefault();
      const dropped = droppedFile(event.dataTransfer);
      if (!dropped) return;
      const open = async () => {
        const handed = await files.handDropped(dropped.file);
        if (handed) return openHanded(store, files, handed);
        const handle = await dropped.handle;
        return handle ? openPicked(store, files, handle) : openGiven(store, files, dropped.file);
      };
      void open();
    };
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('drop', onDrop);
    };
  }, [store, files]);
};
