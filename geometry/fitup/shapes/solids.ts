import type { ShapeDocument } from '../../car/fitUpDocument';
import type { Wheel } from '../../car/mechanism';
import type { Triple } from '../../car/document';
import { add, cross, distance, dot, length, mirror, reject, scale, subtract, unit, ZERO, type Vector } from '../../core/vector';
import { boxCore, coreReach, CYLINDER, cylinderCore, POINT, pointCore, SEGMENT, segmentCore, type Core } from '../distance/core';
import type { MeshSurface } from './mesh';
import type { Ball, RoundSolid, Solid, Spin } from './solid';

/** What a shape needs to know of the corner that it is on. */
export interface ShapeGround {
  /** mm per unit of the file */
  readonly mm: number;
  readonly wheel: Wheel;
  /** spindle at design, outboard, and the wheel centre that it starts from [mm], left-hand frame */
  readonly spindle: Vector;
  readonly wheelCentre: Vector;
  /** the coordinates are those of the other hand: their mirror image is meant */
  readonly isMirrored: boolean;
}

/** Why a shape cannot be made: what is missing in the car. */
export interface ShapeGap {
  readonly missing: string;
}

/**
 * A shape of the file as a solid, at design, in the corner's left-hand frame [mm].
 * @param mesh - where the shape is one, as it was read
 */
export function solidOf(shape: ShapeDocument, ground: ShapeGround, mesh: MeshSurface | null): Solid | ShapeGap {
  const place = (point: Triple): Vector => sided(ground, scale(point, ground.mm));
  const way = (direction: Triple): Vector => sided(ground, direction);
  switch (shape.kind) {
    case 'sphere':
      return roundSolid([pointCore(place(shape.at))], shape.radius * ground.mm);
    case 'capsule':
      return roundSolid([segmentCore(place(shape.from), place(shape.to))], shape.radius * ground.mm);
    case 'cylinder':
      return roundSolid([cylinderCore(place(shape.from), place(shape.to), shape.radius * ground.mm)], 0);
    case 'box':
      return roundSolid([boxOf(place(shape.centre), shape.size, shape.axes?.map(way), ground.mm)], 0);
    case 'tyre':
      return tyreOf(ground);
    case 'rim':
      return rimOf(ground);
    case 'mesh':
      return mesh === null ? { missing: 'its mesh' } : { kind: 'mesh', mesh, ball: ballOfMesh(mesh), spin: null };
  }
}

const sided = ({ isMirrored }: ShapeGround, vector: Vector): Vector => (isMirrored ? mirror(vector) : vector);

/** @param round - radius around the cores [mm], one for all or one for each */
export function roundSolid(cores: readonly Core[], round: number | readonly number[], isSkin = false): RoundSolid {
  const rounds = typeof round === 'number' ? cores.map(() => round) : round;
  return { kind: 'round', cores, rounds, isSkin, ball: ballOf(cores, rounds), spin: null, cover: null };
}

function boxOf(centre: Vector, size: Triple, axes: readonly Vector[] | undefined, mm: number): Core {
  const first = unit(axes?.[0] ?? [1, 0, 0]);
  // the second is taken square to the first
  const second = unit(reject(axes?.[1] ?? [0, 1, 0], first));
  const half = (axis: Vector, edge: number): Vector => scale(axis, 0.5 * edge * mm);
  return boxCore(centre, [half(first, size[0]), half(second, size[1]), half(cross(first, second), size[2])]);
}

/**
 * The revolution of a width × radius rectangle with rounded corners, enlarged by what it grows at speed and leans in a corner. Where
 * the inside of the rim is described, what is within the rim's diameter is left to it, and the tyre is a ring.
 */
function tyreOf({ wheel, spindle, wheelCentre, mm }: ShapeGround): Solid | ShapeGap {
  const { tyreRadius, tyreWidth, document } = wheel;
  if (tyreRadius === null || tyreWidth === null) return { missing: 'tyreRadius and tyreWidth of the wheel' };
  const radius = tyreRadius + (document.growth ?? 0) * mm;
  const half = 0.5 * tyreWidth + (document.sideDeflection ?? 0) * mm;
  const shoulder = Math.min((document.shoulderRadius ?? 0) * mm, half, radius);
  const along = scale(spindle, half - shoulder);
  const whole = roundSolid(
    [cylinderCore(subtract(wheelCentre, along), add(wheelCentre, along), radius - shoulder, spindle)],
    shoulder,
  );
  const bore = 0.5 * (document.rimDiameter ?? 0) * mm;
  if (document.rimInside === undefined || bore <= 0 || bore >= radius - shoulder) return whole;
  const out = unit(reject([0, 0, 1], spindle));
  // Sharp at the bead and round at the shoulder: two rectangles of no thickness, one in the other.
  const rectangle = (from: number, to: number, width: number): Core =>
    boxCore(add(wheelCentre, scale(out, 0.5 * (from + to))), [scale(spindle, width), scale(out, 0.5 * (to - from)), ZERO]);
  const edge = radius - shoulder;
  const cores = [rectangle(bore, edge, half), rectangle(Math.min(bore + shoulder, edge), edge, half - shoulder)];
  const section = roundSolid(cores, [0, shoulder]);
  const spin: Spin = { at: wheelCentre, axis: spindle };
  return { ...section, spin, ball: whole.ball, cover: { solid: whole, bore } };
}

