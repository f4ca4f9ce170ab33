import { useCallback, useEffect, useRef, useState, type PointerEvent } from 'react';
import { dropPlace, movedBy } from './dropPlace';

/** What is dragged: the list it is in, its name there, and before which of the list it would be dropped. */
interface Dragged {
  readonly list: string;
  readonly id: string;
  readonly place: number;
}

/** Nearer than this to the upper or lower edge the list scrolls under the pointer, so much a tick [px]. */
const EDGE = 28;
const STEP = 14;
const TICK_MS = 30;

interface At {
  readonly x: number;
  readonly y: number;
}

const placeIn = (grip: Element | null, list: string, { x, y }: At): number => {
  const items = grip?.closest('[data-reorder]')?.querySelectorAll(`[data-list="${list}"]`) ?? [];
  const boxes = [...items].map((item) => item.getBoundingClientRect());
  return dropPlace(boxes, x, y);
};

/**
 * Dragging of listed things to another place of their list by a grip on each. Nothing is moved before the drop; Escape and
 * whatever takes the pointer away give it up. The lists stand in an element with `data-reorder`, which scrolls.
 * @param onMove - what was dropped elsewhere, and by how many places
 */
export const useReorder = (onMove: (list: string, id: string, by: number) => void) => {
  const [dragged, setDragged] = useState<Dragged | null>(null);
  const pointer = useRef<At>({ x: 0, y: 0 });
  const grip = useRef<Element | null>(null);

  const follow = useCallback(
    () =>
      setDragged((now) => {
        const place = now && placeIn(grip.current, now.list, pointer.current);
        return now && place !== null && place !== now.place ? { ...now, place } : now;
      }),
    [],
  );

  const isDragging = dragged !== null;
  useEffect(() => {
    if (!isDragging) return;
    // Before the dialog hears of it: Escape gives up the drag, not the dialog.
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      setDragged(null);
    };
    const scroll = setInterval(() => {
      const place = grip.current?.closest('[data-reorder]');
      if (!place) return;
      const { top, bottom } = place.getBoundingClientRect();
      const { y } = pointer.current;
      const by = y < top + EDGE ? -STEP : y > bottom - EDGE ? STEP : 0;
      if (by === 0) return;
      place.scrollBy(0, by);
      follow();
    }, TICK_MS);
    window.addEventListener('keydown', onEscape, true);
    return () => {
      clearInterval(scroll);
      window.removeEventListener('keydown', onEscape, true);
    };
  }, [isDragging, follow]);

  const gripOf = (list: string, id: string, at: number) => ({
    onPointerDown: (event: PointerEvent<Element>) => {
      if (event.button !== 0) return;
      event.preventDefault();
      event.currentTarget.setPointerCapture(event.pointerId);
      grip.current = event.currentTarget;
      pointer.current = { x: event.clientX, y: event.clientY };
      setDragged({ list, id, place: at });
    },
    onPointerMove: (event: PointerEvent<Element>) => {
      pointer.current = { x: event.clientX, y: event.clientY };
      follow();
    },
    onPointerUp: (event: PointerEvent<Element>) => {
      if (dragged?.list !== list || dragged.id !== id) return;
      const by = movedBy(at, placeIn(event.currentTarget, list, { x: event.clientX, y: event.clientY }));
      if (by !== 0) onMove(list, id, by);
      setDragged(null);
    },
    onPointerCancel: () => setDragged(null),
  });

  /** What a thing of a list says of the drag: it is held, or the drop would come before or behind it. */
  const itemOf = (list: string, id: string, at: number, count: number) => {
    const isHeld = dragged?.list === list && dragged.id === id;
    const place = dragged?.list === list ? dragged.place : null;
    return {
      'data-list': list,
      'data-drop': place === at ? 'before' : place === count && at === count - 1 ? 'behind' : undefined,
      'data-held': isHeld || undefined,
    };
  };

  return { gripOf, itemOf };
};
