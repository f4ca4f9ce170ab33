import type { AxleDocument, AxleName, CarDocument, Triple } from '../car/document';
import type { Vector } from '../core/vector';
import type { BringOptions, BroughtPoint } from './bringPoints';
import { mmPerUnitOf } from './designPoints';

/** Coordinates are written to a millionth of the file's unit: noughts and nines behind that are rounding of the frames. */
const DECIMALS = 6;

/** A point [mm] as the file writes it, in its unit. */
export function inFileUnit(at: Vector, mmPerUnit: number): Triple {
  const [x, y, z] = at.map((value) => {
    const rounded = Number((value / mmPerUnit).toFixed(DECIMALS));
    return rounded === 0 ? 0 : rounded;
  });
  return [x, y, z];
}

/**
 * The car with these points in the place of its own.
 *
 * Left-hand points become the axle's. Right-hand ones become the right side's own; where the right is to be the mirror image
 * (`mirror`, `average`), its own points of these names go.
 *
 * @param points - as `bringPoints` shows them
 * @returns a new document; it is not judged here: the linkage of the new points may be none
 */
export function takePoints(
  car: CarDocument,
  { axle, sides }: { readonly axle: AxleName; readonly sides: BringOptions['sides'] },
  points: readonly BroughtPoint[],
): CarDocument {
  const before = car[axle];
  if (!before) throw new RangeError(`this car has no ${axle} axle`);
  const mmPerUnit = mmPerUnitOf(car);
  const left: Record<string, Triple> = { ...before.points };
  const right: Record<string, Triple> = { ...before.right?.points };
  for (const { point, side, at } of points) {
    (side === 'left' ? left : right)[point] = inFileUnit(at, mmPerUnit);
    if (sides !== 'each') delete right[point];
  }
  return { ...car, [axle]: withRightPoints({ ...before, points: left }, right) };
}

/** The axle with these right-hand points of its own; without any, and without a wheel of its own, the side goes from the file. */
export function withRightPoints(axle: AxleDocument, points: Readonly<Record<string, Triple>>): AxleDocument {
  const { right, ...rest } = axle;
  if (Object.keys(points).length > 0) return { ...axle, right: { ...right, points } };
  return right?.wheel ? { ...axle, right: { wheel: right.wheel } } : rest;
}
