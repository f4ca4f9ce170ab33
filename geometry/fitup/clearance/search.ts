import { PLACEMENT_WIDTH, type Placement } from '../placement';
import type { Gap } from '../shapes/gap';
import { gapBetween } from '../shapes/gapBetween';
import { cellsOf, withLeast, type Cell, type Tried } from './cells';
import { FieldSearch, gridSpacing, ROUND_ABOUT, type Field } from './fieldSearch';
import { LeastHeap } from './leastHeap';

/** The worst position of a pair. */
export interface Worst {
  readonly gap: Gap;
  /** which field */
  readonly field: number;
  readonly travel: number;
  readonly rack: number;
  /** where the first piece stands there */
  readonly placement: Placement;
  /** how much less the clearance could be at a position that was not tried [mm] */
  readonly bound: number;
  /** positions at which the distance was worked out */
  readonly tried: number;
}

/** 0 where two cut and how deep is not known. */
export const clearanceOf = ({ gap }: Worst): number => (gap.isCutOnly ? Math.min(0, gap.distance) : gap.distance);

/** To this the worst is found [mm]. */
export const WORST_MM = 0.05;
/** Positions that every pair gets, and those that one gets whose verdict is still open. */
const TRIED = 40;
const TRIED_WHILE_OPEN = 4000;
/** The descent to the worst ends where a step moves the pieces by less against each other [mm]. */
const SMALLEST_MOVE_MM = 1e-3;
/** How many places of the grid the descent starts from. */
const STARTS = 4;

/**
 * The least clearance of a pair over all positions of some setups.
 *
 * First the grid: a position is worked out only where the balls around the pieces, or how little they have moved since a
 * position that was, let it be the worst. Then a descent from the worst places of the grid. Then the rest is cut up until
 * nothing in it can be nearer by more than `WORST_MM`, or nothing can change the verdict, or the budget is spent.
 * @param needs - required margin [mm]: as long as it decides nothing, more positions are tried
 * @returns null where no position counts
 */
export function findWorst(fields: readonly Field[], needs: number): Worst | null {
  const searches = fields.map((field, index) => new FieldSearch(field, index));
  for (const search of searches) search.lookAtGrid(searches);
  const record = new Record(searches);
  if (record.best === null) return null;
  if (!record.isAtFloor) {
    record.descend();
    record.cutUp(needs);
  }
  return record.answer();
}

/** The worst found so far, and what is left to be looked at. */
class Record {
  best: (Tried & { readonly field: number }) | null = null;
  private readonly cells = new LeastHeap<Cell>();
  private tried = 0;
  private left = 0;
  private readonly scratch = new Float64Array(PLACEMENT_WIDTH);

  constructor(private readonly searches: readonly FieldSearch[]) {
    for (const search of searches) {
      if (search.bestAt < 0) continue;
      const { travels, racks } = search.field.envelope;
      const at = search.bestAt;
      this.take(search.index, {
        travel: travels[Math.floor(at / racks.length)],
        rack: racks[at % racks.length],
        distance: search.best,
      });
    }
  }

  /** Nothing can be told as nearer. */
  get isAtFloor(): boolean {
    return this.best !== null && this.searches.every(({ floor }) => this.best!.distance <= floor);
  }

  private take(field: number, tried: Tried): void {
    if (this.best === null || tried.distance < this.best.distance) this.best = { ...tried, field };
  }

  private look(field: number, travel: number, rack: number): Tried {
    if (this.searches[field].placeAt(travel, rack, this.scratch))
      return this.lookPlaced(field, travel, rack, this.scratch, Infinity);
    this.tried += 1;
    return { travel, rack, distance: Infinity };
  }

  /** @param relative - how the pieces stand there */
  private lookPlaced(field: number, travel: number, rack: number, relative: Placement, cutoff: number): Tried {
    this.tried += 1;
    const tried = { travel, rack, distance: this.searches[field].distanceOf(relative, cutoff) };
    this.take(field, tried);
    return tried;
  }

  /** From the worst places of the grid downhill, in all eight directions, with ever smaller steps. */
  descend(): void {
    const starts: (Tried & { readonly field: number })[] = [];
    for (const { field, index, distances, isExact } of this.searches) {
      const { travels, racks } = field.envelope;
      distances.forEach((distance, i) => {
        if (isExact[i] === 1 && isLowest(distances, isExact, racks.length, i))
          starts.push({ field: index, travel: travels[Math.floor(i / racks.length)], rack: racks[i % racks.length], distance });
      });
    }
    starts.sort((a, b) => a.distance - b.distance);
    for (const start of starts.slice(0, STARTS)) this.descendFrom(start);
  }

