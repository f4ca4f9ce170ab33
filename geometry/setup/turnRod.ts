import { turnbuckleChange } from '../adjusters/turnbuckle';
import type { Adjuster, AxleMechanism } from '../car/mechanism';
import type { Corner } from '../corner/corner';
import { SideOfParts, turnTo, type AssembledSide } from './assembleSide';
import { rodLength } from './linkages';

/** The rod that a turnbuckle has for itself: all that its turns change of a side is the length of this one. */
export interface TurnedRod {
  readonly index: number;
  /** centre to centre [mm] */
  readonly lengthAt: (turns: number) => number;
  /** the side at these turns, to the last bit as it would be put together anew. @param corner - constants and pose at that length */
  readonly take: (turns: number, corner: Pick<Corner, 'kernel' | 'home'>) => AssembledSide;
}

/** @returns null where the adjuster is no turnbuckle, or not the only one of a rod that moves the wheel */
export function turnedRod(axle: AxleMechanism, base: AssembledSide, adjuster: Adjuster): TurnedRod | null {
  const index = ownRodOf(axle, adjuster);
  if (index === null || adjuster.kind !== 'turnbuckle') return null;
  const { mechanism: side, adjustment, corner } = base;
  const { rod, name } = adjuster;
  const turnedBy = (change: number): AssembledSide['adjustment'] => ({
    ...adjustment,
    lengths: { ...adjustment.lengths, [rod]: change },
  });
  const untouched = rodLength(axle, side, turnedBy(0), index);
  const lengthAt = (turns: number): number => untouched + turnbuckleChange(adjuster, turns);
  return {
    index,
    lengthAt,
    take: (turns, { kernel, home }) => {
      const rods = corner.linkage.rods.slice();
      rods[index] = { ...rods[index], length: lengthAt(turns) };
      return new SideOfParts(
        side,
        base.wheel,
        { ...base.settings, [name]: turns },
        turnedBy(turnbuckleChange(adjuster, turns)),
        { ...corner, kernel, home, linkage: { ...corner.linkage, rods } },
        // nothing that hangs on the wheel is held by this rod's length
        () => base.parts,
      );
    },
  };
}

/** A side whose toe is sought with a turnbuckle: nothing is made on the way but one rod's length changed. */
export interface RodTurner {
  /** the corner at these turns, changed by every call; null where it cannot be put together */
  readonly look: (turns: number) => Corner | null;
  /** the side at the turns that were looked at last, to the last bit as it would be put together anew */
  readonly take: () => AssembledSide;
}

/** For searches that look at many settings and keep one. @returns null where `turnedRod` knows none */
export function rodTurner(axle: AxleMechanism, base: AssembledSide, adjuster: Adjuster): RodTurner | null {
  const rod = turnedRod(axle, base, adjuster);
  if (rod === null) return null;
  const { corner } = base;
  const turned: Corner = { ...corner, kernel: corner.kernel.slice(), home: corner.home.slice() };
  let at = 0;
  return {
    look: (turns) => {
      at = turns;
      return turnTo(axle, base, turned.kernel, turned.home, rod.index, rod.lengthAt(turns)) ? turned : null;
    },
    take: () => rod.take(at, turned),
  };
}

/** The rod that a turnbuckle has for itself, by its index; null where there is none. The arms of a strut are no such rods. */
function ownRodOf({ rods, adjusters, layout }: AxleMechanism, adjuster: Adjuster): number | null {
  if (adjuster.kind !== 'turnbuckle') return null;
  const isItsOwn = adjusters.every((other) => other === adjuster || other.kind !== 'turnbuckle' || other.rod !== adjuster.rod);
  const index = rods.findIndex(({ name }) => name === adjuster.rod);
  return isItsOwn && index >= (layout === 'strut' ? 2 : 0) ? index : null;
}
