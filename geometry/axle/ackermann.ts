/**
 * Ackermann: 100 · (δi − δo) / (δi* − δo) %, with cot δi* = cot δo − t/L. 100 % is the geometry in which all wheels roll
 * about one centre.
 *
 * @param left - steer angle of the left wheel counted from rack 0 [rad, + left]
 * @param right - of the right wheel
 * @param track - distance of the two steering axes at the ground, rack 0 [mm]
 * @param wheelbase - [mm]
 * @returns per cent; null when the outer wheel is not turned
 * @see ISO 8855:2011, 7.1.9, for the geometry; the percentage is the trade's, common practice, no source
 */
export function ackermannPercent(left: number, right: number, track: number, wheelbase: number): number | null {
  const sense = left + right < 0 ? -1 : 1;
  const inner = sense > 0 ? left : -right;
  const outer = sense > 0 ? right : -left;
  if (outer === 0) return null;
  const ideal = Math.atan2(1, 1 / Math.tan(outer) - track / wheelbase);
  return ideal === outer ? null : (100 * (inner - outer)) / (ideal - outer);
}

/** Diameter of the turning circle over the outer front tyre: 2 (L / sin |δo| + width/2) [mm]; rear wheels straight. */
export const turningCircle = (outer: number, wheelbase: number, tyreWidth: number): number =>
  2 * (wheelbase / Math.sin(Math.abs(outer)) + tyreWidth / 2);
