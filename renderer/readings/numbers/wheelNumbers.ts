import { toDegrees, type Vector } from '../../../geometry/index';
import { axleOf, cornerAt, factsOf, type CornerFacts, type Shown } from './cornerFacts';
import { cross, dot, less, plus, times, unit } from './vectors';
import { direction, FINE, formula, FROM_TWIST, num, point, step, type WrittenFormula } from './writing';

type Numbers = (shown: Shown) => WrittenFormula | null;

const withLeft =
  (write: (facts: CornerFacts, shown: Shown) => WrittenFormula | null): Numbers =>
  (shown) => {
    const facts = factsOf(shown, 'left');
    return facts && write(facts, shown);
  };

/** The contact centre where the setup stands, straight ahead. */
const standingContact = (shown: Shown): Vector | null => {
  const axle = axleOf(shown);
  if (!axle) return null;
  const { pitch } = shown.row.car;
  const standing = cornerAt(axle, 'left', axle.standing.left, 0, [-Math.sin(pitch), 0, Math.cos(pitch)]);
  return standing && standing.contact;
};

const alongAxis = (
  { row }: Shown,
  { normal, centre, contact, heading, across }: CornerFacts,
  at: 'ground' | 'centre',
  way: 'trail' | 'scrub',
): WrittenFormula | null => {
  const axis = row.placed.left.steeringAxis;
  if (!axis) return null;
  const through = at === 'ground' ? contact : centre;
  const along = dot(less(through, axis.point), normal) / dot(axis.direction, normal);
  const meets = plus(axis.point, times(axis.direction, along));
  const [to, from] = way === 'trail' ? [meets, through] : [through, meets];
  const over = way === 'trail' ? heading : across;
  return formula(`(${point(to)} − ${point(from)}) · ${direction(over)}`);
};

const axisAngle = ({ row }: Shown, over: Vector, normal: Vector): WrittenFormula | null => {
  const k = row.placed.left.steeringAxis?.direction;
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
  const { placed } = shown.row;
  if (!axle) return null;
  let rack = 0;
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    const facts = cornerAt(axle, 'left', placed.travel.left, rack, placed.ground.normal);
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

const PER_TEN = 10;

/** Of the left-hand wheel: how it stands, its steering axis, and how both change. */
export const WHEEL_NUMBERS: Readonly<Record<string, Numbers>> = {
  camber: withLeft(({ spindle, normal }) => formula(`asin(−(${direction(spindle)} · ${direction(normal)}))`)),
  camberToBody: withLeft(({ spindle }) => formula(`asin(−(${direction(spindle)} · (0; 0; 1)))`)),
  toe: withLeft(({ heading, ahead, outboard }) =>
    formula(`−atan2(${direction(heading)} · ${direction(outboard)}, ${direction(heading)} · ${direction(ahead)})`),
  ),
  steerAngle: withLeft(({ heading, ahead, outboard }) =>
    formula(`atan2(${direction(heading)} · ${direction(outboard)}, ${direction(heading)} · ${direction(ahead)})`),
  ),
  wheelCentre: withLeft(({ centre }) => formula(point(centre), { from: 'where the links hold it' })),
  contactCentre: withLeft(({ centre, normal, spindle, radius }) =>
    formula(`${point(centre)} − ${num(radius, 3)} · ${direction(unit(less(normal, times(spindle, dot(normal, spindle)))))}`),
  ),
  halfTrack: withLeft(({ contact, outboard }, { row }) =>
    formula(`(${point(contact)} − ${point(row.placed.ground.point)}) · ${direction(outboard)}`),
  ),
  wheelbaseChange: withLeft(({ contact, ahead }, shown) => {
    const standing = standingContact(shown);
    const sign = shown.axleName === 'front' ? '' : '−';
    return standing && formula(`${sign}((${point(contact)} − ${point(standing)}) · ${direction(ahead)})`);
  }),
  bodyHeight: withLeft(({ contact, normal }, shown) => {
    const at = axleOf(shown)?.left.mechanism.heightAt;
    return at ? formula(`(${point(at)} − ${point(contact)}) · ${direction(normal)}`) : null;
  }),
  caster: withLeft(({ ahead, normal }, shown) => axisAngle(shown, ahead, normal)),
  kingpinInclination: withLeft(({ outboard, normal }, shown) => axisAngle(shown, outboard, normal)),
  casterBySwing: (shown) => {
    const [out, into] = [camberAtSteer(shown, SWING), camberAtSteer(shown, -SWING)];
    if (out === null || into === null) return null;
    return formula(`(${num(out, 5)} − ${num(into, 5)}) / (2 · sin(20))`, { from: 'camber turned out and in' });
  },
  mechanicalTrail: withLeft((facts, shown) => alongAxis(shown, facts, 'ground', 'trail')),
  scrubRadius: withLeft((facts, shown) => alongAxis(shown, facts, 'ground', 'scrub')),
  trailAtWheelCentre: withLeft((facts, shown) => alongAxis(shown, facts, 'centre', 'trail')),
  scrubAtWheelCentre: withLeft((facts, shown) => alongAxis(shown, facts, 'centre', 'scrub')),
  camberGain: withLeft(({ turn, spindle, normal }) => {
    const perTen = times(turn, toDegrees(PER_TEN));
    const lean = `${direction(spindle)} · ${direction(normal)}`;
    return formula(`−((${direction(perTen)} × ${direction(spindle)}) · ${direction(normal)}) / √(1 − (${lean})²)`, {
      from: 'rate from the twist: ω in °/10 mm',
    });
  }),
  bumpSteer: withLeft(({ turn, spindle, ahead, outboard }) => {
    const change = cross(times(turn, toDegrees(PER_TEN)), spindle);
    const [along, out] = [dot(spindle, ahead), dot(spindle, outboard)];
    const [changeAlong, changeOut] = [dot(change, ahead), dot(change, outboard)];
    return formula(
      `(${num(out, FINE)} · ${num(changeAlong, FINE)} − ${num(along, FINE)} · ${num(changeOut, FINE)}) / (${num(out, FINE)}² + ${num(along, FINE)}²)`,
      {
        from: 'rate from the twist: s′ = ω × s in °/10 mm, tan toe = s·X̂ / s·Ŷ',
        steps: [
          step(
            's′·X̂',
            `(${direction(times(turn, toDegrees(PER_TEN)))} × ${direction(spindle)}) · ${direction(ahead)}`,
            changeAlong,
            FINE,
          ),
        ],
      },
    );
  }),
  longitudinalSlopeContact: withLeft(({ contactVelocity: v, ahead, normal }) => slope(v, ahead, normal, '')),
  longitudinalSlopeWheelCentre: withLeft(({ centreVelocity: v, ahead, normal }) => slope(v, ahead, normal, '')),
  lateralSlopeContact: withLeft(({ contactVelocity: v, outboard, normal }) => slope(v, outboard, normal, '')),
  jackingPerLateral: withLeft(({ contactVelocity: v, outboard, normal }) => slope(v, outboard, normal, '−')),
  jackingPerLongitudinal: withLeft(({ contactVelocity: v, ahead, normal }) => slope(v, ahead, normal, '−')),
};

const slope = (velocity: Vector, over: Vector, normal: Vector, sign: '' | '−'): WrittenFormula =>
  formula(`${sign}(${direction(velocity)} · ${direction(over)}) / (${direction(velocity)} · ${direction(normal)})`, {
    from: FROM_TWIST,
  });
