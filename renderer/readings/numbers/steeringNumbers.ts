import { placeAxle, toDegrees, toRadians, type SideName, type Vector } from '../../../geometry/index';
import { axleOf, cornerAt, factsOf, type CornerFacts, type Shown } from './cornerFacts';
import { cross, dot, less } from './vectors';
import type { UnitWriter } from './unitWriter';
import { FINE, formula, num, POINT, type WrittenFormula } from './writing';

type Numbers = (shown: Shown) => WrittenFormula | null;

/** Steer angle of a wheel, + to the left [degrees]. */
const steerAngle = ({ spindle, ahead, outboard }: CornerFacts, side: SideName): number => {
  const outward = toDegrees(Math.atan2(-dot(spindle, ahead), dot(spindle, outboard)));
  return side === 'left' ? outward : -outward;
};

/** Both wheels now and with the rack centred, all else as it is; null with the rack centred. */
const turned = (shown: Shown) => {
  const axle = axleOf(shown);
  const { row, position } = shown;
  if (!axle || row.rack === 0) return null;
  const { travel, rollDeg } = position;
  const straight = placeAxle(row.car, shown.axleName, rollDeg === 0 ? { travel } : { travel, roll: toRadians(rollDeg) });
  if (!straight.ok) return null;
  const places = straight.value;
  const corner = (side: SideName): CornerFacts | null => cornerAt(axle, side, places.travel[side], 0, places.ground.normal);
  const [left, right, left0, right0] = [factsOf(shown, 'left'), factsOf(shown, 'right'), corner('left'), corner('right')];
  if (!left || !right || !left0 || !right0) return null;
  const { write, step } = shown.writer;
  const angle = (side: SideName, now: CornerFacts, then: CornerFacts) => {
    const [to, from] = [steerAngle(now, side), steerAngle(then, side)];
    const written = `${write(to, 'angle', FINE)} − ${write(from, 'angle', FINE)}`;
    return { now: to, turned: to - from, step: step(`δ ${side}`, written, to - from, 'angle', FINE) };
  };
  return { left: angle('left', left, left0), right: angle('right', right, right0), straight: places, outboard: left0.outboard };
};

const ackermann: Numbers = (shown) => {
  const steer = turned(shown);
  const { wheelbase } = shown.row.car.mechanism;
  if (!steer || wheelbase === null) return null;
  const [gl, gr] = [steer.straight.left.steeringAxis?.ground, steer.straight.right.steeringAxis?.ground];
  if (!gl || !gr) return null;
  const apart = dot(less(gl, gr), steer.outboard);
  const isLeft = steer.left.turned + steer.right.turned >= 0;
  const [inner, outer] = isLeft ? [steer.left.turned, steer.right.turned] : [-steer.right.turned, -steer.left.turned];
  const ideal = toDegrees(Math.atan2(1, 1 / Math.tan(toRadians(outer)) - apart / wheelbase));
  const { write, point, direction, step } = shown.writer;
  const angle = (value: number): string => write(value, 'angle', FINE);
  const length = (value: number): string => write(value, 'length', POINT);
  return formula(`100 · (${angle(inner)} − ${angle(outer)}) / (${angle(ideal)} − ${angle(outer)})`, {
    from: `the ${isLeft ? 'left' : 'right'} wheel is the inner one`,
    steps: [
      steer.left.step,
      steer.right.step,
      step('t', `(${point(gl)} − ${point(gr)}) · ${direction(steer.outboard)}`, apart, 'length', POINT),
      step('δi*', `acot(cot(${angle(outer)}) − ${length(apart)} / ${length(wheelbase)})`, ideal, 'angle', FINE),
    ],
  });
};

const turningCircle: Numbers = (shown) => {
  const steer = turned(shown);
  const { wheelbase } = shown.row.car.mechanism;
  const width = axleOf(shown)?.left.wheel.tyreWidth ?? null;
  if (!steer || wheelbase === null || width === null) return null;
  const outer = steer.left.turned + steer.right.turned > 0 ? steer.right.now : steer.left.now;
  const { write } = shown.writer;
  return formula(
    `2 · (${write(wheelbase, 'length', POINT)} / sin(|${write(outer, 'angle', 7)}|) + ${write(width, 'length', POINT)} / 2)`,
  );
};

/** d steer / d rack of a wheel, in its left-hand frame [°/mm]. */
const perRack = (facts: CornerFacts, side: SideName, { write, step, lengthUnit }: UnitWriter) => {
  const change: Vector = cross(facts.rackTurn, facts.spindle);
  const [a, b] = [-dot(facts.spindle, facts.ahead), dot(facts.spindle, facts.outboard)];
  const [da, db] = [toDegrees(-dot(change, facts.ahead)), toDegrees(dot(change, facts.outboard))];
  const value = (b * da - a * db) / (a * a + b * b);
  const inUnits = (rate: number): string => write(rate, 'swing', 8);
  const written = `(${num(b, FINE)} · ${inUnits(da)} − ${num(a, FINE)} · ${inUnits(db)}) / (${num(a, FINE)}² + ${num(b, FINE)}²)`;
  return { value, step: step(`steer ${side} per ${lengthUnit} of rack`, written, value, 'swing', 7) };
};

const steeringRatio: Numbers = (shown) => {
  const perTurn = axleOf(shown)?.mechanism.steering?.perTurn ?? null;
  if (perTurn === null) return null;
  const { writer } = shown;
  const { write, step } = writer;
  const turn = write(perTurn, 'length', 4);
  const steer = turned(shown);
  if (steer) {
    const mean = (steer.left.turned + steer.right.turned) / 2;
    return formula(`|360 · ${write(shown.row.rack, 'length', 4)} / ${turn} / ${write(mean, 'angle', 7)}|`, {
      steps: [
        steer.left.step,
        steer.right.step,
        step(
          'mean δ',
          `(${write(steer.left.turned, 'angle', FINE)} + ${write(steer.right.turned, 'angle', FINE)}) / 2`,
          mean,
          'angle',
          FINE,
        ),
      ],
    });
  }
  const [left, right] = [factsOf(shown, 'left'), factsOf(shown, 'right')];
  if (!left || !right || shown.row.rack !== 0) return null;
  const [l, r] = [perRack(left, 'left', writer), perRack(right, 'right', writer)];
  return formula(`|360 / ${turn} / ((${write(l.value, 'swing', 7)} − ${write(r.value, 'swing', 7)}) / 2)|`, {
    from: `rack centred: the rates from the twist per ${writer.lengthUnit} of rack`,
    steps: [l.step, r.step],
  });
};

/** Of a steered axle. */
export const STEERING_NUMBERS: Readonly<Record<string, Numbers>> = { ackermann, turningCircle, steeringRatio };
