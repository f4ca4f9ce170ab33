import type { Placement } from '../placement';
import { wholeGap, type Gap, type GapSearch } from './gap';
import type { Solid } from './solid';
import { stillGap } from './stillGap';
import { turnGap } from './turnGap';

/**
 * Least distance of two solids.
 * @param relative - where the second stands, as the first sees it
 */
export function gapBetween(a: Solid, b: Solid, relative: Placement, search: GapSearch = wholeGap()): Gap {
  return a.spin !== null || b.spin !== null ? turnGap(a, b, relative, search) : stillGap(a, b, relative, search);
}

/** A distance that no two points of the solids are below, from the balls around them [mm]. */
export function ballGap(a: Solid, b: Solid, relative: Placement): number {
  const { centre } = b.ball;
  const [x, y, z] = a.ball.centre;
  const dx = relative[0] * centre[0] + relative[1] * centre[1] + relative[2] * centre[2] + relative[9] - x;
  const dy = relative[3] * centre[0] + relative[4] * centre[1] + relative[5] * centre[2] + relative[10] - y;
  const dz = relative[6] * centre[0] + relative[7] * centre[1] + relative[8] * centre[2] + relative[11] - z;
  return Math.sqrt(dx * dx + dy * dy + dz * dz) - a.ball.radius - b.ball.radius;
}
