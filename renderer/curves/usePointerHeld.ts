import { useEffect, useState } from 'react';

/** Whether a pointer is down anywhere in the window: something is being dragged, and nothing is rescaled under it. */
export const usePointerHeld = (): boolean => {
  const [held, setHeld] = useState(false);
  useEffect(() => {
    const down = () => setHeld(true);
    const up = (event: PointerEvent) => event.buttons === 0 && setHeld(false);
    const away = () => setHeld(false);
    window.addEventListener('pointerdown', down, true);
    window.addEventListener('pointerup', up, true);
    window.addEventListener('pointercancel', away, true);
    window.addEventListener('blur', away);
    return () => {
      window.removeEventListener('pointerdown', down, true);
      window.removeEventListener('pointerup', up, true);
      window.removeEventListener('pointercancel', away, true);
      window.removeEventListener('blur', away);
    };
  }, []);
  return held;
};
