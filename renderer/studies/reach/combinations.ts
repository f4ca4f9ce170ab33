import { realSettings, settingOf, stepScaleOf, type CarDocument } from '../../../geometry/index';
import { setupNamed } from '../../state/settings';
import type { MayForm, ReachForm } from './reachForm';

/** Values that one line can take; null while its numbers cannot be read. */
const valuesOf = (may: MayForm, document: CarDocument, form: ReachForm, side: 'left' | 'right' | 'both'): number | null => {
  if (may.kind === 'point') {
    const [least, greatest, step] = [may.least.value, may.greatest.value, may.step.value];
    if (least === null || greatest === null || step === null || step <= 0 || least > greatest) return null;
    return Math.floor(greatest / step + 1e-9) - Math.ceil(least / step - 1e-9) + 1;
  }
  const adjuster = document[may.axle]?.adjusters?.[may.name];
  if (!adjuster || (adjuster.locked !== undefined && !form.withLocked)) return 1;
  const setup = setupNamed(document, form.setup);
  const sides = side === 'both' ? (['left', 'right'] as const) : [side];
  const isConcentric =
    adjuster.kind === 'offset-bushing' && sides.every((one) => settingOf(setup, may.axle, may.name, one) === null);
  return realSettings(stepScaleOf(adjuster)).length + (isConcentric ? 1 : 0);
};

/** How many combinations of steps a question has; null while something in it cannot be read. */
export const combinationsOf = (form: ReachForm, document: CarDocument): number | null =>
  form.may.reduce<number | null>((product, may) => {
    const sides = may.sides === 'apart' ? (['left', 'right'] as const) : (['both'] as const);
    return sides.reduce<number | null>((sum, side) => {
      const count = valuesOf(may, document, form, side);
      return sum === null || count === null ? null : sum * count;
    }, product);
  }, 1);
