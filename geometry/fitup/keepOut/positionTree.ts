import { SOLVED, MOTION_WIDTH, type Motion } from '../../corner/motion';
import { trackCorner } from '../../corner/solveCorner';
import type { AssembledSide } from '../../setup/assembleSide';
import type { Follow } from '../carriers';
import { trackAt, type Envelope } from '../envelope';
import { inverse, PLACEMENT_WIDTH, placed, type Placement } from '../placement';
import type { Field } from './field';
import { squared } from './squared';

/** How often a rectangle of the envelope's grid is cut in half each way, at most. */
export const DEEPEST = 7;
const FINE = 1 << DEEPEST;
/** The sag between positions is measured halfway and widened by this. */
const WIDENED = 1.5;

/**
 * One body over the positions of one corner: from a point of the car to the body's own frame at design.
 * Positions are numbered finely: `FINE` steps to one of the envelope's grid.
 */
export class BodyPath {
  private readonly known = new Map<number, Placement | null>();
  private readonly motions: MotionTable;
  readonly isMirrored: boolean;

  constructor(
    readonly name: string,
    readonly field: Field,
    private readonly follow: Follow,
    motions: MotionTable,
  ) {
    this.motions = motions;
    this.isMirrored = motions.envelope.side === 'right';
  }

  /**
   * Takes a point of the car to the body's frame: the inverse of where the body stands. Mirrored on the right side.
   * @returns null where the position cannot be reached
   */
  at(row: number, column: number): Placement | null {
    const key = row * this.motions.width + column;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const made = this.solve(row, column);
    this.known.set(key, made);
    return made;
  }

  private solve(row: number, column: number): Placement | null {
    const motion = this.motions.at(row, column);
    if (motion === null) return null;
    const place = new Float64Array(PLACEMENT_WIDTH);
    if (!this.follow(motion, this.motions.rackOf(column), place)) return null;
    const back = inverse(place);
    if (this.isMirrored) for (const i of [1, 4, 7]) back[i] = -back[i];
    return back;
  }

  /** All positions, as rectangles of the envelope's grid. */
  roots(isStill: boolean): PositionCell[] {
    const { rows, columns } = this.motions;
    if (isStill) return [new PositionCell(this, 0, 0, 0, 0, [0, 0])].filter(({ corners }) => corners.length > 0);
    const made: PositionCell[] = [];
    for (let i = 0; i < rows - 1; i++)
      for (let j = 0; j < Math.max(1, columns - 1); j++) {
        const [r, c] = [i * FINE, j * FINE];
        const wide = columns === 1 ? 0 : FINE;
        const cell = new PositionCell(this, r, c, FINE, wide, this.sagOf(r, c, wide));
        if (cell.corners.length > 0) made.push(cell);
      }
    return made;
  }

  /** How far a point is from where the corners' mean says it is, midway: at the middle of the body, and more per mm off it. */
  private sagOf(row: number, column: number, wide: number): readonly [number, number] {
    const half = FINE / 2;
    const across = wide === 0 ? [0] : [0, half, wide];
    let [atMiddle, perMm] = [0, 0];
    const ends = (a: Placement | null, b: Placement | null, m: Placement | null): void => {
      if (a === null || b === null || m === null) return;
      let square = 0;
      const shift = [0, 0, 0];
      const p = this.centreOf(m);
      for (let r = 0; r < 3; r++) {
        for (let c = 0; c < 3; c++) {
          const off = m[3 * r + c] - 0.5 * (a[3 * r + c] + b[3 * r + c]);
          square += off * off;
          shift[r] += off * p[c];
        }
        shift[r] += m[9 + r] - 0.5 * (a[9 + r] + b[9 + r]);
      }
      atMiddle = Math.max(atMiddle, Math.sqrt(squared(shift[0]) + squared(shift[1]) + squared(shift[2])));
      perMm = Math.max(perMm, Math.sqrt(square));
    };
    const at = (r: number, c: number): Placement | null => this.at(row + r, column + c);
    for (const c of across) ends(at(0, c), at(FINE, c), at(half, c));
    let travelSag = [atMiddle, perMm];
    if (wide > 0) {
      [atMiddle, perMm] = [0, 0];
      for (const r of [0, half, FINE]) ends(at(r, 0), at(r, wide), at(r, half));
      travelSag = [travelSag[0] + atMiddle, travelSag[1] + perMm];
    }
    return [WIDENED * travelSag[0], WIDENED * travelSag[1]];
  }

