import type { Settings } from '../adjusters/adjustment';
import { turnbuckleChange } from '../adjusters/turnbuckle';
import type { Adjuster, AxleMechanism } from '../car/mechanism';
import { succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { putTogether, type AssembledSide } from './assembleSide';
import { rodLength } from './linkages';

/**
 * A side as it would be put together anew with one turnbuckle at another setting, to the last bit, where all that changes is
 * the length of its rod. A toe reset turns the same rod again and again.
 * @param settings - of the side, that of the turnbuckle included
 * @returns null where the adjuster is none, or its rod has another one too: then the side has to be put together anew
 */
export function turnRod(
  axle: AxleMechanism,
  { mechanism: side, wheel, adjustment, corner, parts }: AssembledSide,
  adjuster: Adjuster,
  settings: Settings,
): Result<AssembledSide, Failure> | null {
  if (adjuster.kind !== 'turnbuckle') return null;
  const { rod: name } = adjuster;
  const index = axle.rods.findIndex((rod) => rod.name === name);
  const others = axle.adjusters.filter((other) => other.kind === 'turnbuckle' && other.rod === name);
  const turns = settings[adjuster.name];
  if (index < 0 || others.length > 1 || turns === null || turns === undefined) return null;
  const lengths = { ...adjustment.lengths, [name]: turnbuckleChange(adjuster, turns) };
  const turned = { ...adjustment, lengths };
  const rods = corner.linkage.rods.slice();
  rods[index] = { ...rods[index], length: rodLength(axle, side, turned, index) };
  const linkage = { ...corner.linkage, rods };
  const isTieRodOnly = axle.layout === 'strut' && index === 2;
  const put = putTogether(axle, side, wheel, linkage, isTieRodOnly ? corner.kernel : null);
  if (!put.ok) return put;
  const { kernel, home } = put.value;
  return succeed({
    mechanism: side,
    wheel,
    settings,
    adjustment: turned,
    corner: { ...corner, linkage, kernel, home },
    parts,
  });
}
