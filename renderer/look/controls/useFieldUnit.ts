import { useMemo } from 'react';
import { formatShort } from '../../units/format';
import { shownMoment } from '../../units/shownMoment';
import { shownQuantity, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { useUnits } from '../units';

/** What a field can be a measure of, and then read and typed in the units that the person chose. */
export type FieldMeasure = 'length' | 'angle' | 'toe' | 'force' | 'moment';

export interface FieldUnit {
  /** what stands behind the number; nothing where the number says it itself: 1°28′ */
  readonly unit: string;
  /** the unit that a bare number is taken in */
  readonly typedIn: string;
  /** as it stands in the field, in as many decimals as it needs */
  readonly format: (value: number) => string;
  readonly toShown: (value: number) => number;
  readonly fromShown: (shown: number) => number;
}

// No comma between thousands: in a field it is a decimal comma.
const bare = (value: number, decimals: number): string => formatShort(value, decimals).replaceAll(',', '');
const same = (value: number): number => value;
/** Decimals of an inch more than of a millimetre, for the same fineness. */
const MORE_FOR_INCHES = 2;
/** A typed inch becomes millimetres with a tail of noughts and ones: nine decimals are kept. */
const clean = (value: number): number => Number(value.toFixed(9));

const shownAs = (measures: FieldMeasure, decimals: number, units: ShownUnits): ShownQuantity => {
  if (measures === 'moment') return shownMoment(decimals, units);
  if (measures === 'toe') return shownQuantity({ quantity: 'angle', decimals, isToe: true }, units);
  return shownQuantity({ quantity: measures, decimals }, units);
};

/** How a field shows and takes its number in the units that the person chose; without `measures` as it is. */
export const useFieldUnit = (measures: FieldMeasure | undefined, unit: string, decimals: number): FieldUnit => {
  const units = useUnits();
  return useMemo(() => {
    const plain = { unit, typedIn: unit, format: (value: number) => bare(value, decimals), toShown: same, fromShown: same };
    if (measures === undefined) return plain;
    const shown = shownAs(measures, decimals, units);
    if (shown.unit === unit) return plain;
    if (shown.unit === '') return { ...plain, unit: '', format: shown.format };
    const places = shown.unit === 'in' ? decimals + MORE_FOR_INCHES : decimals;
    return {
      unit: shown.unit,
      typedIn: shown.unit,
      format: (value: number) => bare(shown.toShown(value), places),
      toShown: (value: number) => clean(shown.toShown(value)),
      fromShown: (value: number) => clean(shown.fromShown(value)),
    };
  }, [measures, unit, decimals, units]);
};

const SPOKEN: Readonly<Record<string, string>> = { mm: 'mm', in: 'inches', '°': 'degrees' };

/** A spoken name that says its unit, with the unit that the field really takes. */
export const labelIn = (label: string, unit: string, typedIn: string): string =>
  unit === typedIn ? label : label.replace(new RegExp(`\\b${SPOKEN[unit] ?? unit}\\b`), SPOKEN[typedIn] ?? typedIn);
