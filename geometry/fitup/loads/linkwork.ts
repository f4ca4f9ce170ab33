import { add, cross, distance, dot, scale, subtract, unit, ZERO, type Vector } from '../../core/vector';
import type { AssembledAxle } from '../../setup/assembleCar';
import type { AssembledSide } from '../../setup/assembleSide';
import { addWrenches, wrenchAt } from './balance';
import { greatestBending, placeOf, type BeamForce } from './bending';
import { heldAtInner, throughCarrier, type CarriedLoad, type RodLine } from './carriedLoad';
import { ball, type LinkRow } from './linkRow';
import { BEAM, STRAIGHT, type Sections } from './sections';

/** Rods and arms: which of them carry something, and what comes out at their ends. */
export class Linkwork {
  private readonly axle: AssembledAxle['mechanism'];

  constructor(
    axle: AssembledAxle,
    private readonly side: AssembledSide,
    private readonly rods: readonly RodLine[],
  ) {
    this.axle = axle.mechanism;
  }

  /** Outer end of the rod or arm that carries a load; null: it sits on knuckle or body. */
  outerOf({ carrier }: CarriedLoad): Vector | null {
    if (carrier.on === 'rod') return this.rods[carrier.rod].outer;
    return carrier.on === 'frame' ? this.rods[carrier.rods[0]].outer : null;
  }

  /** The part that a load sits on, as rows call it. */
  bodyOf(load: CarriedLoad): string {
    const { carrier } = load;
    if (carrier.on === 'rod') return this.axle.rods[carrier.rod].name;
    if (carrier.on === 'frame') return this.armName(carrier.rods);
    if (carrier.on === 'body') return 'body';
    const on = load.link === 'barLink' ? this.axle.bar?.linkOn : this.axle[load.link as 'spring' | 'damper']?.points?.lowerOn;
    return on === 'strut' || on === 'trailingArm' ? on : 'knuckle';
  }

  /** Loads on a part that is fast to the knuckle. */
  fastLoads(loads: readonly CarriedLoad[], part: 'strut' | 'trailingArm'): readonly CarriedLoad[] {
    return loads.filter((load) => load.carrier.on === 'knuckle' && this.bodyOf(load) === part);
  }

  private armName([a, b]: readonly [number, number]): string {
    return this.axle.layout === 'strut' ? 'arm' : `${this.axle.rods[a].name}+${this.axle.rods[b].name}`;
  }

  /**
   * @param found - tension of each rod, as far as it is not what it carries [N]
   * @param loads - everything that bears on rods and arms
   */
  *rows(found: readonly number[], loads: readonly CarriedLoad[], section: Sections): Iterable<LinkRow> {
    const done = new Set<number>();
    const { parts } = this.side;
    // what hangs on a rod makes it a beam, also where it carries nothing in this case
    const carriers = [parts.spring, parts.damper].flatMap((span) => (span?.between === 'points' ? [span.lower] : []));
    if (parts.bar !== null) carriers.push(parts.bar.link);
    for (const [index, rod] of this.axle.rods.entries()) {
      if (done.has(index)) continue;
      const arm = carriers.find((one) => one.on === 'frame' && one.rods.includes(index));
      if (arm?.on === 'frame') {
        for (const one of arm.rods) done.add(one);
        const own = loads.filter((load) => load.carrier.on === 'frame' && load.carrier.rods[0] === arm.rods[0]);
        yield this.armRow(arm.rods, found, own);
      } else if (carriers.some((one) => one.on === 'rod' && one.rod === index)) {
        const own = loads.filter((load) => load.carrier.on === 'rod' && load.carrier.rod === index);
        yield this.beamRow(index, found[index], own);
      } else yield this.straightRow(rod, index, found[index], section);
    }
  }

