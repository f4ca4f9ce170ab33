import type { LengthUnit } from '../../../geometry/index';
import { formatShort } from '../../units/format';
import { parseNumber } from '../../units/parseNumber';
import { unitsOf } from '../../units/typedUnits';

const MM_PER = { mm: 1, in: 25.4 } as const;
/** Half of what a coordinate may be [mm]: typical points stay within the bound of the file beside any size. */
const MOST = 50_000;

/** A size of a new car as it was typed: mm, or why it is none. */
export type Size = { readonly ok: true; readonly mm: number } | { readonly ok: false; readonly fault: string };

export const parseSize = (typed: string, unit: LengthUnit): Size => {
  const read = parseNumber(typed, unitsOf(unit));
  if (read.kind === 'unit') return { ok: false, fault: `“${read.found}” is no unit of length here: mm or in.` };
  if (read.kind === 'none') return { ok: false, fault: 'A number, please.' };
  const mm = read.value * MM_PER[unit];
  if (mm <= 0) return { ok: false, fault: 'A length over zero, please.' };
  if (mm > MOST) return { ok: false, fault: `At most 50 m, please: ${formatShort(MOST / MM_PER[unit], 0)} ${unit}.` };
  return { ok: true, mm };
};

/** mm as it stands in the field. */
export const sizeText = (mm: number, unit: LengthUnit): string => String(Number((mm / MM_PER[unit]).toFixed(3)));
