import { toDegrees, type SideName, type Vector } from '../../../geometry/index';
import { axleOf, cornerAt, wheelFacts, type CornerFacts, type Shown } from './cornerFacts';
import { cross, dot, less, mirror, plus, times, unit } from './vectors';
import { FINE, formula, FROM_TWIST, num, POINT, type WrittenFormula } from './writing';

type Numbers = (shown: Shown) => WrittenFormula | null;

const ofWheel =
  (write: (facts: CornerFacts, shown: Shown) => WrittenFormula | null): Numbers =>
  (shown) => {
    const facts = wheelFacts(shown);
    return facts && write(facts, shown);
  };

/** A point of the left-hand frame of a corner, in the car's. */
const outOf = (side: SideName, at: Vector): Vector => (side === 'left' ? at : mirror(at));

/** The contact centre where the setup stands, straight ahead. */
const standingContact = (shown: Shown): Vector | null => {
  const axle = axleOf(shown);
  if (!axle) return null;
  const { side } = shown;
  const { pitch } = shown.row.car;
  const standing = cornerAt(axle, side, axle.standing[side], 0, [-Math.sin(pitch), 0, Math.cos(pitch)]);
  return standing && outOf(side, standing.contact);
};

const alongAxis = (
  { row, side, writer: { point, direction } }: Shown,
  { normal, centre, contact, heading, across }: CornerFacts,
  at: 'ground' | 'centre',
  way: 'trail' | 'scrub',
): WrittenFormula | null => {
  const axis = row.placed[side].steeringAxis;
  if (!axis) return null;
  const through = at === 'ground' ? contact : centre;
  const along = dot(less(through, axis.point), normal) / dot(axis.direction, normal);
  const meets = plus(axis.point, times(axis.direction, along));
  const [to, from] = way === 'trail' ? [meets, through] : [through, meets];
  const over = way === 'trail' ? heading : across;
  return formula(`(${point(to)} − ${point(from)}) · ${direction(over)}`);
};

const axisAngle = ({ row, side, writer: { direction } }: Shown, over: Vector, normal: Vector): WrittenFormula | null => {
  const k = row.placed[side].steeringAxis?.direction;
  return k ? formula(`atan2(−(${direction(k)} · ${direction(over)}), ${direction(k)} · ${direction(normal)})`) : null;
};

/** Steer angle of a caster gauge's swing [degrees], and how closely the rack is searched for it. */
const SWING = 20;
const NEAR = 1e-7;
const MOST_TURNS = 30;

const steerOf = ({ spindle, ahead, outboard }: CornerFacts): number =>
  toDegrees(Math.atan2(-dot(spindle, ahead), dot(spindle, outboard)));

/** Camber with the wheel turned to a steer angle, travel held [degrees]. */
const camberAtSteer = (shown: Shown, steer: number): number | null => {
  const axle = axleOf(shown);
  const { side } = shown;
  const { placed } = shown.row;
  if (!axle) return null;
  let rack = 0;
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    const facts = cornerAt(axle, side, placed.travel[side], rack, placed.ground.normal);
    if (!facts) return null;
    const miss = steerOf(facts) - steer;
    if (Math.abs(miss) < NEAR) return toDegrees(Math.asin(-dot(facts.spindle, facts.normal)));
    const change = cross(facts.rackTurn, facts.spindle);
    const [a, b] = [-dot(facts.spindle, facts.ahead), dot(facts.spindle, facts.outboard)];
    const slope = toDegrees((b * -dot(change, facts.ahead) - a * dot(change, facts.outboard)) / (a * a + b * b));
    rack -= miss / slope;
  }
  return null;
};

