import { formatPath, parseCar, serializeCar, type CarDocument, type Fault } from '../../../geometry/index';
import type { FieldPath } from './pathValue';

/** Every fault that the car would have, judged as its file would be; none where it is sound. */
export const judgeEdit = (document: CarDocument): readonly Fault[] => {
  const judged = parseCar(serializeCar(document));
  return judged.ok ? [] : judged.failure.faults;
};

/** A fault in one sentence: where, what was found, what is expected and what to do. */
export const faultWords = ({ path, found, expected, hint }: Fault, here: FieldPath): string => {
  const where = path === null || isAt(path, here) ? '' : `${path}: `;
  const parts = [found === null ? null : `found ${found}`, expected === null ? null : `expected ${expected}`];
  const text = parts.filter((part) => part !== null).join(', ');
  // a path is spelled as the file spells it; a sentence without one begins as sentences do
  const sentence = where === '' ? `${text.charAt(0).toUpperCase()}${text.slice(1)}` : `${where}${text}`;
  return `${sentence}${hint === null ? '.' : `; ${hint}`}`;
};

/** Whether a fault is of this field or of something in it. */
export const isAt = (path: string, here: FieldPath): boolean => {
  const own = formatPath(here);
  return own !== null && (path === own || path.startsWith(`${own}.`) || path.startsWith(`${own}[`));
};

/** What a field says of an edit's faults: those of the field itself first, else the first one there is. */
export const faultOf = (faults: readonly Fault[], here: FieldPath): string | null => {
  const own = faults.find(({ path }) => path !== null && isAt(path, here)) ?? faults[0];
  if (!own) return null;
  const more = faults.length - 1;
  return `${faultWords(own, here)}${more > 0 ? ` ${more} more.` : ''}`;
};
