import { parseNumber } from '../../units/parseNumber';
import type { ShownQuantity } from '../../units/shownQuantity';
import { unitsOf } from '../../units/typedUnits';

/** What stands in a field of a question: the number in contract units, and the text as long as it is being typed. */
export interface FieldValue {
  /** null: nothing that could be read */
  readonly value: number | null;
  /** null: the number as it is written here */
  readonly typed: string | null;
}

/** A field with a number, or empty. */
export const fieldOf = (value: number | null | undefined): FieldValue => ({ value: value ?? null, typed: null });
export const EMPTY_FIELD = fieldOf(null);

/** A typed inch becomes millimetres with a tail of noughts and ones: nine decimals are kept. */
const clean = (value: number): number => Number(value.toFixed(9));

/** A field into which something was typed. The number follows while it can be read; the text stays until the field is left. */
export const typedField = (typed: string, shown: Pick<ShownQuantity, 'unit' | 'fromShown'>): FieldValue => {
  const read = parseNumber(typed, unitsOf(shown.unit === '' ? '°' : shown.unit));
  return { typed, value: read.kind === 'number' && Number.isFinite(read.value) ? clean(shown.fromShown(read.value)) : null };
};

/** The field once it is left: what could be read is written as numbers are written here; anything else stays as it is. */
export const leftField = (field: FieldValue): FieldValue => (field.value === null ? field : { ...field, typed: null });

/** Why a field has no number; null where it has one. */
export const faultOfNumber = ({ value, typed }: FieldValue): string | null => {
  if (value !== null) return null;
  return typed === null || typed.trim() === '' ? 'a number is missing' : `“${typed.trim()}” is not a number`;
};

/** A plain number in a field: a count, or a part of a direction. */
export const PLAIN_NUMBER: Pick<ShownQuantity, 'unit' | 'toShown' | 'fromShown' | 'format'> = {
  unit: '',
  toShown: (value) => value,
  fromShown: (shown) => shown,
  format: String,
};
