/** How much of the way from zero to the end on its side a setting has gone, 0…1. */
export function share(value: number, min: number, max: number): number {
  const end = value < 0 ? min : max;
  return value === 0 || end === 0 ? 0 : Math.abs(value / end);
}
