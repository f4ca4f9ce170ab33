import {
  readingsInContractUnits,
  readingsOfAxle,
  toRadians,
  type AssembledCar,
  type AxleName,
  type SideName,
} from '../../geometry/index';
import type { SetupQuestion } from './answerBench';
import { memoLast } from './memoLast';

/** What stands beside one wheel in the plan of the car [degrees]. */
export interface WheelFigure {
  readonly axle: AxleName;
  readonly side: SideName;
  /** null where the wheel cannot be there */
  readonly camber: number | null;
  readonly toe: number | null;
}

const SIDES = ['left', 'right'] as const;

const numberIn = (readings: object, key: string): number | null => {
  const value = readingsInContractUnits(readings, 'corner')[key];
  return typeof value === 'number' ? value : null;
};

const figuresOfAxle = (car: AssembledCar, axle: AxleName, asked: SetupQuestion['position']): readonly WheelFigure[] => {
  const assembled = car[axle];
  if (!assembled) return [];
  const rack = assembled.left.corner.isSteered ? asked.rack : 0;
  const position = { travel: asked.travel, rack };
  const row = readingsOfAxle(car, axle, asked.rollDeg === 0 ? position : { ...position, roll: toRadians(asked.rollDeg) });
  return SIDES.map((side) => ({
    axle,
    side,
    camber: row.ok ? numberIn(row.value[side], 'camber') : null,
    toe: row.ok ? numberIn(row.value[side], 'toe') : null,
  }));
};

/** Camber and toe of every wheel that the car has, at one position of both axles. */
export const wheelFigures = memoLast((car: AssembledCar, position: SetupQuestion['position']): readonly WheelFigure[] => [
  ...figuresOfAxle(car, 'front', position),
  ...figuresOfAxle(car, 'rear', position),
]);
