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
