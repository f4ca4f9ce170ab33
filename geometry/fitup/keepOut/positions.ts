import type { Follow } from '../carriers';
import { inverse, PLACEMENT_WIDTH, type Placement } from '../placement';
import type { Field } from './field';
import { FINE, type PoseTable } from './poseTable';
import { squared } from './squared';

/** One body over the positions of one corner: from a point of the car to the body's own frame at design. */
export class BodyPath {
  private readonly known = new Map<number, Placement | null>();
  private readonly isMirrored: boolean;

  constructor(
    readonly name: string,
    readonly field: Field,
    readonly isStill: boolean,
    private readonly follow: Follow,
    private readonly poses: PoseTable,
  ) {
    this.isMirrored = poses.envelope.side === 'right';
  }

  /** Steps from lock to lock; 0 where only the travel moves it. */
  get wide(): number {
    return this.poses.wide;
  }

  /**
   * Takes a point of the car to the body's frame: the inverse of where the body stands. Mirrored on the right side.
   * @returns null where the position cannot be reached
   */
  at(row: number, column: number): Placement | null {
    const key = row * (FINE + 1) + column;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const made = this.solve(row, column);
    this.known.set(key, made);
    return made;
  }

  private solve(row: number, column: number): Placement | null {
    const motion = this.poses.at(row, column);
    if (motion === null) return null;
    const place = new Float64Array(PLACEMENT_WIDTH);
    if (!this.follow(motion, this.poses.rackOf(column), place)) return null;
    const back = inverse(place);
    if (this.isMirrored) for (const i of [1, 4, 7]) back[i] = -back[i];
    return back;
  }

  /** Where a point of the body is at positions all over, in the car's frame [mm]. */
  middles(point: readonly [number, number, number]): readonly (readonly [number, number, number])[] {
    const made: (readonly [number, number, number])[] = [];
    const step = FINE / 16;
    for (let row = 0; row <= (this.isStill ? 0 : FINE); row += step)
      for (let column = 0; column <= (this.isStill ? 0 : this.wide); column += step) {
        const back = this.at(row, column);
        if (back !== null) made.push(pointOf(back, point));
      }
    return made;
  }

  /** All positions, as one rectangle; null where none can be reached. */
  root(): PositionNode | null {
    const half = this.isStill ? 0 : FINE / 2;
    const root = new PositionNode(this, half, this.isStill ? 0 : this.wide / 2, half, this.isStill ? 0 : this.wide / 2);
    return root.isEmpty ? null : root;
  }
}

/** Where the parts of a node's numbers begin: the middle position, what half a step each way adds, and its four corners. */
export const MIDDLE = 0;
export const BY_TRAVEL = PLACEMENT_WIDTH;
export const BY_RACK = 2 * PLACEMENT_WIDTH;
export const CORNERS = 3 * PLACEMENT_WIDTH;
const NODE_WIDTH = 7 * PLACEMENT_WIDTH;

/** What is measured at the rim of a rectangle is widened by this: what moves the body smoothly bends no more in between. */
const WIDENED = 1.25;
/** A rectangle none of whose nine positions is reached may still hold some that are, down to this half size. */
const COARSE = FINE / 32;

/**
 * A rectangle of positions of one body. A point of the car is in the body's frame near `middle + a · byTravel + b · byRack` with
 * a, b from −1 to 1; how far it can be from there is its sag. What it is cut into is made when somebody asks for it.
 */
export class PositionNode {
  readonly numbers = new Float64Array(NODE_WIDTH);
  /** the body's middle at the middle position, car frame [mm] */
  readonly x: number = 0;
  readonly y: number = 0;
  readonly z: number = 0;
  /** sag of the body's middle [mm], and per mm off it */
  readonly sag: number = 0;
  readonly sagPerMm: number = 0;
  /** how much the two steps change from point to point, per mm */
  readonly turn: number = 0;
  /** a position of it cannot be reached */
  readonly isTorn: boolean = false;
  /** no position of it can be reached, as far as is known: it says nothing before it is cut up */
  readonly isBlank: boolean = false;
  /** … and nothing is left of it then */
  readonly isEmpty: boolean = false;
  private parts: readonly PositionNode[] | null = null;

