import {
  placeAxle,
  readingsInContractUnits,
  readingsOfAxle,
  toDegrees,
  type PlacedCorner,
  type Vector,
} from '../../../geometry/index';
import { standingRow } from '../../compute/standing';
import { axleOf, factsOf, readingIn, type CornerFacts, type Shown } from './cornerFacts';
import { cross, dot, less, mirror, size, times } from './vectors';
import { formula, FROM_TWIST, num, POINT, RATE, step, vec, type WrittenFormula } from './writing';

type Numbers = (shown: Shown) => WrittenFormula | null;

/** A pose this much either side gives the change of a length on the way [mm]. */
const ASIDE = 0.5;
const LENGTH = 5;

/** Travel of the left-hand wheel from standing a little on, the other one held; springs and bars do not ask for the ground. */
const asideBy = (shown: Shown, by: number) => {
  const axle = axleOf(shown);
  const { placed, rack } = shown.row;
  if (!axle) return null;
  const travel = {
    left: placed.travel.left - axle.standing.left + by,
    right: placed.travel.right - axle.standing.right,
  };
  return { travel, rack };
};

const leftAside = (shown: Shown, by: number): PlacedCorner | null => {
  const position = asideBy(shown, by);
  const placed = position && placeAxle(shown.row.car, shown.axleName, position);
  return placed?.ok ? placed.value.left : null;
};

type SpanName = 'spring' | 'damper';

const spanLength = (corner: PlacedCorner, name: SpanName): number | null => {
  const span = corner[name];
  return span && size(less(span.upper, span.lower));
};

const spanRatio =
  (name: SpanName): Numbers =>
  (shown) => {
    const [low, high] = [leftAside(shown, -ASIDE), leftAside(shown, ASIDE)];
    const [long, short] = [low && spanLength(low, name), high && spanLength(high, name)];
    if (long === null || short === null) return null;
    return formula(`(${num(long, LENGTH)} − ${num(short, LENGTH)}) / 1`, {
      from: 'the rate from the twist, here as length 0.5 mm of travel lower less 0.5 mm higher',
    });
  };

const lengthNow = (shown: Shown, name: SpanName): number | null => spanLength(shown.row.placed.left, name);

/** Damper travels at which it is solid and fully open, as they are written from the file's numbers. */
const damperStops = (shown: Shown) => {
  const axle = axleOf(shown);
  const damper = axle?.mechanism.damper;
  const design = axle?.left.parts.damper?.designLength;
  if (!damper || design === undefined) return null;
  const open =
    damper.open !== null
      ? `(${num(design, POINT)} − ${num(damper.open, POINT)})`
      : damper.droopStopAt !== null
        ? `(−${num(damper.droopStopAt, POINT)})`
        : null;
  const solid =
    damper.closed !== null
      ? `(${num(design, POINT)} − ${num(damper.closed, POINT)})`
      : damper.stroke !== null && open !== null
        ? `(${num(damper.stroke, POINT)} + ${open})`
        : null;
  return { open, solid, touch: damper.bumpStopAt === null ? null : num(damper.bumpStopAt, POINT) };
};

const stopLeft =
  (which: 'touch' | 'solid' | 'open'): Numbers =>
  (shown) => {
    const travel = readingIn(shown.row, 'left', 'damperTravel');
    const stop = damperStops(shown)?.[which] ?? null;
    if (travel === null || stop === null) return null;
    return formula(which === 'open' ? `${num(travel, POINT)} − ${stop}` : `${stop} − ${num(travel, POINT)}`);
  };

/** Rate of the spring where it now is: of main spring and helper together until the helper is solid [N/mm]. */
interface SpringNow {
  readonly rate: number;
  readonly rateWritten: string;
  readonly force: string;
}

