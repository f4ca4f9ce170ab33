import type { BenchStore } from '../state/benchStore';
import { choosePage } from '../state/actions/lookAt';
import { press } from './goTo';

/**
 * Leads to where a car is made from its layouts: its page, and the button there. With no car open, or at the layouts of one
 * that is being made, the page begins with it.
 */
export const newCar = (store: BenchStore): void => {
  choosePage(store, 'points');
  press('[data-press="new-car"]', '.points > .pointpanel, .points > .newcar');
};
