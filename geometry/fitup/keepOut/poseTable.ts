import { MOTION_WIDTH, SOLVED, type Motion } from '../../corner/motion';
import { trackCorner } from '../../corner/solveCorner';
import type { AssembledSide } from '../../setup/assembleSide';
import { trackAt, type Envelope } from '../envelope';

/** Steps from one end of an envelope to the other, each way; a power of two. */
export const FINE = 1 << 9;

/** The poses of one corner, `FINE` steps from open to solid and from lock to lock; each is solved when somebody asks for it. */
export class PoseTable {
  /** steps from lock to lock; 0 where the axle is not steered */
  readonly wide: number;
  private readonly known = new Map<number, Motion | null>();

  constructor(
    readonly envelope: Envelope,
    private readonly side: AssembledSide,
  ) {
    this.wide = envelope.racks.length > 1 ? FINE : 0;
  }

  /** @param column - of the rack, 0 … `wide` */
  rackOf(column: number): number {
    return between(this.envelope.racks, column);
  }

  /** @returns null where the position cannot be reached */
  at(row: number, column: number): Motion | null {
    const key = row * (FINE + 1) + column;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const made = this.solve(row, column);
    this.known.set(key, made);
    return made;
  }

  private solve(row: number, column: number): Motion | null {
    const { envelope } = this;
    const [rows, columns] = [envelope.travels.length, envelope.racks.length];
    const [i, j] = [Math.round((row * (rows - 1)) / FINE), Math.round((column * (columns - 1)) / FINE)];
    const index = i * columns + j;
    const isOfGrid = i * FINE === row * (rows - 1) && j * FINE === column * (columns - 1);
    if (isOfGrid)
      return envelope.isReached[index] === 1 ? envelope.motions.slice(index * MOTION_WIDTH, (index + 1) * MOTION_WIDTH) : null;
    const track = trackAt(envelope, i, j);
    if (envelope.isReached[index] === 0) track.motion.fill(NaN);
    const status = trackCorner(this.side.corner, track, between(envelope.travels, row), this.rackOf(column));
    return status === SOLVED ? track.motion : null;
  }
}

/** Of evenly spaced numbers, what lies a share of the way along them; the ends are exact. */
function between(list: readonly number[], fine: number): number {
  const last = list[list.length - 1];
  return fine === FINE ? last : list[0] + ((last - list[0]) * fine) / FINE;
}
