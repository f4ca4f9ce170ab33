import type { CarDocument } from '../../../geometry/index';
import { change, type BenchStore } from '../benchStore';

/** Shows the car on the bench as it would be with a part that is being made; null shows it as it is. */
export const tryCar = (store: BenchStore, trial: CarDocument | null): void => {
  if (store.getState().trial !== trial) change(store, { trial });
};
