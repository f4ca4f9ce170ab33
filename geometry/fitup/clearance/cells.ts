import { gridSpacing, ROUND_ABOUT, type FieldSearch } from './fieldSearch';

/** A rectangle around an unreachable position that is too small to be cut up [mm]. */
const SPECK_MM = 0.5;

/** A rectangle of positions with one that was tried. */
export interface Cell {
  readonly field: number;
  readonly travel: readonly [number, number];
  readonly rack: readonly [number, number];
  readonly at: Tried;
  /** mm that the pieces can come nearer per mm of travel, and per mm of rack */
  readonly speed: readonly [number, number];
  readonly least: number;
}

export interface Tried {
  readonly travel: number;
  readonly rack: number;
  /** distance, or at a position of the grid that need not be tried a bound below it */
  readonly distance: number;
}

/**
 * The grid as cells around its positions. How fast the pieces can come nearer is measured on the grid: the farthest that a point can have moved to a
 * neighbour, over the way there, the most of the neighbourhood and half as much again of how it differs there.
 */
export function cellsOf(search: FieldSearch): Cell[] {
  const { envelope } = search.field;
  const { travels, racks } = envelope;
  const [dt, dr] = [gridSpacing(travels), gridSpacing(racks)];
  const columns = racks.length;
  const edge = (i: number, j: number, way: number): number | null =>
    search.isPlaced[i] === 0 || search.isPlaced[j] === 0
      ? null
      : search.canMove(search.relativeAt(i), search.relativeAt(j)) / way;
  const cells: Cell[] = [];
  const isKnown = (index: number): boolean => search.isPlaced[index] === 1 && search.distances[index] < Infinity;
  search.isPlaced.forEach((_placed, index) => {
    const [row, column] = [Math.floor(index / columns), index % columns];
    // around a position that cannot be reached, its neighbour speaks for what can
    const from = isKnown(index)
      ? index
      : ROUND_ABOUT.map(([x, y]) => ({ r: row + x, c: column + y }))
          .filter(({ r, c }) => r >= 0 && c >= 0 && r < travels.length && c < columns)
          .map(({ r, c }) => r * columns + c)
          .find(isKnown);
    if (from === undefined) return;
    const alongTravel: number[] = [];
    const alongRack: number[] = [];
    for (let r = row - 1; r <= row + 1; r++) {
      for (let c = column - 1; c <= column + 1; c++) {
        if (r < 0 || c < 0 || r >= travels.length || c >= columns) continue;
        const here = r * columns + c;
        const up = r + 1 < travels.length && r < row + 1 ? edge(here, here + columns, dt) : null;
        const across = c + 1 < columns && c < column + 1 ? edge(here, here + 1, dr) : null;
        if (up !== null) alongTravel.push(up);
        if (across !== null) alongRack.push(across);
      }
    }
    cells.push(
      withLeast({
        field: search.index,
        travel: [Math.max(travels[0], travels[row] - 0.5 * dt), Math.min(travels[travels.length - 1], travels[row] + 0.5 * dt)],
        rack: [Math.max(racks[0], racks[column] - 0.5 * dr), Math.min(racks[columns - 1], racks[column] + 0.5 * dr)],
        at: {
          travel: travels[Math.floor(from / columns)],
          rack: racks[from % columns],
          distance: search.distances[from],
        },
        speed: [speedOf(alongTravel), speedOf(alongRack)],
        least: 0,
      }),
    );
  });
  return cells;
}

function speedOf(found: readonly number[]): number {
  if (found.length === 0) return 0;
  const most = Math.max(...found);
  return most + 0.5 * (most - Math.min(...found));
}

/** What nothing in the cell can be below: no point comes nearer faster than the speed allows. */
export function withLeast(cell: Cell): Cell {
  const reach = (at: number, [from, to]: readonly [number, number]): number => Math.max(Math.abs(at - from), Math.abs(to - at));
  const { travel, rack, at, speed } = cell;
  // Nothing is known of what surrounds a position that cannot be reached: it stays what its elder could be, until it is a speck.
  if (at.distance === Infinity) {
    const isSpeck = travel[1] - travel[0] < SPECK_MM && rack[1] - rack[0] < SPECK_MM;
    return { ...cell, least: isSpeck ? Infinity : cell.least };
  }
  const least = at.distance - speed[0] * reach(at.travel, travel) - speed[1] * reach(at.rack, rack);
  return { ...cell, least };
}
