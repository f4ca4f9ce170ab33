import type { AxleName, CarDocument, SideName, Triple } from '../car/document';
import type { PartDocument } from '../car/fitUpDocument';
import type { AxleMechanism } from '../car/mechanism';
import { add, scale, subtract, unit, ZERO, type Vector } from '../core/vector';
import type { AssembledSide } from '../setup/assembleSide';
import { driveShaftFollower, followerOf, isStill, spinsWithWheel, type Follow } from './carriers';
import { cylinderCore, segmentCore } from './distance/core';
import type { MeshSurface } from './shapes/mesh';
import type { Solid } from './shapes/solid';
import { roundSolid, solidOf, spunSolid, type ShapeGround } from './shapes/solids';

/** A solid of one corner: a part of the file, or what rods, disc, strut tube and drive shaft are by their own numbers. */
export interface Piece {
  readonly name: string;
  /** as the file names it */
  readonly carrier: string;
  /** pieces of one body cannot move against each other */
  readonly body: string;
  readonly follow: Follow;
  readonly solid: Solid;
  /** picks the margin; null: the default */
  readonly kind: string | null;
  /** its own [mm] */
  readonly margin: number | null;
  readonly touches: readonly string[];
  /** the part's document; null for what the axle's own numbers make */
  readonly part: PartDocument | null;
}

/** A part that could not be made, and why. */
export interface MissingPiece {
  readonly name: string;
  readonly missing: string;
}

export interface Pieces {
  readonly pieces: readonly Piece[];
  readonly missing: readonly MissingPiece[];
}

/** Meshes by the name of their part, in the frame of the side that the part is given for [mm]. */
export type PartMeshes = ReadonlyMap<string, { readonly own: MeshSurface; readonly mirrored: MeshSurface }>;

/** All solids of one corner with a setup on it, in the corner's left-hand frame at design [mm]. */
export function piecesOf(
  document: CarDocument,
  mm: number,
  axle: AxleMechanism,
  side: AssembledSide,
  meshes: PartMeshes,
): Pieces {
  const pieces: Piece[] = [];
  const missing: MissingPiece[] = [];
  const make = makerOf(document, mm, axle, side);
  for (const [name, part] of Object.entries(document.parts ?? {})) {
    if (!isOn(part, axle.axle, side.mechanism.side)) continue;
    const ground = groundOf(part, side, mm);
    const mesh = meshes.get(name);
    const solid = solidOf(part.shape, ground, mesh === undefined ? null : ground.isMirrored ? mesh.mirrored : mesh.own);
    if ('missing' in solid) missing.push({ name, missing: solid.missing });
    else pieces.push(make(name, part.on, spun(solid, part, axle, side, ground), part));
  }
  for (const { name, on, solid } of ownSolids(document, mm, axle, side)) {
    if (!pieces.some((piece) => piece.name === name)) pieces.push(make(name, on, solid, null));
  }
  return { pieces, missing };
}

/** A part is on its own side and mirrored to the other; what is fast to the body and on one side only is there for both wheels. */
function isOn(part: PartDocument, axle: AxleName, side: SideName): boolean {
  if (part.axle !== undefined && part.axle !== axle) return false;
  return part.only !== true || (part.side ?? 'left') === side || isStill(part.on);
}

/**
 * Whether a part's numbers are mirrored into the left-hand frame of a corner: given for the right, or for one side only and seen from
 * the other, which mirrors once more.
 */
export function isMirroredOn(part: PartDocument, side: SideName): boolean {
  const given = part.side ?? 'left';
  return (given === 'right') !== (part.only === true && given !== side);
}

function groundOf(part: PartDocument, side: AssembledSide, mm: number): ShapeGround {
  return {
    mm,
    wheel: side.wheel,
    spindle: side.corner.spindle,
    wheelCentre: side.mechanism.points['wheelCentre'],
    isMirrored: isMirroredOn(part, side.mechanism.side),
  };
}

