import { add, cross, dot, length, scale, subtract, unit, type Vector } from '../core/vector';
import type { Acceleration } from './acceleration';
import type { Corner } from './corner';
import { knucklePoint, travelTurn, velocityAt, wheelCentre } from './knucklePoint';
import type { Motion } from './motion';

/**
 * What a point of a spring, damper or bar link is fixed to.
 * - `body`: does not move.
 * - `knuckle`: also the strut's tube and a trailing arm (coordinates at design, a clamp's turn taken out).
 * - `rod`: turns about the rod's inner end with the least rotation from its design direction.
 * - `frame`: two rods with one outer point are one body: origin midway between the inner ends, first axis towards the outer
 *   end, third at right angles to the plane of the three.
 */
export type Carrier =
  | { readonly on: 'body'; readonly point: Vector }
  | { readonly on: 'knuckle'; readonly point: Vector }
  | { readonly on: 'rod'; readonly rod: number; readonly direction: Vector; readonly offset: Vector }
  | { readonly on: 'frame'; readonly rods: readonly [number, number]; readonly local: Vector };

/** Place, and first and second derivative by travel, of a carried point [mm, mm/mm, mm/mm²]. */
export interface Followed {
  readonly at: Vector;
  readonly velocity: Vector;
  readonly acceleration: Vector;
}

const STILL: Vector = [0, 0, 0];

/**
 * Follows a carried point.
 * @param second - from `motionAcceleration`; without it the returned acceleration is left at zero, and means nothing
 */
export function followCarrier(
  carrier: Carrier,
  corner: Corner,
  motion: Motion,
  rack: number,
  second: Acceleration | null = null,
): Followed {
  switch (carrier.on) {
    case 'body':
      return { at: carrier.point, velocity: STILL, acceleration: STILL };
    case 'knuckle':
      return followKnuckle(carrier.point, corner, motion, second);
    case 'rod':
      return followRod(carrier, corner, motion, rack, second);
    case 'frame':
      return followFrame(carrier, corner, motion, rack, second);
  }
}

function followKnuckle(point: Vector, corner: Corner, motion: Motion, second: Acceleration | null): Followed {
  const at = knucklePoint(corner, motion, point);
  const arm = subtract(at, wheelCentre(motion));
  const omega = travelTurn(motion);
  const acceleration =
    second === null ? STILL : add(second.linear, add(cross(second.angular, arm), cross(omega, cross(omega, arm))));
  return { at, velocity: velocityAt(motion, at), acceleration };
}

/** Least rotation from e₀ to e: v c + k × v + k (k·v)/(1 + c), with k = e₀ × e and c = e₀·e. */
function followRod(
  carrier: Extract<Carrier, { on: 'rod' }>,
  corner: Corner,
  motion: Motion,
  rack: number,
  second: Acceleration | null,
): Followed {
  const rod = corner.linkage.rods[carrier.rod];
  const inner = add(rod.inner, scale(rod.rack, rack));
  const outer = followKnuckle(rod.outer, corner, motion, second);
  const e = unitMotion(subtract(outer.at, inner), outer.velocity, second === null ? null : outer.acceleration);
  const e0 = carrier.direction;
  const v = carrier.offset;
  const c = dot(e0, e.at);
  const c1 = dot(e0, e.velocity);
  const k = cross(e0, e.at);
  const k1 = cross(e0, e.velocity);
  const kv = dot(k, v);
  const kv1 = dot(k1, v);
  const d = 1 / (1 + c);
  const d1 = -c1 * d * d;
  const spread = scale(k, kv);
  const spread1 = add(scale(k1, kv), scale(k, kv1));
  const at = add(inner, add(add(scale(v, c), cross(k, v)), scale(spread, d)));
  const velocity = add(add(scale(v, c1), cross(k1, v)), add(scale(spread1, d), scale(spread, d1)));
  if (second === null) return { at, velocity, acceleration: STILL };
  const c2 = dot(e0, e.acceleration);
  const k2 = cross(e0, e.acceleration);
  const d2 = -c2 * d * d + 2 * c1 * c1 * d * d * d;
  const spread2 = add(add(scale(k2, kv), scale(k1, 2 * kv1)), scale(k, dot(k2, v)));
  const acceleration = add(
    add(scale(v, c2), cross(k2, v)),
    add(add(scale(spread2, d), scale(spread1, 2 * d1)), scale(spread, d2)),
  );
  return { at, velocity, acceleration };
}

function followFrame(
  carrier: Extract<Carrier, { on: 'frame' }>,
  corner: Corner,
  motion: Motion,
  rack: number,
  second: Acceleration | null,
): Followed {
  const first = corner.linkage.rods[carrier.rods[0]];
  const other = corner.linkage.rods[carrier.rods[1]];
  const innerA = add(first.inner, scale(first.rack, rack));
  const innerB = add(other.inner, scale(other.rack, rack));
  const outer = followKnuckle(first.outer, corner, motion, second);
  const origin = scale(add(innerA, innerB), 0.5);
  const across = subtract(innerB, innerA);
  const bent = second === null ? null : outer.acceleration;
  const e1 = unitMotion(subtract(outer.at, origin), outer.velocity, bent);
  const e3 = unitMotion(
    cross(across, subtract(outer.at, innerA)),
    cross(across, outer.velocity),
    bent === null ? null : cross(across, bent),
  );
  const e2At = cross(e3.at, e1.at);
  const e2Velocity = add(cross(e3.velocity, e1.at), cross(e3.at, e1.velocity));
  const [a, b, c] = carrier.local;
  const mix = (x: Vector, y: Vector, z: Vector): Vector => add(add(scale(x, a), scale(y, b)), scale(z, c));
  const at = add(origin, mix(e1.at, e2At, e3.at));
  const velocity = mix(e1.velocity, e2Velocity, e3.velocity);
  if (second === null) return { at, velocity, acceleration: STILL };
  const e2Acceleration = add(
    add(cross(e3.acceleration, e1.at), cross(e3.at, e1.acceleration)),
    scale(cross(e3.velocity, e1.velocity), 2),
  );
  return { at, velocity, acceleration: mix(e1.acceleration, e2Acceleration, e3.acceleration) };
}

/** The frame of two rods with one outer point. @returns its origin and axes */
export function rodFrame(
  innerA: Vector,
  innerB: Vector,
  outer: Vector,
): { readonly origin: Vector; readonly axes: readonly [Vector, Vector, Vector] } {
  const origin = scale(add(innerA, innerB), 0.5);
  const e1 = unit(subtract(outer, origin));
  const e3 = unit(cross(subtract(innerB, innerA), subtract(outer, innerA)));
  return { origin, axes: [e1, cross(e3, e1), e3] };
}

/** The direction of a moving vector, with its derivatives. @param acceleration - null where the second is not wanted */
function unitMotion(w: Vector, velocity: Vector, acceleration: Vector | null): Followed {
  const size = length(w);
  const at = scale(w, 1 / size);
  const rate = dot(at, velocity);
  const first = scale(subtract(velocity, scale(at, rate)), 1 / size);
  if (acceleration === null) return { at, velocity: first, acceleration: STILL };
  const rate2 = (dot(velocity, velocity) - rate * rate) / size + dot(at, acceleration);
  const bent = subtract(subtract(acceleration, scale(first, 2 * rate)), scale(at, rate2));
  return { at, velocity: first, acceleration: scale(bent, 1 / size) };
}
