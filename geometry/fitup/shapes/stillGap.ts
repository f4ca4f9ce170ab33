import { inverse, placed, type Placement } from '../placement';
import type { Gap, GapSearch } from './gap';
import { meshesGap, meshGap } from './meshGap';
import { roundGap } from './roundGap';
import type { Solid } from './solid';

/** The gap of two solids as they stand, whether they turn or not. */
export function stillGap(a: Solid, b: Solid, relative: Placement, search: GapSearch): Gap {
  if (a.kind === 'round')
    return b.kind === 'round'
      ? roundGap(a, b, relative, search)
      : turnedAbout(meshGap(b, a, inverse(relative), search.cutoff), relative);
  return b.kind === 'round' ? meshGap(a, b, relative, search.cutoff) : meshesGap(a, b, relative);
}

/** A gap found from the second's side, told from the first's. */
export const turnedAbout = (gap: Gap, relative: Placement): Gap => ({
  ...gap,
  points: [placed(relative, gap.points[1]), placed(relative, gap.points[0])],
});
