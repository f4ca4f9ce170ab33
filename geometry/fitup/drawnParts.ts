import type { AxleName, SideName } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { fail, succeed, type Result } from '../core/result';
import { add, cross, dot, length, mirror, reject, scale, subtract, unit, type Vector } from '../core/vector';
import type { Failure } from '../corner/failure';
import type { AssembledCar } from '../setup/assembleCar';
import { BOX, CYLINDER, POINT, SEGMENT, writeSupport, type Core } from './distance/core';
import type { MeshFiles } from './meshes/partMeshes';
import { partMeshes } from './meshes/partMeshes';
import { isMirroredOn, piecesOf } from './pieces';
import { atDesign, placed, turned, type Placement } from './placement';
import type { Solid, Spin } from './shapes/solid';
import { trackTo } from './trackTo';

/** A solid as a picture needs it, in the car's frame [mm]. */
export type DrawnShape =
  | { readonly kind: 'sphere'; readonly at: Vector; readonly radius: number }
  | { readonly kind: 'capsule' | 'cylinder'; readonly from: Vector; readonly to: Vector; readonly radius: number }
  | { readonly kind: 'box'; readonly centre: Vector; readonly halves: readonly [Vector, Vector, Vector] }
  | {
      /** what a profile sweeps about an axis; a skin is one line, anything else goes round */
      readonly kind: 'turned';
      readonly at: Vector;
      readonly axis: Vector;
      /** along the axis from `at`, and from the axis */
      readonly profile: readonly (readonly [number, number])[];
      readonly isSkin: boolean;
    }
  | { readonly kind: 'mesh'; readonly triangles: Float64Array };

export interface DrawnPart {
  readonly name: string;
  readonly carrier: string;
  /** `tyre`, `rim` and the rest as the file has them; null: made from the axle's own numbers */
  readonly shapeKind: string | null;
  readonly shapes: readonly DrawnShape[];
  /** where the part now goes as its numbers in the file grow along x, y and z: unit vectors in the car's frame; null for what has none */
  readonly ways: readonly [Vector, Vector, Vector] | null;
}

/**
 * All solids of one corner at a position, as clearance sees them.
 * @param travel - from design [mm]
 * @param rack - [mm]
 * @param meshes - triangles of the parts that are a mesh; a part without its own is left out
 */
export function drawnParts(
  mechanism: CarMechanism,
  car: AssembledCar,
  axle: AxleName,
  side: SideName,
  at: { readonly travel: number; readonly rack: number },
  meshes: MeshFiles = {},
): Result<readonly DrawnPart[], Failure> {
  const assembled = car[axle];
  if (assembled === null) return fail({ kind: 'unreachable', message: `this car has no ${axle} axle` });
  const own = assembled[side];
  const there = trackTo(own.corner, at);
  if (!there.ok) return there;
  const track = there.value;
  const surfaces = partMeshes(mechanism.document, mechanism.mmPerUnit, meshes, () => {
    throw new Error('drawnParts: nothing is searched for a picture');
  });
  const { pieces } = piecesOf(mechanism.document, mechanism.mmPerUnit, assembled.mechanism, own, surfaces);
  const place = atDesign();
  const isMirrored = side === 'right';
  return succeed(
    pieces.flatMap(({ name, carrier, solid, follow, part }): DrawnPart[] =>
      follow(track.motion, at.rack, place)
        ? [
            {
              name,
              carrier,
              shapeKind: part?.shape.kind ?? null,
              shapes: shapesOf(solid, place, isMirrored),
              ways: part === null ? null : waysOf(place, isMirrored, isMirroredOn(part, side)),
            },
          ]
        : [],
    ),
  );
}

const AXES: readonly [Vector, Vector, Vector] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** @param isGivenMirrored - the numbers of the file are mirrored into the corner's frame */
const waysOf = (place: Placement, isMirrored: boolean, isGivenMirrored: boolean): DrawnPart['ways'] => {
  const [x, y, z] = AXES.map((axis) => {
    const way = turned(place, isGivenMirrored ? mirror(axis) : axis);
    return isMirrored ? mirror(way) : way;
  });
  return [x, y, z];
};

function shapesOf(solid: Solid, place: Placement, isMirrored: boolean): DrawnShape[] {
  const point = (p: Vector): Vector => (isMirrored ? mirror(placed(place, p)) : placed(place, p));
  const way = (v: Vector): Vector => (isMirrored ? mirror(turned(place, v)) : turned(place, v));
  if (solid.kind === 'mesh') {
    const { triangles } = solid.mesh;
    const moved = new Float64Array(triangles.length);
    for (let i = 0; i < triangles.length; i += 3) moved.set(point([triangles[i], triangles[i + 1], triangles[i + 2]]), i);
    return [{ kind: 'mesh', triangles: moved }];
  }
  const { cores, rounds, spin, isSkin } = solid;
  if (spin !== null) {
    const profile = isSkin ? skinProfile(cores, spin) : sweptProfile(cores, rounds, spin);
    return [{ kind: 'turned', at: point(spin.at), axis: way(spin.axis), profile, isSkin }];
  }
  return cores.map((core, index) => shapeOf(core, rounds[index], point, way));
}

