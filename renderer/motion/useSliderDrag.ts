import { useEffect, useRef } from 'react';

/**
 * A drag of a slider that Escape gives up: the value goes back to where it was taken hold of, and the rest of the drag moves nothing.
 * @param onMove - is given what is dragged to, or back to
 */
export const useSliderDrag = (value: number, onMove: (value: number) => void) => {
  const drag = useRef<{ readonly start: number; isGivenUp: boolean } | null>(null);
  const latest = useRef(onMove);
  useEffect(() => {
    latest.current = onMove;
  });
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !drag.current || drag.current.isGivenUp) return;
      drag.current.isGivenUp = true;
      event.preventDefault();
      latest.current(drag.current.start);
    };
    const onEnd = () => {
      drag.current = null;
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener('pointerup', onEnd);
    window.addEventListener('pointercancel', onEnd);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('pointerup', onEnd);
      window.removeEventListener('pointercancel', onEnd);
    };
  }, []);
  return {
    onPointerDown: () => {
      drag.current = { start: value, isGivenUp: false };
    },
    dragTo: (next: number) => {
      if (drag.current?.isGivenUp !== true) onMove(next);
    },
  };
};
