/** How often the interval is cut when the search for a change of sign goes through all of it. */
const SCAN = 48;

/**
 * A root of a function that is smooth and mostly monotone, from a start: secant steps, and where they leave the limits, stall
 * or meet a place without value, a search for the change of sign nearest to the start, closed in by bisection and secant.
 *
 * @param miss - the function; null where it has no value
 * @param limits - the parameter stays inside; null where nothing limits it
 * @param stop - |miss| that counts as reached
 * @param slope - of the function at the start, as far as it is known: the first step goes where it says
 * @returns the parameter, or null where none is found
 */
export function solveMonotone(
  miss: (x: number) => number | null,
  start: number,
  step: number,
  limits: readonly [number, number] | null,
  stop: number,
  slope: number | null = null,
): number | null {
  const inside = (x: number): boolean => limits === null || (x >= limits[0] && x <= limits[1]);
  let x0 = start;
  let f0 = miss(x0);
  if (f0 === null) return scan(miss, start, step, limits, stop);
  if (Math.abs(f0) <= stop) return x0;
  const guess = slope === null ? NaN : start - f0 / slope;
  let x1 = inside(start + step) ? start + step : start - step;
  if (Math.abs(guess - start) < 4 * step && inside(guess)) x1 = guess;
  for (let i = 0; i < 40; i++) {
    const f1 = miss(x1);
    if (f1 === null) break;
    if (Math.abs(f1) <= stop) return x1;
    const secant = (f1 - f0) / (x1 - x0);
    if (!(Math.abs(secant) > 0) || !Number.isFinite(secant)) break;
    const next = x1 - f1 / secant;
    if (!inside(next)) break;
    // rounding ends the search before `stop` where the slope is steep
    if (Math.abs(next - x1) <= 4e-16 * Math.max(1, Math.abs(x1))) return x1;
    x0 = x1;
    f0 = f1;
    x1 = next;
  }
  return scan(miss, start, step, limits, stop);
}

function scan(
  miss: (x: number) => number | null,
  start: number,
  step: number,
  limits: readonly [number, number] | null,
  stop: number,
): number | null {
  const [low, high] = limits ?? [start - SCAN * step, start + SCAN * step];
  const grid = Array.from({ length: SCAN + 1 }, (_, i) => low + ((high - low) * i) / SCAN);
  const values = grid.map((x) => miss(x));
  let best: readonly [number, number] | null = null;
  for (let i = 0; i < SCAN; i++) {
    const a = values[i];
    const b = values[i + 1];
    if (a === null || b === null || a > 0 === b > 0) continue;
    if (best === null || Math.abs(grid[i] - start) < Math.abs(best[0] - start)) best = [grid[i], grid[i + 1]];
  }
  return best === null ? null : bisect(miss, best[0], best[1], stop);
}

/** Bisection: slow and sure, for the rare case. */
function bisect(miss: (x: number) => number | null, a: number, b: number, stop: number): number | null {
  let low = a;
  let high = b;
  const atLow = miss(low);
  if (atLow === null) return null;
  for (let i = 0; i < 200; i++) {
    const middle = 0.5 * (low + high);
    const f = miss(middle);
    if (f === null) return null;
    if (Math.abs(f) <= stop || Math.abs(high - low) <= 4e-16 * Math.max(1, Math.abs(middle))) return middle;
    if (f > 0 === atLow > 0) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
