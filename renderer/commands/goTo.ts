const FOCUSABLE = 'input, select, textarea, button, a, [tabindex]';

/**
 * Brings something into sight and puts the focus on it, or on the first thing in it that can have it: once it is drawn,
 * since what was asked for may be on a page or an axle that is only now shown.
 */
export const goTo = (selector: string): void => {
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const found = document.querySelector<HTMLElement>(selector);
      if (!found) return;
      found.scrollIntoView({ block: 'center' });
      const inside = found.matches(FOCUSABLE) ? found : found.querySelector<HTMLElement>(FOCUSABLE);
      inside?.focus({ preventScroll: true });
    }),
  );
};

/** Presses a button of the window, once it is drawn: for what only its own panel can do. */
export const press = (selector: string): void => {
  requestAnimationFrame(() => requestAnimationFrame(() => document.querySelector<HTMLElement>(selector)?.click()));
};
