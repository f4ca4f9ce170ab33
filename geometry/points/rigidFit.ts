import { decompose } from '../core/linear';
import { fail, succeed, type Result } from '../core/result';
import { add, cross, dot, length, scale, subtract, ZERO, type Vector } from '../core/vector';

/** The motion that carries one set of points onto another: `to` ≈ R · `from` + t. */
export interface RigidFit {
  /** rows of R, a proper rotation */
  readonly rotation: readonly [Vector, Vector, Vector];
  /** t [mm] */
  readonly translation: Vector;
  /** distance left at each point, in their order [mm] */
  readonly residuals: readonly number[];
  /** root of the mean of the residuals' squares [mm] */
  readonly rms: number;
  /** times as large as `from` the set would have to be to fit best; 1 where the units are right */
  readonly size: number;
  /** every point lies in one plane: a set from a mirrored frame would fit as well and cannot be told */
  readonly planar: boolean;
}

export type RigidFitFailure =
  | { readonly kind: 'too-few'; readonly count: number }
  /** `across`: how far the points lie off their best line, `along`: how far they reach along it, both rms [mm] */
  | { readonly kind: 'collinear'; readonly set: 'from' | 'to'; readonly along: number; readonly across: number }
  /** `rms` with a rotation, `mirroredRms` with a reflection [mm] */
  | { readonly kind: 'mirrored'; readonly rms: number; readonly mirroredRms: number };

/** Points closer to one line than this, as a share of its length, say nothing of the turn about it: 1 mm on a metre. */
const THINNEST = 1e-3;
/** Flatter than this, a set is a plane to rounding. */
const FLAT = 1e-9;
/** A reflection that fits this many times better was no noise. */
const CLEARLY_BETTER = 3;

type Rows = readonly [Vector, Vector, Vector];

const turn = (rows: Rows, v: Vector): Vector => [dot(rows[0], v), dot(rows[1], v), dot(rows[2], v)];

const meanOf = (points: readonly Vector[]): Vector => scale(points.reduce(add, ZERO), 1 / points.length);

/** Σ a·bᵀ */
function productOf(a: readonly Vector[], b: readonly Vector[]): [Vector, Vector, Vector] {
  const row = (i: 0 | 1 | 2): Vector => a.reduce<Vector>((sum, p, k) => add(sum, scale(b[k], p[i])), ZERO);
  return [row(0), row(1), row(2)];
}

const rootMean = (squares: number, count: number): number => Math.sqrt(Math.max(0, squares) / count);
const sumOfSquares = (points: readonly Vector[]): number => points.reduce((sum, p) => sum + dot(p, p), 0);

/**
 * Least-squares rigid fit of paired points in closed form.
 *
 * With both sets about their means, H = Σ p'·q'ᵀ = U·S·Vᵀ; R = V·diag(1, 1, det(V·Uᵀ))·Uᵀ and t = q̄ − R·p̄. The third sign
 * keeps R a rotation. Where a reflection would fit clearly better and the set is no plane, one of the frames is mirrored: no
 * rotation is right, and none is given.
 *
 * @param from - points as measured [mm]
 * @param to - the same points, in the same order, in the frame they are moved to [mm]
 * @returns the motion with what is left at each point; or `too-few` (under three), `collinear`, `mirrored`
 * @throws RangeError where the sets differ in number
 * @see K. S. Arun, T. S. Huang, S. D. Blostein, "Least-squares fitting of two 3-D point sets", IEEE PAMI 9(5), 1987, 698–700;
 *   the sign of the third axis as in S. Umeyama, IEEE PAMI 13(4), 1991, 376–380, eqs. 39–43; both from memory
 */
export function rigidFit(from: readonly Vector[], to: readonly Vector[]): Result<RigidFit, RigidFitFailure> {
  const count = from.length;
  if (to.length !== count) throw new RangeError(`${count} points cannot be paired with ${to.length}`);
  if (count < 3) return fail({ kind: 'too-few', count });
  const means = { from: meanOf(from), to: meanOf(to) };
  const about = { from: from.map((p) => subtract(p, means.from)), to: to.map((q) => subtract(q, means.to)) };
  for (const set of ['from', 'to'] as const) {
    const spread = decompose(productOf(about[set], about[set])).values;
    const [along, across] = [rootMean(spread[0], count), rootMean(spread[1], count)];
    if (across <= THINNEST * along) return fail({ kind: 'collinear', set, along, across });
  }
  const { values, left, right } = decompose(productOf(about.from, about.to));
  const handed = dot(cross(left[0], left[1]), left[2]) * dot(cross(right[0], right[1]), right[2]) < 0 ? -1 : 1;
  const planar = values[2] <= FLAT * values[0];
  const row = (i: 0 | 1 | 2): Vector =>
    add(add(scale(left[0], right[0][i]), scale(left[1], right[1][i])), scale(left[2], handed * right[2][i]));
  const rotation: Rows = [row(0), row(1), row(2)];
  const translation = subtract(means.to, turn(rotation, means.from));
  const residuals = from.map((p, k) => length(subtract(add(turn(rotation, p), translation), to[k])));
  const rms = rootMean(
    residuals.reduce((sum, r) => sum + r * r, 0),
    count,
  );
  const [fromSquares, toSquares] = [sumOfSquares(about.from), sumOfSquares(about.to)];
  if (handed < 0 && !planar) {
    const mirroredRms = rootMean(fromSquares + toSquares - 2 * (values[0] + values[1] + values[2]), count);
    if (rms > CLEARLY_BETTER * mirroredRms) return fail({ kind: 'mirrored', rms, mirroredRms });
  }
  const size = (values[0] + values[1] + handed * values[2]) / fromSquares;
  return succeed({ rotation, translation, residuals, rms, size, planar });
}

/** A point of the measured set, moved: R·p + t. */
export const moved = (fit: Pick<RigidFit, 'rotation' | 'translation'>, point: Vector): Vector =>
  add(turn(fit.rotation, point), fit.translation);
