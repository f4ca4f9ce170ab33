import { choosePoint, layTape } from '../../state/actions/viewing';
import type { BenchStore } from '../../state/benchStore';
import type { PointRef } from '../../state/viewing';
import type { PartName } from './renamePart';

/** What is in hand, chosen or measured in the window goes on under the new name. */
export const followName = (store: BenchStore, { part, axle, name }: PartName, to: string): void => {
  const { held, axle: onBench, viewing } = store.getState();
  if (part === 'adjuster' && axle === onBench && held === name) store.setState({ held: to });
  if (part !== 'point') return;
  const followed = (ref: PointRef): PointRef => (ref.axle === axle && ref.point === name ? { ...ref, point: to } : ref);
  if (viewing.chosen) choosePoint(store, followed(viewing.chosen));
  if (viewing.tape) layTape(store, [followed(viewing.tape[0]), followed(viewing.tape[1])]);
};
