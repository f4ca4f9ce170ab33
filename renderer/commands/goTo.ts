const FOCUSABLE = 'input, select, textarea, button, a, [tabindex]';

/** A page that was never shown is fetched first; after this long, ms, something is wrong that says so itself. */
const LONGEST_WAIT = 10_000;

/** What waits to be drawn; whatever is asked for next takes its place, and whatever the person does next ends it. */
let waiting = 0;

/**
 * Acts once something is drawn: what was asked for may be on a page or an axle that is only now shown, or fetched.
 * @param drawn - what is in the page when there is no more to wait for
 */
const onceDrawn = (drawn: string, act: () => void): void => {
  const own = (waiting += 1);
  const until = performance.now() + LONGEST_WAIT;
  const ended = new AbortController();
  const look = (): void => {
    if (own !== waiting || ended.signal.aborted || performance.now() > until) return ended.abort();
    if (!document.querySelector(drawn)) return void requestAnimationFrame(look);
    ended.abort();
    act();
  };
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      for (const act of ['pointerdown', 'keydown']) window.addEventListener(act, () => ended.abort(), { signal: ended.signal });
      look();
    }),
  );
};

/** The panels of the bench in a narrow window, in the order of their buttons: one of them is in sight. */
const PANELS = ['.viewport', '.readings', '.curves', '.adjusters'];

/** Shows the panel that something is on, where a narrow window hides it. @returns whether it was hidden */
const bringForward = (found: HTMLElement): boolean => {
  const place = PANELS.findIndex((panel) => found.closest(panel));
  const button = document.querySelector<HTMLElement>(`.panels button:nth-child(${place + 1})[aria-pressed="false"]`);
  button?.click();
  return button !== null;
};

/**
 * Brings something into sight and puts the focus on it, or on the first thing in it that can have it.
 * @param opener - a button that has to be pressed first where what is gone to is not drawn: matches nothing where it is
 */
export const goTo = (selector: string, opener?: string): void =>
  onceDrawn(opener === undefined ? selector : `${selector}, ${opener}`, () => {
    const shut = opener === undefined ? null : document.querySelector<HTMLElement>(opener);
    if (!document.querySelector(selector) && shut) {
      shut.click();
      return goTo(selector);
    }
    const found = document.querySelector<HTMLElement>(selector);
    if (!found) return;
    const show = (): void => {
      found.scrollIntoView({ block: 'center' });
      const inside = found.matches(FOCUSABLE) ? found : found.querySelector<HTMLElement>(FOCUSABLE);
      inside?.focus({ preventScroll: true });
    };
    // its panel is drawn first
    if (bringForward(found)) requestAnimationFrame(() => requestAnimationFrame(show));
    else show();
  });

/**
 * Presses a button of the window: for what only its own panel can do.
 * @param panel - the panel; where it is drawn without the button there is nothing to press
 */
export const press = (selector: string, panel = 'body'): void =>
  onceDrawn(panel, () => {
    const found = document.querySelector<HTMLElement>(selector);
    if (!found) return;
    bringForward(found);
    found.click();
  });
