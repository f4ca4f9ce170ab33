import type { CarDocument, LengthUnit } from './document';

/** Exact: the international inch. */
export const MM_PER_UNIT: Readonly<Record<LengthUnit, number>> = { mm: 1, in: 25.4 };

/** The unit of every length in the file; mm where the file does not say. */
export function lengthUnitOf(document: CarDocument): LengthUnit {
  return document.units?.length ?? 'mm';
}

/** mm per unit of length of this file. */
export function mmPerUnitOf(document: CarDocument): number {
  return MM_PER_UNIT[lengthUnitOf(document)];
}
