import { shownQuantity, type ShownQuantity } from './shownQuantity';
import type { ShownUnits } from './unitChoice';

/** A moment as it is read: N·m, or pound-feet where forces are read in pounds. It is a moment per degree without its degree. */
export const shownMoment = (decimals: number, units: ShownUnits): ShownQuantity => {
  const perDegree = shownQuantity({ quantity: 'momentPerAngle', decimals }, units);
  return { ...perDegree, unit: perDegree.unit.replace('/°', '') };
};
