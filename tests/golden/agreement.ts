import { inContractUnits, type AxleRow, type Failure, type Result } from '../../geometry/index';
import { titleOf, type ExpectedReadings, type ExpectedRow } from './goldenCars';

/** How far a reading may lie from its expectation: the larger of a fixed and a relative part. */
interface Tolerance {
  readonly fixed: number;
  readonly relative: number;
}

// the tolerances that came with the expectations: cars/README.md
const LENGTH: Tolerance = { fixed: 1e-6, relative: 0 };
const ANGLE: Tolerance = { fixed: 1e-7, relative: 0 };
const RATE: Tolerance = { fixed: 1e-8, relative: 1e-5 };
const CENTRE: Tolerance = { fixed: 1e-3, relative: 1e-5 };

const CLASSES: readonly (readonly [Tolerance, readonly string[]])[] = [
  [LENGTH, ['mechanicalTrail', 'scrubRadius', 'trailAtWheelCentre', 'scrubAtWheelCentre', 'wheelCentre', 'contactCentre']],
  [LENGTH, ['damperTravel', 'track', 'trackChange']],
  [ANGLE, ['camber', 'toe', 'steerAngle', 'caster', 'kingpinInclination', 'totalToe']],
  [RATE, ['camberGain', 'bumpSteer', 'longitudinalSlopeContact', 'longitudinalSlopeWheelCentre', 'lateralSlopeContact']],
  [RATE, ['springRatio', 'damperRatio', 'barRatio', 'ackermann']],
  [CENTRE, ['frontViewInstantCentre', 'sideViewInstantCentre', 'rollCentreHeight', 'rollCentreOffset']],
];
const TOLERANCES = new Map(CLASSES.flatMap(([tolerance, keys]) => keys.map((key) => [key, tolerance] as const)));

type Readings = Readonly<Record<string, unknown>>;

/** What of a solved row misses its expectation; empty when all of it agrees. @param part - of the stated tolerances */
export function missesOf(expected: ExpectedRow, solved: Result<AxleRow, Failure> | undefined, part = 1): string[] {
  const title = titleOf(expected);
  if (solved === undefined) return [`${title}: not asked`];
  if (!solved.ok) return [`${title}: ${solved.failure.message}`];
  const row = inContractUnits(solved.value);
  const travel = (['left', 'right'] as const)
    .filter((side) => !(Math.abs(row.travel[side] - expected.travel[side]) <= LENGTH.fixed * part))
    .map((side) => `${title}: travel ${side} ${row.travel[side]}, expected ${expected.travel[side]}`);
  const groups = (['left', 'right', 'both'] as const).flatMap((group) =>
    missesOfGroup(expected[group], row[group], part, row.why, group).map((miss) => `${title}: ${group}.${miss}`),
  );
  return [...travel, ...groups];
}

function missesOfGroup(expected: ExpectedReadings, solved: Readings, part: number, why: Readings, group: string): string[] {
  return Object.entries(expected).flatMap(([key, wanted]) => {
    const tolerance = TOLERANCES.get(key);
    if (tolerance === undefined) return [`${key} has no tolerance`];
    const found = solved[key];
    if (wanted === null)
      return found === null && typeof why[`${group}.${key}`] === 'string'
        ? []
        : [`${key} ${String(found)}, expected none, with a reason`];
    const wantedNumbers = numbersOf(wanted);
    const foundNumbers = numbersOf(found);
    const agrees =
      wantedNumbers.length === foundNumbers.length &&
      wantedNumbers.every((value, i) => isNear(foundNumbers[i], value, tolerance, part));
    return agrees ? [] : [`${key} ${String(found)}, expected ${String(wanted)}`];
  });
}

const numbersOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? (value as readonly unknown[]) : [value]);

const isNear = (found: unknown, wanted: unknown, { fixed, relative }: Tolerance, part: number): boolean =>
  typeof found === 'number' &&
  typeof wanted === 'number' &&
  Math.abs(found - wanted) <= part * Math.max(fixed, relative * Math.abs(wanted));

/** A solved row in the form of an expectation, with the readings of `like`: to hold another way to the same answer against it. */
export function asExpected(like: ExpectedRow, solved: Result<AxleRow, Failure> | undefined): ExpectedRow {
  if (solved === undefined || !solved.ok) throw new Error(`${titleOf(like)} has no answer.`);
  const row = inContractUnits(solved.value);
  const only = (group: 'left' | 'right' | 'both'): ExpectedReadings =>
    Object.fromEntries(Object.keys(like[group]).map((key) => [key, row[group][key] ?? null]));
  return { ...like, travel: row.travel, left: only('left'), right: only('right'), both: only('both') };
}
