import { clockSeen, formatShort, type AdjusterDocument } from '../../geometry/index';

export { clockSeen, hourWords } from '../../geometry/index';

interface Clocks {
  readonly left: number | null;
  readonly right: number | null;
}

/**
 * What stands in the fields of a bushing where that is not the clock that is seen: a setting is counted about the file's axis,
 * and the right side is its mirror image. Empty where fields and words say the same.
 */
export const fieldClockWords = (adjuster: AdjusterDocument, value: Clocks, isApart = value.left !== value.right): string => {
  if (adjuster.kind !== 'offset-bushing') return '';
  const sides = isApart ? (['left', 'right'] as const) : (['left'] as const);
  const counted = sides.flatMap((side) => {
    const clock = value[side];
    if (clock === null || clockSeen(clock, adjuster.axis, adjuster.seenFrom, side) === clock % 360) return [];
    return `${isApart ? `${side} ` : ''}${formatShort(clock, 1)}°`;
  });
  return counted.length === 0 ? '' : `; counted as in the file: ${counted.join(', ')}`;
};
