import { toRadians, type Vector } from '../../../geometry/index';
import { standingRow } from '../../compute/standing';
import { axleOf, factsOf, readingIn, type CornerFacts, type Shown } from './cornerFacts';
import { axleMasses } from './masses';
import { cross, dot, less, mirror, plus, size, times } from './vectors';
import { contactRate } from './travelNumbers';
import {
  direction,
  FINE,
  formula,
  FROM_TWIST,
  num,
  point,
  POINT,
  RATE,
  step,
  vec,
  type Step,
  type WrittenFormula,
} from './writing';

type Numbers = (shown: Shown) => WrittenFormula | null;

const bothCorners = (shown: Shown) => {
  const [left, right] = [factsOf(shown, 'left'), factsOf(shown, 'right')];
  return left && right && { left, right };
};

/** Height and side of each contact centre in the plane of Ŷ and n, from the middle of the two, and their velocities there. */
const flat = ({ left, right }: { readonly left: CornerFacts; readonly right: CornerFacts }) => {
  const { outboard, normal } = left;
  const [cl, cr] = [left.contact, mirror(right.contact)];
  const [vl, vr] = [left.contactVelocity, mirror(right.contactVelocity)];
  return {
    dy: dot(cl, outboard) - dot(cr, outboard),
    dz: dot(cl, normal) - dot(cr, normal),
    vl: [dot(vl, outboard), dot(vl, normal)] as const,
    vr: [dot(vr, outboard), dot(vr, normal)] as const,
  };
};

const NOTHING = 1e-9;

/** The crossing of the two lines, or on a symmetrical pose half track · v_y / v_z. */
const rollCentreHeight: Numbers = (shown) => {
  const corners = bothCorners(shown);
  if (!corners || !shown.row.placed.rollCentre) return null;
  const { dy, dz, vl, vr } = flat(corners);
  const isEven = Math.abs(dz) < NOTHING && Math.abs(vl[0] + vr[0]) < NOTHING && Math.abs(vl[1] - vr[1]) < NOTHING;
  if (isEven)
    return formula(`${num(dy, POINT)} / 2 · ${num(vl[0], RATE)} / ${num(vl[1], RATE)}`, {
      from: 'left and right alike: half the track · v_y / v_z',
    });
  const a = (dy * vl[0] + dz * vl[1]) / 2;
  const b = -(dy * vr[0] + dz * vr[1]) / 2;
  const determinant = vl[0] * vr[1] - vr[0] * vl[1];
  const [y, z] = [(a * vr[1] - b * vl[1]) / determinant, (vl[0] * b - vr[0] * a) / determinant];
  const gap = `${num(dy, 6)} · ${num(vl[0], RATE)} + ${num(dz, 6)} · ${num(vl[1], RATE)}`;
  const otherGap = `${num(dy, 6)} · ${num(vr[0], RATE)} + ${num(dz, 6)} · ${num(vr[1], RATE)}`;
  const [cl, cr] = [corners.left.contact, mirror(corners.right.contact)];
  const apart = `(${vec(cl, FINE)} − ${vec(cr, FINE)})`;
  const written = [
    step('dy', `${apart} · ${vec(corners.left.outboard, RATE)}`, dy, POINT, 'mm'),
    step('dz', `${apart} · ${vec(corners.left.normal, RATE)}`, dz, POINT, 'mm'),
    step('a', `(${gap}) / 2`, a, 9),
    step('b', `−(${otherGap}) / 2`, b, 9),
    step('d', `${num(vl[0], RATE)} · ${num(vr[1], RATE)} − ${num(vr[0], RATE)} · ${num(vl[1], RATE)}`, determinant, 12),
    step(
      'y',
      `(${num(a, 9)} · ${num(vr[1], RATE)} − ${num(b, 9)} · ${num(vl[1], RATE)}) / ${num(determinant, RATE)}`,
      y,
      4,
      'mm',
    ),
    step(
      'z',
      `(${num(vl[0], RATE)} · ${num(b, 9)} − ${num(vr[0], RATE)} · ${num(a, 9)}) / ${num(determinant, RATE)}`,
      z,
      4,
      'mm',
    ),
  ];
  return formula(`(${num(z, 4)} · ${num(dy, 6)} − ${num(y, 4)} · ${num(dz, 6)}) / √(${num(dy, 6)}² + ${num(dz, 6)}²)`, {
    from: 'lines square to v, one through each contact centre, the left one dy, dz from the right one; they cross at y, z from the middle of the two',
    steps: written,
  });
};

/** dn/dρ, pitch held. */
const normalPerRoll = (normal: Vector): Vector => [0, normal[2], -normal[1]];

