import type { AxleName } from '../../geometry/index';
import { mmPerFileUnit } from '../units/fileLength';
import { answerSetup, type SetupQuestion } from './answerBench';
import { sweepSetup } from './curves';
import { memoLast } from './memoLast';
import type { MotionRange } from './motionRanges';

/** How steer is read and typed: rack travel [mm], turn of the hand wheel, or the mean angle of both wheels [degrees]. */
export type SteerAs = 'rack' | 'handWheel' | 'meanAngle';

/** The steer rule under one of them. `toRack` and `fromRack` are each other's way back. */
export interface SteerScale {
  readonly range: MotionRange;
  readonly fromRack: (rack: number) => number;
  readonly toRack: (shown: number) => number;
  /** more of it is less rack */
  readonly isReversed: boolean;
}

const FULL_TURN_DEG = 360;
const CLOSE_ENOUGH_DEG = 1e-10;
const MOST_STEPS = 60;
const same = (value: number): number => value;

/** @param perTurn - rack travel for one turn of the hand wheel [mm] */
const byHandWheel = (range: MotionRange, perTurn: number): SteerScale => {
  const fromRack = (rack: number) => (rack / perTurn) * FULL_TURN_DEG;
  const ends = (a: number, b: number): readonly [number, number] => {
    const [one, two] = [fromRack(a), fromRack(b)];
    return one < two ? [one, two] : [two, one];
  };
  const [min, max] = ends(range.min, range.max);
  return {
    range: { min, max, stops: range.stops && ends(...range.stops) },
    fromRack,
    toRack: (shown) => (shown / FULL_TURN_DEG) * perTurn,
    isReversed: perTurn < 0,
  };
};

type Question = Omit<SetupQuestion, 'position'> & { readonly travel: number; readonly rollDeg: number };

const meanAngleAt = ({ document, setup, axle, travel, rollDeg }: Question, rack: number): number => {
  const answer = answerSetup({ document, setup, axle, position: { travel, rollDeg, rack } });
  if (!answer.ok) return NaN;
  const [left, right] = [answer.value.left['steerAngle'], answer.value.right['steerAngle']];
  return typeof left === 'number' && typeof right === 'number' ? (left + right) / 2 : NaN;
};

/** The rack at which the wheels have that mean angle: halving with a secant, between two racks on either side of it. */
const rackFor = (question: Question, wanted: number, from: number, to: number): number => {
  let [a, b] = [from, to];
  let [atA, atB] = [meanAngleAt(question, a) - wanted, meanAngleAt(question, b) - wanted];
  for (let step = 0; step < MOST_STEPS && Math.abs(atB - atA) > 0; step += 1) {
    const secant = b - (atB * (b - a)) / (atB - atA);
    const next = step % 3 === 2 ? (a + b) / 2 : secant;
    const off = meanAngleAt(question, next) - wanted;
    if (Math.abs(off) < CLOSE_ENOUGH_DEG || !Number.isFinite(off)) return next;
    if (off * atA <= 0) [b, atB] = [next, off];
    else [a, atA] = [next, off];
  }
  return (a + b) / 2;
};

const byMeanAngle = (question: Question, range: MotionRange): SteerScale | null => {
  const { document, setup, axle, travel, rollDeg } = question;
  const span = { over: 'steer', from: range.min, to: range.max, held: { travel, rollDeg, rack: 0 } } as const;
  const swept = sweepSetup(document, setup, axle, span, ['steerAngle']);
  const curves = swept.ok ? swept.value.curves.get('steerAngle') : undefined;
  if (!swept.ok || !curves?.right) return null;
  const { right } = curves;
  const racks = swept.value.inputs;
  const angles = curves.left.values.map((left, index) => (left + (right.values[index] ?? NaN)) / 2);
  const reached = [...angles.keys()].filter((index) => !Number.isNaN(angles[index]));
  const [first, last] = [reached[0], reached.at(-1)];
  if (first === undefined || last === undefined || first === last) return null;
  const [low, high] = [angles[first] ?? 0, angles[last] ?? 0];
  const isReversed = high < low;
  const [min, max] = isReversed ? [high, low] : [low, high];
  const toRack = (shown: number): number => {
    const wanted = Math.min(max, Math.max(min, shown));
    for (let index = first; index < last; index += 1) {
      const [one, two] = [(angles[index] ?? NaN) - wanted, (angles[index + 1] ?? NaN) - wanted];
      if (one * two <= 0) return rackFor(question, wanted, racks[index] ?? 0, racks[index + 1] ?? 0);
    }
    return racks[(wanted - low) * (high - low) > 0 ? last : first] ?? 0;
  };
  // The stops of the rack are the ends of what was swept, or lie inside it.
  const stops = range.stops && range.stops.map((stop) => meanAngleAt(question, stop)).sort((a, b) => a - b);
  const [from, to] = stops ?? [NaN, NaN];
  return {
    range: { min, max, stops: from !== undefined && to !== undefined && from < to ? [from, to] : null },
    fromRack: (rack) => meanAngleAt(question, rack),
    toRack,
    isReversed,
  };
};

/** The ways in which steer can be read on an axle: the hand wheel only where the file says how far it moves the rack. */
export const steerWays = (document: SetupQuestion['document'], axle: AxleName): readonly SteerAs[] =>
  document[axle]?.steering?.perTurn === undefined ? ['rack', 'meanAngle'] : ['rack', 'handWheel', 'meanAngle'];

/**
 * The steer rule as rack travel, hand-wheel turn or mean steer angle.
 * @param range - of the rack [mm]
 * @returns the rack itself where the other way has no answer
 */
export const steerScale = memoLast(
  (
    document: SetupQuestion['document'],
    setup: string,
    axle: AxleName,
    travel: number,
    rollDeg: number,
    range: MotionRange,
    as: SteerAs,
  ): SteerScale => {
    const rack: SteerScale = { range, fromRack: same, toRack: same, isReversed: false };
    if (as === 'rack') return rack;
    const perTurn = document[axle]?.steering?.perTurn;
    if (as === 'handWheel') return perTurn === undefined ? rack : byHandWheel(range, perTurn * mmPerFileUnit(document));
    return byMeanAngle({ document, setup, axle, travel, rollDeg }, range) ?? rack;
  },
);
