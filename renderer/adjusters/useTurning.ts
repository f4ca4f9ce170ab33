import { useEffect, useRef, type PointerEvent, type RefObject } from 'react';
import type { AdjusterDocument } from '../../geometry/index';
import { stepSetting } from '../compute/adjusterSteps';
import { useWindow } from '../shell/benchContext';
import { abandonTurn, beginTurn, endTurn } from '../state/actions/editSetup';
import { clockSeen } from './clockWords';
import { dragSetting, type DialPoint } from './dragSetting';

interface Turning {
  readonly adjuster: AdjusterDocument;
  readonly value: number | null;
  readonly locked: boolean;
  readonly onSet: (value: number) => void;
}

const DRAWING = 126;

const pointIn = (event: PointerEvent<HTMLElement>): DialPoint => {
  const box = event.currentTarget.getBoundingClientRect();
  const scale = DRAWING / box.width;
  return {
    x: (event.clientX - box.left - box.width / 2) * scale,
    y: (event.clientY - box.top - box.height / 2) * scale,
  };
};

const senseOf = (adjuster: AdjusterDocument): 1 | -1 =>
  adjuster.kind === 'offset-bushing' && clockSeen(90, adjuster.axis, adjuster.seenFrom, 'left') !== 90 ? -1 : 1;

/**
 * Turning a part by its drawing: drag, or one mark a notch of the wheel. One undo step a drag; Escape gives it up.
 */
export const useTurning = (turning: Turning): { ref: RefObject<HTMLDivElement | null>; handlers: object } => {
  const { store } = useWindow();
  const ref = useRef<HTMLDivElement>(null);
  const latest = useRef(turning);
  const drag = useRef<{ from: DialPoint; start: number } | null>(null);
  useEffect(() => {
    latest.current = turning;
  });

  useEffect(() => {
    const part = ref.current;
    if (!part) return;
    const onWheel = (event: WheelEvent) => {
      const { adjuster, value, locked, onSet } = latest.current;
      if (locked || event.deltaY === 0) return;
      event.preventDefault();
      onSet(stepSetting(adjuster, value, event.deltaY < 0 ? 1 : -1));
    };
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !drag.current) return;
      drag.current = null;
      abandonTurn(store);
    };
    part.addEventListener('wheel', onWheel, { passive: false });
    window.addEventListener('keydown', onEscape);
    return () => {
      part.removeEventListener('wheel', onWheel);
      window.removeEventListener('keydown', onEscape);
    };
  }, [store]);

  const finish = () => {
    if (!drag.current) return;
    drag.current = null;
    endTurn(store);
  };
  const handlers = {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (turning.locked || event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      drag.current = { from: pointIn(event), start: turning.value ?? 0 };
      beginTurn(store);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      if (!drag.current) return;
      const { from, start } = drag.current;
      const value = dragSetting(turning.adjuster, start, from, pointIn(event), senseOf(turning.adjuster));
      if (value !== turning.value) turning.onSet(value);
    },
    onPointerUp: finish,
    onPointerCancel: finish,
  };
  return { ref, handlers };
};
