import { useCallback, useEffect, useRef, useState } from 'react';
import { useWindow } from '../shell/benchContext';
import { moveTo } from '../state/actions/lookAt';

/** One slow ride over a wave [ms], and how much of the way to the stops it uses. */
const PERIOD = 4200;
const SHARE = 0.62;

/** Wheel travel at a moment of the ride. @param low,high - the range [mm] @param elapsed - [ms] */
export const rideTravel = (low: number, high: number, elapsed: number): number => {
  const wave = Math.sin((2 * Math.PI * elapsed) / PERIOD);
  return Number((SHARE * (wave >= 0 ? high : -low) * wave).toFixed(2));
};

/**
 * Plays bump up and down until it is stopped: by its button, or by any touch of the window.
 * @param range - wheel travel [mm]; null before a car is open
 */
export const usePlay = (range: { readonly min: number; readonly max: number } | null) => {
  const { store } = useWindow();
  const [playing, setPlaying] = useState(false);
  const latest = useRef(range);
  useEffect(() => {
    latest.current = range;
  });

  useEffect(() => {
    if (!playing) return;
    const begun = performance.now();
    let frame = 0;
    const step = (now: number) => {
      const { current } = latest;
      if (current) moveTo(store, { travel: rideTravel(current.min, current.max, now - begun) });
      frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    const stop = (event: Event) => {
      if (event instanceof KeyboardEvent && event.key === ' ') return;
      if (!(event.target instanceof Element && event.target.closest('.play'))) setPlaying(false);
    };
    window.addEventListener('pointerdown', stop, true);
    window.addEventListener('keydown', stop, true);
    return () => {
      cancelAnimationFrame(frame);
      window.removeEventListener('pointerdown', stop, true);
      window.removeEventListener('keydown', stop, true);
    };
  }, [playing, store]);

  useEffect(() => {
    const onSpace = (event: KeyboardEvent) => {
      if (event.key !== ' ' || (event.target instanceof Element && event.target.closest('button, input, select, dialog'))) return;
      event.preventDefault();
      setPlaying((now) => !now);
    };
    window.addEventListener('keydown', onSpace);
    return () => window.removeEventListener('keydown', onSpace);
  }, []);

  return { playing, toggle: useCallback(() => setPlaying((now) => !now), []), play: useCallback(() => setPlaying(true), []) };
};