  private straightRow(
    { name, inner, outer }: { name: string; inner: string; outer: string },
    index: number,
    axial: number,
    section: Sections,
  ): LinkRow {
    const line = this.rods[index];
    const pull = scale(line.along, axial);
    const isLeg = this.axle.layout === 'strut' && name !== 'tieRod';
    const leg = { buckling: null, why: { bending: STRAIGHT, buckling: 'one of two legs of an arm, not a bar of its own' } };
    return {
      link: name,
      kind: isLeg ? 'leg' : 'rod',
      axial,
      ends: [ball(inner, 'body', line.inner, pull), ball(outer, 'knuckle', line.outer, scale(pull, -1))],
      bending: null,
      ...(isLeg ? leg : section.of(name, line.length, axial)),
    };
  }

  private beamRow(index: number, tension: number, loads: readonly CarriedLoad[]): LinkRow {
    const { name, inner, outer } = this.axle.rods[index];
    const line = this.rods[index];
    const through = loads.map((load) => throughCarrier(load, this.rods)).reduce(add, ZERO);
    const toKnuckle = subtract(through, scale(line.along, tension));
    const total = loads.map(({ force }) => force).reduce(add, ZERO);
    const toBody = subtract(total, toKnuckle);
    const held = heldAtInner(loads, line);
    const acting: BeamForce[] = [
      { at: line.inner, force: scale(toBody, -1), moment: held, place: inner },
      ...loads.map(placeOf),
      { at: line.outer, force: scale(toKnuckle, -1), moment: null, place: outer },
    ];
    // tension beside each end: what pulls the outer end outward, and the inner end inward
    const [atInner, atOuter] = [dot(toBody, line.along), tension];
    return {
      link: name,
      kind: 'beam',
      axial: Math.abs(atInner) > Math.abs(atOuter) ? atInner : atOuter,
      ends: [
        { ...ball(inner, 'body', line.inner, toBody), moment: scale(held, -1) },
        ball(outer, 'knuckle', line.outer, toKnuckle),
      ],
      bending: greatestBending(line.inner, line.outer, acting),
      buckling: null,
      why: { buckling: BEAM },
    };
  }

  /**
   * Two rods with one outer point as one body on three balls. What runs along the line of its two inner ends cannot be told
   * apart by balance: the outer end's share of it goes as two legs would take it, the loads' is halved.
   */
  private armRow(pair: readonly [number, number], found: readonly number[], loads: readonly CarriedLoad[]): LinkRow {
    const [a, b] = [this.rods[pair[0]], this.rods[pair[1]]];
    const [first, second] = [this.axle.rods[pair[0]], this.axle.rods[pair[1]]];
    const [pullA, pullB] = [scale(a.along, found[pair[0]]), scale(b.along, found[pair[1]])];
    const through = loads.map((load) => throughCarrier(load, this.rods)).reduce(add, ZERO);
    const toKnuckle = subtract(through, add(pullA, pullB));
    const hinge = unit(subtract(b.inner, a.inner));
    const left = addWrenches([
      ...loads.map(({ force, at }) => wrenchAt(force, at, a.inner)),
      wrenchAt(scale(through, -1), a.outer, a.inner),
    ]);
    const halved = scale(hinge, dot(left.force, hinge) / 2);
    const atB = add(scale(cross(left.moment, hinge), 1 / distance(a.inner, b.inner)), halved);
    const [toA, toB] = [add(pullA, subtract(left.force, atB)), add(pullB, atB)];
    const middle = scale(add(a.inner, b.inner), 0.5);
    const out = unit(subtract(a.outer, middle));
    const flat = unit(cross(hinge, subtract(a.outer, a.inner)));
    const acting: BeamForce[] = [
      { at: a.inner, force: scale(toA, -1), moment: null, place: first.inner },
      { at: b.inner, force: scale(toB, -1), moment: null, place: second.inner },
      ...loads.map(placeOf),
      { at: a.outer, force: scale(toKnuckle, -1), moment: null, place: first.outer },
    ];
    return {
      link: this.armName(pair),
      kind: 'arm',
      axial: null,
      ends: [
        ball(first.inner, 'body', a.inner, toA),
        ball(second.inner, 'body', b.inner, toB),
        ball(first.outer, 'knuckle', a.outer, toKnuckle),
      ],
      bending: greatestBending(middle, a.outer, acting, cross(flat, out)),
      buckling: null,
      why: { axial: 'one body on three joints: see its ends', buckling: BEAM },
    };
  }
}
