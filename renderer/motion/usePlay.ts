import { useCallback, useEffect, useRef, useState } from 'react';
import { useBench, useWindow } from '../shell/benchContext';
import { moveTo, standStill } from '../state/actions/lookAt';
import { isAsking } from '../state/benchStore';
import { everyFrame } from './everyFrame';
import { GREETING, rideAt, type RideKind, type RideSpan } from './ride';

/** Whether the system asks for less movement. */
export const asksForLess = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/**
 * A ride that a person asked for goes on until it is stopped, and stays where it is then. One that greets was not asked for: it
 * ends by itself, and at the first touch, and leaves the car as it stands.
 */
type Playing = 'asked' | 'greeting' | null;

/**
 * Plays a ride until it is stopped: by its button, or by any touch of the window. The space bar starts and stops it. It stands
 * still while a dialog about files asks; the answer is a touch too.
 * @param span - how far it goes; null before a car is open
 */
export const usePlay = (kind: RideKind, span: RideSpan | null) => {
  const { store } = useWindow();
  const [playing, setPlaying] = useState<Playing>(null);
  const isHeld = useBench(isAsking);
  const latest = useRef({ kind, span });
  useEffect(() => {
    latest.current = { kind, span };
  });

  useEffect(() => {
    if (!playing || isHeld) return;
    const begun = performance.now();
    let last = '';
    store.setState({ isPlaying: true });
    const stop = everyFrame((now) => {
      const { current } = latest;
      if (!current.span) return;
      if (playing === 'greeting' && now - begun >= GREETING) {
        standStill(store);
        setPlaying(null);
        return;
      }
      const next = rideAt(current.kind, current.span, now - begun, asksForLess());
      // a still picture is worked out once
      if (JSON.stringify(next) !== last) moveTo(store, next);
      last = JSON.stringify(next);
    });
    return () => {
      stop();
      store.setState({ isPlaying: false });
    };
  }, [playing, isHeld, store]);

  useEffect(() => {
    if (!playing) return;
    const stop = (event: Event) => {
      // before what was touched answers: a rule that is pressed moves the car from where it stands
      if (playing === 'greeting') standStill(store);
      const isOn = (place: string) => event.target instanceof Element && event.target.closest(place) !== null;
      const isOnControl = isOn('.playcontrol');
      const isItsKey = event instanceof KeyboardEvent && event.key === ' ' && !isOn('dialog');
      if (event instanceof KeyboardEvent ? isItsKey || (isOnControl && event.key === 'Enter') : isOnControl) return;
      setPlaying(null);
    };
    window.addEventListener('pointerdown', stop, true);
    window.addEventListener('keydown', stop, true);
    return () => {
      window.removeEventListener('pointerdown', stop, true);
      window.removeEventListener('keydown', stop, true);
    };
  }, [playing, store]);

  const toggle = useCallback(() => setPlaying((now) => (now ? null : 'asked')), []);
  useEffect(() => {
    const onSpace = (event: KeyboardEvent) => {
      if (event.key !== ' ' || (event.target instanceof Element && event.target.closest('button, input, select, dialog'))) return;
      event.preventDefault();
      toggle();
    };
    window.addEventListener('keydown', onSpace);
    return () => window.removeEventListener('keydown', onSpace);
  }, [toggle]);

  return { playing: playing !== null, toggle, greet: useCallback(() => setPlaying('greeting'), []) };
};
