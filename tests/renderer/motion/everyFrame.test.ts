import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { everyFrame } from '../../../renderer/motion/everyFrame';

/** A window that is painted: callbacks of a frame in the order asked, each followed by what it promised, then the paint. */
const paintedWindow = () => {
  let asked = new Map<number, FrameRequestCallback>();
  let next = 1;
  vi.stubGlobal('requestAnimationFrame', (callback: FrameRequestCallback) => {
    asked.set(next, callback);
    return next++;
  });
  vi.stubGlobal('cancelAnimationFrame', (id: number) => asked.delete(id));
  return async (paint: () => void): Promise<void> => {
    const now = asked;
    asked = new Map();
    for (const callback of now.values()) {
      callback(performance.now());
      await Promise.resolve();
    }
    paint();
    await vi.advanceTimersByTimeAsync(16);
  };
};

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('what is moved once a frame', () => {
  test('is the same in every painted frame for those who follow at once and those who ask for a frame', async () => {
    const frame = paintedWindow();
    const store = createStore(() => ({ at: 0 }));
    const seen = { table: 0, picture: 0 };
    // React: behind the change, in the same task
    store.subscribe(() => queueMicrotask(() => (seen.table = store.getState().at)));
    // the canvas, drawn on demand
    let isAsked = false;
    store.subscribe(() => {
      if (isAsked) return;
      isAsked = true;
      requestAnimationFrame(() => {
        isAsked = false;
        seen.picture = store.getState().at;
      });
    });
    const stop = everyFrame(() => store.setState(({ at }) => ({ at: at + 1 })));
    const painted: (typeof seen)[] = [];
    for (let count = 0; count < 12; count += 1) await frame(() => painted.push({ ...seen }));
    stop();
    expect(painted.filter(({ table, picture }) => table !== picture)).toEqual([]);
    expect(painted.at(-1)?.table).toBeGreaterThan(8);
  });

  test('ends between two frames and inside one', async () => {
    const frame = paintedWindow();
    let count = 0;
    const stop = everyFrame(() => (count += 1));
    await frame(() => undefined);
    expect(count).toBe(1);
    await frame(stop);
    await frame(() => undefined);
    expect(count).toBe(1);
    let others = 0;
    const end = everyFrame(() => (others += 1));
    end();
    await frame(() => undefined);
    expect(others).toBe(0);
  });
});