/** Travel of a wheel that rolls with its contact centre on the ground, per rad of roll [mm]. */
const rollTravel = (shown: Shown, facts: CornerFacts, bend: Vector, side: 'left' | 'right') => {
  const at = shown.row.placed.ground.point;
  const from = side === 'left' ? at : mirror(at);
  const value = -dot(less(facts.contact, from), bend) / facts.rise;
  const expression = `−((${point(facts.contact)} − ${point(from)}) · ${direction(bend)}) / ${num(facts.rise, RATE)}`;
  return { value, step: step(`travel ${side} per rad of roll`, expression, value, 4, 'mm') };
};

const bendOf = (normal: Vector, side: 'left' | 'right'): Vector => {
  const bend = normalPerRoll(normal);
  return side === 'left' ? bend : mirror(bend);
};

/** d camber / d roll of one wheel, in its left-hand frame. */
const camberPerRoll = (shown: Shown, facts: CornerFacts, side: 'left' | 'right') => {
  const bend = bendOf(shown.row.placed.ground.normal, side);
  const gain = readingIn(shown.row, side, 'camberGain') ?? 0;
  const travel = rollTravel(shown, facts, bend, side);
  const inRadians = toRadians(gain);
  const camber = readingIn(shown.row, side, 'camber') ?? 0;
  const value = inRadians * travel.value - dot(facts.spindle, bend) / Math.cos(toRadians(camber));
  const expression =
    `${num(inRadians, 11)} · ${num(travel.value, 4)} − ` +
    `(${direction(facts.spindle)} · ${direction(bend)}) / cos(${num(camber, 4)})`;
  return { value, steps: [travel.step, step(`camber ${side} per roll`, expression, value, 6, '°/°')] };
};

const camberCompensation: Numbers = (shown) => {
  const corners = bothCorners(shown);
  if (!corners) return null;
  const [left, right] = [camberPerRoll(shown, corners.left, 'left'), camberPerRoll(shown, corners.right, 'right')];
  const from = 'camber gain in rad/mm';
  const { rollDeg } = shown.position;
  if (rollDeg > 0)
    return formula(`1 − ${num(right.value, 6)}`, { from: `${from}; the right wheel is the outer one`, steps: right.steps });
  if (rollDeg < 0)
    return formula(`1 + ${num(left.value, 6)}`, { from: `${from}; the left wheel is the outer one`, steps: left.steps });
  return formula(`((1 + ${num(left.value, 6)}) + (1 − ${num(right.value, 6)})) / 2`, {
    from: `${from}; the mean of both`,
    steps: [...left.steps, ...right.steps],
  });
};

/** How X̂ and Ŷ turn with the ground, per rad of roll. */
const frameTurn = ({ normal: n, ahead }: CornerFacts, bend: Vector) => {
  const bent = times(plus(times(bend, n[0]), times(n, bend[0])), -1);
  const turned = times(less(bent, times(ahead, dot(ahead, bent))), 1 / Math.sqrt(1 - n[0] * n[0]));
  return { ahead: turned, outboard: plus(cross(bend, ahead), cross(n, turned)) };
};

/** d steer / d roll of one wheel, + outboard. */
const steerPerRoll = (shown: Shown, facts: CornerFacts, side: 'left' | 'right') => {
  const bend = bendOf(shown.row.placed.ground.normal, side);
  const travel = rollTravel(shown, facts, bend, side);
  const gain = toRadians(readingIn(shown.row, side, 'bumpSteer') ?? 0);
  const turned = frameTurn(facts, bend);
  const [a, b] = [-dot(facts.spindle, facts.ahead), dot(facts.spindle, facts.outboard)];
  const [da, db] = [-dot(facts.spindle, turned.ahead), dot(facts.spindle, turned.outboard)];
  const value = -gain * travel.value + (b * da - a * db) / (a * a + b * b);
  const expression =
    `−(${num(gain, 11)} · ${num(travel.value, 4)}) + ` +
    `(${num(b, FINE)} · ${num(da, 8)} − ${num(a, FINE)} · ${num(db, 8)}) / (${num(a, FINE)}² + ${num(b, FINE)}²)`;
  return { value, steps: [travel.step, step(`steer ${side} per roll`, expression, value, 7, '°/°')] };
};

const rollSteer: Numbers = (shown) => {
  const corners = bothCorners(shown);
  if (!corners) return null;
  const [left, right] = [steerPerRoll(shown, corners.left, 'left'), steerPerRoll(shown, corners.right, 'right')];
  return formula(`(${num(left.value, 7)} − ${num(right.value, 7)}) / 2`, {
    from: 'bump steer in rad/mm, each wheel + outboard',
    steps: [...left.steps, ...right.steps],
  });
};

