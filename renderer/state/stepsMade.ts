import type { History } from './history';

/** A step between the car as saved and the one on the bench. */
export interface MadeStep {
  readonly name: string;
  /** when it was made, ms since 1970 */
  readonly at: number;
}

/** Written for a step of before the last save that was taken back: that is a change too. */
const UNDO = 'Undo: ';

/**
 * The steps that lead from the saved car to the one on the bench, after one more change of the history: a step that is taken back
 * counts no more, and one that is made again counts once.
 * @param at - now, ms since 1970
 */
export const stepsMade = <Value>(
  steps: readonly MadeStep[],
  before: History<Value>,
  now: History<Value>,
  at: number,
): readonly MadeStep[] => {
  if (now.mark) return steps;
  const last = steps.at(-1);
  const back = steps.slice(0, -1);
  if (now.future.length > before.future.length) {
    const name = UNDO + (now.future.at(-1)?.name ?? '');
    return last && !last.name.startsWith(UNDO) ? back : [...steps, { name, at }];
  }
  const made = now.past.at(-1);
  const isStep = now.past.length > before.past.length || made?.value !== before.past.at(-1)?.value;
  if (!isStep || !made) return steps;
  const isRedo = before.future.length > 0 && before.future.at(-1)?.value === now.present;
  return isRedo && last?.name === UNDO + made.name ? back : [...steps, { name: made.name, at }];
};
