import type { AxleName, SetupDocument } from '../../car/document';
import type { CarMechanism } from '../../car/mechanism';
import { assembleCar } from '../../setup/assembleCar';
import type { Sides } from '../../setup/setupEdits';
import { BOTH_SIDES, fitUpCorners, noEnvelope } from '../corners';
import { isSurfaceOnly } from '../meshes/openMeshes';
import { partMeshes, type MeshFiles } from '../meshes/partMeshes';
import type { PartMeshes } from '../pieces';
import { PLACEMENT_WIDTH, writeRelative, type Placement } from '../placement';
import { noHint } from '../shapes/gap';
import { gapBetween } from '../shapes/gapBetween';
import type { MeshLibrary } from '../shapes/mesh';
import { hasMirrorImage, isMirrorImage } from './mirrorImage';
import { fieldOf, withPieces, type PairField } from './pairCorner';
import { pairsOf } from './pairs';
import { pairRow, type ClearanceVerdict } from './pairRow';
import { clearanceOf, findWorst } from './search';

/** The pair with the least to spare over its margin, which need not be the nearest one. */
export interface LeastSpare {
  readonly pair: readonly [string, string];
  readonly axle: AxleName;
  /** both: the right-hand pair is the left-hand one's mirror image */
  readonly side: Sides;
  /** clearance less margin [mm], negative where it is short; as much as the margin too little where they cut and no depth is known */
  readonly spare: number;
  readonly verdict: ClearanceVerdict;
}

/** The least clearance of a setup [mm], negative where parts cut; null with the reason where it is not known. */
export type LeastGap = { readonly mm: number; readonly spare: LeastSpare | null } | { readonly mm: null; readonly why: string };

/** Whether gaps of a car can be asked for at all: null, or why not. */
export function whyNoGaps({ document }: CarMechanism): string | null {
  return Object.keys(document.parts ?? {}).length === 0 ? 'the car file gives no parts' : null;
}

/** The meshes of a car as its least gaps need them; without a library there are none, and parts that are a mesh are missed. */
export function gapMeshes(mechanism: CarMechanism, files: MeshFiles = {}, library: MeshLibrary | null): PartMeshes {
  return library === null ? new Map() : partMeshes(mechanism.document, mechanism.mmPerUnit, files, library);
}

/** A pair in the setup, and whether it speaks for its mirror image too. */
interface PairAsked {
  readonly field: PairField;
  readonly isBoth: boolean;
  /** in the middle of the grid [mm] */
  readonly apart: number;
}

/**
 * The least clearance of any two parts of some axles in one setup, over all that the wheels can do there, and the pair that has
 * the least to spare. All pairs are searched as one: a pair is looked at only where it could be nearer than the nearest so far.
 */
export function leastGap(
  mechanism: CarMechanism,
  setup: SetupDocument,
  axles: readonly AxleName[],
  meshes: PartMeshes,
): LeastGap {
  const none = whyNoGaps(mechanism);
  if (none !== null) return { mm: null, why: none };
  const car = assembleCar(mechanism, setup);
  if (!car.ok) return { mm: null, why: car.failure.message };
  const pairs: PairAsked[] = [];
  for (const corner of fitUpCorners([{ name: '', car: car.value }], axles)) {
    const { axle } = corner.axle;
    if (corner.envelope === null) return { mm: null, why: noEnvelope(corner) };
    const made = withPieces(mechanism, corner, corner.envelope, meshes);
    const [missed] = made.made.missing;
    if (missed !== undefined) return { mm: null, why: `the part "${missed.name}" needs ${missed.missing}` };
    const open = made.made.pieces.find(isSurfaceOnly);
    if (open !== undefined)
      return { mm: null, why: `the mesh of the part "${open.name}" is not closed: what stands within it is not told` };
    const isMirrored = isMirrorImage(car.value[axle]!);
    for (const [first, second] of pairsOf(made.made.pieces)) {
      const isBoth = isMirrored && hasMirrorImage(first) && hasMirrorImage(second);
      if (isBoth && corner.side.mechanism.side === BOTH_SIDES[1]) continue;
      const field = fieldOf(mechanism, made, [first.name, second.name]);
      if (field !== null) pairs.push({ field, isBoth, apart: apartMidway(field) });
    }
  }
  // the nearest first: of the others most places are then ruled out unseen
  pairs.sort((a, b) => a.apart - b.apart);
  // nothing is decided by a margin here: the descent and its usual budget, and no more
  const worst = findWorst(
    pairs.map(({ field }) => field),
    -Infinity,
  );
  if (worst === null) return { mm: null, why: 'no two parts move against each other' };
  return { mm: clearanceOf(worst), spare: leastSpare(pairs, pairs[worst.field]) };
}

/**
 * The pair with the least to spare, judged as the study of clearance judges it.
 * @param nearest - the pair of the least clearance
 */
function leastSpare(pairs: readonly PairAsked[], nearest: PairAsked): LeastSpare | null {
  const { field, isBoth } = leastOverMargin(pairs, nearest);
  const { axle, side } = field.envelope;
  const row = pairRow([field], { pair: [field.first.name, field.second.name], axle, side });
  return row === null ? null : { pair: row.pair, axle, side: isBoth ? 'both' : side, spare: row.spare, verdict: row.verdict };
}

/** The pair whose clearance less its margin is least: the search of the least clearance, with its margin taken off every one's. */
function leastOverMargin(pairs: readonly PairAsked[], nearest: PairAsked): PairAsked {
  // no pair is nearer, so only one that needs more can have less to spare
  const asked = [nearest, ...pairs.filter(({ field }) => field.needs > nearest.field.needs)];
  if (asked.length === 1) return nearest;
  asked.sort((a, b) => a.apart - a.field.needs - (b.apart - b.field.needs));
  const worst = findWorst(
    asked.map(({ field }) => ({ ...field, lessBy: field.needs })),
    -Infinity,
  );
  return asked[worst?.field ?? 0];
}

/** How far apart two pieces are in the middle of their grid [mm], roughly; infinite where they have no place there. */
function apartMidway({ placements, first, second, solids, counts }: PairField): number {
  const [a, b] = [placements.of(first.follow), placements.of(second.follow)];
  const middle = a.isPlaced.length >> 1;
  if (a.isPlaced[middle] === 0 || b.isPlaced[middle] === 0) return Infinity;
  const at = (places: Float64Array): Placement => places.subarray(middle * PLACEMENT_WIDTH, (middle + 1) * PLACEMENT_WIDTH);
  const relative = new Float64Array(PLACEMENT_WIDTH);
  writeRelative(at(a.places), at(b.places), relative);
  const gap = gapBetween(solids[0], solids[1], relative, { cutoff: Infinity, hint: noHint(), isFine: false });
  return counts(gap) ? gap.distance : Infinity;
}
