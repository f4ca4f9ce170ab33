import { useLayoutEffect, useState, type RefObject } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of an element [px], as it changes; zero before it is laid out. */
export const useSize = (element: RefObject<HTMLElement | null>): Size => {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    if (!element.current) return;
    const observer = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const { width, height } = entry.contentRect;
      setSize((now) => (now.width === width && now.height === height ? now : { width, height }));
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  return size;
};
