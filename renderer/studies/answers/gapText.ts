import { nameOfKey, shortPairWords, type LeastSpare } from '../../../geometry/index';
import type { Verdict } from '../../compute/limits';
import type { ShownUnits } from '../../units/unitChoice';
import { shownQuantity, withUnit, type ShownQuantity } from '../../units/shownQuantity';

/** How a least gap is shown. */
export const shownGap = (units: ShownUnits): ShownQuantity => shownQuantity({ quantity: 'length', decimals: 1 }, units);

/** "10.7", "cuts"; null: not known. 0 is told where they cut and no depth is known. */
export const gapText = (leastGap: number | null, units: ShownUnits): string | null =>
  leastGap === null ? null : leastGap <= 0 ? 'cuts' : shownGap(units).format(leastGap);

/** The pair that keeps its margin least, where that is to be warned of. */
export interface ShortPair {
  readonly verdict: Verdict;
  /** "tyre front – strut tube short by 2.9 mm" */
  readonly words: string;
  /** the same where there is little room: "2.9 short" */
  readonly brief: string;
}

const briefly = ({ verdict, spare }: LeastSpare, units: ShownUnits): string => {
  if (verdict === 'cuts') return 'cuts';
  return verdict === 'not-proved' ? 'not proved' : `${shownGap(units).format(-spare)} short`;
};

/** @param withAxle - more than one axle is asked about */
export const shortPairOf = (leastSpare: LeastSpare | null, units: ShownUnits, withAxle = false): ShortPair | null => {
  const shown = shownGap(units);
  const style = {
    nameOf: (key: string) => nameOfKey(key).toLowerCase(),
    length: (mm: number) => withUnit(shown.format(mm), shown.unit),
    withAxle,
  };
  const words = leastSpare && shortPairWords(leastSpare, style);
  if (leastSpare === null || words === null) return null;
  return { verdict: leastSpare.verdict === 'not-proved' ? 'close' : 'broken', words, brief: briefly(leastSpare, units) };
};