interface Anti {
  readonly slope: 'longitudinalSlopeContact' | 'longitudinalSlopeWheelCentre';
  readonly share: 'brakeFrontShare' | 'driveFrontShare';
}

const anti =
  ({ slope, share: name }: Anti): Numbers =>
  (shown) => {
    const { body, wheelbase } = shown.row.car.mechanism;
    const front = body[name];
    const [left, right] = [readingIn(shown.row, 'left', slope), readingIn(shown.row, 'right', slope)];
    const height = body.centreOfGravityHeight;
    if (front === null || height === null || wheelbase === null || left === null || right === null) return null;
    const isFront = shown.axleName === 'front';
    const share = isFront ? num(front, 4) : `(1 − ${num(front, 4)})`;
    return formula(
      `${isFront ? '' : '−'}(${num(left, FINE)} + ${num(right, FINE)}) / 2 · ${share} · ${num(wheelbase, POINT)} / ${num(height, POINT)} · 100`,
    );
  };

const springRollStiffness: Numbers = (shown) => {
  const [left, right] = [contactRate(shown, 'left'), contactRate(shown, 'right')];
  const [yl, yr] = [readingIn(shown.row, 'left', 'halfTrack'), readingIn(shown.row, 'right', 'halfTrack')];
  if (!left || !right || yl === null || yr === null) return null;
  return formula(`(${num(left.value, 5)} · ${num(yl, POINT)}² + ${num(right.value, 5)} · ${num(yr, POINT)}²) / 1000 · π / 180`, {
    from: FROM_TWIST,
    steps: [left.step, right.step],
  });
};

/** Rate of the bar at one arm's end, the other held [N/mm]. */
const barRate = (shown: Shown, side: 'left' | 'right'): number | null => {
  const axle = axleOf(shown);
  const bar = axle?.mechanism.bar;
  const arm = axle?.[side].parts.bar;
  if (!axle || !bar || !arm) return null;
  const rate = axle.setup?.barRate ?? bar.rate;
  const chosen = axle.setup?.barHole;
  const name = typeof chosen === 'object' ? chosen[side] : chosen;
  const hole = bar.holes.find((one) => one.name === name);
  if (!hole) return rate;
  if (hole.rate !== null && axle.setup?.barRate === undefined) return hole.rate;
  if (rate === null) return null;
  const reach = less(bar.armEnd, bar.pivot);
  const drawn = size(less(reach, times(bar.axis, dot(reach, bar.axis))));
  return rate * (drawn / arm.radius) * (drawn / arm.radius);
};

const barRollStiffness: Numbers = (shown) => {
  const corners = bothCorners(shown);
  const [left, right] = [barRate(shown, 'left'), barRate(shown, 'right')];
  if (!corners || left === null || right === null) return null;
  const reach = (side: 'left' | 'right'): string | null => {
    const [ratio, half] = [readingIn(shown.row, side, 'barRatio'), readingIn(shown.row, side, 'halfTrack')];
    return ratio === null || half === null ? null : `${num(ratio, 7)} · ${num(half, POINT)} / ${num(corners[side].rise, 8)}`;
  };
  const [l, r] = [reach('left'), reach('right')];
  if (l === null || r === null) return null;
  const rate =
    left === right ? num(left, 5) : left === 0 || right === 0 ? '0' : `(2 / (1 / ${num(left, 5)} + 1 / ${num(right, 5)}))`;
  return formula(`${rate} · (${l} + ${r})² / 1000 · π / 180`);
};

const onTyre = (rate: number, tyre: number | null): { readonly value: number; readonly written: string } =>
  tyre === null
    ? { value: rate, written: num(rate, 5) }
    : {
        value: (rate * tyre) / (rate + tyre),
        written: `${num(rate, 5)} · ${num(tyre, POINT)} / (${num(rate, 5)} + ${num(tyre, POINT)})`,
      };

const rideFrequency: Numbers = (shown) => {
  const axle = axleOf(shown);
  const masses = axleMasses(shown.row.car.mechanism, shown.axleName);
  const [left, right] = [contactRate(shown, 'left'), contactRate(shown, 'right')];
  if (!axle || !masses || !left || !right) return null;
  const [l, r] = [onTyre(left.value, axle.left.wheel.tyreRate), onTyre(right.value, axle.right.wheel.tyreRate)];
  return formula(`√(1000 · (${l.written} + ${r.written}) / ${num(masses.sprung, 4)}) / (2 · π)`, {
    from: FROM_TWIST,
    steps: [left.step, right.step, ...masses.steps],
  });
};

