/**
 * Where times stand on a line from one end to the other, in percent of its length; at least a hair inside it.
 * @param from - time of the left end, `to` of the right one, ms
 */
export const placesOnLine = (times: readonly number[], from: number, to: number): readonly number[] => {
  const length = Math.max(to - from, 1);
  return times.map((time) => Math.min(99, Math.max(1, (100 * (time - from)) / length)));
};
