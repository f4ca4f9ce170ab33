import type { AxleName, CarDocument } from '../../geometry/index';
import { memoLast } from '../compute/memoLast';
import { mmPerFileUnit } from '../units/fileLength';
import type { ShownUnits } from '../units/unitChoice';
import type { BenchState } from './benchStore';
import { preferredOf, type Preferences } from './preferences';

/** Names and words under which a choice of units is kept from one start to the next; the first word is the usual one. */
export const UNIT_PREFERENCES = {
  length: { name: 'units.length', words: ['mm', 'in'] },
  angle: { name: 'units.angle', words: ['degrees', 'minutes'] },
  toe: { name: 'units.toe', words: ['angle', 'rim'] },
  force: { name: 'units.force', words: ['newton', 'pound'] },
} as const;

const toeDiameterOf = (document: CarDocument | undefined, axle: AxleName): number | null => {
  const diameter = document?.[axle]?.wheel.toeDiameter;
  return document === undefined || diameter === undefined ? null : diameter * mmPerFileUnit(document);
};

const unitsOf = memoLast((preferences: Preferences, toeDiameter: number | null): ShownUnits => {
  const { length, angle, toe, force } = UNIT_PREFERENCES;
  return {
    length: preferredOf(preferences, length.name, length.words),
    angle: preferredOf(preferences, angle.name, angle.words),
    toe: preferredOf(preferences, toe.name, toe.words),
    force: preferredOf(preferences, force.name, force.words),
    toeDiameter,
  };
});

/** The units that the window reads and types in now, for the axle on the bench; the same object while nothing of it changes. */
export const chosenUnits = (state: BenchState): ShownUnits =>
  unitsOf(state.preferences, toeDiameterOf(state.history?.present.document, state.axle));
