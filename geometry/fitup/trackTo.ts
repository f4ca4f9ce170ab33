import { fail, succeed, type Result } from '../core/result';
import { explainUnreachable, type Failure } from '../corner/failure';
import { SOLVED } from '../corner/motion';
import { startTrack, trackCorner, type Track } from '../corner/solveCorner';

/** Positions on the way from design, so that no other branch is caught. */
const STEPS_THERE = 8;

/** A corner brought to a position from design. @param at - travel from design, rack [mm] */
export function trackTo(
  corner: Parameters<typeof startTrack>[0],
  at: { readonly travel: number; readonly rack: number },
): Result<Track, Failure> {
  const track = startTrack(corner);
  for (let step = 1; step <= STEPS_THERE; step += 1) {
    const share = step / STEPS_THERE;
    if (trackCorner(corner, track, at.travel * share, at.rack * share) !== SOLVED)
      return fail(explainUnreachable(corner, at.travel * share, at.rack * share));
  }
  return succeed(track);
}
