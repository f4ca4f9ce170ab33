import type { GroundFrame } from '../../axle/ground';
import type { AxleDocument } from '../../car/document';
import { add, anyPerpendicular, cross, scale, ZERO, type Vector } from '../../core/vector';
import { knuckleDirection, knucklePoint, wheelCentre } from '../../corner/knucklePoint';
import type { Motion } from '../../corner/motion';
import { wheelStance } from '../../readings/wheelStance';
import type { AssembledAxle } from '../../setup/assembleCar';
import type { AssembledSide } from '../../setup/assembleSide';
import { addWrenches, solveBalance, wrenchAt, type Wrench } from './balance';
import { barLoad, barRows } from './barLoad';
import { rodLines, throughCarrier, type CarriedLoad, type RodLine } from './carriedLoad';
import { strutRow, trailingArmRow } from './fastRows';
import { heldRow, holderOf, spanRow, type Holder } from './holder';
import { ball, type LinkRow } from './linkRow';
import { Linkwork } from './linkwork';
import type { WheelForces } from './loadCase';
import { Sections } from './sections';

/** What is not a link's to find: all in the corner's left-hand frame. */
export interface CornerLoading {
  readonly wheel: WheelForces;
  /** of the spring at this position, pushing [N]; null: the file does not give it */
  readonly springForce: number | null;
  /** that the bar puts on this side's arm, right hand about the bar's axis [N·mm]; null: no bar, or nothing known of it */
  readonly barTorque: number | null;
}

/** What balances the wheel's free travel. */
export interface Carried {
  /** the part along whose line it acts; "held": none is known, a force along the car's Z at the wheel centre stands for it */
  readonly by: Holder['by'];
  /** pushing [N] */
  readonly total: number;
  /** of that, the spring's own force at this position; null: not known */
  readonly own: number | null;
  /** the rest: what spring, damper and bump rubber must carry beyond it; null: not known */
  readonly beyond: number | null;
  /** shortening of that line per mm of wheel travel */
  readonly ratio: number;
}

export interface CornerLoads {
  readonly rows: readonly LinkRow[];
  readonly carried: Carried;
  /** what the ground and the shaft put on the wheel */
  readonly given: readonly { readonly at: Vector; readonly force: Vector; readonly moment: Vector }[];
}

/**
 * Balance of one corner with rigid links: five constraints, and the one force that balances the free travel.
 * @returns null where links do not hold the knuckle at this pose
 */
