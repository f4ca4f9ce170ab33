import { useState } from 'react';
import { useBench } from './benchContext';

/** What the forms of studies and pages hold, by the car as it was opened: another file begins with forms of its own. */
const kept = new WeakMap<object, Map<string, unknown>>();
const NO_CAR = {};

const shelfOf = (car: object): Map<string, unknown> => {
  const known = kept.get(car);
  if (known) return known;
  const made = new Map<string, unknown>();
  kept.set(car, made);
  return made;
};

/**
 * State of a form that outlives its component: another study or page can be looked at meanwhile. It is kept while the window
 * lives, for the file that is open; never saved, never undone.
 * @param key - unlike any other's: "ways.form"
 */
export const useKept = <Value>(
  key: string,
  begin: () => Value,
): readonly [Value, (next: Value | ((now: Value) => Value)) => void] => {
  const car = useBench((state) => state.file?.asRead ?? NO_CAR);
  const shelf = shelfOf(car);
  if (!shelf.has(key)) shelf.set(key, begin());
  const [, drawAnew] = useState(0);
  const set = (next: Value | ((now: Value) => Value)): void => {
    const now = shelf.get(key) as Value;
    shelf.set(key, typeof next === 'function' ? (next as (now: Value) => Value)(now) : next);
    drawAnew((count) => count + 1);
  };
  return [shelf.get(key) as Value, set];
};
