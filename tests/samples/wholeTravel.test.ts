import { describe, expect, it } from 'vitest';
import { setupNames, sweepAxle, toRadians, type AssembledCar, type AxleName, type AxleRow, type Degrees } from '../../geometry/index';
import { envelopeOf, spread } from './envelope';
import { AXLES, SAMPLES, standing } from './samples';

/** Steps of the grid: about 4 mm of travel, 3 mm of rack. */
const TRAVELS = 41;
const RACKS = 47;
/** Between two travels the change is what the rates at both ends say, to this much [rad]. */
const AGREES = toRadians(0.01 as Degrees);
/** Between two racks: more than this in one step, or this much more than in the step before, is a jump [rad]. */
const STEP = toRadians(3 as Degrees);
const BEND = toRadians(0.4 as Degrees);

const SIDES = ['left', 'right'] as const;

/** Every number of a row, with its place. */
function numbersOf(value: unknown, place: string): [string, number][] {
  if (typeof value === 'number') return [[place, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, `${place}.${key}`));
}

/** Rows of the whole envelope: a line of travels for every rack. */
function solveEnvelope(car: AssembledCar, axle: AxleName): { grid: AxleRow[][]; travels: readonly number[] } {
  const { open, solid, rack } = envelopeOf(car, axle);
  const travels = spread(open, solid, TRAVELS);
  const racks = rack[0] === rack[1] ? [0] : spread(rack[0], rack[1], RACKS);
  const grid = racks.map((at) =>
    sweepAxle(
      car,
      axle,
      travels.map((travel) => ({ travel, rack: at })),
    ).map((row, i) => {
      if (!row.ok) throw new Error(`travel ${travels[i]} rack ${at}: ${row.failure.message}`);
      return row.value;
    }),
  );
  return { grid, travels };
}

/** Trapezium over the rates of both ends: what a branch followed without a jump must give. */
function jumpsInTravel(line: readonly AxleRow[], travels: readonly number[]): string[] {
  return line.slice(1).flatMap((row, i) => {
    const before = line[i]!;
    const step = travels[i + 1]! - travels[i]!;
    return SIDES.flatMap((side) => {
      const [a, b] = [before[side], row[side]];
      const camberOff = b.camber - a.camber - 0.5 * step * (a.camberGain + b.camberGain);
      const toeOff = b.toe - a.toe - 0.5 * step * (a.bumpSteer + b.bumpSteer);
      return Math.abs(camberOff) < AGREES && Math.abs(toeOff) < AGREES ? [] : [`${side} travel ${travels[i]}, rack ${row.rack}: camber off ${camberOff}, toe off ${toeOff}`];
    });
  });
}

function jumpsInRack(grid: readonly (readonly AxleRow[])[], travels: readonly number[]): string[] {
  return grid.slice(2).flatMap((line, i) =>
    line.flatMap((row, j) =>
      SIDES.flatMap((side) => {
        const [a, b, c] = [grid[i]![j]![side].steerAngle, grid[i + 1]![j]![side].steerAngle, row[side].steerAngle];
        return Math.abs(c - b) < STEP && Math.abs(c - 2 * b + a) < BEND ? [] : [`${side} travel ${travels[j]}, rack ${row.rack}: ${a}, ${b}, ${c}`];
      }),
    ),
  );
}

describe.each(SAMPLES)('$name', (sample) => {
  const cases = setupNames(sample.document).flatMap((setup) => AXLES.map((axle) => ({ setup, axle })));

  it.each(cases)('$setup, $axle: every position from damper open to solid, lock to lock', ({ setup, axle }) => {
    const { grid, travels } = solveEnvelope(standing(sample, setup), axle);
    const strange = grid.flat().flatMap((row) => numbersOf(row, '').filter(([, value]) => !Number.isFinite(value)).map(([place]) => place));
    expect([...new Set(strange)]).toEqual([]);
    expect(grid.flatMap((line) => jumpsInTravel(line, travels))).toEqual([]);
    expect(jumpsInRack(grid, travels)).toEqual([]);
  });
});