  private descendFrom(start: Tried & { readonly field: number }): void {
    const search = this.searches[start.field];
    const { travels, racks } = search.field.envelope;
    let at: Tried = start;
    const here = search.relativeNear(start.travel, start.rack).slice();
    const there = new Float64Array(PLACEMENT_WIDTH);
    const found = new Float64Array(PLACEMENT_WIDTH);
    let [dt, dr] = [gridSpacing(travels), gridSpacing(racks)];
    const within = (value: number, list: readonly number[]): number => Math.min(list[list.length - 1], Math.max(list[0], value));
    for (;;) {
      let next = at;
      let isStill = true;
      for (const [x, y] of ROUND_ABOUT) {
        if (racks.length === 1 && y !== 0) continue;
        const [travel, rack] = [within(at.travel + x * dt, travels), within(at.rack + y * dr, racks)];
        if ((travel === at.travel && rack === at.rack) || !search.placeAt(travel, rack, there)) continue;
        if (search.canMove(here, there) < SMALLEST_MOVE_MM) continue;
        isStill = false;
        const tried = this.lookPlaced(start.field, travel, rack, there, next.distance);
        if (tried.distance >= next.distance) continue;
        next = tried;
        found.set(there);
      }
      if (isStill) return;
      if (next === at) [dt, dr] = [0.4 * dt, 0.4 * dr];
      else {
        at = next;
        here.set(found);
      }
    }
  }

  /** Cuts up what could hold a nearer position, least first. */
  cutUp(needs: number): void {
    const heap = this.cells;
    for (const search of this.searches) for (const cell of cellsOf(search)) heap.push(cell);
    const budget = this.tried + TRIED;
    const most = this.tried + TRIED_WHILE_OPEN;
    while (heap.size > 0) {
      if (this.isAtFloor) return;
      const worst = this.best!.distance;
      const { least } = heap.first;
      if (least >= worst - WORST_MM) break;
      const isOpen = worst >= needs && least < needs;
      if (this.tried >= (isOpen ? most : budget)) break;
      this.split(heap.pop());
    }
    this.left = heap.size === 0 ? this.best!.distance : heap.first.least;
  }

  private split(cell: Cell): void {
    const wide = (cell.travel[1] - cell.travel[0]) * cell.speed[0];
    const high = (cell.rack[1] - cell.rack[0]) * cell.speed[1];
    const which = wide >= high ? 'travel' : 'rack';
    const [from, to] = cell[which];
    const third = (to - from) / 3;
    for (let i = 0; i < 3; i++) {
      const part: readonly [number, number] = [from + i * third, i === 2 ? to : from + (i + 1) * third];
      const travel = which === 'travel' ? part : cell.travel;
      const rack = which === 'rack' ? part : cell.rack;
      const isOld = cell.at[which] >= part[0] && cell.at[which] <= part[1];
      const at = isOld ? cell.at : this.look(cell.field, 0.5 * (travel[0] + travel[1]), 0.5 * (rack[0] + rack[1]));
      const made = withLeast({ ...cell, travel, rack, at });
      if (made.least < this.best!.distance - WORST_MM) this.cells.push(made);
    }
  }

  answer(): Worst {
    const { field, travel, rack, distance } = this.best!;
    const search = this.searches[field];
    const relative = new Float64Array(PLACEMENT_WIDTH);
    search.placeAt(travel, rack, relative);
    const gap = gapBetween(search.field.solids[0], search.field.solids[1], relative);
    return {
      gap,
      field,
      travel,
      rack,
      placement: search.firstPlacement.slice(),
      bound: Math.max(0, distance - Math.min(this.left, distance)) + gap.slack,
      tried: this.searches.reduce((sum, { tried }) => sum + tried, 0),
    };
  }
}

/** Whether no neighbour on the grid is known to be lower. */
function isLowest(distances: Float64Array, isExact: Uint8Array, columns: number, index: number): boolean {
  const [row, column] = [Math.floor(index / columns), index % columns];
  for (const [x, y] of ROUND_ABOUT) {
    const [r, c] = [row + x, column + y];
    if (r < 0 || c < 0 || c >= columns || r * columns + c >= distances.length) continue;
    const other = r * columns + c;
    if (isExact[other] === 1 && distances[other] < distances[index]) return false;
  }
  return true;
}
