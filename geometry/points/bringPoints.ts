import type { AxleDocument, AxleName, CarDocument, SideName } from '../car/document';
import type { Warning } from '../car/fault';
import { fail, succeed, type Result } from '../core/result';
import { add, distance, length, mirror, scale, subtract, ZERO, type Vector } from '../core/vector';
import { designPoint, mmPerUnitOf } from './designPoints';
import { CAR_AXES, frameOf, inCarFrame, type AxesFailure, type Frame, type FrameAxes } from './frameAxes';
import { matchName, pointNamesOf, type NameMatch } from './matchName';
import { MM_PER_POINT_UNIT, type PointRow, type PointUnit } from './readPoints';
import { moved, rigidFit, type RigidFit, type RigidFitFailure } from './rigidFit';
import { warningsOf } from './bringWarnings';

/** A reference point by name, in car coordinates [mm]. */
export interface ReferencePoint {
  readonly name: string;
  readonly at: Vector;
  /** its row's name in the list; without one it is the row that is named for it by hand, else the one of its own name */
  readonly row?: string;
}

/** How a list of points is to be understood. */
export interface BringOptions {
  readonly axle: AxleName;
  readonly unit: PointUnit;
  readonly axes: FrameAxes;
  /** added to every point of the list, in its own unit along its own axes; a datum takes it away again */
  readonly shift: Vector;
  /** the side that was measured; `both`: told apart by column, name or sign of y */
  readonly side: SideName | 'both';
  /** `each`: every side as measured. `mirror`: the other side is the mirror image. `average`: the mean of both, mirrored */
  readonly sides: 'each' | 'mirror' | 'average';
  /** the list is moved onto these; null where it was measured in the car's own frame */
  readonly datum: readonly ReferencePoint[] | null;
  /** by hand: name in the list → point of the car, or null to leave the row out */
  readonly names: Readonly<Record<string, string | null>>;
}

export const DEFAULT_BRING: Omit<BringOptions, 'axle'> = {
  unit: 'mm',
  axes: CAR_AXES,
  shift: ZERO,
  side: 'left',
  sides: 'each',
  datum: null,
  names: {},
};

/** One row of the list, in the car's frame. */
export interface BroughtRow extends PointRow {
  /** `unknown`: no point has this name; `reference`: only moved the list; `leftOut`: by hand, or of the other axle */
  readonly state: 'taken' | 'unknown' | 'reference' | 'leftOut';
  readonly point: string | null;
  readonly suggestion: string | null;
  readonly onSide: SideName;
  /** car coordinates [mm] */
  readonly at: Vector;
}

/** One point that would be taken. */
export interface BroughtPoint {
  readonly point: string;
  readonly side: SideName;
  /** car coordinates [mm] */
  readonly at: Vector;
  /** where the car has it now [mm]; null for a point that it does not have */
  readonly replaces: Vector | null;
  readonly change: Vector | null;
  readonly shift: number | null;
  /** lines of the list that it comes from */
  readonly lines: readonly number[];
  /** averaged: how far either side lies from the mean [mm] */
  readonly spread: number | null;
}

export interface DatumFit extends RigidFit {
  readonly points: readonly { readonly name: string; readonly wanted: Vector; readonly found: Vector; readonly miss: number }[];
}

export interface Brought {
  readonly frame: Frame;
  readonly datum: DatumFit | null;
  readonly rows: readonly BroughtRow[];
  readonly points: readonly BroughtPoint[];
  readonly warnings: readonly Warning[];
}

export type BringFailure =
  | AxesFailure
  | (RigidFitFailure & { readonly names: readonly string[] })
  /** reference points that the list does not have */
  | { readonly kind: 'no-reference'; readonly names: readonly string[]; readonly listed: readonly string[] }
  /** two rows of the list are the same point of the same side; `rows`: all of them as they were understood */
  | {
      readonly kind: 'twice';
      readonly point: string;
      readonly side: SideName;
      readonly lines: readonly number[];
      readonly rows: readonly BroughtRow[];
    };

/**
 * Brings a list of points to a car: unit, axes, datum, names, sides. Nothing of the car is changed.
 *
 * p_car = R · (M · (p + shift) · mmPerUnit) + t with M from the axes and R, t from the reference points.
 *
 * @returns every row in the car's frame and every point that would be taken with what it replaces [mm]; or why it cannot be
 * @throws RangeError where the car has no such axle, or sides are asked for that the measured ones do not allow
 */
export function bringPoints(car: CarDocument, list: readonly PointRow[], options: BringOptions): Result<Brought, BringFailure> {
  const axle = car[options.axle];
  if (!axle) throw new RangeError(`this car has no ${options.axle} axle`);
  if (options.side === 'both' && options.sides === 'mirror')
    throw new RangeError('both sides were measured: keep each, or take their average; a mirror image needs one of them');
  if (options.side !== 'both' && options.sides === 'average') throw new RangeError('an average needs both sides');
  const frame = frameOf(options.axes);
  if (!frame.ok) return frame;
  const mm = MM_PER_POINT_UNIT[options.unit];
  const turned = list.map((row) => ({ row, at: inCarFrame(frame.value, scale(add(row.read, options.shift), mm)) }));
  const datum = options.datum === null ? null : fitDatum(turned, options.datum, options.names);
  if (datum && !datum.ok) return datum;
  const fit = datum?.value ?? null;
  const references = new Set((options.datum ?? []).map(({ name, row }) => row ?? name));
  const known = pointNamesOf(axle);
  const rows = turned.map(({ row, at }) => rowOf(row, fit ? moved(fit, at) : at, known, references, options));
  const points = pointsOf(axle, rows, options, mmPerUnitOf(car));
  if (!points.ok) return points;
  const brought = { frame: frame.value, datum: fit, rows, points: points.value };
  return succeed({ ...brought, warnings: warningsOf(brought, options) });
}

