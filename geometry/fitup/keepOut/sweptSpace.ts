import type { AxleName, SetupDocument, SideName } from '../../car/document';
import type { CarMechanism } from '../../car/mechanism';
import type { Failure } from '../../corner/failure';
import { assembleCar } from '../../setup/assembleCar';
import { isStill } from '../carriers';
import {
  envelopeRows,
  fitUpCorners,
  noEnvelope,
  noEnvelopeSentence,
  type EnvelopeRow,
  type FitUpCorner,
  type StoodSetup,
} from '../corners';
import { envelopeWarnings, type FitUpWarning } from '../fitUpWarnings';
import { openMeshWarnings } from '../meshes/openMeshes';
import { partMeshes, type MeshFiles } from '../meshes/partMeshes';
import { farWarnings, shapelessWarnings, type CornerPieces } from '../partWarnings';
import { piecesOf, type PartMeshes, type Piece } from '../pieces';
import type { MeshLibrary } from '../shapes/mesh';
import { buildMesh, type NotBuilt, type Share } from './buildMesh';
import { fieldOfSolid } from './field';
import { isHidden } from './hidden';
import { PoseTable } from './poseTable';
import { BodyPath, type PositionNode } from './positions';

/** The space that parts sweep: which of them, over which envelopes, and how it is built. Lengths in mm. */
export interface KeepOutQuestion {
  readonly axles: readonly AxleName[];
  readonly sides: readonly SideName[];
  readonly setups: readonly (readonly [string, SetupDocument])[];
  /** names of parts, or everything that moves against the body */
  readonly of: readonly string[] | 'all-moving';
  /** radius and margin that the space is grown by; 0 or more */
  readonly grow: number;
  /** the surface is nowhere farther out than this; above 0 */
  readonly bound: number;
  readonly meshes?: MeshFiles;
}

/** A mesh whose every edge is run through once each way, triangles counter-clockwise from outside. Car frame, mm. */
export interface ClosedMesh {
  /** three coordinates a corner */
  readonly positions: Float64Array;
  /** three corners a triangle */
  readonly triangles: Uint32Array;
}

/**
 * Space that is kept out of: it holds all that is swept, grown, and reaches out past it by no more than the bound, but where narrow
 * space between parts is filled. What no part
 * reaches and is shut in stays free: it has a shell of its own, whose triangles face inwards.
 */
export interface KeepOut {
  readonly mesh: ClosedMesh;
  /** names of the parts that are in it */
  readonly of: readonly string[];
  readonly grow: number;
  readonly bound: number;
  /** how far its corners and the middles of its triangles are outside, as found: at least and at most; positions between those tried are allowed for [mm] */
  readonly outward: { readonly least: number; readonly most: number };
  /** free space between what is swept can be filled where it is narrower than this [mm] */
  readonly gap: number;
  /** such space is filled whose middle is farther out than the bound, and there alone the surface is so far out */
  readonly isFilled: boolean;
  /** parts that take more space than they sweep, however fine the mesh is */
  readonly solidParts: readonly FilledPart[];
  /** what is enclosed [mm³] */
  readonly volume: number;
  /** lowest and highest corner of the box around it */
  readonly box: readonly [readonly [number, number, number], readonly [number, number, number]];
  /** what was looked at: the corners that have any of the parts */
  readonly envelope: readonly EnvelopeRow[];
  /** parts that could not be made, and corners that have no envelope */
  readonly missing: readonly string[];
  /** what is to be known of the parts that are in it */
  readonly warnings: readonly FitUpWarning[];
}

/**
 * A part with hollows that are closed up: a tyre right through, the inside of its rim with it; a mesh that turns from its least to its
 * greatest radius, place by place along its axis.
 */
export interface FilledPart {
  readonly name: string;
  readonly as: 'tyre' | 'turning-mesh';
}

/** Why there is no mesh. */
export interface NoKeepOut {
  readonly refused: 'no-envelope' | 'unknown-part' | 'nothing-swept' | 'too-fine' | 'not-proved';
  readonly message: string;
}

/** What is swept, as plain bodies over their positions. */
interface Swept {
  readonly nodes: readonly PositionNode[];
  readonly names: readonly string[];
  readonly known: readonly string[];
  /** why nothing is known, where no corner that is asked for has an envelope */
  readonly lacking: readonly string[];
  readonly missing: readonly string[];
  readonly warnings: readonly FitUpWarning[];
  readonly solidParts: readonly FilledPart[];
  readonly envelope: readonly EnvelopeRow[];
}

