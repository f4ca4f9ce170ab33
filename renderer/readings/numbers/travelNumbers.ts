import {
  placeAxle,
  readingsInContractUnits,
  readingsOfAxle,
  toDegrees,
  type PlacedCorner,
  type SideName,
  type Vector,
} from '../../../geometry/index';
import { standingRow } from '../../compute/standing';
import { axleOf, factsOf, readingIn, wheelFacts, type CornerFacts, type Shown } from './cornerFacts';
import type { UnitWriter } from './unitWriter';
import { cross, dot, less, mirror, size, times } from './vectors';
import { formula, num, POINT, RATE, type WrittenFormula } from './writing';

type Numbers = (shown: Shown) => WrittenFormula | null;

const LENGTH = 5;

/** Travel of the wheel from standing a little on, the other one held; springs and bars do not ask for the ground. */
const asideBy = (shown: Shown, by: number) => {
  const axle = axleOf(shown);
  const { placed, rack } = shown.row;
  if (!axle) return null;
  const travel = {
    left: placed.travel.left - axle.standing.left,
    right: placed.travel.right - axle.standing.right,
  };
  return { travel: { ...travel, [shown.side]: travel[shown.side] + by }, rack };
};

/** The wheel a little lower and a little higher; null where it does not reach there. */
const wheelAside = (shown: Shown): readonly [PlacedCorner, PlacedCorner] | null => {
  const { mm } = shown.writer.aside;
  const at = (by: number): PlacedCorner | null => {
    const position = asideBy(shown, by);
    const placed = position && placeAxle(shown.row.car, shown.axleName, position);
    return placed?.ok ? placed.value[shown.side] : null;
  };
  const [low, high] = [at(-mm), at(mm)];
  return low && high && [low, high];
};

type SpanName = 'spring' | 'damper';

const spanLength = (corner: PlacedCorner, name: SpanName): number | null => {
  const span = corner[name];
  return span && size(less(span.upper, span.lower));
};

const spanRatio =
  (name: SpanName): Numbers =>
  (shown) => {
    const corners = wheelAside(shown);
    const [long, short] = [corners && spanLength(corners[0], name), corners && spanLength(corners[1], name)];
    if (long === null || short === null) return null;
    const { write, aside } = shown.writer;
    return formula(`(${write(long, 'length', LENGTH)} − ${write(short, 'length', LENGTH)}) / ${aside.span}`, {
      from: `the rate from the twist, here as length ${aside.words} of travel lower less ${aside.words} higher`,
    });
  };

const lengthNow = ({ row, side }: Shown, name: SpanName): number | null => spanLength(row.placed[side], name);

/** Damper travels at which it is solid and fully open, as they are written from the file's numbers. */
const damperStops = (shown: Shown) => {
  const axle = axleOf(shown);
  const damper = axle?.mechanism.damper;
  const design = axle?.[shown.side].parts.damper?.designLength;
  if (!damper || design === undefined) return null;
  const length = (value: number): string => shown.writer.write(value, 'length', POINT);
  const open =
    damper.open !== null
      ? `(${length(design)} − ${length(damper.open)})`
      : damper.droopStopAt !== null
        ? `(−${length(damper.droopStopAt)})`
        : null;
  const solid =
    damper.closed !== null
      ? `(${length(design)} − ${length(damper.closed)})`
      : damper.stroke !== null && open !== null
        ? `(${length(damper.stroke)} + ${open})`
        : null;
  return { open, solid, touch: damper.bumpStopAt === null ? null : length(damper.bumpStopAt) };
};

const stopLeft =
  (which: 'touch' | 'solid' | 'open'): Numbers =>
  (shown) => {
    const travel = readingIn(shown.row, shown.side, 'damperTravel');
    const stop = damperStops(shown)?.[which] ?? null;
    if (travel === null || stop === null) return null;
    const now = shown.writer.write(travel, 'length', POINT);
    return formula(which === 'open' ? `${now} − ${stop}` : `${stop} − ${now}`);
  };

/** Rate of the spring where it now is: of main spring and helper together until the helper is solid [N/mm]. */
interface SpringNow {
  readonly rate: number;
  readonly rateWritten: string;
  readonly force: string;
}

