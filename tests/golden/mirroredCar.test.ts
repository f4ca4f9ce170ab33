import { describe, expect, it } from 'vitest';
import type { AxleRow, Failure, Result } from '../../geometry/index';
import { GOLDEN_CARS, goldenDocument, goldenRows, positionOf, solvedRows, titleOf } from './goldenCars';
import { mirroredCar, mirroredPosition, mirroredReadings } from './mirroredCar';

function valueOf(solved: Result<AxleRow, Failure> | undefined): AxleRow {
  if (solved === undefined || !solved.ok) throw new Error('A row has no answer.');
  return solved.value;
}

describe.each(GOLDEN_CARS)('%s seen in a mirror', (car) => {
  const rows = goldenRows(car);
  const own = solvedRows(goldenDocument(car), rows);
  const mirrored = solvedRows(mirroredCar(goldenDocument(car)), rows, (row) => mirroredPosition(positionOf(row)));

  it.each(rows.map((row, index) => [titleOf(row), index] as const))('%s: every reading, to the last bit', (_title, index) => {
    const { travel, travelFromStanding, rack, roll, left, right, both } = valueOf(mirrored[index]);
    expect({ travel, travelFromStanding, rack, roll, left, right, both }).toEqual(mirroredReadings(valueOf(own[index])));
  });
});
