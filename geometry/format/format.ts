const MINUS = '−';

/** A number with a true minus and a fixed count of decimals; what rounds to zero has no sign. */
export const formatNumber = (value: number, decimals: number): string => {
  const digits = Math.abs(value).toFixed(decimals);
  const grouped = digits.replace(/^\d{4,}/, (whole) => whole.replace(/\B(?=(\d{3})+$)/g, ','));
  return value < 0 && Number(digits) !== 0 ? `${MINUS}${grouped}` : grouped;
};

/** The same with a plus before what is over zero. */
export const formatSigned = (value: number, decimals: number): string => {
  const text = formatNumber(value, decimals);
  return value > 0 && Number(value.toFixed(decimals)) !== 0 ? `+${text}` : text;
};

/** As many decimals as the number needs, at most `most`: 330, 2.5, 0.125. */
export const formatShort = (value: number, most = 3): string => formatNumber(value, decimalsOf(value, most));

/** What is left of a length that an inch file gives to nine decimals is no digit of it: 9.999999998 mm is 10. */
const ROUNDED = 1e-6;

const decimalsOf = (value: number, most: number): number => {
  const unseen = Math.min(ROUNDED, Number(`5e-${most + 1}`));
  for (let decimals = 0; decimals < most; decimals += 1)
    if (Math.abs(value - Number(value.toFixed(decimals))) < unseen) return decimals;
  return most;
};
