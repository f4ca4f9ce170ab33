const FIELDS = 'summary, input, select, textarea';

/**
 * Remembers where a part of a form stands, for when it is made or given up and its keys' focus would fall to the page.
 * @returns what puts the focus on whatever stands there then: a made part, or the button that begins one
 */
export const focusPlace = (part: HTMLElement | null): (() => void) => {
  const around = part?.parentElement;
  if (!part || !around) return () => undefined;
  const place = [...around.children].indexOf(part);
  return () =>
    requestAnimationFrame(() => {
      // somebody has gone on meanwhile
      if (document.activeElement !== document.body) return;
      const now = around.children[place];
      const inside = now?.querySelector<HTMLElement>(FIELDS) ?? now?.querySelector<HTMLElement>('button');
      (now instanceof HTMLButtonElement ? now : inside)?.focus();
    });
};
