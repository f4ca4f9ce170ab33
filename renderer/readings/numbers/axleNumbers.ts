import { toRadians, type SideName, type Vector } from '../../../geometry/index';
import { standingRow } from '../../compute/standing';
import { axleOf, factsOf, readingIn, type CornerFacts, type Shown } from './cornerFacts';
import { axleMasses } from './masses';
import { cross, dot, less, mirror, plus, size, times } from './vectors';
import { contactRate } from './travelNumbers';
import type { UnitWriter } from './unitWriter';
import { FINE, formula, FROM_TWIST, num, POINT, RATE, vec, type Step, type WrittenFormula } from './writing';

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
  const { write, point, step } = shown.writer;
  const { dy, dz, vl, vr } = flat(corners);
  const isEven = Math.abs(dz) < NOTHING && Math.abs(vl[0] + vr[0]) < NOTHING && Math.abs(vl[1] - vr[1]) < NOTHING;
  if (isEven)
    return formula(`${write(dy, 'length', POINT)} / 2 · ${num(vl[0], RATE)} / ${num(vl[1], RATE)}`, {
      from: 'left and right alike: half the track · v_y / v_z',
    });
  const a = (dy * vl[0] + dz * vl[1]) / 2;
  const b = -(dy * vr[0] + dz * vr[1]) / 2;
  const determinant = vl[0] * vr[1] - vr[0] * vl[1];
  const [y, z] = [(a * vr[1] - b * vl[1]) / determinant, (vl[0] * b - vr[0] * a) / determinant];
  const length = (value: number, decimals = 6): string => write(value, 'length', decimals);
  const [dyText, dzText, aText, bText, yText, zText] = [
    length(dy),
    length(dz),
    length(a, 9),
    length(b, 9),
    length(y, 4),
    length(z, 4),
  ];
  const [cl, cr] = [corners.left.contact, mirror(corners.right.contact)];
  const apart = `(${point(cl, FINE)} − ${point(cr, FINE)})`;
  const rates = (along: Vector): string => vec(along, RATE);
  const steps = [
    step('dy', `${apart} · ${rates(corners.left.outboard)}`, dy, 'length', POINT),
    step('dz', `${apart} · ${rates(corners.left.normal)}`, dz, 'length', POINT),
    step('a', `(${dyText} · ${num(vl[0], RATE)} + ${dzText} · ${num(vl[1], RATE)}) / 2`, a, 'length', 9),
    step('b', `−(${dyText} · ${num(vr[0], RATE)} + ${dzText} · ${num(vr[1], RATE)}) / 2`, b, 'length', 9),
    step('d', `${num(vl[0], RATE)} · ${num(vr[1], RATE)} − ${num(vr[0], RATE)} · ${num(vl[1], RATE)}`, determinant, 'plain', 12),
    step('y', `(${aText} · ${num(vr[1], RATE)} − ${bText} · ${num(vl[1], RATE)}) / ${num(determinant, RATE)}`, y, 'length', 4),
    step('z', `(${num(vl[0], RATE)} · ${bText} − ${num(vr[0], RATE)} · ${aText}) / ${num(determinant, RATE)}`, z, 'length', 4),
  ];
  return formula(`(${zText} · ${dyText} − ${yText} · ${dzText}) / √(${dyText}² + ${dzText}²)`, {
    from: 'lines square to v, one through each contact centre, the left one dy, dz from the right one; they cross at y, z from the middle of the two',
    steps,
  });
};

/** dn/dρ, pitch held. */
const normalPerRoll = (normal: Vector): Vector => [0, normal[2], -normal[1]];

/** Travel of a wheel that rolls with its contact centre on the ground, per rad of roll [mm]. */
const rollTravel = (shown: Shown, facts: CornerFacts, bend: Vector, side: SideName) => {
  const { point, direction, step } = shown.writer;
  const at = shown.row.placed.ground.point;
  const from = side === 'left' ? at : mirror(at);
  const value = -dot(less(facts.contact, from), bend) / facts.rise;
  const expression = `−((${point(facts.contact)} − ${point(from)}) · ${direction(bend)}) / ${num(facts.rise, RATE)}`;
  return { value, step: step(`travel ${side} per rad of roll`, expression, value, 'length', 4) };
};

const bendOf = (normal: Vector, side: SideName): Vector => {
  const bend = normalPerRoll(normal);
  return side === 'left' ? bend : mirror(bend);
};

/** d camber / d roll of one wheel, in its left-hand frame. */
const camberPerRoll = (shown: Shown, facts: CornerFacts, side: SideName) => {
  const { write, direction, step } = shown.writer;
  const bend = bendOf(shown.row.placed.ground.normal, side);
  const gain = readingIn(shown.row, side, 'camberGain') ?? 0;
  const travel = rollTravel(shown, facts, bend, side);
  const inRadians = toRadians(gain);
  const camber = readingIn(shown.row, side, 'camber') ?? 0;
  const value = inRadians * travel.value - dot(facts.spindle, bend) / Math.cos(toRadians(camber));
  const expression =
    `${write(inRadians, 'turn', 11)} · ${write(travel.value, 'length', 4)} − ` +
    `(${direction(facts.spindle)} · ${direction(bend)}) / cos(${write(camber, 'angle', 4)})`;
  return { value, steps: [travel.step, step(`camber ${side} per roll`, expression, value, 'slope', 6)] };
};