/** The inside of a rim: what its profile sweeps about the spindle. A skin: it is not known how thick the metal is. */
function rimOf({ wheel, spindle, wheelCentre, mm }: ShapeGround): Solid | ShapeGap {
  const profile = wheel.document.rimInside;
  if (profile === undefined || profile.length < 2) return { missing: 'rimInside of the wheel, two points or more' };
  const out = unit(reject([0, 0, 1], spindle));
  const corner = ([offset, radius]: readonly [number, number]): Vector =>
    add(wheelCentre, add(scale(spindle, offset * mm), scale(out, radius * mm)));
  const cores = profile.slice(1).map((end, index) => segmentCore(corner(profile[index]), corner(end)));
  const spin: Spin = { at: wheelCentre, axis: spindle };
  return sweptSolid(roundSolid(cores, 0, true), spin);
}

/** A ball around some cores with a radius each; around the middle of their centres, which is good enough. */
function ballOf(cores: readonly Core[], rounds: readonly number[]): Ball {
  let centre: Vector = [0, 0, 0];
  for (const core of cores) centre = add(centre, scale([core[1], core[2], core[3]], 1 / cores.length));
  let radius = 0;
  cores.forEach((core, index) => {
    const off = length(subtract([core[1], core[2], core[3]], centre));
    radius = Math.max(radius, off + coreReach(core) + rounds[index]);
  });
  return { centre, radius };
}

function ballOfMesh({ triangles }: MeshSurface): Ball {
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  triangles.forEach((value, index) => {
    min[index % 3] = Math.min(min[index % 3], value);
    max[index % 3] = Math.max(max[index % 3], value);
  });
  const centre: Vector = [0.5 * (min[0] + max[0]), 0.5 * (min[1] + max[1]), 0.5 * (min[2] + max[2])];
  let radius = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    radius = Math.max(radius, distance(centre, [triangles[i], triangles[i + 1], triangles[i + 2]]));
  }
  return { centre, radius };
}

/** How far an axis may miss a shape's own for the shape to be its own sweep [mm, and mm per mm]. */
const COAXIAL = 1e-9;

/**
 * The solid as a body of revolution about an axis: itself where it is one already, else what it sweeps.
 * @param axis - unit vector
 */
export function spunSolid(solid: Solid, at: Vector, axis: Vector): Solid {
  if (solid.spin !== null) return solid;
  if (solid.kind === 'round' && solid.cores.every((core) => isAbout(core, at, axis))) return solid;
  return sweptSolid(solid, { at, axis });
}

/** The ball of what turns is around the axis. */
function sweptSolid(solid: Solid, spin: Spin): Solid {
  const { centre, radius } = solid.ball;
  const off = subtract(centre, spin.at);
  const along = dot(off, spin.axis);
  const ball = {
    centre: add(spin.at, scale(spin.axis, along)),
    radius: length(subtract(off, scale(spin.axis, along))) + radius,
  };
  return { ...solid, spin, ball };
}

function isAbout(core: Core, at: Vector, axis: Vector): boolean {
  const off = reject(subtract([core[1], core[2], core[3]], at), axis);
  if (length(off) > COAXIAL * Math.max(1, length(subtract([core[1], core[2], core[3]], at)))) return false;
  const along = (from: number): boolean => {
    const v: Vector = [core[from], core[from + 1], core[from + 2]];
    return length(reject(v, axis)) <= COAXIAL * Math.max(1, length(v));
  };
  const across = (from: number): boolean => {
    const v: Vector = [core[from], core[from + 1], core[from + 2]];
    return Math.abs(dot(v, axis)) <= COAXIAL * Math.max(1, length(v));
  };
  switch (core[0]) {
    case POINT:
      return true;
    case SEGMENT:
      return along(4);
    case CYLINDER:
      return along(4) && across(7) && across(10);
    default:
      return false;
  }
}
