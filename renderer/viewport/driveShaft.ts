import type { AxleDocument, PlacedCorner, SideName, Triple } from '../../geometry/index';
import { knucklePointNow } from './knucklePoint';
import { direction, type Point } from './points';

/** Where a drive shaft's joints are now, in the car's frame [mm]. */
export interface PlacedShaft {
  /** on the body */
  readonly inner: Point;
  /** unit vector, inboard: along it the inner joint's housing lies */
  readonly inward: Point;
  /** on the knuckle */
  readonly outer: Point;
}

/** Radius of a shaft whose section the file leaves out [mm]. */
const SHAFT = 13;

/** @param mm - millimetres in one unit of the file @returns of the bar between the joints [mm] */
export const shaftRadius = ({ sections }: AxleDocument, mm: number): number =>
  sections?.['driveShaft'] ? (sections['driveShaft'].diameter / 2) * mm : SHAFT;

/**
 * The shaft of one corner where the file says it runs; null where the file says nothing of it, though the axle be driven.
 * @param mm - millimetres in one unit of the file
 */
export const placeShaft = (axle: AxleDocument, mm: number, side: SideName, corner: PlacedCorner): PlacedShaft | null => {
  const shaft = axle.driveShaft;
  if (!shaft) return null;
  const sense = side === 'left' ? 1 : -1;
  const onSide = ([x, y, z]: Triple): Point => [x * mm, sense * y * mm, z * mm];
  const [ax, ay, az] = shaft.innerAxis ?? [0, 1, 0];
  // An axis may be given either way along its line; the housing is on the inboard end.
  const inward = direction([0, 0, 0], [ax, sense * ay, az]);
  const flip = inward[1] * sense > 0 ? -1 : 1;
  return {
    inner: onSide(shaft.inner),
    inward: [flip * inward[0], flip * inward[1], flip * inward[2]],
    outer: knucklePointNow(axle, mm, side, corner, onSide(shaft.outer)),
  };
};