const camberCompensation: Numbers = (shown) => {
  const corners = bothCorners(shown);
  if (!corners) return null;
  const [left, right] = [camberPerRoll(shown, corners.left, 'left'), camberPerRoll(shown, corners.right, 'right')];
  const from = `camber gain in rad/${shown.writer.lengthUnit}`;
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
const steerPerRoll = (shown: Shown, facts: CornerFacts, side: SideName) => {
  const { write, step } = shown.writer;
  const bend = bendOf(shown.row.placed.ground.normal, side);
  const travel = rollTravel(shown, facts, bend, side);
  const gain = toRadians(readingIn(shown.row, side, 'bumpSteer') ?? 0);
  const turned = frameTurn(facts, bend);
  const [a, b] = [-dot(facts.spindle, facts.ahead), dot(facts.spindle, facts.outboard)];
  const [da, db] = [-dot(facts.spindle, turned.ahead), dot(facts.spindle, turned.outboard)];
  const value = -gain * travel.value + (b * da - a * db) / (a * a + b * b);
  const expression =
    `−(${write(gain, 'turn', 11)} · ${write(travel.value, 'length', 4)}) + ` +
    `(${num(b, FINE)} · ${num(da, 8)} − ${num(a, FINE)} · ${num(db, 8)}) / (${num(a, FINE)}² + ${num(b, FINE)}²)`;
  return { value, steps: [travel.step, step(`steer ${side} per roll`, expression, value, 'slope', 7)] };
};

const rollSteer: Numbers = (shown) => {
  const corners = bothCorners(shown);
  if (!corners) return null;
  const [left, right] = [steerPerRoll(shown, corners.left, 'left'), steerPerRoll(shown, corners.right, 'right')];
  return formula(`(${num(left.value, 7)} − ${num(right.value, 7)}) / 2`, {
    from: `bump steer in rad/${shown.writer.lengthUnit}, each wheel + outboard`,
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
    const length = (value: number): string => shown.writer.write(value, 'length', POINT);
    const share = isFront ? num(front, 4) : `(1 − ${num(front, 4)})`;
    return formula(
      `${isFront ? '' : '−'}(${num(left, FINE)} + ${num(right, FINE)}) / 2 · ${share} · ${length(wheelbase)} / ${length(height)} · 100`,
    );
  };

const springRollStiffness: Numbers = (shown) => {
  const [left, right] = [contactRate(shown, 'left'), contactRate(shown, 'right')];
  const [yl, yr] = [readingIn(shown.row, 'left', 'halfTrack'), readingIn(shown.row, 'right', 'halfTrack')];
  if (!left || !right || yl === null || yr === null) return null;
  const { write, rateByArea } = shown.writer;
  const part = (rate: number, half: number): string => `${write(rate, 'rate', 5)} · ${write(half, 'length', POINT)}²`;
  return formula(`(${part(left.value, yl)} + ${part(right.value, yr)})${rateByArea} · π / 180`, {
    from: FROM_TWIST,
    steps: [left.step, right.step],
  });
};

/** Rate of the bar at one arm's end, the other held [N/mm]. */
const barRate = (shown: Shown, side: SideName): number | null => {
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
  const { write, rateByArea } = shown.writer;
  const rateText = (value: number): string => write(value, 'rate', 5);
  const reach = (side: SideName): string | null => {
    const [ratio, half] = [readingIn(shown.row, side, 'barRatio'), readingIn(shown.row, side, 'halfTrack')];
    return ratio === null || half === null
      ? null
      : `${num(ratio, 7)} · ${write(half, 'length', POINT)} / ${num(corners[side].rise, 8)}`;
  };
  const [l, r] = [reach('left'), reach('right')];
  if (l === null || r === null) return null;
  const rate =
    left === right ? rateText(left) : left === 0 || right === 0 ? '0' : `(2 / (1 / ${rateText(left)} + 1 / ${rateText(right)}))`;
  return formula(`${rate} · (${l} + ${r})²${rateByArea} · π / 180`);
};

const onTyre = ({ write }: UnitWriter, rate: number, tyre: number | null): string => {
  const own = write(rate, 'rate', 5);
  if (tyre === null) return own;
  const under = write(tyre, 'rate', POINT);
  return `${own} · ${under} / (${own} + ${under})`;
};

const rideFrequency: Numbers = (shown) => {
  const axle = axleOf(shown);
  const masses = axleMasses(shown.row.car.mechanism, shown.axleName, shown.writer);
  const [left, right] = [contactRate(shown, 'left'), contactRate(shown, 'right')];
  if (!axle || !masses || !left || !right) return null;
  const { writer } = shown;
  const l = onTyre(writer, left.value, axle.left.wheel.tyreRate);
  const r = onTyre(writer, right.value, axle.right.wheel.tyreRate);
  return formula(`√(${writer.perMetre}(${l} + ${r}) / ${num(masses.sprung, 4)}) / (2 · π)`, {
    from: FROM_TWIST,
    steps: [left.step, right.step, ...masses.steps],
  });
};

const totalToe: Numbers = ({ row, writer: { write, toe } }) => {
  const [left, right] = [readingIn(row, 'left', 'toe'), readingIn(row, 'right', 'toe')];
  return left === null || right === null ? null : formula(toe(`${write(left, 'angle', 4)} + ${write(right, 'angle', 4)}`));
};

const acrossTrack = ({ row, writer }: Shown): string | null => {
  const track = readingIn(row, 'both', 'track');
  return track === null ? null : writer.write(track, 'length', POINT);
};

/** Mean height of the wheel centres over the ground [mm]. */
export const wheelHeight = ({ row, writer }: Pick<Shown, 'row' | 'writer'>): Step & { readonly number: number } => {
  const { left, right, ground } = row.placed;
  const { point, direction, step } = writer;
  const over = (at: Vector): number => dot(less(at, ground.point), ground.normal);
  const value = (over(left.wheelCentre) + over(right.wheelCentre)) / 2;
  const written = [left, right].map(
    ({ wheelCentre }) => `(${point(wheelCentre)} − ${point(ground.point)}) · ${direction(ground.normal)}`,
  );
  return { ...step('height of the wheel centres', `(${written.join(' + ')}) / 2`, value, 'length', 4), number: value };
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
    const { point, direction } = shown.writer;
    return facts && centre
      ? formula(`(${point(centre)} − ${point(shown.row.placed.ground.point)}) · ${direction(facts.outboard)}`)
      : null;
  },
  track: (shown) => {
    const facts = factsOf(shown, 'left');
    const { left, right } = shown.row.placed;
    const { point, direction } = shown.writer;
    return facts && formula(`(${point(left.contactCentre)} − ${point(right.contactCentre)}) · ${direction(facts.outboard)}`);
  },
  trackChange: (shown) => {
    const standing = standingRow({ document: shown.row.car.mechanism.document, setup: shown.setup }, shown.axleName);
    const [now, then] = [readingIn(shown.row, 'both', 'track'), standing && readingIn(standing, 'both', 'track')];
    if (now === null || then === null) return null;
    const { write } = shown.writer;
    return formula(`${write(now, 'length', POINT)} − ${write(then, 'length', POINT)}`);
  },
  totalToe,
  camberCompensation,
  rollSteer,
  antiDive: anti({ slope: 'longitudinalSlopeContact', share: 'brakeFrontShare' }),
  antiLiftBraking: anti({ slope: 'longitudinalSlopeContact', share: 'brakeFrontShare' }),
  antiLiftDrive: anti({ slope: 'longitudinalSlopeWheelCentre', share: 'driveFrontShare' }),
  antiSquat: anti({ slope: 'longitudinalSlopeWheelCentre', share: 'driveFrontShare' }),
  springRollStiffness,
  barRollStiffness,
  rollStiffness: ({ row, writer: { write } }) => {
    const [springs, bar] = [readingIn(row, 'both', 'springRollStiffness'), readingIn(row, 'both', 'barRollStiffness')];
    if (springs === null) return null;
    return formula(bar === null ? write(springs, 'moment', 3) : `${write(springs, 'moment', 3)} + ${write(bar, 'moment', 3)}`);
  },
  rideFrequency,
  loadTransferGeometric: transfer((shown, track) => {
    const masses = axleMasses(shown.row.car.mechanism, shown.axleName, shown.writer);
    const height = readingIn(shown.row, 'both', 'rollCentreHeight');
    if (!masses || height === null) return null;
    return formula(`${num(masses.sprung, 4)}${shown.writer.weight} · ${shown.writer.write(height, 'length', 4)} / ${track}`, {
      steps: masses.steps,
    });
  }),
  loadTransferElastic: transfer(({ row, writer: { write, momentOverLength } }, track) => {
    const [stiffness, gradient] = [readingIn(row, 'both', 'rollStiffness'), readingIn(row, 'wholeCar', 'rollGradient')];
    if (stiffness === null || gradient === null) return null;
    return formula(`${momentOverLength}${write(stiffness, 'moment', 4)} · ${num(gradient, 7)} / ${track}`, {
      from: 'roll stiffness · roll per g / track',
    });
  }),
  loadTransferUnsprung: transfer((shown, track) => {
    const masses = axleMasses(shown.row.car.mechanism, shown.axleName, shown.writer);
    const height = wheelHeight(shown);
    const { write, weight } = shown.writer;
    return (
      masses &&
      formula(`${num(masses.unsprung, 4)}${weight} · ${write(height.number, 'length', 4)} / ${track}`, { steps: [height] })
    );
  }),
};
