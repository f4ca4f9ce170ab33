import { add, cross, dot, length, scale, subtract, unit, type Vector } from '../../core/vector';
import type { Carrier } from '../../corner/carrier';
import type { Corner } from '../../corner/corner';
import { knucklePoint } from '../../corner/knucklePoint';
import type { Motion } from '../../corner/motion';

/** A force that a spring, damper or bar link puts on what carries it. */
export interface CarriedLoad {
  /** the row that it comes from */
  readonly link: string;
  readonly carrier: Carrier;
  readonly at: Vector;
  readonly force: Vector;
}

/** Ends of a rod now [mm], with the unit vector from the body to the knuckle. */
export interface RodLine {
  readonly inner: Vector;
  readonly outer: Vector;
  readonly along: Vector;
  readonly length: number;
}

export function rodLines(corner: Corner, motion: Motion, rack: number): readonly RodLine[] {
  return corner.linkage.rods.map((rod) => {
    const inner = add(rod.inner, scale(rod.rack, rack));
    const outer = knucklePoint(corner, motion, rod.outer);
    const gap = subtract(outer, inner);
    return { inner, outer, along: unit(gap), length: length(gap) };
  });
}

const NONE: Vector = [0, 0, 0];

/**
 * What of a load on a rod or arm comes out at its outer end, square to the rods: the force that does the same work as the load
 * in every movement that the rods allow. What runs along the rods is theirs to find.
 *
 * A rod turns with the least rotation from its design direction e₀, so with e its direction now and m the load's moment about
 * the inner end the outer end gets (m × e − (m·e)/(1 + e₀·e) · (e₀ × e)) / length. An arm turns about the line of its inner
 * ends: (m·a)/h along its normal, h the outer end's distance from that line.
 */
export function throughCarrier({ carrier, at, force }: CarriedLoad, rods: readonly RodLine[]): Vector {
  if (carrier.on === 'rod') {
    const { inner, along, length: size } = rods[carrier.rod];
    const m = cross(subtract(at, inner), force);
    const twist = dot(m, along) / (1 + dot(carrier.direction, along));
    return scale(subtract(cross(m, along), scale(cross(carrier.direction, along), twist)), 1 / size);
  }
  if (carrier.on === 'frame') {
    const [a, b] = [rods[carrier.rods[0]], rods[carrier.rods[1]]];
    const hinge = unit(subtract(b.inner, a.inner));
    const lever = cross(hinge, subtract(a.outer, a.inner));
    const reach = length(lever);
    return scale(lever, dot(cross(subtract(at, a.inner), force), hinge) / (reach * reach));
  }
  return NONE;
}

/**
 * The moment by which a rod that carries loads off its own line is held at its inner end, on the rod [N·mm]: two balls would
 * let it turn about itself. It lies midway between e₀ and e, as in a joint that turns with the least rotation.
 */
export function heldAtInner(loads: readonly CarriedLoad[], { inner, along }: RodLine): Vector {
  let held: Vector = NONE;
  for (const { carrier, at, force } of loads) {
    if (carrier.on !== 'rod') continue;
    const twist = dot(cross(subtract(at, inner), force), along) / (1 + dot(carrier.direction, along));
    held = subtract(held, scale(add(along, carrier.direction), twist));
  }
  return held;
}