const vectorAt = (core: Core, from: number): Vector => [core[from], core[from + 1], core[from + 2]];

function shapeOf(core: Core, round: number, point: (p: Vector) => Vector, way: (v: Vector) => Vector): DrawnShape {
  const centre = vectorAt(core, 1);
  const half = vectorAt(core, 4);
  switch (core[0]) {
    case POINT:
      return { kind: 'sphere', at: point(centre), radius: round };
    case SEGMENT:
      return { kind: 'capsule', from: point(subtract(centre, half)), to: point(add(centre, half)), radius: round };
    case BOX:
      return { kind: 'box', centre: point(centre), halves: [way(half), way(vectorAt(core, 7)), way(vectorAt(core, 10))] };
    case CYLINDER: {
      if (round === 0)
        return {
          kind: 'cylinder',
          from: point(subtract(centre, half)),
          to: point(add(centre, half)),
          radius: length(vectorAt(core, 7)),
        };
      const axis = unit(cross(vectorAt(core, 7), vectorAt(core, 10)));
      const profile = roundedProfile(Math.abs(dot(half, axis)), length(vectorAt(core, 7)), round);
      return { kind: 'turned', at: point(centre), axis: way(axis), profile, isSkin: false };
    }
    default:
      throw new RangeError('shapeOf: no such core in a part');
  }
}

/** Steps of a quarter of a circle. */
const QUARTER = 6;

/** A cylinder whose edges are rounded by a radius, from one end's middle to the other's. */
function roundedProfile(half: number, radius: number, round: number): (readonly [number, number])[] {
  const corner = (sense: 1 | -1): (readonly [number, number])[] =>
    Array.from({ length: QUARTER + 1 }, (_, step) => {
      const angle = (0.5 * Math.PI * step) / QUARTER;
      return [sense * (half + round * Math.cos(angle)), radius + round * Math.sin(angle)] as const;
    });
  return [[-half - round, 0], ...corner(-1), ...corner(1).reverse(), [half + round, 0]];
}

/** The line that the skin's segments follow, in the half-plane through the axis. */
function skinProfile(cores: readonly Core[], spin: Spin): (readonly [number, number])[] {
  const ends = cores.flatMap((core) => {
    const [centre, half] = [vectorAt(core, 1), vectorAt(core, 4)];
    return [subtract(centre, half), add(centre, half)].map((end) => inHalfPlane(end, spin));
  });
  return ends.filter((end, index) => index === 0 || index % 2 === 1);
}

function inHalfPlane(point: Vector, { at, axis }: Spin): readonly [number, number] {
  const off = subtract(point, at);
  return [dot(off, axis), length(reject(off, axis))];
}

const WAYS = 72;

/** The hull of what a solid passes in the half-plane through the axis. */
function sweptProfile(cores: readonly Core[], rounds: readonly number[], spin: Spin): (readonly [number, number])[] {
  const points: (readonly [number, number])[] = [];
  const found = new Float64Array(3);
  cores.forEach((core, index) => {
    const out = outOf(core, spin);
    for (let step = 0; step < WAYS; step += 1) {
      const angle = (2 * Math.PI * (step + 0.5)) / WAYS;
      const way = add(scale(spin.axis, Math.cos(angle)), scale(out, Math.sin(angle)));
      writeSupport(core, way[0], way[1], way[2], found, 0);
      points.push(inHalfPlane(add([found[0], found[1], found[2]], scale(way, rounds[index])), spin));
    }
  });
  return hullOf(points);
}

/** From the axis to the core, square to the axis. */
function outOf(core: Core, { at, axis }: Spin): Vector {
  const off = reject(subtract(vectorAt(core, 1), at), axis);
  if (length(off) > 0) return unit(off);
  const other: Vector = Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  return unit(reject(other, axis));
}

function hullOf(points: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly (readonly [number, number])[]): (readonly [number, number])[] => {
    const chain: (readonly [number, number])[] = [];
    for (const next of list) {
      for (;;) {
        const [a, b] = chain.slice(-2);
        if (a === undefined || b === undefined) break;
        if ((b[0] - a[0]) * (next[1] - a[1]) - (b[1] - a[1]) * (next[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(next);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
