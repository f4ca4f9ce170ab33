import { keySteps } from '../look/controls/keySteps';
import { useEffect, useRef, useState, type KeyboardEvent, type MouseEvent, type PointerEvent, type RefObject } from 'react';
import { inputOf, valueOf, type PlotFrame } from './plotLines';
import { panRange, zoomRange, type Range } from './plotScale';

/** What a hand, a wheel or a key can do to a plot. */
export interface PlotActions {
  /** moves the car to a position of the motion, in the units shown */
  readonly moveTo: (input: number) => void;
  /** back to where the car was, given up */
  readonly moveBack: (input: number) => void;
  readonly stepBy: (steps: number) => void;
  readonly zoomTo: (x: Range, y: Range) => void;
  readonly showWhole: () => void;
}

/** A box being drawn, in pixels of the plot. */
export interface ZoomBox {
  readonly x: Range;
  readonly y: Range;
}

type Drag =
  | { readonly kind: 'cursor'; readonly from: number }
  | { readonly kind: 'box'; readonly x: number; readonly y: number }
  | { readonly kind: 'pan'; readonly x: number; readonly y: number; readonly frame: PlotFrame };

const WHEEL_ZOOM = 0.0016;
const KEY_ZOOM = 1.25;
const KEY_PAN = 0.1;
/** A box smaller than this was not meant [px]. */
const LEAST_BOX = 6;

const rising = (a: number, b: number): Range => (a < b ? [a, b] : [b, a]);

/** Home is the plot's own key: it shows the whole again. */
const stepsOf = ({ key, shiftKey }: KeyboardEvent): number | null => (key === 'Home' ? null : keySteps(key, shiftKey));

const panOf = (key: string): readonly [number, number] | null => {
  switch (key) {
    case 'ArrowRight':
      return [KEY_PAN, 0];
    case 'ArrowLeft':
      return [-KEY_PAN, 0];
    case 'ArrowUp':
      return [0, KEY_PAN];
    case 'ArrowDown':
      return [0, -KEY_PAN];
    default:
      return null;
  }
};

/**
 * A plot under the hand: dragged, it moves the car along the motion; with Shift a box is drawn to zoom to, with Alt the plot
 * is moved; the wheel zooms about the pointer; a double click shows the whole again. Keys do all of it too.
 * @param cursor - present position in the units shown
 */
export const usePlotHand = (
  element: RefObject<SVGSVGElement | null>,
  frame: PlotFrame | null,
  cursor: number,
  actions: PlotActions,
) => {
  const drag = useRef<Drag | null>(null);
  /** where the car was before the first of two clicks */
  const before = useRef(cursor);
  const [box, setBox] = useState<ZoomBox | null>(null);
  const latest = useRef({ frame, actions });
  useEffect(() => {
    latest.current = { frame, actions };
  });

  const placeOf = ({ clientX, clientY }: { readonly clientX: number; readonly clientY: number }): readonly [number, number] => {
    const bounds = element.current?.getBoundingClientRect();
    return bounds ? [clientX - bounds.left, clientY - bounds.top] : [0, 0];
  };
  const zoomAbout = (now: PlotFrame, x: number, y: number, factor: number) =>
    actions.zoomTo(zoomRange(now.x, x, factor), zoomRange(now.y, y, factor));

  // React listens to wheels passively: the page would scroll as well.
  useEffect(() => {
    const svg = element.current;
    if (!svg) return;
    const onWheel = (event: WheelEvent) => {
      const { frame: now, actions: act } = latest.current;
      if (!now) return;
      event.preventDefault();
      const bounds = svg.getBoundingClientRect();
      const x = inputOf(now, event.clientX - bounds.left);
      const y = valueOf(now, event.clientY - bounds.top);
      const factor = Math.exp(event.deltaY * WHEEL_ZOOM);
      act.zoomTo(zoomRange(now.x, x, factor), zoomRange(now.y, y, factor));
    };
    svg.addEventListener('wheel', onWheel, { passive: false });
    return () => svg.removeEventListener('wheel', onWheel);
  }, [element]);

  const onPointerDown = (event: PointerEvent) => {
    if (!frame || (event.button !== 0 && event.button !== 1)) return;
    const [x, y] = placeOf(event);
    event.currentTarget.setPointerCapture(event.pointerId);
    if (event.shiftKey) drag.current = { kind: 'box', x, y };
    else if (event.altKey || event.button === 1) drag.current = { kind: 'pan', x, y, frame };
    else {
      drag.current = { kind: 'cursor', from: cursor };
      actions.moveTo(inputOf(frame, x));
    }
  };
  const onMouseDown = ({ detail }: MouseEvent) => {
    if (detail === 1) before.current = drag.current?.kind === 'cursor' ? drag.current.from : cursor;
  };
  /** Either click of the two had moved the car there, which nobody meant. */
  const onDoubleClick = () => {
    giveUp();
    actions.moveBack(before.current);
    actions.showWhole();
  };
  const onPointerMove = (event: PointerEvent) => {
    const now = drag.current;
    if (!now || !frame) return;
    const [x, y] = placeOf(event);
    if (now.kind === 'cursor') actions.moveTo(inputOf(frame, x));
    else if (now.kind === 'box') setBox({ x: rising(now.x, x), y: rising(now.y, y) });
    else {
      const { frame: begun } = now;
      const [dx, dy] = [(now.x - x) / (begun.right - begun.left), (y - now.y) / (begun.bottom - begun.top)];
      actions.zoomTo(panRange(begun.x, dx), panRange(begun.y, dy));
    }
  };
  const onPointerUp = () => {
    drag.current = null;
    if (!box || !frame) return;
    setBox(null);
    if (box.x[1] - box.x[0] < LEAST_BOX || box.y[1] - box.y[0] < LEAST_BOX) return;
    actions.zoomTo([inputOf(frame, box.x[0]), inputOf(frame, box.x[1])], [valueOf(frame, box.y[1]), valueOf(frame, box.y[0])]);
  };
  const giveUp = () => {
    drag.current = null;
    setBox(null);
  };

  /** Escape: everything is as it was before the drag, and the rest of it does nothing. */
  const putBack = (given: Drag) => {
    giveUp();
    if (given.kind === 'cursor') actions.moveBack(given.from);
    if (given.kind === 'pan') actions.zoomTo(given.frame.x, given.frame.y);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    if (!frame) return;
    const taken = () => {
      event.preventDefault();
      event.stopPropagation();
    };
    if (event.key === 'Escape' && drag.current) {
      taken();
      return putBack(drag.current);
    }
    const middle = (frame.y[0] + frame.y[1]) / 2;
    if (event.ctrlKey || event.metaKey) {
      const pan = panOf(event.key);
      if (!pan) return;
      taken();
      return actions.zoomTo(panRange(frame.x, pan[0]), panRange(frame.y, pan[1]));
    }
    if (event.key === '+' || event.key === '=') {
      taken();
      return zoomAbout(frame, cursor, middle, 1 / KEY_ZOOM);
    }
    if (event.key === '-') {
      taken();
      return zoomAbout(frame, cursor, middle, KEY_ZOOM);
    }
    if (event.key === '0') {
      taken();
      return actions.showWhole();
    }
    const steps = stepsOf(event);
    if (steps === null) return;
    taken();
    actions.stepBy(steps);
  };

  return {
    box,
    handlers: {
      onPointerDown,
      onPointerMove,
      onPointerUp,
      onPointerCancel: giveUp,
      onLostPointerCapture: giveUp,
      onKeyDown,
      onMouseDown,
      onDoubleClick,
    },
  };
};
