import type { CursorValues } from './plotContent';

/** A value as it stands in the head of a plot, and whose it is; null where the reading is of the axle or the car. */
export interface WrittenValue {
  readonly side: 'L' | 'R' | 'LR' | null;
  readonly text: string;
}

/** The compared setup's values: one for both sides where they read the same. */
export const comparedValues = (
  { comparedLeft, comparedRight }: CursorValues,
  hasSides: boolean,
  write: (value: number | null) => string,
): readonly WrittenValue[] => {
  const [left, right] = [write(comparedLeft), write(comparedRight)];
  if (!hasSides) return [{ side: null, text: left }];
  if (left === right) return [{ side: 'LR', text: left }];
  return [
    { side: 'L', text: left },
    { side: 'R', text: right },
  ];
};

/**
 * The values at the cursor as they are spoken: "left −1.90, right −1.90; Baseline: left −1.00, right −1.00".
 * @param compared - the name of what is compared with; null where there is nothing
 */
export const spokenValues = (
  values: CursorValues,
  compared: string | null,
  hasSides: boolean,
  write: (value: number | null) => string,
): string => {
  const sides = (left: number | null, right: number | null): string =>
    hasSides ? `left ${write(left)}, right ${write(right)}` : write(left);
  const own = sides(values.left, values.right);
  return compared === null ? own : `${own}; ${compared}: ${sides(values.comparedLeft, values.comparedRight)}`;
};
