/** What a key pressed anywhere in the window asks for. */
export type WindowCommand = 'undo' | 'redo' | 'zero' | 'open';

interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/**
 * @param pressed - the key event
 * @param typing - whether the focus is where Home and the arrows have a meaning of their own
 */
export const windowCommand = (pressed: Pressed, typing: boolean): WindowCommand | null => {
  const control = pressed.ctrlKey || pressed.metaKey;
  const key = pressed.key.toLowerCase();
  if (control && !pressed.altKey) {
    if (key === 'z') return pressed.shiftKey ? 'redo' : 'undo';
    if (key === 'y') return 'redo';
    if (key === 'o') return 'open';
    return null;
  }
  return pressed.key === 'Home' && !typing ? 'zero' : null;
};