  /** Where the middle of the body is, from its inverse placement: Aᵀ (c − b). */
  centreOf(back: Placement): readonly [number, number, number] {
    const { centre } = this.field.ball;
    const off = [centre[0] - back[9], centre[1] - back[10], centre[2] - back[11]];
    return [
      back[0] * off[0] + back[3] * off[1] + back[6] * off[2],
      back[1] * off[0] + back[4] * off[1] + back[7] * off[2],
      back[2] * off[0] + back[5] * off[1] + back[8] * off[2],
    ];
  }
}

/** The poses of one corner on the fine grid, each solved when somebody asks for it. */
export class MotionTable {
  readonly rows: number;
  readonly columns: number;
  readonly width: number;
  private readonly known = new Map<number, Motion | null>();

  constructor(
    readonly envelope: Envelope,
    private readonly side: AssembledSide,
  ) {
    this.rows = envelope.travels.length;
    this.columns = envelope.racks.length;
    this.width = (this.columns - 1) * FINE + 1;
  }

  travelOf(row: number): number {
    return between(this.envelope.travels, row);
  }

  rackOf(column: number): number {
    return between(this.envelope.racks, column);
  }

  at(row: number, column: number): Motion | null {
    const key = row * this.width + column;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const made = this.solve(row, column);
    this.known.set(key, made);
    return made;
  }

  private solve(row: number, column: number): Motion | null {
    const { envelope } = this;
    const [i, j] = [Math.round(row / FINE), Math.round(column / FINE)];
    const index = i * this.columns + j;
    if (row % FINE === 0 && column % FINE === 0)
      return envelope.isReached[index] === 1 ? envelope.motions.slice(index * MOTION_WIDTH, (index + 1) * MOTION_WIDTH) : null;
    const track = trackAt(envelope, i, j);
    if (envelope.isReached[index] === 0) track.motion.fill(NaN);
    return trackCorner(this.side.corner, track, this.travelOf(row), this.rackOf(column)) === SOLVED ? track.motion.slice() : null;
  }
}

function between(list: readonly number[], fine: number): number {
  const i = Math.min(list.length - 1, Math.floor(fine / FINE));
  const rest = fine - i * FINE;
  return rest === 0 ? list[i] : list[i] + ((list[i + 1] - list[i]) * rest) / FINE;
}

/** A rectangle of positions of one body; what it is cut into is made when somebody asks for it. */
export class PositionCell {
  /** inverse placements at its corners, those that are reached */
  readonly corners: readonly Placement[];
  /** a corner of it cannot be reached */
  readonly isTorn: boolean;
  readonly middle: readonly [number, number, number];
  private parts: readonly PositionCell[] | null = null;

  constructor(
    readonly path: BodyPath,
    private readonly row: number,
    private readonly column: number,
    private readonly tall: number,
    private readonly wide: number,
    /** sag at the middle of the body [mm], and per mm off it */
    private readonly sag: readonly [number, number],
  ) {
    const rows = tall === 0 ? [row] : [row, row + tall];
    const columns = wide === 0 ? [column] : [column, column + wide];
    const found = rows.flatMap((r) => columns.map((c) => path.at(r, c)));
    this.corners = found.filter((corner) => corner !== null);
    this.isTorn = this.corners.length < found.length;
    this.middle = this.corners.length > 0 ? path.centreOf(this.corners[0]) : placed(new Float64Array(PLACEMENT_WIDTH), [0, 0, 0]);
  }

  get isSpeck(): boolean {
    return this.tall <= 1 && this.wide <= 1;
  }

  /** How far a point is from where its corners' mean says it is, at most [mm]. */
  sagAt(x: number, y: number, z: number): number {
    const [a, b, c] = this.middle;
    return this.sag[0] + this.sag[1] * Math.sqrt(squared(x - a) + squared(y - b) + squared(z - c));
  }

  /** Its halves each way. */
  split(): readonly PositionCell[] {
    if (this.parts !== null) return this.parts;
    const [halfRow, halfColumn] = [this.tall / 2, this.wide / 2];
    // what is left of the sag goes with the square of the step
    const sag = [0.25 * this.sag[0], 0.25 * this.sag[1]] as const;
    const made: PositionCell[] = [];
    for (const r of this.tall === 0 ? [0] : [0, halfRow])
      for (const c of this.wide === 0 ? [0] : [0, halfColumn]) {
        const cell = new PositionCell(this.path, this.row + r, this.column + c, halfRow, halfColumn, sag);
        if (cell.corners.length > 0) made.push(cell);
      }
    this.parts = made;
    return made;
  }
}
