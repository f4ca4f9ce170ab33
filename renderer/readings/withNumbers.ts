import { toDegrees, type Vector } from '../../geometry/index';
import type { BenchRow } from '../compute/answerBench';
import { formatNumber, formatSigned } from '../units/format';

type Numbers = (row: BenchRow) => string | null;

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const unit = (a: Vector): Vector => {
  const size = Math.sqrt(dot(a, a));
  return [a[0] / size, a[1] / size, a[2] / size];
};
const written = (a: Vector, decimals: number): string => `(${a.map((one) => formatNumber(one, decimals)).join(', ')})`;

/** The car's X laid into the ground. */
const ahead = (normal: Vector): Vector => unit([1 - normal[0] * normal[0], -normal[0] * normal[1], -normal[0] * normal[2]]);

const axisAngle =
  (across: (normal: Vector) => Vector): Numbers =>
  ({ placed }) => {
    const k = placed.left.steeringAxis?.direction;
    if (!k) return null;
    const { normal } = placed.ground;
    const [over, up] = [-dot(k, across(normal)), dot(k, normal)];
    return `atan2(${formatNumber(over, 5)}, ${formatNumber(up, 5)}) = ${formatNumber(toDegrees(Math.atan2(over, up)), 3)}°`;
  };

/** From contact centre to where the steering axis meets the ground, along or across the wheel. */
const groundOffset =
  (isAcross: boolean): Numbers =>
  ({ placed }) => {
    const axis = placed.left.steeringAxis;
    if (!axis) return null;
    const heading = unit(cross(placed.left.spindle, placed.ground.normal));
    const direction = isAcross ? cross(placed.ground.normal, heading) : heading;
    const [g, c] = [axis.ground, placed.left.contactCentre];
    const [from, to] = isAcross ? [g, c] : [c, g];
    const names = isAcross ? ['C', 'G'] : ['G', 'C'];
    const value = dot(less(to, from), direction);
    return `${names[0]} − ${names[1]} = ${written(less(to, from), 2)}; along ${written(direction, 4)} = ${formatNumber(value, 2)} mm`;
  };

const number = (row: BenchRow, owner: 'left' | 'right' | 'both', key: string): number | null => {
  const value = row[owner][key];
  return typeof value === 'number' ? value : null;
};

/** Two readings that make a third, written out. */
const sumOf =
  (a: readonly ['left' | 'right' | 'both', string], sign: '+' | '−', b: typeof a, decimals: number, unit: string): Numbers =>
  (row) => {
    const [one, two] = [number(row, ...a), number(row, ...b)];
    if (one === null || two === null) return null;
    const sum = sign === '+' ? one + two : one - two;
    return `${formatNumber(one, decimals)} ${sign} (${formatSigned(two, decimals)}) = ${formatNumber(sum, decimals)} ${unit}`;
  };

/** Formulas into which this car's numbers can be put, in degrees and mm, for the left-hand side. */
const WRITTEN: Readonly<Record<string, Numbers>> = {
  camber: ({ placed }) => {
    const into = dot(placed.left.spindle, placed.ground.normal);
    return `asin(−(${formatNumber(into, 5)})) = ${formatNumber(toDegrees(Math.asin(-into)), 3)}°`;
  },
  camberToBody: ({ placed }) => {
    const up = placed.left.spindle[2];
    return `asin(−(${formatNumber(up, 5)})) = ${formatNumber(toDegrees(Math.asin(-up)), 3)}°`;
  },
  caster: axisAngle(ahead),
  kingpinInclination: axisAngle((normal) => cross(normal, ahead(normal))),
  mechanicalTrail: groundOffset(false),
  scrubRadius: groundOffset(true),
  totalToe: sumOf(['left', 'toe'], '+', ['right', 'toe'], 3, '°'),
  rollStiffness: sumOf(['both', 'springRollStiffness'], '+', ['both', 'barRollStiffness'], 1, 'N·m/°'),
  track: sumOf(['left', 'halfTrack'], '+', ['right', 'halfTrack'], 2, 'mm'),
};

/** A reading's formula with the numbers of the car as it stands, on the left; null where they cannot be written in. */
export const withNumbers = (key: string, row: BenchRow): string | null => WRITTEN[key]?.(row) ?? null;
