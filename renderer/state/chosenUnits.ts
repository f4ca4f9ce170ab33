import type { AxleName, CarDocument, LengthUnit } from '../../geometry/index';
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

/**
 * A car that was begun here is typed and read in the unit that it was said to be measured in, until another one is chosen. That
 * says nothing of other cars: what the person likes for those stays what it was. Null: the car was not begun here.
 */
const ownLength = ({ file, unfinished, isGiving, page, isLengthChosen }: BenchState): LengthUnit | null => {
  if (isLengthChosen) return null;
  return (isGiving && page === 'points' ? unfinished : file?.begun)?.choice.unit ?? null;
};

/** The unit that a person likes for every car; who never chose one reads a car as its file has it. */
const likedLength = (preferences: Preferences, ofFile: LengthUnit): LengthUnit => {
  const { name, words } = UNIT_PREFERENCES.length;
  return words.find((word) => word === preferences[name]) ?? ofFile;
};

const unitsOf = memoLast((preferences: Preferences, length: LengthUnit, toeDiameter: number | null): ShownUnits => {
  const { angle, toe, force } = UNIT_PREFERENCES;
  return {
    length,
    angle: preferredOf(preferences, angle.name, angle.words),
    toe: preferredOf(preferences, toe.name, toe.words),
    force: preferredOf(preferences, force.name, force.words),
    toeDiameter,
  };
});

/** The units that the window reads and types in now, for the axle on the bench; the same object while nothing of it changes. */
export const chosenUnits = (state: BenchState): ShownUnits => {
  const document = state.history?.present.document;
  const length = ownLength(state) ?? likedLength(state.preferences, document?.units?.length ?? 'mm');
  return unitsOf(state.preferences, length, toeDiameterOf(document, state.axle));
};