const springNow = (shown: Shown): SpringNow | null => {
  const axle = axleOf(shown);
  const { row, side } = shown;
  const spring = axle?.mechanism.spring;
  const travel = readingIn(row, side, 'springTravel');
  const force = readingIn(row, side, 'springForce');
  const rate = axle?.setup?.springRate ?? spring?.rate ?? null;
  if (!axle || !spring || travel === null || force === null || rate === null) return null;
  if (force === 0) return { rate: 0, rateWritten: '0', force: '0' };
  const { write, rateByLength } = shown.writer;
  const length = (value: number, decimals = POINT): string => write(value, 'length', decimals);
  const plain = { rate, rateWritten: write(rate, 'rate', POINT) };
  // Known by the weight alone, the force is counted from where the setup stands.
  if (spring.installed === null || spring.freeLength === null) {
    const standing = standingRow({ document: row.car.mechanism.document, setup: shown.setup }, shown.axleName);
    const [first, from] = standing
      ? [readingIn(standing, side, 'springForce'), readingIn(standing, side, 'springTravel')]
      : [null, null];
    if (first === null || from === null) return null;
    const squeezed = `(${length(travel, 4)} − ${length(from, 4)})`;
    return { ...plain, force: `${write(first, 'force', 4)} + ${plain.rateWritten} · ${squeezed}${rateByLength}` };
  }
  const seat = axle[side].adjustment.springSeat;
  const now = `(${length(spring.installed)} − ${length(travel, 4)}${seat === 0 ? '' : ` − ${length(seat, 4)}`})`;
  const { helper, freeLength } = spring;
  if (!helper) return { ...plain, force: `${plain.rateWritten} · (${length(freeLength)} − ${now})${rateByLength}` };
  const together = (rate * helper.rate) / (rate + helper.rate);
  const stroke = helper.freeLength - helper.solidLength;
  const squeeze = `(${length(freeLength)} + ${length(helper.freeLength)} − ${now})`;
  const squeezed = freeLength + helper.freeLength - (spring.installed - travel - seat);
  if (together * squeezed < helper.rate * stroke) {
    const other = write(helper.rate, 'rate', POINT);
    const rateWritten = `(${plain.rateWritten} · ${other} / (${plain.rateWritten} + ${other}))`;
    return { rate: together, rateWritten, force: `${rateWritten} · ${squeeze}${rateByLength}` };
  }
  return { ...plain, force: `${plain.rateWritten} · (${squeeze} − ${length(stroke)})${rateByLength}` };
};

/** Spring ratio of the wheel a little on. */
const ratioAside = (shown: Shown, by: number): number | null => {
  const position = asideBy(shown, by);
  const row = position && readingsOfAxle(shown.row.car, shown.axleName, position);
  if (!row?.ok) return null;
  const ratio = readingsInContractUnits(row.value[shown.side], 'corner')['springRatio'];
  return typeof ratio === 'number' ? ratio : null;
};

/** Turn of a bar's arm about the bar from where it is drawn [degrees], in the left-hand frame. */
const armTurn = (shown: Shown, side: SideName): number | null => {
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
    const facts = wheelFacts(shown);
    if (!facts || !centreNow(shown, view)) return null;
    return formula(centreWritten(facts, view, shown.writer), {
      from: `rate from the twist: v, ω in rad/${shown.writer.lengthUnit}`,
    });
  };

const centreNow = ({ row, side }: Shown, view: 'front' | 'side'): readonly [number, number] | null =>
  row.placed[side][view === 'front' ? 'frontViewInstantCentre' : 'sideViewInstantCentre'];

/** A centre that is far away is made of a small turn: so many digits of it. */
const DIGITS = 10;
const decimalsFor = (value: number): number => Math.min(20, Math.max(6, DIGITS - 1 - Math.floor(Math.log10(Math.abs(value)))));

const centreWritten = (
  { contact, contactVelocity: v, turn }: CornerFacts,
  view: 'front' | 'side',
  { write }: UnitWriter,
): string => {
  const [across, spin] = view === 'front' ? [1, turn[0]] : [0, turn[1]];
  const [first, second] = view === 'front' ? ['−', '+'] : ['+', '−'];
  const quotient = (speed: number): string => `${num(speed, RATE)} / ${write(spin, 'turn', decimalsFor(spin))}`;
  const at = (value: number): string => write(value, 'length', POINT);
  return `(${at(contact[across] ?? 0)} ${first} ${quotient(v[2])}; ${at(contact[2])} ${second} ${quotient(v[across] ?? 0)})`;
};

/** + where the centre is inboard of the contact centre, or ahead of it. */
const swingArm =
  (view: 'front' | 'side'): Numbers =>
  (shown) => {
    const facts = wheelFacts(shown);
    const centre = centreNow(shown, view);
    if (!facts || !centre) return null;
    const from = facts.contact[view === 'front' ? 1 : 0];
    const isTowards = view === 'side' || shown.side === 'right';
    const [first, second] = isTowards ? [centre[0], from] : [from, centre[0]];
    const at = (value: number): string => shown.writer.write(value, 'length', POINT);
    const [along, up] = [`${at(first)} − ${at(second)}`, `${at(facts.contact[2])} − ${at(centre[1])}`];
    return formula(`${first < second ? '−' : ''}√((${along})² + (${up})²)`);
  };

