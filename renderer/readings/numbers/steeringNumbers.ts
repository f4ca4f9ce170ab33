import { placeAxle, toDegrees, toRadians, type Vector } from '../../../geometry/index';
import { axleOf, cornerAt, factsOf, type CornerFacts, type Shown } from './cornerFacts';
import { cross, dot, less } from './vectors';
import { direction, FINE, formula, num, point, POINT, step, type Step, type WrittenFormula } from './writing';

type Numbers = (shown: Shown) => WrittenFormula | null;

/** Steer angle of a wheel, + to the left [degrees]. */
const steerAngle = ({ spindle, ahead, outboard }: CornerFacts, side: 'left' | 'right'): number => {
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
  const corner = (side: 'left' | 'right'): CornerFacts | null =>
    cornerAt(axle, side, places.travel[side], 0, places.ground.normal);
  const [left, right, left0, right0] = [factsOf(shown, 'left'), factsOf(shown, 'right'), corner('left'), corner('right')];
  if (!left || !right || !left0 || !right0) return null;
  const angle = (side: 'left' | 'right', now: CornerFacts, then: CornerFacts) => {
    const [to, from] = [steerAngle(now, side), steerAngle(then, side)];
    return { now: to, turned: to - from, step: step(`δ ${side}`, `${num(to, FINE)} − ${num(from, FINE)}`, to - from, FINE, '°') };
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
  return formula(`100 · (${num(inner, FINE)} − ${num(outer, FINE)}) / (${num(ideal, FINE)} − ${num(outer, FINE)})`, {
    from: `the ${isLeft ? 'left' : 'right'} wheel is the inner one`,
    steps: [
      steer.left.step,
      steer.right.step,
      step('t', `(${point(gl)} − ${point(gr)}) · ${direction(steer.outboard)}`, apart, POINT, 'mm'),
      step('δi*', `acot(cot(${num(outer, FINE)}) − ${num(apart, POINT)} / ${num(wheelbase, POINT)})`, ideal, FINE, '°'),
    ],
  });
};

const turningCircle: Numbers = (shown) => {
  const steer = turned(shown);
  const { wheelbase } = shown.row.car.mechanism;
  const width = axleOf(shown)?.left.wheel.tyreWidth ?? null;
  if (!steer || wheelbase === null || width === null) return null;
  const outer = steer.left.turned + steer.right.turned > 0 ? steer.right.now : steer.left.now;
  return formula(`2 · (${num(wheelbase, POINT)} / sin(|${num(outer, 7)}|) + ${num(width, POINT)} / 2)`);
};

/** d steer / d rack of a wheel, in its left-hand frame [°/mm]. */
const perRack = (facts: CornerFacts, side: 'left' | 'right'): { readonly value: number; readonly step: Step } => {
  const change: Vector = cross(facts.rackTurn, facts.spindle);
  const [a, b] = [-dot(facts.spindle, facts.ahead), dot(facts.spindle, facts.outboard)];
  const [da, db] = [toDegrees(-dot(change, facts.ahead)), toDegrees(dot(change, facts.outboard))];
  const value = (b * da - a * db) / (a * a + b * b);
  const written = `(${num(b, FINE)} · ${num(da, 8)} − ${num(a, FINE)} · ${num(db, 8)}) / (${num(a, FINE)}² + ${num(b, FINE)}²)`;
  return { value, step: step(`steer ${side} per mm of rack`, written, value, 7, '°/mm') };
};

const steeringRatio: Numbers = (shown) => {
  const perTurn = axleOf(shown)?.mechanism.steering?.perTurn ?? null;
  if (perTurn === null) return null;
  const steer = turned(shown);
  if (steer) {
    const mean = (steer.left.turned + steer.right.turned) / 2;
    return formula(`|360 · ${num(shown.row.rack, 4)} / ${num(perTurn, 4)} / ${num(mean, 7)}|`, {
      steps: [
        steer.left.step,
        steer.right.step,
        step('mean δ', `(${num(steer.left.turned, FINE)} + ${num(steer.right.turned, FINE)}) / 2`, mean, FINE, '°'),
      ],
    });
  }
  const [left, right] = [factsOf(shown, 'left'), factsOf(shown, 'right')];
  if (!left || !right || shown.row.rack !== 0) return null;
  const [l, r] = [perRack(left, 'left'), perRack(right, 'right')];
  return formula(`|360 / ${num(perTurn, 4)} / ((${num(l.value, 7)} − ${num(r.value, 7)}) / 2)|`, {
    from: 'rack centred: the rates from the twist per mm of rack',
    steps: [l.step, r.step],
  });
};

/** Of a steered axle. */
export const STEERING_NUMBERS: Readonly<Record<string, Numbers>> = { ackermann, turningCircle, steeringRatio };
