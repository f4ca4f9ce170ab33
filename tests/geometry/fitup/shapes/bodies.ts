import type { Vector } from '../../../../geometry/index';
import { add, anyPerpendicular, cross, dot, length, scale, subtract, unit } from '../../../../geometry/core/vector';
import { boxCore, cylinderCore, pointCore, segmentCore, triangleCore } from '../../../../geometry/fitup/distance/core';
import { anchor, atDesign, writeTurn, type Placement } from '../../../../geometry/fitup/placement';
import type { Solid } from '../../../../geometry/fitup/shapes/solid';
import { roundSolid } from '../../../../geometry/fitup/shapes/solids';
import type { Draw } from '../../../laws/draw';

/** A convex body described a second time, by formulas of its own that share nothing with the solids of the project. */
export interface Body {
  readonly title: string;
  readonly solid: Solid;
  /** greatest of p·way over the body */
  readonly support: (way: Vector) => number;
  /** how far a point is outside of it; 0 inside */
  readonly outside: (point: Vector) => number;
}

export const direction = (draw: Draw): Vector => {
  const v: Vector = [draw.between(-1, 1), draw.between(-1, 1), draw.between(-1, 1)];
  return length(v) < 0.05 ? [0, 0, 1] : unit(v);
};
export const point = (draw: Draw, by: number): Vector => [draw.between(-by, by), draw.between(-by, by), draw.between(-by, by)];

export function somewhere(draw: Draw, by: number): Placement {
  const place = atDesign();
  writeTurn(direction(draw), draw.between(-Math.PI, Math.PI), place);
  anchor(place, [0, 0, 0], point(draw, by));
  return place;
}

export function sphere(at: Vector, radius: number): Body {
  return {
    title: 'sphere',
    solid: roundSolid([pointCore(at)], radius),
    support: (way) => dot(at, way) + radius,
    outside: (p) => Math.max(0, length(subtract(p, at)) - radius),
  };
}

export function capsule(from: Vector, to: Vector, radius: number): Body {
  const along = subtract(to, from);
  return {
    title: 'capsule',
    solid: roundSolid([segmentCore(from, to)], radius),
    support: (way) => Math.max(dot(from, way), dot(to, way)) + radius,
    outside: (p) => {
      const square = dot(along, along);
      const share = square === 0 ? 0 : Math.max(0, Math.min(1, dot(subtract(p, from), along) / square));
      return Math.max(0, length(subtract(p, add(from, scale(along, share)))) - radius);
    },
  };
}

export function box(centre: Vector, halves: readonly [number, number, number], first: Vector): Body {
  const second = anyPerpendicular(first);
  const axes = [first, second, cross(first, second)] as const;
  return {
    title: 'box',
    solid: roundSolid([boxCore(centre, [scale(axes[0], halves[0]), scale(axes[1], halves[1]), scale(axes[2], halves[2])])], 0),
    support: (way) => dot(centre, way) + axes.reduce((sum, axis, i) => sum + halves[i] * Math.abs(dot(axis, way)), 0),
    outside: (p) => {
      const over = axes.map((axis, i) => Math.max(0, Math.abs(dot(subtract(p, centre), axis)) - halves[i]));
      return Math.sqrt(over.reduce((sum, o) => sum + o * o, 0));
    },
  };
}

/** A cylinder with flat ends and edges of some radius; the tyre is one. */
export function barrel(centre: Vector, axis: Vector, half: number, radius: number, edge: number): Body {
  const inner = half - edge;
  return {
    title: edge > 0 ? 'barrel' : 'cylinder',
    solid: roundSolid(
      [cylinderCore(subtract(centre, scale(axis, inner)), add(centre, scale(axis, inner)), radius - edge, axis)],
      edge,
    ),
    support: (way) => {
      const along = dot(axis, way);
      return dot(centre, way) + inner * Math.abs(along) + (radius - edge) * length(subtract(way, scale(axis, along))) + edge;
    },
    outside: (p) => {
      const from = subtract(p, centre);
      const along = dot(from, axis);
      const across = length(subtract(from, scale(axis, along)));
      const [over, out] = [Math.max(0, Math.abs(along) - inner), Math.max(0, across - (radius - edge))];
      return Math.max(0, Math.sqrt(over * over + out * out) - edge);
    },
  };
}

export function triangle(a: Vector, b: Vector, c: Vector): Body {
  return {
    title: 'triangle',
    solid: roundSolid([triangleCore(a, b, c)], 0),
    support: (way) => Math.max(dot(a, way), dot(b, way), dot(c, way)),
    outside: (p) => {
      const normal = unit(cross(subtract(b, a), subtract(c, a)));
      const inside = [
        [a, b],
        [b, c],
        [c, a],
      ].every(([u, v]) => dot(cross(subtract(v, u), subtract(p, u)), normal) >= -1e-9);
      if (inside) return Math.abs(dot(subtract(p, a), normal));
      return Math.min(capsule(a, b, 0).outside(p), capsule(b, c, 0).outside(p), capsule(c, a, 0).outside(p));
    },
  };
}

/** Any of the bodies, of any size from a bolt to a tyre; now and then with its axes along those of the frame. */
export function anyBody(draw: Draw): Body {
  const at = point(draw, 150);
  const isSquare = draw.between(0, 1) < 0.25;
  const axis: Vector = isSquare ? [0, 1, 0] : direction(draw);
  const size = (): number => (isSquare ? 10 * Math.ceil(draw.between(0, 10)) : draw.between(0.5, 120));
  switch (Math.floor(draw.between(0, 6))) {
    case 0:
      return sphere(at, size());
    case 1:
      return capsule(at, add(at, scale(axis, size())), 0.3 * size());
    case 2:
      return box(at, [size(), size(), size()], axis);
    case 3:
      return barrel(at, axis, size(), size(), 0);
    case 4: {
      const [half, radius] = [size(), size()];
      return barrel(at, axis, half, radius, 0.4 * Math.min(half, radius));
    }
    default:
      return triangle(at, add(at, scale(axis, size())), add(at, point(draw, 100)));
  }
}
