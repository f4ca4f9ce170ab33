/** What a key pressed anywhere in the window asks for. */
export type WindowCommand = 'undo' | 'redo' | 'zero' | 'open' | 'save' | 'saveAs';

interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** Where the focus is: nowhere that takes keys, in a control with keys of its own, or in text that is still being typed. */
export type Typing = 'no' | 'control' | 'draft';

interface Focused {
  readonly closest: (selector: string) => unknown;
  readonly matches: (selector: string) => boolean;
}

/** Fields say when what stands in them is not taken yet, or is (`data-taken`); any other text is the person's until it is sent. */
const DRAFT =
  '[data-draft], textarea:not([data-taken]), input:not([role="spinbutton"], [data-taken], [type="range"], [type="file"], [type="checkbox"], [type="radio"])';

/** What the focused element makes of keys. @param element - null where nothing has the focus */
export const typingIn = (element: Focused | null): Typing => {
  if (!element) return 'no';
  if (element.matches(DRAFT)) return 'draft';
  return element.closest('input, select, textarea') ? 'control' : 'no';
};

/**
 * Whether a dialog stands over the window: what lies behind it is then not to change, be saved or be replaced by a key, under the
 * very question that may be asking about it. A dialog that wants such keys takes them itself.
 */
export const isUnderDialog = (): boolean => document.querySelector('dialog:modal') !== null;

/** Whether a key would select all that is written in the window: no text of it is meant. */
export const selectsWindow = (pressed: Pressed, typing: Typing): boolean =>
  (pressed.ctrlKey || pressed.metaKey) && pressed.key.toLowerCase() === 'a' && typing === 'no';

/**
 * @param pressed - the key event
 * @param typing - where it was pressed: undo of a text that is being typed is the field's own
 */
export const windowCommand = (pressed: Pressed, typing: Typing): WindowCommand | null => {
  const control = pressed.ctrlKey || pressed.metaKey;
  const key = pressed.key.toLowerCase();
  if (control && !pressed.altKey) {
    if (key === 'o') return 'open';
    if (key === 's') return pressed.shiftKey ? 'saveAs' : 'save';
    if (typing === 'draft') return null;
    if (key === 'z') return pressed.shiftKey ? 'redo' : 'undo';
    if (key === 'y') return 'redo';
    return null;
  }
  return pressed.key === 'Home' && typing === 'no' ? 'zero' : null;
};
