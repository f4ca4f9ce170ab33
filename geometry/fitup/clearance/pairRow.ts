import type { AxleName, SideName } from '../../car/document';
import { mirror, type Vector } from '../../core/vector';
import { isSurfaceOnly } from '../meshes/openMeshes';
import { placed } from '../placement';
import type { PairField } from './pairCorner';
import type { Remedy } from './remedies';
import { clearanceOf, findWorst } from './search';

/** Two parts on one wheel, by name. */
export interface PairOfCorner {
  readonly pair: readonly [string, string];
  readonly axle: AxleName;
  readonly side: SideName;
}

/**
 * - `clear`: the margin is kept, proved over the whole envelope; `close`: kept, with less than a quarter of it to spare
 * - `short`: the margin is not kept; `cuts`: they cut into each other
 * - `not-proved`: kept wherever it was looked, but positions between could be nearer than the margin, or one of the two has no
 *   inside and could hold the other
 */
export type ClearanceVerdict = 'clear' | 'close' | 'short' | 'cuts' | 'not-proved';

/** The worst of one pair on one corner, over all positions of all setups asked for. Lengths in mm, car frame. */
export interface ClearanceRow extends PairOfCorner {
  /** least distance; negative where they cut into each other, 0 where they do and no depth is known */
  readonly clearance: number;
  /** how much less it could be between the positions that were tried */
  readonly bound: number;
  readonly cuts: boolean;
  /** required margin, and what is left of the clearance over it */
  readonly needs: number;
  readonly spare: number;
  readonly verdict: ClearanceVerdict;
  /** those of the pair whose mesh is not closed: only their surface was looked at, and what is within it is not told */
  readonly surfaceOnly: readonly string[];
  readonly at: { readonly setup: string; readonly travel: number; readonly rack: number };
  /** nearest point of each */
  readonly points: readonly [Vector, Vector];
  /** only where the margin is not kept; the first rows only */
  readonly wouldClear: readonly Remedy[];
}

/**
 * The worst of a pair over some setups, without remedies.
 * @returns null where the two are joined wherever they are near each other
 */
export function pairRow(fields: readonly PairField[], { axle, side, pair }: PairOfCorner): ClearanceRow | null {
  const { needs } = fields[0];
  const worst = findWorst(fields, needs);
  if (worst === null) return null;
  const { gap, bound, travel, rack } = worst;
  const { envelope, first, second } = fields[worst.field];
  const surfaceOnly = [first, second].filter(isSurfaceOnly).map(({ name }) => name);
  const clearance = clearanceOf(worst);
  const cuts = gap.isCutOnly || clearance < 0;
  const inCar = (point: Vector): Vector => {
    const now = placed(worst.placement, point);
    return envelope.side === 'left' ? now : mirror(now);
  };
  return {
    pair,
    axle,
    side,
    clearance,
    bound,
    cuts,
    needs,
    spare: clearance - needs,
    verdict: verdictOf(clearance, bound, needs, cuts, surfaceOnly),
    surfaceOnly,
    at: { setup: envelope.setup, travel, rack },
    points: [inCar(gap.points[0]), inCar(gap.points[1])],
    wouldClear: [],
  };
}

/** Kept with less than this share of the margin to spare is close. */
const CLOSE_SHARE = 0.25;

function verdictOf(
  clearance: number,
  bound: number,
  needs: number,
  cuts: boolean,
  surfaceOnly: readonly string[],
): ClearanceVerdict {
  if (cuts) return 'cuts';
  if (clearance < needs) return 'short';
  if (clearance - bound < needs || surfaceOnly.length > 0) return 'not-proved';
  return clearance < needs * (1 + CLOSE_SHARE) ? 'close' : 'clear';
}
