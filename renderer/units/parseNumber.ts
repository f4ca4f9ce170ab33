import type { TypedUnit } from './typedUnits';

/** Fractions as they are engraved and typed. */
const VULGAR: Readonly<Record<string, number>> = {
  '⅛': 0.125,
  '¼': 0.25,
  '⅜': 0.375,
  '½': 0.5,
  '⅝': 0.625,
  '¾': 0.75,
  '⅞': 0.875,
};

const FRACTION = /^(?:(\d+)\s+)?(\d+)\/(\d+)(?![\d.,/])/;
const ENGRAVED = /^(\d*)([⅛¼⅜½⅝¾⅞])/;
const DECIMAL = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[-−+]?\d+)?(?![\d.,/])/i;
const SIGN = /^[-−–+]/;
/** Degrees and minutes together: 1°28′, 1 deg 28 min. */
const DEGREES_MINUTES = /^(\d+)\s*(?:°|deg)\s*(\d+(?:[.,]\d*)?)\s*(?:′|'|’|min)?$/i;
const MINUTES_PER_DEGREE = 60;

/** What was typed: a number in the field's own unit, none at all, or one in a unit that the field does not take. */
export type Typed =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'none' }
  | { readonly kind: 'unit'; readonly found: string };

const NONE: Typed = { kind: 'none' };

/** A number at the start of a text, and what follows it; null where there is none. */
const numberIn = (text: string): { readonly size: number; readonly rest: string } | null => {
  const fraction = FRACTION.exec(text);
  if (fraction) {
    const below = Number(fraction[3]);
    const size = Number(fraction[1] ?? 0) + Number(fraction[2]) / below;
    return below === 0 ? null : { size, rest: text.slice(fraction[0].length) };
  }
  const engraved = ENGRAVED.exec(text);
  if (engraved)
    return { size: Number(engraved[1] || 0) + (VULGAR[engraved[2] ?? ''] ?? 0), rest: text.slice(engraved[0].length) };
  const decimal = DECIMAL.exec(text);
  if (!decimal) return null;
  return { size: Number(decimal[0].replace(',', '.').replace('−', '-')), rest: text.slice(decimal[0].length) };
};

const sizeOf = (text: string, units: readonly TypedUnit[]): Typed => {
  const together = DEGREES_MINUTES.exec(text);
  if (together && units[0]?.name === '°') {
    const minutes = Number((together[2] ?? '').replace(',', '.'));
    return minutes < MINUTES_PER_DEGREE
      ? { kind: 'number', value: Number((Number(together[1]) + minutes / MINUTES_PER_DEGREE).toFixed(9)) }
      : NONE;
  }
  const number = numberIn(text);
  if (!number) return NONE;
  const found = number.rest.trim();
  if (found === '') return { kind: 'number', value: number.size };
  const unit = units.find(({ written }) => written.includes(found.toLowerCase()));
  if (unit) return { kind: 'number', value: unit.toField(number.size) };
  return /^[\p{L}°′'’"″%]/u.test(found) ? { kind: 'unit', found } : NONE;
};

/**
 * A typed number: decimal point or comma, any minus, an exponent, a fraction ("1 1/2", "2¼"), degrees with minutes where
 * the field is an angle, with one of the field's units behind it or none. Nothing is guessed.
 * @param units - the units that the field takes, its own first
 */
export const parseNumber = (typed: string, units: readonly TypedUnit[]): Typed => {
  const text = typed.trim();
  const sign = SIGN.exec(text)?.[0] ?? '';
  const size = sizeOf(text.slice(sign.length).trim(), units);
  if (size.kind !== 'number') return size;
  // 1e400 is written as a number, and is none
  if (!Number.isFinite(size.value)) return NONE;
  const negative = sign !== '' && sign !== '+' && size.value !== 0;
  return negative ? { kind: 'number', value: -size.value } : size;
};
