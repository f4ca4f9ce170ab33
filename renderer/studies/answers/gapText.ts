import type { ShownUnits } from '../../units/unitChoice';
import { shownQuantity, type ShownQuantity } from '../../units/shownQuantity';

/** How a least gap is shown. */
export const shownGap = (units: ShownUnits): ShownQuantity => shownQuantity({ quantity: 'length', decimals: 1 }, units);

/** "10.7", "cuts"; null: not known. */
export const gapText = (leastGap: number | null, units: ShownUnits): string | null =>
  leastGap === null ? null : leastGap < 0 ? 'cuts' : shownGap(units).format(leastGap);
