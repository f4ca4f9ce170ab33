import { activeCubes, latticeAround, RADIUS_PER_EDGE, type ActiveCube, type Lattice } from './lattice';
import { levelOf, safeRadius, type Level } from './level';
import type { PositionNode } from './positions';
import { refineMesh, type Place } from './refine';
import { NearestSearch } from './search';
import { squared } from './squared';
import { buildSurface, type GrowingMesh } from './surface';
import { weld } from './weld';

/** More cubes or triangles than this are too much for a machine. */
const MOST_CUBES = 600_000;
const MOST_TRIANGLES = 3_000_000;
/**
 * Radius of a ball around a tetrahedron of the lattice, at most [mm]; in radii at which no triangle reaches inside; and where something
 * is sharp, in bounds. What is too coarse for its place is cut up later, which is quicker than a fine lattice all over.
 */
const LARGEST_RADIUS_MM = 20;
const COARSER = 1.4;
const SHARP_RADIUS = 2.4;
/** The mesh may be inside of what is swept by no more than this [mm]. */
const INSIDE_MM = 0.01;

/**
 * What a mesh is built for, in bounds. In a narrow crease a few triangles can stay farther out than they are built for, however often
 * they are cut: they are then within the bound all the same.
 */
const TARGETS = [1, 0.85, 0.7] as const;

/** Shares of the work, roughly: making the surface, of the whole; and of that finding out where it is, first on the coarse lattice. */
const SURFACED = 0.65;
const CUBES = 0.7;
const ROUGH = 0.1;

/** What each of the targets takes of the whole: nearly always the first is good, and most of the time is then its own. */
const TURNS = [0.9, 0.04, 0.03] as const;
const FILLED_TURN = 0.03;

/** How far a long answer has come, from 0 to 1; never less than it was. */
export type Share = number;

/** Around all that is swept, no farther out than the bound. All lengths in mm. */
export interface BuiltMesh {
  readonly mesh: { readonly positions: readonly number[]; readonly triangles: readonly number[] };
  /** how far its corners and the middles of its triangles are outside, at least and at most */
  readonly least: number;
  readonly most: number;
  /** free space narrower than this may have been missed, and filled */
  readonly gap: number;
  /** narrow space is filled whose middle is farther out than the bound: nowhere else is the mesh */
  readonly isFilled: boolean;
}

/**
 * Why there is none: how many times too many triangles a length there would be; or how far out what was made is, and around where it
 * could not be shown to hold all. Where cuts grow without end how far out is not known.
 */
export type NotBuilt =
  | { readonly refused: 'too-fine'; readonly times: number }
  | { readonly refused: 'not-proved'; readonly least: number; readonly most: number; readonly around: Place | null };

/**
 * Builds a closed mesh around what is swept, grown. Between parts that nearly touch, or part at a narrow angle, there can be free
 * space that no cutting of a mesh over it finds the bottom of: it is filled then, and that is told.
 */
export function* buildMesh(nodes: readonly PositionNode[], grow: number, bound: number): Generator<Share, BuiltMesh | NotBuilt> {
  let from = 0;
  let first: Surface | null = null;
  for (const [index, target] of TARGETS.entries()) {
    const share = TURNS[index];
    const surface = yield* within(rising(surfaceOf(nodes, levelOf(grow, target * bound))), from, SURFACED * share);
    if ('refused' in surface) return surface;
    first ??= surface;
    const made = yield* within(rising(refined(surface, nodes, bound, false)), from + SURFACED * share, (1 - SURFACED) * share);
    from += share;
    if (!('refused' in made) || made.refused === 'too-fine') return made;
    if (made.most === Infinity) break;
  }
  return yield* within(rising(refined(first!, nodes, bound, true)), 1 - FILLED_TURN, FILLED_TURN);
}

/** What is cut up, with all that it was made by. */
interface Surface {
  readonly mesh: GrowingMesh;
  readonly lattice: Lattice;
  readonly level: Level;
  readonly search: NearestSearch;
}

function* surfaceOf(nodes: readonly PositionNode[], level: Level): Generator<Share, Surface | NotBuilt> {
  const coarse = latticeAround(nodes, level, LARGEST_RADIUS_MM / RADIUS_PER_EDGE);
  const rough = yield* within(activeCubes(coarse, level, nodes, MOST_CUBES), 0, ROUGH);
  if (rough === null) return tooFine(Infinity);
  const edge = edgeFor(level, rough);
  const expected = (rough.length * squared(coarse.edge)) / squared(edge);
  if (expected > MOST_CUBES) return tooFine(Math.sqrt(expected / MOST_CUBES));
  const lattice = latticeAround(nodes, level, edge);
  const cubes = yield* within(activeCubes(lattice, level, nodes, MOST_CUBES, rough), ROUGH, CUBES - ROUGH);
  if (cubes === null) return tooFine(2);
  const search = new NearestSearch(level.tolerance);
  const mesh = yield* within(buildSurface(lattice, level, cubes, search), CUBES, 1 - CUBES);
  return { mesh, lattice, level, search };
}

/** The surface, cut up until it holds; it stays as it is itself. */
function* refined(
  { mesh: rough, lattice, level, search }: Surface,
  nodes: readonly PositionNode[],
  bound: number,
  fills: boolean,
): Generator<Share, BuiltMesh | NotBuilt> {
  const mesh: GrowingMesh = {
    positions: [...rough.positions],
    triangles: [...rough.triangles],
    homes: [...rough.homes],
    distances: [...rough.distances],
  };
  const answer = yield* refineMesh(mesh, lattice, level, search, nodes, MOST_TRIANGLES, fills);
  if ('tooMany' in answer) return tooFine(2);
  if ('grows' in answer) return { refused: 'not-proved', least: -Infinity, most: Infinity, around: answer.grows };
  const { least, most, left } = answer;
  const gap = 2 * (RADIUS_PER_EDGE * lattice.edge + level.at - level.grow);
  if (left !== null || least < -INSIDE_MM || most > (fills ? Math.max(bound, gap / 2) : bound))
    return { refused: 'not-proved', least, most, around: left };
  const welded = weld(mesh);
  if (welded === null) return { refused: 'not-proved', least, most, around: null };
  return { mesh: welded, least, most, gap, isFilled: most > bound };
}

const tooFine = (times: number): NotBuilt => ({ refused: 'too-fine', times });

/** A surface that has to be made finer begins some of it again: the share that is told stays where it is meanwhile. */
function* rising<Answer>(steps: Generator<Share, Answer>): Generator<Share, Answer> {
  for (let most = 0; ;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield (most = Math.max(most, step.value));
  }
}

/** Steps of a part of the work, as steps of the whole. */
function* within<Answer>(steps: Generator<Share, Answer>, from: number, share: number): Generator<Share, Answer> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield from + share * step.value;
  }
}

/** How fine the lattice has to be [mm]: what the level goes round must not lie between its points, and round things stay whole. */
function edgeFor(level: Level, cubes: readonly ActiveCube[]): number {
  const fields = new Set(cubes.flatMap(({ nodes }) => nodes.map(({ path }) => path.field)));
  let [thinnest, sharpest] = [Infinity, Infinity];
  for (const { within: inside, round } of fields) {
    thinnest = Math.min(thinnest, Math.max(0, inside));
    sharpest = Math.min(sharpest, Math.max(0, round));
  }
  const fine = Math.max(COARSER * safeRadius(level, sharpest), SHARP_RADIUS * level.bound);
  return Math.min(LARGEST_RADIUS_MM, 0.95 * (thinnest + level.at), fine) / RADIUS_PER_EDGE;
}
