import type { AxleName, SideName } from '../car/document';
import { toDegrees } from '../core/angle';
import type { Vector } from '../core/vector';
import type { Failure } from '../corner/failure';
import type { PerSide, Position } from '../readings/rows';
import type { AssembledCar } from '../setup/assembleCar';
import { placeAxle } from '../setup/place';
import { csvField } from '../studies/sweepCsv';
import { MM_PER_POINT_UNIT, type PointUnit } from './readPoints';

/** Where a point is at one position of its path. */
export interface PathPlace {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly name: string;
  /** as asked: from where the car stands [mm, + bump]; with roll the heave, on both sides */
  readonly travel: PerSide<number>;
  /** as asked, 0 on an axle that is not steered [mm] */
  readonly rack: number;
  /** [rad, + left side up] */
  readonly roll: number;
  /** car coordinates [mm]; null where the position cannot be reached */
  readonly at: Vector | null;
  readonly failure: Failure | null;
}

const SIDES: readonly SideName[] = ['left', 'right'];

/** The position as an axle can take it: what the rack does is nothing to one that is not steered. */
export const positionOfAxle = (car: AssembledCar, axle: AxleName, position: Position): Position =>
  car.mechanism.document[axle]?.steering === undefined ? { ...position, rack: 0 } : position;

/**
 * The way of a point through positions, relative to the body: what a bracket, a hose or a duct beside it has to leave free.
 * @param positions - any order; each is solved for itself
 * @returns a place for every position, first all of the left side, then all of the right
 * @throws RangeError for an axle or a point that the car has not, and as `placeAxle`
 */
export function pointPath(
  car: AssembledCar,
  axle: AxleName,
  name: string,
  positions: readonly Position[],
  sides: readonly SideName[] = SIDES,
): readonly PathPlace[] {
  const points = car.mechanism.document[axle]?.points;
  if (!points) throw new RangeError(`The car has no ${axle} axle.`);
  if (!Object.hasOwn(points, name)) throw new RangeError(`The ${axle} axle has no point "${name}".`);
  const poses = positions.map((asked) => {
    const position = positionOfAxle(car, axle, asked);
    return { position, placed: placeAxle(car, axle, position) };
  });
  return sides.flatMap((side) =>
    poses.map(({ position: { travel = 0, rack = 0, roll = 0 }, placed }): PathPlace => {
      const both = typeof travel === 'number' ? { left: travel, right: travel } : travel;
      const where = { axle, side, name, travel: both, rack, roll };
      return placed.ok
        ? { ...where, at: placed.value[side].points[name] ?? null, failure: null }
        : { ...where, at: null, failure: placed.failure };
    }),
  );
}

const LINE_END = '\r\n';

/**
 * A path as CSV: RFC 4180, CRLF, decimal points, full precision, no byte-order mark. The positions are in mm and degrees under
 * the names of a list of positions; a place that cannot be reached has empty coordinates and its reason in `error`.
 * @param unit - of the coordinates in the text; `places` are in mm
 */
export function pathCsv(places: readonly PathPlace[], unit: PointUnit = 'mm'): string {
  const per = MM_PER_POINT_UNIT[unit];
  const header = ['axle', 'side', 'name', 'travelLeft [mm]', 'travelRight [mm]', 'rack [mm]', 'roll [deg]'];
  const axes = ['x', 'y', 'z'].map((axis) => `${axis} [${unit}]`);
  const plain = (value: number): string => String(value === 0 ? 0 : value);
  const lines = places.map(({ axle, side, name, travel, rack, roll, at, failure }) =>
    [
      axle,
      side,
      csvField(name),
      ...[travel.left, travel.right, rack, toDegrees(roll)].map(plain),
      ...(at ? at.map((mm) => plain(mm / per)) : ['', '', '']),
      csvField(failure?.message ?? ''),
    ].join(','),
  );
  return [[...header, ...axes, 'error'].join(','), ...lines].map((line) => line + LINE_END).join('');
}