export type SweptSpace = KeepOut | NoKeepOut | { readonly failure: Failure };

/**
 * The space that parts sweep over the envelopes of the setups in use, as one closed mesh in the car's frame; at once.
 * @param library - searches meshes; null: no part that is asked for is one
 */
export function sweptSpace(mechanism: CarMechanism, question: KeepOutQuestion, library: MeshLibrary | null = null): SweptSpace {
  const steps = sweptSpaceSteps(mechanism, question, library);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same, step by step: whoever waits can be told how far it is, and leave off. */
export function* sweptSpaceSteps(
  mechanism: CarMechanism,
  question: KeepOutQuestion,
  library: MeshLibrary | null = null,
): Generator<Share, SweptSpace> {
  const { grow, bound } = question;
  if (!(grow >= 0 && Number.isFinite(grow))) throw new RangeError(`sweptSpace: grow of ${grow} mm; 0 or more is allowed`);
  if (!(bound > 0 && Number.isFinite(bound))) throw new RangeError(`sweptSpace: bound of ${bound} mm; more than 0 is allowed`);
  const swept = sweptBodies(mechanism, question, library);
  if ('failure' in swept) return swept;
  const { nodes, names, known, lacking, missing, warnings, solidParts, envelope } = swept;
  if (lacking.length > 0) return { refused: 'no-envelope', message: lacking.join('; ') };
  const unknown = question.of === 'all-moving' ? [] : question.of.filter((name) => !known.includes(name));
  if (unknown.length > 0) return { refused: 'unknown-part', message: unknownPart(unknown, known, missing) };
  if (nodes.length === 0) return { refused: 'nothing-swept', message: nothingSwept(missing) };
  const built = yield* buildMesh(nodes, grow, bound);
  if ('refused' in built) {
    const message = built.refused === 'too-fine' ? tooFine(built.times, bound) : notProved(built, bound, names.length, envelope);
    return { refused: built.refused, message };
  }
  const { mesh, least, most, gap, isFilled } = built;
  const closed: ClosedMesh = { positions: Float64Array.from(mesh.positions), triangles: Uint32Array.from(mesh.triangles) };
  const outward = { least, most };
  const [volume, box] = [volumeOfMesh(closed), boxOf(closed)];
  return { mesh: closed, of: names, grow, bound, outward, gap, isFilled, solidParts, volume, box, envelope, missing, warnings };
}

function unknownPart(unknown: readonly string[], known: readonly string[], missing: readonly string[]): string {
  const names = unknown.map((name) => `"${name}"`).join(', ');
  const there = known.length === 0 ? 'no part has a shape there' : `there are ${known.join(', ')}`;
  return afterMissing(missing, `no part ${names} on what is asked for: ${there}`);
}

const nothingSwept = (missing: readonly string[]): string =>
  afterMissing(missing, 'no part that moves has a shape on what is asked for: give the car parts, or rods a section');

/** What is missing first: it may be all there is to it. */
const afterMissing = (missing: readonly string[], words: string): string =>
  missing.length === 0 ? words : `${missing.join(' ')} Of the rest: ${words}`;

/** @param times - how many times too many triangles a length; what is needed is not known where it is infinite */
function tooFine(times: number, bound: number): string {
  const possible = Math.ceil(10 * bound * Math.min(times, 20)) / 10;
  return `a bound of ${bound} mm would make more triangles than a machine can hold; ${possible} mm should do, or ask for fewer parts or one side`;
}

/** Nothing is handed out that may not be what it is said to be. */
function notProved(
  { least, most, around }: Extract<NotBuilt, { refused: 'not-proved' }>,
  bound: number,
  parts: number,
  envelope: readonly EnvelopeRow[],
): string {
  const lost = envelope.reduce((sum, { unreachable }) => sum + unreachable.length, 0);
  const crease =
    lost > 0
      ? `${lost} positions of the envelope cannot be reached, and at their edge the links fold: give the car the travel and lock that it has, or a coarser bound`
      : parts > 1
        ? 'what two parts sweep may meet there at too narrow an angle: ask for those parts one by one, or give another bound'
        : 'give another bound';
  const [x, y, z] = (around ?? [0, 0, 0]).map((value) => value.toFixed(0));
  const told = `the mesh could not be shown to hold all that is swept within ${bound} mm`;
  return around === null
    ? `${told}: it is from ${least.toFixed(2)} to ${most.toFixed(2)} mm outside; give another bound`
    : `${told} around x ${x}, y ${y}, z ${z} mm; ${crease}`;
}

/** Every body that is asked for over every corner that it is on. */
function sweptBodies(
  mechanism: CarMechanism,
  { axles, sides, setups, of, bound, meshes }: KeepOutQuestion,
  library: MeshLibrary | null,
): Swept | { readonly failure: Failure } {
  const stood: StoodSetup[] = [];
  for (const [name, setup] of setups) {
    const car = assembleCar(mechanism, setup);
    if (!car.ok) return { failure: car.failure };
    stood.push({ name, car: car.value });
  }
  const made = partMeshes(mechanism.document, mechanism.mmPerUnit, meshes ?? {}, library ?? noLibrary);
  const corners = fitUpCorners(stood, axles).filter(({ side }) => sides.includes(side.mechanism.side));
  const missing = new Set<string>();
  const lacking = new Set<string>();
  const known = new Set<string>();
  const names = new Set<string>();
  const solid = new Map<string, FilledPart>();
  const still = new Set<string>();
  const nodes: PositionNode[] = [];
  const used: FitUpCorner[] = [];
  const all: CornerPieces[] = [];
  for (const corner of corners) {
    const { envelope } = corner;
    if (envelope === null) {
      missing.add(noEnvelopeSentence(corner));
      lacking.add(noEnvelope(corner));
      continue;
    }
    const pieces = piecesOn(mechanism, corner, made);
    for (const piece of pieces.missing) missing.add(`The part "${piece.name}" is left out: it needs ${piece.missing}.`);
    const poses = new PoseTable(envelope, corner.side);
    for (const { name } of pieces.pieces) known.add(name);
    const asked = pieces.pieces.filter(({ name, carrier }) => (of === 'all-moving' ? !isStill(carrier) : of.includes(name)));
    if (asked.length > 0) used.push(corner);
    all.push({ axle: corner.axle, side: corner.side, pieces: asked });
    for (const piece of asked) {
      if (isHidden(piece, asked)) {
        names.add(piece.name);
        continue;
      }
      // what does not move is the same in every setup
      const place = `${piece.name} ${corner.side.mechanism.side}`;
      if (isStill(piece.carrier) && still.has(place)) continue;
      if (isStill(piece.carrier)) still.add(place);
      const field = fieldOfSolid(piece.solid, bound / 8);
      const root = new BodyPath(piece.name, field, isStill(piece.carrier), piece.follow, poses).root();
      if (root === null) continue;
      names.add(piece.name);
      const as = fillingOf(piece);
      if (as !== null) solid.set(piece.name, { name: piece.name, as });
      nodes.push(root);
    }
  }
  return {
    nodes,
    names: [...names],
    known: [...known],
    lacking: corners.every(({ envelope }) => envelope === null) ? [...lacking] : [],
    missing: [...missing],
    warnings: [
      ...openMeshWarnings(all.flatMap(({ pieces }) => pieces)),
      ...farWarnings(all),
      ...(of === 'all-moving' ? shapelessWarnings(all) : []),
      ...envelopeWarnings(used),
    ],
    solidParts: [...solid.values()],
    envelope: envelopeRows(used),
  };
}

function fillingOf({ part, solid }: Piece): FilledPart['as'] | null {
  if (part?.shape.kind === 'tyre') return 'tyre';
  return solid.kind === 'mesh' && solid.spin !== null ? 'turning-mesh' : null;
}

const piecesOn = (
  { document, mmPerUnit }: CarMechanism,
  { axle, side }: FitUpCorner,
  meshes: PartMeshes,
): { readonly pieces: readonly Piece[]; readonly missing: readonly { readonly name: string; readonly missing: string }[] } =>
  piecesOf(document, mmPerUnit, axle, side, meshes);

const noLibrary = (): never => {
  throw new Error('sweptSpace: meshes are searched where a library for them is given');
};

/** What a closed mesh encloses, in its unit cubed. */
export function volumeOfMesh({ positions: p, triangles }: ClosedMesh): number {
  let six = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]];
    six +=
      p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return six / 6;
}

function boxOf({ positions }: ClosedMesh): KeepOut['box'] {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  positions.forEach((value, i) => {
    min[i % 3] = Math.min(min[i % 3], value);
    max[i % 3] = Math.max(max[i % 3], value);
  });
  return [min, max];
}
