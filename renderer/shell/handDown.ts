/** Whether a finger or a button of the mouse is down: what it holds is in no undo step yet. */
let isDown = false;

export const isHandDown = (): boolean => isDown;

const EVENTS = ['pointerdown', 'pointermove', 'pointerup', 'pointercancel'] as const;

/** Follows the hand over the window. A release that the window was not told of is seen by the next movement. */
export const watchHand = (): (() => void) => {
  const note = (event: PointerEvent) => (isDown = event.type !== 'pointercancel' && event.buttons !== 0);
  const letGo = () => (isDown = false);
  for (const name of EVENTS) window.addEventListener(name, note, true);
  window.addEventListener('blur', letGo);
  return () => {
    for (const name of EVENTS) window.removeEventListener(name, note, true);
    window.removeEventListener('blur', letGo);
  };
};
