import type { AxleName } from '../../geometry/index';
import { chooseSetup } from '../state/actions/editSetup';
import { chooseAxle, choosePage, moveTo } from '../state/actions/lookAt';
import { benchOf, type BenchStore } from '../state/benchStore';

/** A position of one wheel, or of the car where it rolls. @param travel - from where it stands [mm], with roll the heave */
export interface BenchPlace {
  readonly axle: AxleName;
  readonly setup: string;
  readonly travel: number;
  readonly rack: number;
  readonly rollDeg?: number;
}

/** Puts the car on the bench where a row is, and goes there. Both wheels go with it: the bench moves an axle as a whole. */
export const takeToBench = (store: BenchStore, { axle, setup, travel, rack, rollDeg = 0 }: BenchPlace): void => {
  if (benchOf(store.getState())?.setup !== setup) chooseSetup(store, setup);
  chooseAxle(store, axle);
  moveTo(store, { travel, rack, rollDeg });
  choosePage(store, 'bench');
};