  constructor(
    readonly path: BodyPath,
    private readonly row: number,
    private readonly column: number,
    private readonly half: number,
    private readonly halfColumn: number,
  ) {
    const { numbers: n } = this;
    const across = halfColumn === 0 ? [0] : [-1, 0, 1];
    const along = half === 0 ? [0] : [-1, 0, 1];
    const found: (Placement | null)[] = [];
    for (const i of [-1, 0, 1])
      for (const j of [-1, 0, 1]) {
        const [a, b] = [along.length === 1 ? 0 : i, across.length === 1 ? 0 : j];
        found.push(path.at(row + a * half, column + b * halfColumn));
      }
    const reached = found.filter((one) => one !== null);
    this.isTorn = reached.length < found.length;
    this.isBlank = reached.length === 0;
    this.isEmpty = this.isBlank && half <= COARSE;
    if (this.isBlank) return;
    const middle = found[4] ?? reached[0];
    n.set(middle, MIDDLE);
    [this.x, this.y, this.z] = pointOf(middle, path.field.ball.centre);
    if (this.isTorn) {
      for (let k = 0; k < 4; k++) n.set(found[[0, 2, 6, 8][k]] ?? middle, CORNERS + k * PLACEMENT_WIDTH);
      [this.sag, this.sagPerMm] = this.worst(reached.map((one) => less(one, middle)));
      return;
    }
    const [low, high, left, right] = [1, 7, 3, 5].map((k) => found[k]!);
    for (let i = 0; i < PLACEMENT_WIDTH; i++) {
      n[BY_TRAVEL + i] = 0.5 * (high[i] - low[i]);
      n[BY_RACK + i] = 0.5 * (right[i] - left[i]);
    }
    for (let k = 0; k < 4; k++) n.set(found[[0, 2, 6, 8][k]]!, CORNERS + k * PLACEMENT_WIDTH);
    const off: Placement[] = [];
    for (let k = 0; k < 9; k++) {
      const [a, b] = [Math.floor(k / 3) - 1, (k % 3) - 1];
      off.push(found[k]!.map((value, i) => value - middle[i] - a * n[BY_TRAVEL + i] - b * n[BY_RACK + i]));
    }
    [this.sag, this.sagPerMm] = this.worst(off);
    this.turn = frobenius(n, BY_TRAVEL) + frobenius(n, BY_RACK);
  }

  /** The greatest of some movements: of the body's middle, and what they turn. */
  private worst(moves: readonly Placement[]): readonly [number, number] {
    let [atMiddle, perMm] = [0, 0];
    for (const m of moves) {
      const [px, py, pz] = [0, 3, 6].map((i, k) => m[i] * this.x + m[i + 1] * this.y + m[i + 2] * this.z + m[9 + k]);
      atMiddle = Math.max(atMiddle, Math.sqrt(px * px + py * py + pz * pz));
      perMm = Math.max(perMm, frobenius(m, 0));
    }
    return [WIDENED * atMiddle, WIDENED * perMm];
  }

  /** How far a point of the car can be from where the steps take it in the body's frame [mm]. */
  sagAt(x: number, y: number, z: number): number {
    const [a, b, c] = [x - this.x, y - this.y, z - this.z];
    return this.sag + this.sagPerMm * Math.sqrt(a * a + b * b + c * c);
  }

  /** It is as small as it gets. */
  get isSpeck(): boolean {
    return this.half <= 1;
  }

  /** Its halves each way. */
  split(): readonly PositionNode[] {
    if (this.parts !== null) return this.parts;
    const [half, halfColumn] = [this.half / 2, this.halfColumn / 2];
    const made: PositionNode[] = [];
    for (const i of [-1, 1])
      for (const j of halfColumn === 0 ? [0] : [-1, 1]) {
        const part = new PositionNode(this.path, this.row + i * half, this.column + j * halfColumn, half, halfColumn);
        if (!part.isEmpty) made.push(part);
      }
    this.parts = made;
    return made;
  }
}

const less = (a: Placement, b: Placement): Placement => a.map((value, i) => value - b[i]);

function frobenius(m: Float64Array, from: number): number {
  let square = 0;
  for (let i = from; i < from + 9; i++) square += squared(m[i]);
  return Math.sqrt(square);
}

/** Where a point of the body is in the car, from its inverse placement: Aᵀ (c − b). */
function pointOf(back: Placement, point: readonly [number, number, number]): readonly [number, number, number] {
  const off = [point[0] - back[9], point[1] - back[10], point[2] - back[11]];
  return [
    back[0] * off[0] + back[3] * off[1] + back[6] * off[2],
    back[1] * off[0] + back[4] * off[1] + back[7] * off[2],
    back[2] * off[0] + back[5] * off[1] + back[8] * off[2],
  ];
}
