import { useEffect, useRef, type KeyboardEvent, type PointerEvent, type RefObject } from 'react';
import { orbit, pan, zoom, type Eye } from './camera';
import type { AxisName, PointDrag } from './pointDrag';
import type { SceneControl } from './runScene';

/** Turn of the eye for a drag across the view's height [rad], and for one press of an arrow key. */
const DRAG_TURN = 2.6;
const KEY_TURN = 0.09;
const KEY_PAN = 0.04;
const ZOOM_STEP = 1.12;
/** A press that moves less is a click [px]. */
const CLICK = 4;

/** @param isPlan - the view keeps its direction: arrows move it */
const keyChange = ({ key, shiftKey }: KeyboardEvent, isPlan: boolean): ((eye: Eye) => Eye) | null => {
  const move = (right: number, up: number) => (eye: Eye) =>
    shiftKey || isPlan ? pan(eye, right * KEY_PAN, up * KEY_PAN) : orbit(eye, right * KEY_TURN, up * KEY_TURN);
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

const isAxis = (key: string): key is AxisName => key === 'x' || key === 'y' || key === 'z';

interface Press {
  x: number;
  y: number;
  readonly across: boolean;
  /** nothing has moved yet: it may be a click */
  still: boolean;
  /** a point in hand instead of the eye */
  readonly drag: PointDrag | null;
  axis: AxisName | null;
}

/**
 * The hand on the view. A drag turns the eye, with Shift or the middle button moves it across, the wheel zooms; the same
 * by keys. Views square to the car are moved by every drag, so that they stay what they are called; 0 frames them anew. A click chooses a joint; a drag that begins on the chosen point drags that, held to an axis by X, Y or Z.
 */
export const useViewInput = (view: RefObject<HTMLElement | null>, control: RefObject<SceneControl | null>) => {
  const press = useRef<Press | null>(null);
  const placeIn = (event: { clientX: number; clientY: number }): readonly [number, number] => {
    const box = view.current?.getBoundingClientRect();
    return [event.clientX - (box?.x ?? 0), event.clientY - (box?.y ?? 0)];
  };

  useEffect(() => {
    const element = view.current;
    if (!element) return;
    const onWheel = (event: WheelEvent) => {
      if (event.target instanceof Element && event.target.closest('[data-over-view]')) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const at = [event.clientX - box.x, event.clientY - box.y] as const;
      control.current?.zoom(event.deltaY > 0 ? ZOOM_STEP : 1 / ZOOM_STEP, at);
    };
    /** During a drag of a point: Escape gives it up, an axis' letter holds it to that axis. */
    const onKey = (event: globalThis.KeyboardEvent) => {
      const now = press.current;
      if (!now?.drag) return;
      if (event.key === 'Escape') {
        now.drag.abandon();
        press.current = null;
      } else if (isAxis(event.key)) {
        now.axis = now.axis === event.key ? null : event.key;
        now.drag.to(now.x, now.y, now.axis);
      } else return;
      event.preventDefault();
      event.stopPropagation();
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    window.addEventListener('keydown', onKey, true);
    return () => {
      element.removeEventListener('wheel', onWheel);
      window.removeEventListener('keydown', onKey, true);
    };
  }, [view, control]);

  const finish = (event: PointerEvent<HTMLElement>): void => {
    const now = press.current;
    press.current = null;
    if (!now) return;
    now.drag?.end();
    if (now.still && !now.across) control.current?.hand.click(...placeIn(event));
  };

  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.target instanceof Element && event.target.closest('[data-over-view]')) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      const [x, y] = placeIn(event);
      const across = event.shiftKey || event.button !== 0;
      press.current = { x, y, across, still: true, axis: null, drag: across ? null : (control.current?.hand.grip(x, y) ?? null) };
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const [x, y] = placeIn(event);
      const now = press.current;
      if (!now) {
        const over = event.target instanceof Element && event.target.closest('[data-over-view]') !== null;
        event.currentTarget.classList.toggle('overjoint', !over && (control.current?.hand.hover(x, y) ?? false));
        return;
      }
      if (now.still && Math.abs(x - now.x) < CLICK && Math.abs(y - now.y) < CLICK) return;
      now.still = false;
      const height = event.currentTarget.clientHeight;
      const [right, up] = [(x - now.x) / height, (y - now.y) / height];
      const from = [now.x, now.y] as const;
      [now.x, now.y] = [x, y];
      if (now.drag) now.drag.to(x, y, now.axis);
      else
        control.current?.turn(
          (eye) =>
            now.across || control.current?.isPlan() ? pan(eye, -right, up) : orbit(eye, -right * DRAG_TURN, up * DRAG_TURN),
          from,
        );
    },
    onPointerUp: finish,
    onPointerCancel: () => {
      press.current?.drag?.abandon();
      press.current = null;
    },
    onContextMenu: (event: { preventDefault: () => void }) => event.preventDefault(),
    onKeyDown: (event: KeyboardEvent<HTMLElement>) => {
      if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) return;
      const isPlan = control.current?.isPlan() ?? false;
      if (isPlan && event.key === '0') {
        event.preventDefault();
        return control.current?.fit();
      }
      const change = keyChange(event, isPlan);
      if (!change) return;
      event.preventDefault();
      control.current?.turn(change);
    },
  };
};
