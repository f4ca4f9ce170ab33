import { useEffect, useRef, type KeyboardEvent, type PointerEvent, type RefObject } from 'react';
import { orbit, pan, zoom, type Eye } from './camera';
import type { EyeControl } from './Scene';

/** Turn of the eye for a drag across the view's height [rad], and for one press of an arrow key. */
const DRAG_TURN = 2.6;
const KEY_TURN = 0.09;
const KEY_PAN = 0.04;
const ZOOM_STEP = 1.12;

const keyChange = ({ key, shiftKey }: KeyboardEvent): ((eye: Eye) => Eye) | null => {
  const move = (right: number, up: number) => (eye: Eye) =>
    shiftKey ? pan(eye, right * KEY_PAN, up * KEY_PAN) : orbit(eye, right * KEY_TURN, up * KEY_TURN);
  switch (key) {
    case 'ArrowLeft':
      return move(-1, 0);
    case 'ArrowRight':
      return move(1, 0);
    case 'ArrowUp':
      return move(0, 1);
    case 'ArrowDown':
      return move(0, -1);
    case '+':
    case '=':
      return (eye) => zoom(eye, 1 / ZOOM_STEP);
    case '-':
      return (eye) => zoom(eye, ZOOM_STEP);
    default:
      return null;
  }
};

/** Orbit by dragging, move across with Shift or the middle button, zoom with the wheel; the same by keys. */
export const useEyeInput = (view: RefObject<HTMLElement | null>, control: RefObject<EyeControl | null>) => {
  const last = useRef<{ x: number; y: number; across: boolean } | null>(null);
  useEffect(() => {
    const element = view.current;
    if (!element) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      control.current?.turn((eye) => zoom(eye, event.deltaY > 0 ? ZOOM_STEP : 1 / ZOOM_STEP));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [view, control]);

  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.target instanceof HTMLElement && event.target.closest('button')) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      last.current = { x: event.clientX, y: event.clientY, across: event.shiftKey || event.button !== 0 };
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const from = last.current;
      if (!from) return;
      const height = event.currentTarget.clientHeight;
      const [right, up] = [(event.clientX - from.x) / height, (event.clientY - from.y) / height];
      last.current = { ...from, x: event.clientX, y: event.clientY };
      control.current?.turn((eye) => (from.across ? pan(eye, -right, up) : orbit(eye, -right * DRAG_TURN, up * DRAG_TURN)));
    },
    onPointerUp: () => {
      last.current = null;
    },
    onPointerCancel: () => {
      last.current = null;
    },
    onContextMenu: (event: { preventDefault: () => void }) => event.preventDefault(),
    onKeyDown: (event: KeyboardEvent<HTMLElement>) => {
      if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) return;
      const change = keyChange(event);
      if (!change) return;
      event.preventDefault();
      control.current?.turn(change);
    },
  };
};
