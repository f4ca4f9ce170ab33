import type { AxleDocument, PlacedCorner, SideName } from '../../geometry/index';
import { isOnKnuckle } from './joints';
import type { Point } from './points';

/** Points of the knuckle that an adjuster shifts on it: they say nothing of where the rest of it is. */
const shifted = (axle: AxleDocument): readonly string[] =>
  Object.values(axle.adjusters ?? {}).flatMap((adjuster) => {
    if (adjuster.kind === 'clamp-eccentric') return [adjuster.bolt, ...ON_TUBE];
    return adjuster.kind !== 'perch' && 'moves' in adjuster ? [adjuster.moves] : [];
  });
/** A clamp turns the tube of the strut against the knuckle, and these with it. */
const ON_TUBE = ['strutFoot', 'clampUpper', 'clampLower'];

/** A named point that is fast on the knuckle whatever is adjusted; the wheel centre where there is none. */
const anchorOf = (axle: AxleDocument): string => {
  const moving = shifted(axle);
  return (
    Object.keys(axle.points).find(
      (name) => name !== 'wheelCentre' && isOnKnuckle(axle, name) && !moving.includes(name) && name !== axle.spring?.lower,
    ) ?? 'wheelCentre'
  );
};

/**
 * Where a point that the file gives at design, fixed to the knuckle, is now.
 * @param mm - millimetres in one unit of the file
 * @param design - of this side, in the car's frame [mm]
 */
export const knucklePointNow = (axle: AxleDocument, mm: number, side: SideName, corner: PlacedCorner, design: Point): Point => {
  const name = anchorOf(axle);
  const own = side === 'right' ? axle.right?.points?.[name] : undefined;
  const left = axle.points[name];
  const sense = side === 'left' || own ? 1 : -1;
  const at = own ?? left;
  const now = corner.points[name];
  if (!at || !now) return design;
  const off: Point = [design[0] - at[0] * mm, design[1] - sense * at[1] * mm, design[2] - at[2] * mm];
  const r = (row: number, column: number): number => corner.rotation[3 * row + column] ?? 0;
  const axis = (row: 0 | 1 | 2): number => now[row] + r(row, 0) * off[0] + r(row, 1) * off[1] + r(row, 2) * off[2];
  return [axis(0), axis(1), axis(2)];
};