/** Of one wheel: how it stands, its steering axis, and how both change. */
export const WHEEL_NUMBERS: Readonly<Record<string, Numbers>> = {
  camber: ofWheel(({ spindle, normal }, { writer: { direction } }) =>
    formula(`asin(−(${direction(spindle)} · ${direction(normal)}))`),
  ),
  camberToBody: ofWheel(({ spindle }, { writer: { direction } }) => formula(`asin(−(${direction(spindle)} · (0; 0; 1)))`)),
  toe: ofWheel(({ heading, ahead, outboard }, { writer: { direction, toe } }) =>
    formula(toe(`−atan2(${direction(heading)} · ${direction(outboard)}, ${direction(heading)} · ${direction(ahead)})`)),
  ),
  steerAngle: ofWheel(({ heading, ahead, outboard }, { side, writer: { direction } }) =>
    formula(
      `atan2(${direction(heading)} · ${direction(side === 'left' ? outboard : times(outboard, -1))}, ${direction(heading)} · ${direction(ahead)})`,
    ),
  ),
  wheelCentre: ofWheel(({ centre }, { writer: { point } }) => formula(point(centre), { from: 'where the links hold it' })),
  contactCentre: ofWheel(({ centre, normal, spindle, radius }, { writer: { point, direction, write } }) => {
    const down = unit(less(normal, times(spindle, dot(normal, spindle))));
    return formula(`${point(centre)} − ${write(radius, 'length', POINT)} · ${direction(down)}`);
  }),
  halfTrack: ofWheel(({ contact, outboard }, { row, writer: { point, direction } }) =>
    formula(`(${point(contact)} − ${point(row.placed.ground.point)}) · ${direction(outboard)}`),
  ),
  wheelbaseChange: ofWheel(({ contact, ahead }, shown) => {
    const standing = standingContact(shown);
    const { point, direction } = shown.writer;
    const sign = shown.axleName === 'front' ? '' : '−';
    return standing && formula(`${sign}((${point(contact)} − ${point(standing)}) · ${direction(ahead)})`);
  }),
  bodyHeight: ofWheel(({ contact, normal }, shown) => {
    const { side } = shown;
    const { point, direction } = shown.writer;
    const at = axleOf(shown)?.[side].mechanism.heightAt;
    return at ? formula(`(${point(outOf(side, at))} − ${point(contact)}) · ${direction(normal)}`) : null;
  }),
  caster: ofWheel(({ ahead, normal }, shown) => axisAngle(shown, ahead, normal)),
  kingpinInclination: ofWheel(({ outboard, normal }, shown) => axisAngle(shown, outboard, normal)),
  casterBySwing: (shown) => {
    const [out, into] = [camberAtSteer(shown, SWING), camberAtSteer(shown, -SWING)];
    if (out === null || into === null) return null;
    const { write } = shown.writer;
    return formula(`(${write(out, 'angle', 5)} − ${write(into, 'angle', 5)}) / (2 · sin(20))`, {
      from: 'camber turned out and in by 20°',
    });
  },
  mechanicalTrail: ofWheel((facts, shown) => alongAxis(shown, facts, 'ground', 'trail')),
  scrubRadius: ofWheel((facts, shown) => alongAxis(shown, facts, 'ground', 'scrub')),
  trailAtWheelCentre: ofWheel((facts, shown) => alongAxis(shown, facts, 'centre', 'trail')),
  scrubAtWheelCentre: ofWheel((facts, shown) => alongAxis(shown, facts, 'centre', 'scrub')),
  camberGain: ofWheel(({ turn, spindle, normal }, { writer: { direction, over } }) => {
    const turned = times(turn, toDegrees(over.factor));
    const lean = `${direction(spindle)} · ${direction(normal)}`;
    return formula(`−((${direction(turned)} × ${direction(spindle)}) · ${direction(normal)}) / √(1 − (${lean})²)`, {
      from: `rate from the twist: ω in ${over.unit}`,
    });
  }),
  bumpSteer: ofWheel(({ turn, spindle, ahead, outboard }, { writer: { direction, over, step } }) => {
    const turned = times(turn, toDegrees(over.factor));
    const change = cross(turned, spindle);
    const [along, out] = [dot(spindle, ahead), dot(spindle, outboard)];
    const [changeAlong, changeOut] = [dot(change, ahead), dot(change, outboard)];
    return formula(
      `(${num(out, FINE)} · ${num(changeAlong, FINE)} − ${num(along, FINE)} · ${num(changeOut, FINE)}) / (${num(out, FINE)}² + ${num(along, FINE)}²)`,
      {
        from: `rate from the twist: s′ = ω × s in ${over.unit}, tan toe = s·X̂ / s·Ŷ, Ŷ counted outboard`,
        steps: [step('s′·X̂', `(${direction(turned)} × ${direction(spindle)}) · ${direction(ahead)}`, changeAlong, 'plain', FINE)],
      },
    );
  }),
  longitudinalSlopeContact: ofWheel(({ contactVelocity: v, ahead, normal }, shown) => slope(shown, v, ahead, normal, '')),
  longitudinalSlopeWheelCentre: ofWheel(({ centreVelocity: v, ahead, normal }, shown) => slope(shown, v, ahead, normal, '')),
  lateralSlopeContact: ofWheel(({ contactVelocity: v, outboard, normal }, shown) => slope(shown, v, outboard, normal, '')),
  jackingPerLateral: ofWheel(({ contactVelocity: v, outboard, normal }, shown) => slope(shown, v, outboard, normal, '−')),
  jackingPerLongitudinal: ofWheel(({ contactVelocity: v, ahead, normal }, shown) => slope(shown, v, ahead, normal, '−')),
};

const slope = (
  { writer: { direction } }: Shown,
  velocity: Vector,
  over: Vector,
  normal: Vector,
  sign: '' | '−',
): WrittenFormula =>
  formula(`${sign}(${direction(velocity)} · ${direction(over)}) / (${direction(velocity)} · ${direction(normal)})`, {
    from: FROM_TWIST,
  });
