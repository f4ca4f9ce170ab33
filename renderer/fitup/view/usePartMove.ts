import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent, type RefObject } from 'react';
import type { DrawnPart, Triple } from '../../../geometry/index';
import type { AxisName } from '../../viewport/pointDrag';
import type { FitUpScene } from './fitUpScene';
import { moveInCar, moveInFile } from './partMove';
import type { PartGrip } from './partHand';

/** A part of the file that the picture may move. */
export interface MovedPart {
  readonly name: string;
  /** as it is read */
  readonly label: string;
  /** @param by - in the part's own numbers [mm] */
  readonly onMoved: (by: Triple) => void;
}

const STILL: Triple = [0, 0, 0];
/** A press of an arrow key, and with Shift [mm]. */
const STEP = 1;
const FINE = 0.1;

const isAxis = (key: string): key is AxisName => key === 'x' || key === 'y' || key === 'z';
const isStill = (by: Triple): boolean => by.every((value) => value === 0);

const ARROWS: Readonly<Record<string, readonly ['right' | 'up', 1 | -1]>> = {
  ArrowLeft: ['right', -1],
  ArrowRight: ['right', 1],
  ArrowDown: ['up', -1],
  ArrowUp: ['up', 1],
};

/**
 * The hand on a part: it follows the pointer, or the arrow keys, and nothing of the car changes until it is let go. Then it is one
 * edit. Escape puts it back. X, Y and Z hold a drag to that axis of the car.
 */
export const usePartMove = (
  scene: RefObject<FitUpScene | null>,
  part: MovedPart | null,
  ways: DrawnPart['ways'],
  isOn: boolean,
) => {
  const [by, setBy] = useState<Triple>(STILL);
  const now = useRef<Triple>(STILL);
  const drag = useRef<{ readonly grip: PartGrip; x: number; y: number; axis: AxisName | null } | null>(null);
  const latest = useRef({ part, ways });
  useEffect(() => {
    latest.current = { part, ways };
  });

  const show = (next: Triple): void => {
    const { ways: known } = latest.current;
    if (!known) return;
    now.current = next;
    setBy(next);
    scene.current?.shift(moveInCar(next, known));
  };
  /** It stays where it was let go until the car is drawn with it there. */
  const letGo = (): void => {
    drag.current = null;
    const moved = now.current;
    now.current = STILL;
    setBy(STILL);
    if (!isStill(moved)) latest.current.part?.onMoved(moved);
  };
  const abandon = (): void => {
    drag.current = null;
    show(STILL);
  };
  const name = part?.name ?? null;
  useEffect(() => {
    scene.current?.hold(isOn ? name : null);
    return () => {
      drag.current = null;
      now.current = STILL;
      setBy(STILL);
    };
  }, [scene, name, isOn]);

  const follow = (): void => {
    const { current } = drag;
    const { ways: known } = latest.current;
    if (current && known) show(moveInFile(current.grip.to(current.x, current.y, current.axis), known));
  };
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      const { current } = drag;
      if (event.key === 'Escape' && (current || !isStill(now.current))) abandon();
      else if (current && isAxis(event.key)) {
        current.axis = current.axis === event.key ? null : event.key;
        follow();
      } else return;
      event.preventDefault();
      event.stopPropagation();
    };
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  });

  const placeIn = (event: PointerEvent<HTMLElement>): readonly [number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    return [event.clientX - box.x, event.clientY - box.y];
  };
  return {
    /** how far it is moved in its own numbers, while it is in the hand [mm] */
    by: isStill(by) ? null : by,
    /** whether the pointer took hold of the part */
    press: (event: PointerEvent<HTMLElement>): boolean => {
      if (!isOn || !part || !ways || event.shiftKey || event.button !== 0) return false;
      const [x, y] = placeIn(event);
      const grip = scene.current?.grip(x, y);
      if (!grip) return false;
      drag.current = { grip, x, y, axis: grip.axis };
      return true;
    },
    /** whether it was the part that moved */
    move: (event: PointerEvent<HTMLElement>): boolean => {
      const { current } = drag;
      if (!current) return false;
      [current.x, current.y] = placeIn(event);
      follow();
      return true;
    },
    release: (): void => {
      if (drag.current) letGo();
    },
    abandon: (): void => {
      if (drag.current) abandon();
    },
    keyDown: (event: KeyboardEvent): boolean => {
      const arrow = ARROWS[event.key];
      if (!isOn || !part || !ways || !arrow || event.ctrlKey || event.metaKey || event.altKey) return false;
      const to = scene.current?.axisTo(arrow[0]);
      if (!to) return false;
      const step = (event.shiftKey ? FINE : STEP) * arrow[1] * to.sense;
      const inCar = ([0, 1, 2] as const).map((axis) => (axis === to.axis ? step : 0)) as unknown as Triple;
      const more = moveInFile(inCar, ways);
      show(
        [now.current[0] + more[0], now.current[1] + more[1], now.current[2] + more[2]].map(
          (v) => Math.round(v * 100) / 100,
        ) as unknown as Triple,
      );
      return true;
    },
    keyUp: (event: KeyboardEvent): void => {
      if (event.key in ARROWS && !drag.current) letGo();
    },
    blur: (): void => {
      if (!drag.current) letGo();
    },
  };
};
