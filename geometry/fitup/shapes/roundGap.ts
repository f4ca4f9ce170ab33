import { add, scale, subtract, type Vector } from '../../core/vector';
import { CORE_WIDTH, coreReach, placeCore } from '../distance/core';
import { solveDepth, widthAlong } from '../distance/depth';
import { nearest, solveNearest } from '../distance/gjk';
import type { Placement } from '../placement';
import { centreOf, NO_GAP, surfacePoints, type Gap, type GapHint, type GapSearch } from './gap';
import type { RoundSolid } from './solid';

/** Farther apart than this, cores do not meet [mm]. */
const MEETS_MM = 1e-9;

const found = nearest();
const moved = new Float64Array(CORE_WIDTH);

/** Two round solids as they stand. */
export function roundGap(a: RoundSolid, b: RoundSolid, relative: Placement, search: GapSearch): Gap {
  let least = search.cutoff;
  let points: readonly [Vector, Vector] = NO_GAP.points;
  let isMeeting = false;
  for (let j = 0; j < b.cores.length; j++) {
    placeCore(relative, b.cores[j], moved);
    for (let i = 0; i < a.cores.length; i++) {
      const rounds = a.rounds[i] + b.rounds[j];
      solveNearest(a.cores[i], moved, found, Math.max(least + rounds, MEETS_MM));
      // Cores that meet have no nearest points. Several of one solid may all meet the other: the deepest counts.
      if (found.distance === 0) {
        isMeeting = true;
        continue;
      }
      if (found.distance - found.bound - rounds >= least) continue;
      least = found.distance - rounds;
      points = surfacePoints(found.points, found.distance, a.rounds[i], b.rounds[j]);
    }
  }
  const apart: Gap = { ...NO_GAP, distance: least, points };
  if (!isMeeting) return apart;
  if (!a.isSkin && !b.isSkin) return deepest(a, b, relative, search.hint, apart);
  return { ...NO_GAP, distance: 0, isCutOnly: true, points: meetingPoints(a, b, relative) };
}

/** Where two skins or a skin and a solid meet: the middle of the core that does. */
function meetingPoints(a: RoundSolid, b: RoundSolid, relative: Placement): readonly [Vector, Vector] {
  for (const core of b.cores) {
    placeCore(relative, core, moved);
    for (const other of a.cores) {
      solveNearest(other, moved, found);
      if (found.distance > 0) continue;
      const at = coreReach(other) < coreReach(moved) ? centreOf(other) : centreOf(moved);
      return [at, at];
    }
  }
  return NO_GAP.points;
}

/** @param apart - the least of the cores that do not meet */
function deepest(a: RoundSolid, b: RoundSolid, relative: Placement, hint: GapHint, apart: Gap): Gap {
  let gap = apart;
  for (let j = 0; j < b.cores.length; j++) {
    placeCore(relative, b.cores[j], moved);
    for (let i = 0; i < a.cores.length; i++) {
      const rounds = a.rounds[i] + b.rounds[j];
      solveNearest(a.cores[i], moved, found);
      if (found.distance > 0) continue;
      // any way out is as long as the depth at least
      if (hint.way !== null && -widthAlong(a.cores[i], moved, hint.way) - rounds >= gap.distance) continue;
      const { depth, way, points } = solveDepth(a.cores[i], moved);
      hint.way = way;
      const distance = -depth - rounds;
      if (distance < gap.distance)
        gap = {
          ...NO_GAP,
          distance,
          points: [add(points[0], scale(way, a.rounds[i])), subtract(points[1], scale(way, b.rounds[j]))],
        };
    }
  }
  return gap;
}
