import { setupNames } from '../../geometry/index';
import type { Bench } from './benchStore';
import type { History } from './history';

/**
 * The setup that the one on the bench was begun as a copy of: the one that an answer of a study was laid on, else the one that
 * stood there at the last step before it was.
 * @returns null for a setup that came with the file
 */
export const copiedFrom = ({ present, past }: History<Bench>): string | null => {
  if (present.begun?.setup === present.setup) return present.begun.from;
  const before = past.filter(({ value }) => !setupNames(value.document).includes(present.setup)).at(-1);
  return before && before.value.setup !== present.setup ? before.value.setup : null;
};