export function cornerLoads(
  axle: AssembledAxle,
  document: AxleDocument,
  mm: number,
  side: AssembledSide,
  motion: Motion,
  rack: number,
  ground: GroundFrame,
  loading: CornerLoading,
): CornerLoads | null {
  const { corner } = side;
  const { linkage } = corner;
  const centre = wheelCentre(motion);
  const rods = rodLines(corner, motion, rack);
  const given = givenForces(side, motion, ground, loading.wheel);
  const links = new Linkwork(axle, side, rods);
  const bar = barLoad(side, motion, rack, loading.barTorque);
  const holder = holderOf(axle, side, motion, rack);
  const barLoads = bar === null ? [] : [bar.load];

  const onKnuckle = (load: CarriedLoad): Wrench => {
    const at = links.outerOf(load);
    if (load.carrier.on === 'body') return { force: ZERO, moment: ZERO };
    return at === null ? wrenchAt(load.force, load.at, centre) : wrenchAt(throughCarrier(load, rods), at, centre);
  };
  const unknowns: Wrench[] = rods.map(({ along, outer }) => wrenchAt(scale(along, -1), outer, centre));
  const armPoint = linkage.pivot === null ? null : knucklePoint(corner, motion, linkage.pivot.onArm);
  if (linkage.pivot !== null) for (const u of linkage.pivot.across) unknowns.push(wrenchAt(u, armPoint!, centre));
  const strutAxis = linkage.guide === null ? null : knuckleDirection(motion, linkage.guide.axis);
  const square = strutAxis === null ? null : anyPerpendicular(strutAxis);
  const lateral: readonly Vector[] = square === null ? [] : [square, cross(strutAxis!, square)];
  for (const u of lateral) unknowns.push(wrenchAt(u, linkage.guide!.top, centre));
  unknowns.push(holder.load === null ? wrenchAt(holder.push, holder.at, centre) : onKnuckle(holder.load));

  const load = addWrenches([
    ...given.map(({ force, moment, at }) => {
      const w = wrenchAt(force, at, centre);
      return { force: w.force, moment: add(w.moment, moment) };
    }),
    ...barLoads.map(onKnuckle),
  ]);
  const found = solveBalance(unknowns, load, corner.loadedRadius);
  if (found === null) return null;
  const push = found[5];

  const held: CarriedLoad[] = holder.load === null ? [] : [{ ...holder.load, force: scale(holder.push, push) }];
  const loads = [...held, ...barLoads];
  const section = new Sections(document, mm);
  const rows: LinkRow[] = [...links.rows(found, loads, section)];
  if (linkage.pivot !== null) {
    const [u, v] = linkage.pivot.across;
    const force = add(scale(u, found[3]), scale(v, found[4]));
    rows.push(trailingArmRow(axle, armPoint!, force, centre, links.fastLoads(loads, 'trailingArm')));
  }
  if (linkage.guide !== null) {
    const { guide } = linkage;
    const sideways = add(scale(lateral[0], found[3]), scale(lateral[1], found[4]));
    const along = holder.load === null && holder.by !== 'held' ? scale(strutAxis!, -push) : ZERO;
    const foot = knucklePoint(corner, motion, guide.foot);
    rows.push(strutRow(document, mm, guide.top, foot, strutAxis!, sideways, along, links.fastLoads(loads, 'strut')));
  }
  if (holder.load !== null) rows.push(spanRow(holder, push, links.bodyOf(holder.load)));
  if (holder.by === 'held') rows.push(heldRow(holder, push));
  if (bar !== null) rows.push(...barRows(bar, links.bodyOf(bar.load), section));
  rows.push(...jointRows(axle, rods, rows));
  const own = holder.by === 'spring' ? loading.springForce : holder.by === 'held' ? null : 0;
  const carried = { by: holder.by, ratio: holder.ratio, total: push, own, beyond: own === null ? null : push - own };
  return { rows, carried, given };
}

/**
 * Forces of the case on the wheel: at the contact centre, but what a shaft drives pushes at the wheel centre, since its torque
 * does not go through the knuckle.
 */
function givenForces(side: AssembledSide, motion: Motion, ground: GroundFrame, wheel: WheelForces): CornerLoads['given'] {
  const stance = wheelStance(side.corner, motion, ground);
  const { ahead, left, normal } = ground;
  const sideAndUp = add(scale(left, wheel.Fy), scale(normal, wheel.Fz));
  const moment = scale(normal, wheel.Mz);
  const forward = scale(ahead, wheel.Fx);
  if (!wheel.driven) return [{ at: stance.contact, force: add(forward, sideAndUp), moment }];
  return [
    { at: stance.contact, force: sideAndUp, moment },
    { at: stance.centre, force: forward, moment: ZERO },
  ];
}

/** Joints at which more than one link meets the knuckle: what they put on it together. */
function jointRows(axle: AssembledAxle, rods: readonly RodLine[], rows: readonly LinkRow[]): LinkRow[] {
  const shared = axle.mechanism.rods
    .filter(({ outer }, i, all) => all.findIndex((one) => one.outer === outer) !== i)
    .map(({ outer }) => outer);
  return [...new Set(shared)].map((point) => {
    const ends = rows.flatMap((row) => row.ends.filter((end) => end.point === point && end.on === 'knuckle'));
    const at = rods[axle.mechanism.rods.findIndex(({ outer }) => outer === point)].outer;
    const why = 'a joint';
    return {
      link: point,
      kind: 'joint',
      axial: null,
      ends: [ball(point, 'knuckle', at, ends.map(({ force }) => force).reduce(add, ZERO))],
      bending: null,
      buckling: null,
      why: { axial: why, bending: why, buckling: why },
    };
  });
}
