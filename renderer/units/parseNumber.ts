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

const DECIMAL = /^(\d+(?:[.,]\d*)?|[.,]\d+)$/;
const FRACTION = /^(?:(\d+)\s+)?(\d+)\/(\d+)$/;
const ENGRAVED = /^(\d*)([⅛¼⅜½⅝¾⅞])$/;

const magnitude = (text: string): number | null => {
  if (DECIMAL.test(text)) return Number(text.replace(',', '.'));
  const fraction = FRACTION.exec(text);
  if (fraction) {
    const below = Number(fraction[3]);
    return below === 0 ? null : Number(fraction[1] ?? 0) + Number(fraction[2]) / below;
  }
  const engraved = ENGRAVED.exec(text);
  if (engraved) return Number(engraved[1] || 0) + (VULGAR[engraved[2] ?? ''] ?? 0);
  return null;
};

/**
 * A typed number: decimal point or comma, any minus, a fraction ("1 1/2", "2¼"), its unit behind it or not.
 * @returns null where it is no number; nothing is guessed
 */
export const parseNumber = (typed: string): number | null => {
  const text = typed
    .trim()
    .replace(/\s*(mm|°|deg|turns?|turn)$/i, '')
    .trim();
  const sign = /^[-−–+]/.exec(text)?.[0] ?? '';
  const size = magnitude(text.slice(sign.length).trim());
  if (size === null || !Number.isFinite(size)) return null;
  return sign !== '' && sign !== '+' && size !== 0 ? -size : size;
};
