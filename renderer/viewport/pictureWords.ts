import type { BenchState } from '../state/benchStore';
import { carTitle } from '../state/carTitle';
import { chosenUnits } from '../state/chosenUnits';
import { shownQuantity, withUnit } from '../units/shownQuantity';
import { unitWords, type ShownUnits } from '../units/unitChoice';

/** Where the car stands: "At bump +25.0 mm, roll −1.50°". */
export const positionWords = ({ travel, rollDeg, rack }: BenchState['position'], units: ShownUnits): string => {
  const length = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const angle = shownQuantity({ quantity: 'angle', decimals: 2 }, units);
  const moved = (mm: number): string => withUnit(length.formatChange(mm), length.unit);
  const parts = [
    travel === 0 ? '' : `bump ${moved(travel)}`,
    rollDeg === 0 ? '' : `roll ${withUnit(angle.formatChange(rollDeg), angle.unit)}`,
    rack === 0 ? '' : `rack ${moved(rack)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'Standing' : `At ${parts.join(', ')}`;
};

/** Whose picture it is: car and setup. */
export const titleWords = (state: Pick<BenchState, 'file' | 'history'>): string =>
  [carTitle(state) ?? '', state.history?.present.setup ?? ''].filter((part) => part !== '').join(', ');

/** What stands under a picture, so that it can be told from another one on paper: car, setup, axle, position and units. */
export const pictureWords = (state: BenchState): string => {
  const units = chosenUnits(state);
  return `${titleWords(state)}, ${state.axle} axle. ${positionWords(state.position, units)}. ${unitWords(units)}`;
};
