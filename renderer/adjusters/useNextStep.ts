import { nextStepOf, type NextStep } from '../compute/effects';
import { useBench } from '../shell/benchContext';

/** What one more step of what is held changes at the position shown; null where nothing can be said. */
export const useNextStep = (): NextStep | null =>
  useBench(({ history, axle, position, held, shown }) => {
    if (!history || !held || !shown) return null;
    return nextStepOf(history.present, axle, position, held, shown.row);
  });
