import type { AdjusterDocument, Triple } from '../car/document';
import { partDrawing, type PartStanding } from '../drawing/partDrawing';
import { group, mirror, type Shape } from '../drawing/shape';
import { isStack } from '../drawing/slidingParts';
import { seenFromWords } from '../words/clockWords';
import { FITTERS_RIGHT } from '../words/sight';

const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

const OUTBOARD: Triple = [0, 1, 0];

/** Whether what the drawing has on its right lies to the left of a fitter at the left-hand wheel. */
const isTurnedAtLeft = (adjuster: AdjusterDocument): boolean => {
  switch (adjuster.kind) {
    case 'slide':
      // seen from above with the front up, outboard of the left wheel is to the left
      return !isStack(adjuster);
    case 'eccentric-bolt':
    case 'clamp-eccentric': {
      const right = adjuster.seenFrom === undefined ? undefined : FITTERS_RIGHT[adjuster.seenFrom];
      if (right === undefined) return false;
      return dot(adjuster.kind === 'clamp-eccentric' ? OUTBOARD : adjuster.slot, right) < 0;
    }
    case 'offset-bushing':
    case 'turnbuckle':
    case 'perch':
      return false;
  }
};

/** Parts that look the same from both sides, or whose clock is mirrored where it is drawn. */
const hasHand = (adjuster: AdjusterDocument): boolean =>
  adjuster.kind === 'eccentric-bolt' || adjuster.kind === 'clamp-eccentric' || (adjuster.kind === 'slide' && !isStack(adjuster));

/** The part as the fitter finds it on that side of the car, the right-hand one mirrored and seen from the same place. */
export const drawnForFitter = (standing: PartStanding): readonly Shape[] => {
  const { adjuster, side } = standing;
  const shapes = partDrawing(standing);
  const isMirrored = hasHand(adjuster) && isTurnedAtLeft(adjuster) !== (side === 'right');
  return isMirrored ? [group([mirror(60)], shapes)] : shapes;
};

/** The part as the file describes it: on the left, looking along its axis; the right-hand one is its mirror image. */
export const drawnAsFiled = (standing: PartStanding): readonly Shape[] =>
  partDrawing({ ...standing, adjuster: asFiled(standing.adjuster), side: 'left' });

/** The same part with its clock read along its axis. */
export const asFiled = (adjuster: AdjusterDocument): AdjusterDocument => {
  if (!('seenFrom' in adjuster)) return adjuster;
  const { seenFrom: _, ...rest } = adjuster;
  return rest;
};

/** From where a part is drawn, in words; empty where that does not matter or the file does not say. */
export const drawnFrom = (adjuster: AdjusterDocument): string => {
  if (adjuster.kind !== 'eccentric-bolt' && adjuster.kind !== 'clamp-eccentric') return '';
  return adjuster.seenFrom === undefined ? '' : seenFromWords(adjuster.seenFrom);
};
