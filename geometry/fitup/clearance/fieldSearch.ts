import { SOLVED, type Motion } from '../../corner/motion';
import { trackCorner } from '../../corner/solveCorner';
import type { AssembledSide } from '../../setup/assembleSide';
import { trackAt, type Envelope } from '../envelope';
import type { Piece } from '../pieces';
import { movedAtMost, PLACEMENT_WIDTH, seenMovedAtMost, writeRelative, type Placement } from '../placement';
import { noHint, type Gap } from '../shapes/gap';
import { ballGap, gapBetween } from '../shapes/gapBetween';
import type { Solid } from '../shapes/solid';
import type { GridPlacements } from './placements';

/** One setup's share of a pair's search: its envelope, and the two pieces as that setup makes them. */
export interface Field {
  readonly side: AssembledSide;
  readonly envelope: Envelope;
  readonly placements: GridPlacements;
  readonly first: Piece;
  readonly second: Piece;
  /** the solids, cut short at a joint that the two share */
  readonly solids: readonly [Solid, Solid];
  /** whether a gap counts; false near a joint that the two share */
  readonly counts: (gap: Gap) => boolean;
  /** taken off every distance [mm]; none when not given. With its margin here the worst of many pairs is the one of least spare */
  readonly lessBy?: number;
}

/** Every so manieth position each way is looked at first. */
const COARSEST = 4;
/** How far beyond what counts a distance is worked out there, in ways to the neighbours that it is to speak for. */
const SPOKEN_FOR = 1.5;
/** What does not matter to any answer [mm]. */
const NEGLIGIBLE_MM = 1e-4;

/** The positions of one field. */
export class FieldSearch {
  /** the second piece as the first sees it, by position of the grid */
  private readonly relatives: readonly Placement[];
  readonly distances: Float64Array;
  readonly isPlaced: Uint8Array;
  /** 1 where the distance was worked out; else it is a bound below */
  readonly isExact: Uint8Array;
  best = Infinity;
  bestAt = -1;
  /** no distance of the two is told as less: of what has no depth only that it cuts is known */
  readonly floor: number;
  tried = 0;
  private readonly lessBy: number;
  private readonly hint = noHint();
  private readonly a = new Float64Array(PLACEMENT_WIDTH);
  private readonly b = new Float64Array(PLACEMENT_WIDTH);

  constructor(
    readonly field: Field,
    readonly index: number,
  ) {
    const { travels, racks } = field.envelope;
    this.lessBy = field.lessBy ?? 0;
    this.floor = field.solids.some((solid) => solid.kind === 'mesh' || solid.isSkin) ? -this.lessBy : -Infinity;
    const count = travels.length * racks.length;
    const table = new Float64Array(count * PLACEMENT_WIDTH);
    this.relatives = Array.from({ length: count }, (_, i) => table.subarray(i * PLACEMENT_WIDTH, (i + 1) * PLACEMENT_WIDTH));
    this.distances = new Float64Array(count).fill(Infinity);
    this.isPlaced = new Uint8Array(count);
    this.isExact = new Uint8Array(count);
    const a = field.placements.of(field.first.follow);
    const b = field.placements.of(field.second.follow);
    const at = (places: Float64Array, i: number): Placement => places.subarray(i * PLACEMENT_WIDTH, (i + 1) * PLACEMENT_WIDTH);
    for (let i = 0; i < count; i++) {
      if (a.isPlaced[i] === 0 || b.isPlaced[i] === 0) continue;
      writeRelative(at(a.places, i), at(b.places, i), this.relativeAt(i));
      this.isPlaced[i] = 1;
    }
  }

  relativeAt(index: number): Placement {
    return this.relatives[index];
  }

  /** @returns false where a piece has no place */
  place(motion: Motion, rack: number, out: Placement): boolean {
    const { first, second } = this.field;
    if (!first.follow(motion, rack, this.a) || !second.follow(motion, rack, this.b)) return false;
    writeRelative(this.a, this.b, out);
    return true;
  }

  /** Where the first piece stands at the position placed last. */
  get firstPlacement(): Placement {
    return this.a;
  }

  /** @param cutoff - a distance that is not below may be told as this [mm] */
  distanceOf(relative: Placement, cutoff: number): number {
    const { solids, counts } = this.field;
    this.tried += 1;
    const own = cutoff + this.lessBy;
    const gap = gapBetween(solids[0], solids[1], relative, { cutoff: own, hint: this.hint, isFine: false });
    if (gap.distance >= own) return cutoff;
    return counts(gap) ? gap.distance - this.lessBy : Infinity;
  }