/** Of one wheel: instant centres, spring, damper and bar. */
export const TRAVEL_NUMBERS: Readonly<Record<string, Numbers>> = {
  frontViewInstantCentre: instantCentre('front'),
  swingArmLength: swingArm('front'),
  sideViewInstantCentre: instantCentre('side'),
  sideViewSwingArmLength: swingArm('side'),
  springRatio: spanRatio('spring'),
  springTravel: (shown) => {
    const [design, now] = [axleOf(shown)?.[shown.side].parts.spring?.designLength, lengthNow(shown, 'spring')];
    if (design === undefined || now === null) return null;
    const { write } = shown.writer;
    return formula(`${write(design, 'length', POINT)} − ${write(now, 'length', POINT)}`);
  },
  springForce: (shown) => {
    const spring = springNow(shown);
    return spring && formula(spring.force, spring.force === '0' ? { from: 'the spring is loose' } : {});
  },
  wheelRate: (shown) => {
    const spring = springNow(shown);
    const { write, aside, forceOverLength } = shown.writer;
    const number = (key: string): number | null => readingIn(shown.row, shown.side, key);
    const [ratio, force] = [number('springRatio'), number('springForce')];
    const [low, high] = [ratioAside(shown, -aside.mm), ratioAside(shown, aside.mm)];
    if (!spring || ratio === null || force === null || low === null || high === null) return null;
    const bend = `(${num(high, 8)} − ${num(low, 8)}) / ${aside.span}${forceOverLength}`;
    return formula(`${spring.rateWritten} · ${num(ratio, 7)}² + ${write(force, 'force', 3)} · ${bend}`, {
      from: `the second term: spring ratio ${aside.words} of travel higher less ${aside.words} lower`,
    });
  },
  damperRatio: spanRatio('damper'),
  damperTravel: (shown) => {
    const corner = axleOf(shown)?.[shown.side];
    const [design, now] = [corner?.parts.damper?.designLength, lengthNow(shown, 'damper')];
    if (!corner || design === undefined || now === null) return null;
    const body = corner.adjustment.strutBody;
    const length = (value: number): string => shown.writer.write(value, 'length', POINT);
    return formula(`${length(design)} − ${length(now)}${body === 0 ? '' : ` + ${length(body)}`}`);
  },
  bumpLeft: stopLeft('touch'),
  solidLeft: stopLeft('solid'),
  droopLeft: stopLeft('open'),
  barRatio: (shown) => {
    const [low, high] = wheelAside(shown) ?? [];
    if (!low?.bar || !high?.bar) return null;
    const { aside, point } = shown.writer;
    return formula(`|${point(high.bar.armEnd, LENGTH)} − ${point(low.bar.armEnd, LENGTH)}| / ${aside.span}`, {
      from: `the rate from the twist, here as the arm’s end ${aside.words} of travel higher and lower`,
    });
  },
  barTwist: (shown) => {
    const [own, other] = [armTurn(shown, shown.side), armTurn(shown, shown.side === 'left' ? 'right' : 'left')];
    if (own === null || other === null) return null;
    const { write } = shown.writer;
    return formula(`${armSense(shown) < 0 ? '−' : ''}(${write(own, 'angle', 4)} − ${write(other, 'angle', 4)})`);
  },
};

/** Rate of a corner's spring at the contact centre [N/mm], and how it is made; null where the file does not say enough. */
export const contactRate = (shown: Shown, side: SideName) => {
  const { write, step, aside, forceOverLength } = shown.writer;
  const [facts, low, high] = [factsOf(shown, side), factsOf(shown, side, -aside.mm), factsOf(shown, side, aside.mm)];
  const number = (key: string): number | null => readingIn(shown.row, side, key);
  const [rate, force, ratio] = [number('wheelRate'), number('springForce'), number('springRatio')];
  if (!facts || !low || !high || rate === null || force === null || ratio === null) return null;
  const bent = (high.rise - low.rise) / (2 * aside.mm);
  const { rise } = facts;
  const value = rate / (rise * rise) - (force * ratio * bent) / (rise * rise * rise);
  const bend = `(${num(high.rise, RATE)} − ${num(low.rise, RATE)}) / ${aside.span}${forceOverLength}`;
  const written =
    `${write(rate, 'rate', 4)} / ${num(rise, 7)}² − ` +
    `${write(force, 'force', 2)} · ${num(ratio, 6)} · ${bend} / ${num(rise, 7)}³`;
  return { value, step: step(`c ${side}`, written, value, 'rate', 4) };
};
