let touched = false;

/** Whether anybody has pressed a key or a pointer in this window yet. */
export const isTouched = (): boolean => touched;

if (typeof window !== 'undefined')
  for (const kind of ['pointerdown', 'keydown'])
    window.addEventListener(
      kind,
      () => {
        touched = true;
      },
      { capture: true, once: true },
    );

/** Whether this window was loaded again: who did that has seen it before. */
export const isReload = (): boolean =>
  performance.getEntriesByType('navigation').some((entry) => (entry as PerformanceNavigationTiming).type === 'reload');
