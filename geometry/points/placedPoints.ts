import type { AxleName, SideName } from '../car/document';
import { succeed, type Result } from '../core/result';
import { subtract, type Vector } from '../core/vector';
import type { Failure } from '../corner/failure';
import type { Position } from '../readings/rows';
import type { AssembledCar } from '../setup/assembleCar';
import { placeAxle } from '../setup/place';
import { designPoints } from './designPoints';
import { MM_PER_POINT_UNIT, type PointUnit } from './readPoints';

/** A point of the car in a setup at a position, beside where the file has it at design. Car coordinates [mm]. */
export interface PlacedPoint {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly name: string;
  readonly at: Vector;
  readonly design: Vector;
  readonly change: Vector;
}

const SIDES: readonly SideName[] = ['left', 'right'];

/**
 * Every point of an axle, both sides, in the order of the file.
 * @returns the points; or why the position cannot be reached
 * @throws RangeError as `placeAxle`
 */
export function placedPoints(car: AssembledCar, axle: AxleName, position: Position): Result<readonly PlacedPoint[], Failure> {
  const placed = placeAxle(car, axle, position);
  if (!placed.ok) return placed;
  const points = SIDES.flatMap((side) =>
    Object.entries(designPoints(car.mechanism.document, axle, side)).map(([name, design]): PlacedPoint => {
      const at = placed.value[side].points[name] ?? design;
      return { axle, side, name, at, design, change: subtract(at, design) };
    }),
  );
  return succeed(points);
}

const LINE_END = '\r\n';
const headerIn = (unit: PointUnit): string =>
  ['axle', 'side', 'name', ...['x', 'y', 'z', 'design x', 'design y', 'design z'].map((axis) => `${axis} [${unit}]`)].join(',');

/**
 * Points as CSV: RFC 4180, CRLF, decimal points, full precision, no byte-order mark. The head says the unit, and `readPoints`
 * reads it and `x`, `y`, `z` back: in mm to the last bit, in another unit to its last digit or the one before.
 * @param unit - of the coordinates in the text; `points` are in mm
 */
export function pointsCsv(points: readonly Omit<PlacedPoint, 'change'>[], unit: PointUnit = 'mm'): string {
  const per = MM_PER_POINT_UNIT[unit];
  const plain = (mm: number): string => String(mm === 0 ? 0 : mm / per);
  const lines = points.map(({ axle, side, name, at, design }) =>
    [axle, side, name, ...at.map(plain), ...design.map(plain)].join(','),
  );
  return [headerIn(unit), ...lines].map((line) => line + LINE_END).join('');
}