interface TurnedRow {
  readonly row: PointRow;
  /** in the directions of the car [mm] */
  readonly at: Vector;
}

/**
 * The row of a reference point. A list of both sides may name it twice: a reference of the left is then the row farther left,
 * wherever the list's own middle is.
 */
function rowOfReference(
  { name, at, row }: ReferencePoint,
  turned: readonly TurnedRow[],
  names: BringOptions['names'],
): TurnedRow | undefined {
  const named = (wanted: (row: PointRow) => boolean): readonly TurnedRow[] => turned.filter((one) => wanted(one.row));
  const listed = turned.map((one) => one.row.name);
  const byHand = row === undefined ? named((one) => names[one.name] === name) : named((one) => one.name === row);
  const own = matchName(name, listed).point;
  const side = at[1] < 0 ? 'right' : 'left';
  const found = byHand.length > 0 || row !== undefined ? byHand : named((one) => one.name === own);
  const ofSide = found.filter((one) => one.row.side === undefined || one.row.side === side);
  const outward = side === 'left' ? 1 : -1;
  return ofSide.reduce<TurnedRow | undefined>(
    (outmost, one) => (outmost && outmost.at[1] * outward >= one.at[1] * outward ? outmost : one),
    undefined,
  );
}

function fitDatum(
  turned: readonly TurnedRow[],
  datum: readonly ReferencePoint[],
  names: BringOptions['names'],
): Result<DatumFit, BringFailure> {
  const pairs: { readonly name: string; readonly from: Vector; readonly to: Vector }[] = [];
  const missing: string[] = [];
  for (const reference of datum) {
    const from = rowOfReference(reference, turned, names)?.at;
    if (from) pairs.push({ name: reference.name, from, to: reference.at });
    else missing.push(reference.name);
  }
  if (missing.length > 0) return fail({ kind: 'no-reference', names: missing, listed: turned.map(({ row }) => row.name) });
  const fit = rigidFit(
    pairs.map(({ from }) => from),
    pairs.map(({ to }) => to),
  );
  if (!fit.ok) return fail({ ...fit.failure, names: pairs.map(({ name }) => name) });
  const points = pairs.map(({ name, from, to }, k) => ({
    name,
    wanted: to,
    found: moved(fit.value, from),
    miss: fit.value.residuals[k],
  }));
  return succeed({ ...fit.value, points });
}

function rowOf(
  row: PointRow,
  at: Vector,
  known: readonly string[],
  references: ReadonlySet<string>,
  options: BringOptions,
): BroughtRow {
  const byHand = Object.hasOwn(options.names, row.name) ? options.names[row.name] : undefined;
  const match: NameMatch = byHand === undefined ? matchName(row.name, known) : { point: byHand, suggestion: null, side: null };
  const onSide = options.side === 'both' ? (row.side ?? match.side ?? (at[1] < 0 ? 'right' : 'left')) : options.side;
  const base = { ...row, at, onSide, suggestion: match.suggestion };
  const elsewhere = row.axle !== undefined && row.axle !== options.axle;
  const otherSide = options.side !== 'both' && row.side !== undefined && row.side !== options.side;
  if (byHand === null || elsewhere || otherSide) return { ...base, state: 'leftOut', point: null, suggestion: null };
  if (match.point !== null) return { ...base, state: 'taken', point: match.point };
  return { ...base, state: references.has(row.name) ? 'reference' : 'unknown', point: null };
}

function pointsOf(
  axle: AxleDocument,
  rows: readonly BroughtRow[],
  { sides }: BringOptions,
  mmPerUnit: number,
): Result<readonly BroughtPoint[], BringFailure> {
  const given = new Map<string, { readonly point: string; left?: BroughtRow; right?: BroughtRow }>();
  for (const row of rows) {
    if (row.state !== 'taken' || row.point === null) continue;
    const entry: { point: string; left?: BroughtRow; right?: BroughtRow } = given.get(row.point) ?? { point: row.point };
    const before = entry[row.onSide];
    if (before) return fail({ kind: 'twice', point: row.point, side: row.onSide, lines: [before.line, row.line], rows });
    entry[row.onSide] = row;
    given.set(row.point, entry);
  }
  const points: BroughtPoint[] = [];
  const add = (point: string, side: SideName, at: Vector, from: readonly BroughtRow[], spread: number | null): void => {
    const replaces = designPoint(axle, side, point, mmPerUnit);
    const change = replaces && subtract(at, replaces);
    points.push({
      point,
      side,
      at,
      replaces,
      change,
      shift: change && length(change),
      lines: from.map(({ line }) => line),
      spread,
    });
  };
  for (const { point, left, right } of given.values()) {
    if (sides === 'average' && left && right) {
      const other = mirror(right.at);
      const mean: Vector = [0, 1, 2].map((i) => (left.at[i] + other[i]) / 2) as unknown as Vector;
      add(point, 'left', mean, [left, right], distance(left.at, other) / 2);
      continue;
    }
    // without a right-hand point of its own the right is the mirror image: a right-hand row alone is then the left's mirror
    const mirrored = sides !== 'each';
    if (left) add(point, 'left', left.at, [left], null);
    if (right) add(point, mirrored ? 'left' : 'right', mirrored ? mirror(right.at) : right.at, [right], null);
  }
  return succeed(points);
}
