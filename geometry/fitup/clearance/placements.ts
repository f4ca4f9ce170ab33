import { MOTION_WIDTH } from '../../corner/motion';
import type { Follow } from '../carriers';
import type { Envelope } from '../envelope';
import { PLACEMENT_WIDTH } from '../placement';

/** Where one carrier stands at every position of an envelope's grid. */
export interface GridPlaces {
  readonly places: Float64Array;
  /** 0 where it has no place */
  readonly isPlaced: Uint8Array;
}

/** Where the carriers of a corner stand on the grid: worked out once, for all pairs. */
export class GridPlacements {
  private readonly known = new Map<Follow, GridPlaces>();

  constructor(private readonly envelope: Envelope) {}

  of(follow: Follow): GridPlaces {
    const known = this.known.get(follow);
    if (known !== undefined) return known;
    const made = placesOn(this.envelope, follow);
    this.known.set(follow, made);
    return made;
  }
}

function placesOn({ motions, racks, isReached }: Envelope, follow: Follow): GridPlaces {
  const places = new Float64Array(isReached.length * PLACEMENT_WIDTH);
  const isPlaced = new Uint8Array(isReached.length);
  for (let i = 0; i < isReached.length; i++) {
    if (isReached[i] === 0) continue;
    const motion = motions.subarray(i * MOTION_WIDTH, (i + 1) * MOTION_WIDTH);
    const place = places.subarray(i * PLACEMENT_WIDTH, (i + 1) * PLACEMENT_WIDTH);
    if (follow(motion, racks[i % racks.length], place)) isPlaced[i] = 1;
  }
  return { places, isPlaced };
}