const sum =
  (a: readonly ['left' | 'both', string], b: readonly ['right' | 'both', string], decimals: number): Numbers =>
  ({ row }) => {
    const [one, two] = [readingIn(row, ...a), readingIn(row, ...b)];
    return one === null || two === null ? null : formula(`${num(one, decimals)} + ${num(two, decimals)}`);
  };

const acrossTrack = ({ row }: Shown): string | null => {
  const track = readingIn(row, 'both', 'track');
  return track === null ? null : num(track, POINT);
};

/** Standard gravity [m/s²] (3rd CGPM, 1901). */
const G = '9.80665';

/** Mean height of the wheel centres over the ground [mm]. */
export const wheelHeight = (shown: Pick<Shown, 'row'>): Step & { readonly number: number } => {
  const { left, right, ground } = shown.row.placed;
  const over = (at: Vector): number => dot(less(at, ground.point), ground.normal);
  const value = (over(left.wheelCentre) + over(right.wheelCentre)) / 2;
  const written = [left, right].map(
    ({ wheelCentre }) => `(${point(wheelCentre)} − ${point(ground.point)}) · ${direction(ground.normal)}`,
  );
  return { ...step('height of the wheel centres', `(${written.join(' + ')}) / 2`, value, 4, 'mm'), number: value };
};

const transfer =
  (write: (shown: Shown, track: string) => WrittenFormula | null): Numbers =>
  (shown) => {
    const track = acrossTrack(shown);
    return track === null ? null : write(shown, track);
  };

/** Of the axle. */
export const AXLE_NUMBERS: Readonly<Record<string, Numbers>> = {
  rollCentreHeight,
  rollCentreOffset: (shown) => {
    const [facts, centre] = [factsOf(shown, 'left'), shown.row.placed.rollCentre];
    return facts && centre
      ? formula(`(${point(centre)} − ${point(shown.row.placed.ground.point)}) · ${direction(facts.outboard)}`)
      : null;
  },
  track: (shown) => {
    const facts = factsOf(shown, 'left');
    const { left, right } = shown.row.placed;
    return facts && formula(`(${point(left.contactCentre)} − ${point(right.contactCentre)}) · ${direction(facts.outboard)}`);
  },
  trackChange: (shown) => {
    const standing = standingRow({ document: shown.row.car.mechanism.document, setup: shown.setup }, shown.axleName);
    const [now, then] = [readingIn(shown.row, 'both', 'track'), standing && readingIn(standing, 'both', 'track')];
    return now === null || then === null ? null : formula(`${num(now, POINT)} − ${num(then, POINT)}`);
  },
  totalToe: sum(['left', 'toe'], ['right', 'toe'], 4),
  camberCompensation,
  rollSteer,
  antiDive: anti({ slope: 'longitudinalSlopeContact', share: 'brakeFrontShare' }),
  antiLiftBraking: anti({ slope: 'longitudinalSlopeContact', share: 'brakeFrontShare' }),
  antiLiftDrive: anti({ slope: 'longitudinalSlopeWheelCentre', share: 'driveFrontShare' }),
  antiSquat: anti({ slope: 'longitudinalSlopeWheelCentre', share: 'driveFrontShare' }),
  springRollStiffness,
  barRollStiffness,
  rollStiffness: ({ row }) => {
    const [springs, bar] = [readingIn(row, 'both', 'springRollStiffness'), readingIn(row, 'both', 'barRollStiffness')];
    if (springs === null) return null;
    return formula(bar === null ? num(springs, 3) : `${num(springs, 3)} + ${num(bar, 3)}`);
  },
  rideFrequency,
  loadTransferGeometric: transfer((shown, track) => {
    const masses = axleMasses(shown.row.car.mechanism, shown.axleName);
    const height = readingIn(shown.row, 'both', 'rollCentreHeight');
    if (!masses || height === null) return null;
    return formula(`${num(masses.sprung, 4)} · ${G} · ${num(height, 4)} / ${track}`, { steps: masses.steps });
  }),
  loadTransferElastic: transfer(({ row }, track) => {
    const [stiffness, gradient] = [readingIn(row, 'both', 'rollStiffness'), readingIn(row, 'wholeCar', 'rollGradient')];
    if (stiffness === null || gradient === null) return null;
    return formula(`1000 · ${num(stiffness, 4)} · ${num(gradient, 7)} / ${track}`, {
      from: 'roll stiffness · roll per g / track',
    });
  }),
  loadTransferUnsprung: transfer((shown, track) => {
    const masses = axleMasses(shown.row.car.mechanism, shown.axleName);
    const height = wheelHeight(shown);
    return masses && formula(`${num(masses.unsprung, 4)} · ${G} · ${num(height.number, 4)} / ${track}`, { steps: [height] });
  }),
};