/** What hangs on the wheel spins, and so does what hangs on a rod that is free to turn about its own line. */
function spun(solid: Solid, part: PartDocument, axle: AxleMechanism, side: AssembledSide, ground: ShapeGround): Solid {
  if (spinsWithWheel(part.on)) return spunSolid(solid, ground.wheelCentre, ground.spindle);
  if (part.held !== undefined) return solid;
  if (part.on === 'barLink' && axle.bar !== null) {
    const from = side.parts.bar!.armEnd;
    return spunSolid(solid, from, unit(subtract(axle.bar.linkEnd, from)));
  }
  const rod = axle.rods.find(({ name }) => name === part.on);
  if (rod === undefined || !isFree(axle, rod)) return solid;
  const [from, to] = rodEnds(side, rod);
  return spunSolid(solid, from, unit(subtract(to, from)));
}

/** A rod that is no half of a pair and carries neither spring nor damper nor bar link can turn about its own line. */
const isFree = (axle: AxleMechanism, rod: AxleMechanism['rods'][number]): boolean =>
  !axle.rods.some((other) => other !== rod && other.outer === rod.outer) &&
  axle.spring?.points?.lowerOn !== rod.name &&
  axle.damper?.points?.lowerOn !== rod.name &&
  axle.bar?.linkOn !== rod.name;

/** The rod's own centres at design, with what sits in it. */
function rodEnds(side: AssembledSide, rod: AxleMechanism['rods'][number]): readonly [Vector, Vector] {
  const centre = (name: string): Vector => add(side.mechanism.points[name], side.adjustment.shifts.arm[name] ?? ZERO);
  return [centre(rod.inner), centre(rod.outer)];
}

const makerOf = (document: CarDocument, mm: number, axle: AxleMechanism, side: AssembledSide) => {
  const shaft = document[axle.axle]?.driveShaft;
  // one for all parts of a carrier: where it stands is then worked out once
  const followers = new Map<string, Follow>();
  const follow = (on: string): Follow => {
    const known = followers.get(on);
    if (known !== undefined) return known;
    const made =
      on === 'driveShaft' && shaft !== undefined
        ? driveShaftFollower(side, scale(shaft.inner, mm), scale(shaft.outer, mm))
        : followerOf(axle, side, on);
    followers.set(on, made);
    return made;
  };
  return (name: string, on: string, solid: Solid, part: PartDocument | null): Piece => ({
    name,
    carrier: on,
    body: bodyOf(axle, on),
    follow: follow(on),
    solid,
    kind: part?.kind ?? null,
    margin: part?.margin === undefined ? null : part.margin * mm,
    touches: part?.touches ?? [],
    part,
  });
};

/**
 * What carriers are one body, by one name. The strut's tube is clamped to the knuckle, a trailing arm fast to it; hub and wheel are
 * bolted together; two rods with one outer point are one arm.
 */
export function bodyOf(axle: AxleMechanism, carrier: string): string {
  if (carrier === 'trailingArm' || carrier === 'strut' || carrier === 'strutFoot') return 'knuckle';
  if (carrier === 'damperLower' && !axle.damper?.points) return 'knuckle';
  if (carrier === 'damperUpper' && !axle.damper?.points) return 'strutRod';
  if (carrier === 'hub') return 'wheel';
  const rod = axle.rods.find(({ name }) => name === (carrier === 'arm' ? 'armFront' : carrier));
  if (rod === undefined) return carrier;
  return axle.rods.find(({ outer }) => outer === rod.outer)!.name;
}

interface OwnSolid {
  readonly name: string;
  readonly on: string;
  readonly solid: Solid;
}

