import { turnbuckleChange } from '../adjusters/turnbuckle';
import type { Adjuster, AxleMechanism } from '../car/mechanism';
import type { Corner } from '../corner/corner';
import { turnTo, type AssembledSide } from './assembleSide';
import { rodLength } from './linkages';

/** A side whose toe is sought with a turnbuckle: all that changes is the length of one rod. */
export interface RodTurner {
  /** the corner at these turns, changed by every call; null where it cannot be put together */
  readonly look: (turns: number) => Corner | null;
  /** the side at the turns that were looked at last, to the last bit as it would be put together anew */
  readonly take: () => AssembledSide;
}

/**
 * For searches that look at many settings and keep one: nothing is made on the way.
 * @returns null where the adjuster is no turnbuckle, or not the only one of a rod that moves the wheel
 */
export function rodTurner(axle: AxleMechanism, base: AssembledSide, adjuster: Adjuster): RodTurner | null {
  const index = ownRodOf(axle, adjuster);
  if (index === null || adjuster.kind !== 'turnbuckle') return null;
  const { mechanism: side, adjustment, corner } = base;
  const { rod, name } = adjuster;
  const turnedBy = (change: number): AssembledSide['adjustment'] => ({
    ...adjustment,
    lengths: { ...adjustment.lengths, [rod]: change },
  });
  const untouched = rodLength(axle, side, turnedBy(0), index);
  const turned: Corner = { ...corner, kernel: corner.kernel.slice(), home: corner.home.slice() };
  let at = 0;
  return {
    look: (turns) => {
      at = turns;
      const length = untouched + turnbuckleChange(adjuster, turns);
      return turnTo(axle, base, turned.kernel, turned.home, index, length) ? turned : null;
    },
    take: () => {
      const change = turnbuckleChange(adjuster, at);
      const rods = corner.linkage.rods.slice();
      rods[index] = { ...rods[index], length: untouched + change };
      return {
        ...base,
        settings: { ...base.settings, [name]: at },
        adjustment: turnedBy(change),
        corner: { ...turned, linkage: { ...corner.linkage, rods } },
      };
    },
  };
}

/** The rod that a turnbuckle has for itself, by its index; null where there is none. The arms of a strut are no such rods. */
function ownRodOf({ rods, adjusters, layout }: AxleMechanism, adjuster: Adjuster): number | null {
  if (adjuster.kind !== 'turnbuckle') return null;
  const isItsOwn = adjusters.every((other) => other === adjuster || other.kind !== 'turnbuckle' || other.rod !== adjuster.rod);
  const index = rods.findIndex(({ name }) => name === adjuster.rod);
  return isItsOwn && index >= (layout === 'strut' ? 2 : 0) ? index : null;
}
