import type { AdjusterDocument } from '../../geometry/index';
import type { Sides } from '../state/settings';
import { hoursOf } from '../units/typedUnits';
import { clockSeen } from './clockWords';

/** A bushing's hole is read like a clock, and can be typed like one: as the fitter sees it. */
export const hoursTyped = (adjuster: AdjusterDocument, sides: Sides) => {
  if (adjuster.kind !== 'offset-bushing') return undefined;
  // mirroring a clock twice gives it back: the same rule leads from what is seen to the setting
  return [hoursOf((seen) => clockSeen(seen, adjuster.axis, adjuster.seenFrom, sides === 'right' ? 'right' : 'left'))];
};
