import type { BenchPosition } from '../state/benchStore';
import { shownQuantity, withUnit } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';

/** Whether the car is shown anywhere but standing, straight ahead. */
export const isMoved = ({ travel, rollDeg, rack }: BenchPosition): boolean => travel !== 0 || rollDeg !== 0 || rack !== 0;

/** What is moved, in words: "bump +10.0 mm, roll +1.50°"; empty where the car stands. */
export const movedWords = ({ travel, rollDeg, rack }: BenchPosition, units: ShownUnits): string => {
  const length = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const angle = shownQuantity({ quantity: 'angle', decimals: 2 }, units);
  return [
    travel !== 0 ? `bump ${withUnit(length.formatChange(travel), length.unit)}` : null,
    rollDeg !== 0 ? `roll ${withUnit(angle.formatChange(rollDeg), angle.unit)}` : null,
    rack !== 0 ? `rack ${withUnit(length.formatChange(rack), length.unit)}` : null,
  ]
    .filter((part) => part !== null)
    .join(', ');
};

/** "at bump +10.0 mm, roll +1.50°", or that the car stands. */
export const positionWords = (position: BenchPosition, units: ShownUnits): string =>
  isMoved(position) ? `at ${movedWords(position, units)}` : 'standing';

/** While a ride is played: "moving: bump −77.5 mm", so that no number of it is read as the standing car's. */
export const ridingWords = (position: BenchPosition, units: ShownUnits): string =>
  isMoved(position) ? `moving: ${movedWords(position, units)}` : 'moving';

/** Which position the numbers are of while the one asked for cannot be reached: "last that could be reached: bump −3.1 mm". */
export const lastReachedWords = (position: BenchPosition, units: ShownUnits): string =>
  `last that could be reached: ${isMoved(position) ? movedWords(position, units) : 'standing'}`;
