import type { Corner, Linkage } from './corner';
import { MOTION_WIDTH, SOLVED, type Motion, type SolveStatus } from './motion';
import { closeMultiLinkNear, trackMultiLink } from './multiLink';
import { trackStrut } from './strut';

/**
 * A pose that is carried from position to position: each solve starts from the last one. Which positions were visited before
 * decides nothing but the time it takes.
 */
export interface Track {
  readonly motion: Motion;
  travel: number;
  rack: number;
}

export const startTrack = (corner: Corner): Track => ({ motion: corner.home.slice(), travel: 0, rack: 0 });

/** Puts a track back to where every track starts. */
export function restartTrack(corner: Corner, track: Track): void {
  track.motion.set(corner.home);
  track.travel = 0;
  track.rack = 0;
}

/**
 * Moves a track to a position. On failure the track stays where it was.
 * @param travel - wheel-centre height over design [mm]
 * @param rack - [mm]; an unsteered corner takes 0
 */
export function trackCorner(corner: Corner, track: Track, travel: number, rack: number): SolveStatus {
  const status =
    corner.linkage.layout === 'strut'
      ? trackStrut(corner, track.motion, travel, rack, track.travel, track.rack)
      : trackMultiLink(corner, track.motion, travel, rack, track.travel, track.rack);
  if (status === SOLVED) {
    track.travel = travel;
    track.rack = rack;
  }
  return status;
}

/**
 * The pose at a travel, rack centred, from that of a corner that is nearly the same, such as this one with another setting.
 * @param motion - that pose; holds the corner's own when SOLVED comes back
 */
export function closeNear(layout: Linkage['layout'], kernel: Float64Array, motion: Motion, travel: number): SolveStatus {
  return layout === 'strut' ? trackStrut({ kernel }, motion, travel, 0, travel, 0) : closeMultiLinkNear(kernel, motion, travel);
}

/** Positions of one corner, as flat arrays of one length [mm]. */
export interface CornerPositions {
  readonly travel: ArrayLike<number>;
  readonly rack: ArrayLike<number>;
}

/** Poses with rates of one corner at many positions: record i starts at i · MOTION_WIDTH (see `motion.ts`); status 0 is solved. */
export interface PoseTable {
  readonly count: number;
  readonly motions: Float64Array;
  readonly status: Uint8Array;
}

/**
 * Poses with rates of a corner at many positions.
 * @param positions - in any order; neighbours close together are fastest
 * @throws RangeError when the two arrays differ in length or hold something that is not a finite number
 */
export function solvePoses(corner: Corner, positions: CornerPositions): PoseTable {
  const { travel, rack } = positions;
  const count = travel.length;
  if (rack.length !== count)
    throw new RangeError(`solvePoses: ${count} travels and ${rack.length} rack positions; give one of each per pose`);
  const motions = new Float64Array(count * MOTION_WIDTH);
  const status = new Uint8Array(count);
  const track = startTrack(corner);
  for (let i = 0; i < count; i++) {
    const t = travel[i];
    const r = rack[i];
    if (!(Number.isFinite(t) && Number.isFinite(r)))
      throw new RangeError(`solvePoses: position ${i} is (${t}, ${r}); both must be finite`);
    const code = trackCorner(corner, track, t, r);
    status[i] = code;
    if (code === SOLVED) motions.set(track.motion, i * MOTION_WIDTH);
  }
  return { count, motions, status };
}
