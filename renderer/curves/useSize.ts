import { useLayoutEffect, useState, type RefObject } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

const paddingOf = (element: Element) => {
  const { paddingLeft, paddingRight, paddingTop, paddingBottom } = getComputedStyle(element);
  const [left, right, top, bottom] = [paddingLeft, paddingRight, paddingTop, paddingBottom].map(Number.parseFloat);
  return { across: (left ?? 0) + (right ?? 0), down: (top ?? 0) + (bottom ?? 0) };
};

/** The room inside an element [px], as it changes. It is known before the first picture, so that nothing is painted empty. */
export const useSize = (element: RefObject<HTMLElement | null>): Size => {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    if (!element.current) return;
    const { clientWidth, clientHeight } = element.current;
    const padding = paddingOf(element.current);
    setSize({ width: clientWidth - padding.across, height: clientHeight - padding.down });
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
