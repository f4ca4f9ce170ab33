import type { AxleName, SideName } from '../../geometry/index';
import { chooseSetup } from '../state/actions/editSetup';
import { chooseAxle, choosePage, moveTo } from '../state/actions/lookAt';
import { chooseScope } from '../state/actions/viewing';
import { benchOf, type BenchStore } from '../state/benchStore';
import { scopeOf } from '../state/viewing';

/** A position of one wheel, or of the car where it rolls. @param travel - from where it stands [mm], with roll the heave */
export interface BenchPlace {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly setup: string;
  readonly travel: number;
  readonly rack: number;
  readonly rollDeg?: number;
}

/**
 * Puts the car on the bench where a row is, and goes there. Both wheels go with it: the bench moves an axle as a whole.
 * Where one wheel alone is looked at it is the row's.
 */
export const takeToBench = (store: BenchStore, { axle, side, setup, travel, rack, rollDeg = 0 }: BenchPlace): void => {
  if (benchOf(store.getState())?.setup !== setup) chooseSetup(store, setup);
  chooseAxle(store, axle);
  moveTo(store, { travel, rack, rollDeg });
  const scope = scopeOf(store.getState().preferences);
  if (scope === 'left' || scope === 'right') chooseScope(store, side);
  choosePage(store, 'bench');
};
