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

const decimalsOf = (value: number, most: number): number => {
  for (let decimals = 0; decimals < most; decimals += 1)
    if (Math.abs(value - Number(value.toFixed(decimals))) < 1e-9) return decimals;
  return most;
};
