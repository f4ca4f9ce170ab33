import { useCallback, useEffect, useRef, type PointerEvent, type RefObject } from 'react';
import { useWindow } from '../shell/benchContext';
import { abandonTurn, beginTurn, endTurn, turnOn } from '../state/actions/editSetup';
import type { Bench } from '../state/benchStore';
import type { DialPoint } from './dragSetting';
import { isStillScrolling, WHEEL_REST, type Notch } from './wheelGesture';

/** What the hand on a drawing does to a number. */
export interface HandOnPart {
  readonly value: number | null;
  readonly locked: boolean;
  /** the number that a drag from one point of the drawing to another asks for; `fine` with Shift */
  readonly drag: (start: number, from: DialPoint, to: DialPoint, fine: boolean) => number;
  /** the number so many marks further: one a notch of the wheel, a tenth of one with Shift */
  readonly stepped: (steps: number) => number;
  readonly onSet: (value: number) => void;
}

/** Width of a part's drawing in its own units. */
const DRAWING = 126;
const FINE = 0.1;

const pointIn = (event: PointerEvent<Element>): DialPoint => {
  const box = event.currentTarget.getBoundingClientRect();
  const scale = DRAWING / box.width;
  return {
    x: (event.clientX - box.left - box.width / 2) * scale,
    y: (event.clientY - box.top - box.height / 2) * scale,
  };
};

/**
 * Drag, wheel and double-click (zero) on the drawing of a part. One undo step a drag, and one a turning of the wheel; Escape gives a
 * drag up. A wheel that began by scrolling turns nothing before it has rested.
 */
export const useHand = <Part extends Element>(hand: HandOnPart): { ref: RefObject<Part | null>; handlers: object } => {
  const { store } = useWindow();
  const ref = useRef<Part>(null);
  const latest = useRef(hand);
  const drag = useRef<{ from: DialPoint; start: number } | null>(null);
  useEffect(() => {
    latest.current = hand;
  });

  useEffect(() => {
    const part = ref.current;
    if (!part) return;
    let scrolled: Notch | null = null;
    let turnedAt = -Infinity;
    let left: Bench | null = null;
    const onWheel = (event: Event) => {
      if (!(event instanceof WheelEvent)) return;
      const { locked, stepped, onSet } = latest.current;
      // With Shift some systems turn the wheel's movement sideways.
      const turned = event.deltaY || event.deltaX;
      if (locked || turned === 0 || isStillScrolling(scrolled, event, part.getBoundingClientRect())) return;
      event.preventDefault();
      const goesOn = event.timeStamp - turnedAt <= WHEEL_REST;
      turnedAt = event.timeStamp;
      left = turnOn(store, goesOn ? left : null, () => onSet(stepped((turned < 0 ? 1 : -1) * (event.shiftKey ? FINE : 1))));
    };
    /** What nobody took scrolls, or would if there were more to scroll. */
    const noteScroll = (event: WheelEvent) => {
      if (!event.defaultPrevented) scrolled = { timeStamp: event.timeStamp, clientX: event.clientX, clientY: event.clientY };
    };
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !drag.current) return;
      drag.current = null;
      abandonTurn(store);
    };
    part.addEventListener('wheel', onWheel, { passive: false });
    window.addEventListener('wheel', noteScroll, { passive: true });
    window.addEventListener('keydown', onEscape);
    return () => {
      part.removeEventListener('wheel', onWheel);
      window.removeEventListener('wheel', noteScroll);
      window.removeEventListener('keydown', onEscape);
    };
  }, [store]);

  const finish = useCallback(() => {
    if (!drag.current) return;
    drag.current = null;
    endTurn(store);
  }, [store]);
  // a card that goes while it is dragged is never let go of
  useEffect(() => finish, [finish]);
  const handlers = {
    onPointerDown: (event: PointerEvent<Element>) => {
      if (hand.locked || event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      drag.current = { from: pointIn(event), start: hand.value ?? 0 };
      beginTurn(store);
    },
    onPointerMove: (event: PointerEvent<Element>) => {
      if (!drag.current) return;
      const { from, start } = drag.current;
      const value = hand.drag(start, from, pointIn(event), event.shiftKey);
      if (value !== hand.value) hand.onSet(value);
    },
    onDoubleClick: () => {
      if (!hand.locked && hand.value !== 0) hand.onSet(0);
    },
    onPointerUp: finish,
    onPointerCancel: finish,
  };
  return { ref, handlers };
};
