import type { Page } from 'playwright-core';

/**
 * Presses Escape while something is worked out.
 * @returns how long it took from the key to the words that it was called off, as the window's own clock has it [ms]
 */
export const callOff = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const since = performance.now();
    document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, cancelable: true }));
    while (!document.body.innerText.includes('Called off.')) await new Promise(requestAnimationFrame);
    return performance.now() - since;
  });