const springNow = (shown: Shown): SpringNow | null => {
  const axle = axleOf(shown);
  const { row } = shown;
  const spring = axle?.mechanism.spring;
  const travel = readingIn(row, 'left', 'springTravel');
  const force = readingIn(row, 'left', 'springForce');
  const rate = axle?.setup?.springRate ?? spring?.rate ?? null;
  if (!axle || !spring || travel === null || force === null || rate === null) return null;
  if (force === 0) return { rate: 0, rateWritten: '0', force: '0' };
  const plain = { rate, rateWritten: num(rate, POINT) };
  // Known by the weight alone, the force is counted from where the setup stands.
  if (spring.installed === null || spring.freeLength === null) {
    const standing = standingRow({ document: row.car.mechanism.document, setup: shown.setup }, shown.axleName);
    const [first, from] = standing
      ? [readingIn(standing, 'left', 'springForce'), readingIn(standing, 'left', 'springTravel')]
      : [null, null];
    if (first === null || from === null) return null;
    return { ...plain, force: `${num(first, 4)} + ${plain.rateWritten} · (${num(travel, 4)} − ${num(from, 4)})` };
  }
  const seat = axle.left.adjustment.springSeat;
  const length = `(${num(spring.installed, POINT)} − ${num(travel, 4)}${seat === 0 ? '' : ` − ${num(seat, 4)}`})`;
  const { helper, freeLength } = spring;
  if (!helper) return { ...plain, force: `${plain.rateWritten} · (${num(freeLength, POINT)} − ${length})` };
  const together = (rate * helper.rate) / (rate + helper.rate);
  const stroke = helper.freeLength - helper.solidLength;
  const squeeze = `(${num(freeLength, POINT)} + ${num(helper.freeLength, POINT)} − ${length})`;
  const squeezed = freeLength + helper.freeLength - (spring.installed - travel - seat);
  if (together * squeezed < helper.rate * stroke) {
    const rateWritten = `(${num(rate, POINT)} · ${num(helper.rate, POINT)} / (${num(rate, POINT)} + ${num(helper.rate, POINT)}))`;
    return { rate: together, rateWritten, force: `${rateWritten} · ${squeeze}` };
  }
  return { ...plain, force: `${plain.rateWritten} · (${squeeze} − ${num(stroke, POINT)})` };
};

/** Spring ratio of the left-hand wheel a little on. */
const ratioAside = (shown: Shown, by: number): number | null => {
  const position = asideBy(shown, by);
  const row = position && readingsOfAxle(shown.row.car, shown.axleName, position);
  if (!row?.ok) return null;
  const ratio = readingsInContractUnits(row.value.left, 'corner')['springRatio'];
  return typeof ratio === 'number' ? ratio : null;
};

/** Turn of a bar's arm about the bar from where it is drawn [degrees], in the left-hand frame. */
const armTurn = (shown: Shown, side: 'left' | 'right'): number | null => {
  const arm = axleOf(shown)?.[side].parts.bar;
  const now = shown.row.placed[side].bar?.armEnd;
  if (!arm || !now) return null;
  const { axis, pivot } = arm;
  const off = (end: Vector): Vector => {
    const reach = less(end, pivot);
    return less(reach, times(axis, dot(reach, axis)));
  };
  const [drawn, here] = [off(arm.armEnd), off(side === 'left' ? now : mirror(now))];
  return toDegrees(Math.atan2(dot(cross(drawn, here), axis), dot(drawn, here)));
};

/** −1 where bump turns an arm by the left-hand rule about the bar. */
const armSense = (shown: Shown): 1 | -1 => {
  const arm = axleOf(shown)?.left.parts.bar;
  if (!arm) return 1;
  const rise = arm.axis[0] * (arm.armEnd[1] - arm.pivot[1]) - arm.axis[1] * (arm.armEnd[0] - arm.pivot[0]);
  return rise < 0 ? -1 : 1;
};

const instantCentre =
  (view: 'front' | 'side'): Numbers =>
  (shown) => {
    const facts = factsOf(shown, 'left');
    if (!facts || !shown.row.placed.left[view === 'front' ? 'frontViewInstantCentre' : 'sideViewInstantCentre']) return null;
    return formula(centreWritten(facts, view), { from: FROM_TWIST });
  };

/** A centre that is far away is made of a small turn: so many digits of it. */
const DIGITS = 10;
const decimalsFor = (value: number): number => Math.min(20, Math.max(6, DIGITS - 1 - Math.floor(Math.log10(Math.abs(value)))));

const centreWritten = ({ contact, contactVelocity: v, turn }: CornerFacts, view: 'front' | 'side'): string => {
  const [across, spin] = view === 'front' ? [1, turn[0]] : [0, turn[1]];
  const [first, second] = view === 'front' ? ['−', '+'] : ['+', '−'];
  const quotient = (speed: number): string => `${num(speed, RATE)} / ${num(spin, decimalsFor(spin))}`;
  return `(${num(contact[across] ?? 0, POINT)} ${first} ${quotient(v[2])}; ${num(contact[2], POINT)} ${second} ${quotient(v[across] ?? 0)})`;
};