/** Rods with a section, bar link, drive shaft, strut tube and disc, from the axle's own numbers. */
function ownSolids(document: CarDocument, mm: number, axle: AxleMechanism, side: AssembledSide): OwnSolid[] {
  const own = document[axle.axle]!;
  const sections = own.sections ?? {};
  const made: OwnSolid[] = [];
  const capsule = (name: string, on: string, from: Vector, to: Vector): void => {
    const section = sections[name];
    if (section !== undefined) made.push({ name, on, solid: roundSolid([segmentCore(from, to)], 0.5 * section.diameter * mm) });
  };
  axle.rods.forEach((rod, index) => {
    const [from, to] = rodEnds(side, rod);
    const isPaired = axle.rods.some((other) => other !== rod && other.outer === rod.outer);
    // a turnbuckle's change lies outboard
    const size = side.corner.linkage.rods[index].length;
    capsule(rod.name, rod.name, from, isPaired ? to : add(from, scale(unit(subtract(to, from)), size)));
  });
  const bar = side.parts.bar;
  if (bar !== null && axle.bar !== null) {
    const way = unit(subtract(axle.bar.linkEnd, bar.armEnd));
    capsule('barLink', 'barLink', bar.armEnd, add(bar.armEnd, scale(way, bar.linkLength)));
  }
  if (own.driveShaft !== undefined)
    capsule('driveShaft', 'driveShaft', inMm(own.driveShaft.inner, mm), inMm(own.driveShaft.outer, mm));
  const { strutTop, strutFoot } = side.mechanism.points;
  if (own.strutTube !== undefined && axle.layout === 'strut') {
    const up = unit(subtract(strutTop, strutFoot));
    const at = (along: number): Vector => add(strutFoot, scale(up, along * mm));
    const { from, to, radius } = own.strutTube;
    made.push({ name: 'strutTube', on: 'strut', solid: roundSolid([cylinderCore(at(from), at(to), radius * mm, up)], 0) });
  }
  const disc = own.brake?.disc;
  if (disc !== undefined) {
    const { spindle } = side.corner;
    const centre = side.mechanism.points['wheelCentre'];
    const at = (offset: number): Vector => add(centre, scale(spindle, offset * mm));
    const half = 0.5 * disc.thickness;
    const core = cylinderCore(at(disc.at - half), at(disc.at + half), disc.radius * mm, spindle);
    made.push({ name: 'disc', on: 'hub', solid: roundSolid([core], 0) });
  }
  return made;
}

const inMm = (point: Triple, mm: number): Vector => scale(point, mm);

/** Where two bodies hang together, at design [mm]. */
export function jointsBetween(
  document: CarDocument,
  mm: number,
  axle: AxleMechanism,
  side: AssembledSide,
  a: string,
  b: string,
): Vector[] {
  const points = side.mechanism.points;
  const found: Vector[] = [];
  const joint = (first: string, second: string, at: Vector | undefined): void => {
    if (at !== undefined && ((first === a && second === b) || (first === b && second === a))) found.push(at);
  };
  for (const rod of axle.rods) {
    const [inner, outer] = rodEnds(side, rod);
    const body = bodyOf(axle, rod.name);
    joint(body, axle.steering?.rod === rod.name ? 'rack' : 'body', inner);
    joint(body, 'knuckle', outer);
  }
  if (axle.trailingArm !== null) joint('knuckle', 'body', points[axle.trailingArm.pivot]);
  if (axle.layout === 'strut') joint('strutRod', 'body', points['strutTop']);
  for (const [which, upper, lower] of [
    ['spring', 'spring', 'spring'],
    ['damper', 'damperUpper', 'damperLower'],
  ] as const) {
    const ends = axle[which]?.points;
    if (!ends) continue;
    joint(upper, 'body', points[ends.upper]);
    joint(lower, bodyOf(axle, ends.lowerOn), points[ends.lower]);
  }
  if (axle.bar !== null && side.parts.bar !== null) {
    joint('bar', 'body', axle.bar.pivot);
    joint('bar', 'barLink', side.parts.bar.armEnd);
    joint('barLink', bodyOf(axle, axle.bar.linkOn), axle.bar.linkEnd);
  }
  const shaft = document[axle.axle]?.driveShaft;
  if (shaft !== undefined) {
    joint('driveShaft', 'body', inMm(shaft.inner, mm));
    joint('driveShaft', 'knuckle', inMm(shaft.outer, mm));
    joint('driveShaft', 'wheel', inMm(shaft.outer, mm));
  }
  return found;
}
