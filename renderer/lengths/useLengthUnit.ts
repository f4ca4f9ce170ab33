import { useMemo } from 'react';
import { useUnits } from '../look/units';
import { shownQuantity, type ShownQuantity } from '../units/shownQuantity';

/** Lengths as the person reads them, to a hundredth of a millimetre. */
export const useLengthUnit = (): ShownQuantity => {
  const units = useUnits();
  return useMemo(() => shownQuantity({ quantity: 'length', decimals: 2 }, units), [units]);
};