const swingArm =
  (view: 'front' | 'side'): Numbers =>
  (shown) => {
    const facts = factsOf(shown, 'left');
    const centre = shown.row.placed.left[view === 'front' ? 'frontViewInstantCentre' : 'sideViewInstantCentre'];
    if (!facts || !centre) return null;
    const from = facts.contact[view === 'front' ? 1 : 0];
    const first = view === 'front' ? from - centre[0] : centre[0] - from;
    const written =
      view === 'front' ? `${num(from, POINT)} − ${num(centre[0], POINT)}` : `${num(centre[0], POINT)} − ${num(from, POINT)}`;
    return formula(`${first < 0 ? '−' : ''}√((${written})² + (${num(facts.contact[2], POINT)} − ${num(centre[1], POINT)})²)`);
  };

/** Of the left-hand wheel: instant centres, spring, damper and bar. */
export const TRAVEL_NUMBERS: Readonly<Record<string, Numbers>> = {
  frontViewInstantCentre: instantCentre('front'),
  swingArmLength: swingArm('front'),
  sideViewInstantCentre: instantCentre('side'),
  sideViewSwingArmLength: swingArm('side'),
  springRatio: spanRatio('spring'),
  springTravel: (shown) => {
    const [design, now] = [axleOf(shown)?.left.parts.spring?.designLength, lengthNow(shown, 'spring')];
    return design === undefined || now === null ? null : formula(`${num(design, POINT)} − ${num(now, POINT)}`);
  },
  springForce: (shown) => {
    const spring = springNow(shown);
    return spring && formula(spring.force, spring.force === '0' ? { from: 'the spring is loose' } : {});
  },
  wheelRate: (shown) => {
    const spring = springNow(shown);
    const [ratio, force] = [readingIn(shown.row, 'left', 'springRatio'), readingIn(shown.row, 'left', 'springForce')];
    const [low, high] = [ratioAside(shown, -ASIDE), ratioAside(shown, ASIDE)];
    if (!spring || ratio === null || force === null || low === null || high === null) return null;
    return formula(`${spring.rateWritten} · ${num(ratio, 7)}² + ${num(force, 3)} · (${num(high, 8)} − ${num(low, 8)}) / 1`, {
      from: 'the second term: spring ratio 0.5 mm of travel higher less 0.5 mm lower',
    });
  },
  damperRatio: spanRatio('damper'),
  damperTravel: (shown) => {
    const axle = axleOf(shown);
    const [design, now] = [axle?.left.parts.damper?.designLength, lengthNow(shown, 'damper')];
    if (!axle || design === undefined || now === null) return null;
    const body = axle.left.adjustment.strutBody;
    return formula(`${num(design, POINT)} − ${num(now, POINT)}${body === 0 ? '' : ` + ${num(body, POINT)}`}`);
  },
  bumpLeft: stopLeft('touch'),
  solidLeft: stopLeft('solid'),
  droopLeft: stopLeft('open'),
  barRatio: (shown) => {
    const [low, high] = [leftAside(shown, -ASIDE)?.bar, leftAside(shown, ASIDE)?.bar];
    if (!low || !high) return null;
    return formula(`|${vec(high.armEnd, LENGTH)} − ${vec(low.armEnd, LENGTH)}| / 1`, {
      from: 'the rate from the twist, here as the arm’s end 0.5 mm of travel higher and lower',
    });
  },
  barTwist: (shown) => {
    const [left, right] = [armTurn(shown, 'left'), armTurn(shown, 'right')];
    if (left === null || right === null) return null;
    return formula(`${armSense(shown) < 0 ? '−' : ''}(${num(left, 4)} − ${num(right, 4)})`);
  },
};

/** Rate of a corner's spring at the contact centre [N/mm], and how it is made; null where the file does not say enough. */
export const contactRate = (shown: Shown, side: 'left' | 'right') => {
  const [facts, low, high] = [factsOf(shown, side), factsOf(shown, side, -ASIDE), factsOf(shown, side, ASIDE)];
  const number = (key: string): number | null => readingIn(shown.row, side, key);
  const [rate, force, ratio] = [number('wheelRate'), number('springForce'), number('springRatio')];
  if (!facts || !low || !high || rate === null || force === null || ratio === null) return null;
  const bent = high.rise - low.rise;
  const { rise } = facts;
  const value = rate / (rise * rise) - (force * ratio * bent) / (rise * rise * rise);
  const written =
    `${num(rate, 4)} / ${num(rise, 7)}² − ` +
    `${num(force, 2)} · ${num(ratio, 6)} · (${num(high.rise, RATE)} − ${num(low.rise, RATE)}) / ${num(rise, 7)}³`;
  return { value, step: step(`c ${side}`, written, value, 4, 'N/mm') };
};
