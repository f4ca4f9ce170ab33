import { useEffect, useRef } from 'react';

/** An STL file that is dropped anywhere on the page; any other file is the window's. */
export const useStlDrop = (onFile: (file: File) => void): void => {
  const latest = useRef(onFile);
  useEffect(() => {
    latest.current = onFile;
  });
  useEffect(() => {
    const onDrop = (event: DragEvent) => {
      const file = event.dataTransfer?.files[0];
      if (!file?.name.toLowerCase().endsWith('.stl')) return;
      event.preventDefault();
      latest.current(file);
    };
    // before the window takes it for a car
    window.addEventListener('drop', onDrop, { capture: true });
    return () => window.removeEventListener('drop', onDrop, { capture: true });
  }, []);
};