  /**
   * Works the grid out, from coarse to fine. A position around which nothing can be the worst keeps a bound below its distance:
   * that of the balls, or of a neighbour less how far the pieces can have come since.
   */
  lookAtGrid(all: readonly FieldSearch[]): void {
    const [a, b] = this.field.solids;
    for (let i = 0; i < this.isPlaced.length; i++) {
      if (this.isPlaced[i] === 1) this.distances[i] = ballGap(a, b, this.relativeAt(i)) - this.lessBy;
    }
    for (let stride = COARSEST; stride >= 1; stride /= 2) {
      const level = this.levelOf(stride);
      if (stride < COARSEST) for (const i of level) this.boundFromNeighbours(i, stride);
      level.sort((i, j) => this.distances[i] - this.distances[j]);
      for (const i of level) this.lookAtPosition(i, stride, all);
    }
  }

  private lookAtPosition(i: number, stride: number, all: readonly FieldSearch[]): void {
    let known = Infinity;
    for (const { best } of all) known = Math.min(known, best);
    if (known <= this.floor) return;
    const reach = this.reachAround(i);
    if (this.distances[i] >= known + reach - NEGLIGIBLE_MM) return;
    // of the coarser grids a distance is worked out beyond what counts, so that it can speak for those around it
    const cutoff = known + reach * (stride === 1 ? 1 : 1 + SPOKEN_FOR * stride);
    const distance = this.distanceOf(this.relativeAt(i), cutoff);
    this.distances[i] = distance;
    if (distance === Infinity || distance === cutoff) return;
    this.isExact[i] = 1;
    if (distance >= this.best) return;
    this.best = distance;
    this.bestAt = i;
  }

  /** Positions that a grid of this stride has and a coarser one has not. */
  private levelOf(stride: number): number[] {
    const { travels, racks } = this.field.envelope;
    const level: number[] = [];
    const isOn = (row: number, column: number, by: number): boolean => row % by === 0 && column % by === 0;
    for (let row = 0; row < travels.length; row += stride) {
      for (let column = 0; column < racks.length; column += stride) {
        const index = row * racks.length + column;
        if (this.isPlaced[index] === 1 && (stride === COARSEST || !isOn(row, column, 2 * stride))) level.push(index);
      }
    }
    return level;
  }

  /** Those of the coarser grid around it speak for it. */
  private boundFromNeighbours(index: number, stride: number): void {
    const { travels, racks } = this.field.envelope;
    const columns = racks.length;
    const [row, column] = [Math.floor(index / columns), index % columns];
    const around = (at: number): readonly number[] => (at % (2 * stride) === 0 ? [at] : [at - stride, at + stride]);
    for (const r of around(row)) {
      for (const c of around(column)) {
        const other = r * columns + c;
        if (r >= travels.length || c >= columns || this.isPlaced[other] === 0) continue;
        // a gap that does not count says nothing of the ones beside it
        if (this.distances[other] === Infinity) continue;
        const least = this.distances[other] - this.canMove(this.relativeAt(other), this.relativeAt(index));
        if (least > this.distances[index]) this.distances[index] = least;
      }
    }
  }

  /** How far a point of the second can move, as the first sees it, from a position of the grid to the middle of the next [mm]. */
  private reachAround(index: number): number {
    const columns = this.field.envelope.racks.length;
    const column = index % columns;
    const here = this.relativeAt(index);
    let most = 0;
    const reach = (isThere: boolean, other: number): void => {
      if (isThere && this.isPlaced[other] === 1) most = Math.max(most, 0.5 * this.canMove(here, this.relativeAt(other)));
    };
    reach(index >= columns, index - columns);
    reach(index + columns < this.isPlaced.length, index + columns);
    reach(column > 0, index - 1);
    reach(column + 1 < columns, index + 1);
    return most;
  }

  /**
   * How the pieces stand at any position.
   * @returns false where it cannot be reached
   */
  placeAt(travel: number, rack: number, out: Placement): boolean {
    const { envelope, side } = this.field;
    const track = trackAt(envelope, nearestIn(envelope.travels, travel), nearestIn(envelope.racks, rack));
    return trackCorner(side.corner, track, travel, rack) === SOLVED && this.place(track.motion, rack, out);
  }

  /** How they stand at the nearest position of the grid. */
  relativeNear(travel: number, rack: number): Placement {
    const { travels, racks } = this.field.envelope;
    return this.relativeAt(nearestIn(travels, travel) * racks.length + nearestIn(racks, rack));
  }

  /** How far a point of the one can have moved, as the other sees it, at most [mm]. */
  canMove(from: Placement, to: Placement): number {
    const [a, b] = this.field.solids;
    return a.ball.radius < b.ball.radius
      ? seenMovedAtMost(from, to, a.ball.centre, a.ball.radius)
      : movedAtMost(from, to, b.ball.centre, b.ball.radius);
  }
}

export const gridSpacing = (list: readonly number[]): number =>
  list.length < 2 ? 0 : (list[list.length - 1] - list[0]) / (list.length - 1);

export function nearestIn(list: readonly number[], value: number): number {
  if (list.length < 2) return 0;
  return Math.min(list.length - 1, Math.max(0, Math.round((value - list[0]) / gridSpacing(list))));
}

/** Ways to the eight positions around one. */
export const ROUND_ABOUT = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
] as const;
