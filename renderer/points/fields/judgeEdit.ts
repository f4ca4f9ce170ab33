import { formatPath, parseCar, serializeCar, type CarDocument, type Fault } from '../../../geometry/index';
import { memoLast } from '../../compute/memoLast';
import { labelAt } from './labelAt';
import type { FieldPath } from './pathValue';

/** The car judged as its file would be: with what is odd about it, or its faults. */
export const judgedCar = memoLast((document: CarDocument) => parseCar(serializeCar(document)));

/** Every fault that the car would have; none where it is sound. */
export const judgeEdit = (document: CarDocument): readonly Fault[] => {
  const judged = judgedCar(document);
  return judged.ok ? [] : judged.failure.faults;
};

/** Names between the marks that the file's own reports set them in. */
const MARKED = /`([^`]+)`|"([A-Za-z][\w-]*)"/g;

/** Keys of the file by the labels of their fields, other names of it between quotes that are read as such. */
const inLabels = (text: string, path: string | null): string =>
  text.replace(MARKED, (_whole, ticked?: string, quoted?: string) => {
    const name = ticked ?? quoted ?? '';
    return `“${(path === null ? null : labelAt(path, name)) ?? name}”`;
  });

/** Faults that list what may be typed: it is said as it has to be typed, though a field may have a label of that name. */
const LISTS_VALUES = /^unknown-(?!key$)/;

/** A fault in one sentence: where, what was found, what is expected and what to do. */
export const faultWords = ({ code, path, found, expected, hint }: Fault, here: FieldPath): string => {
  const where = path === null || isAt(path, here) ? '' : `${path}: `;
  const parts = [found === null ? null : `found ${found}`, expected === null ? null : `expected ${expected}`];
  const text = parts.filter((part) => part !== null).join(', ');
  // a path is spelled as the file spells it; a sentence without one begins as sentences do
  const sentence = where === '' ? `${text.charAt(0).toUpperCase()}${text.slice(1)}` : `${where}${text}`;
  return inLabels(`${sentence}${hint === null ? '.' : `; ${hint}`}`, LISTS_VALUES.test(code) ? null : path);
};

/** Whether a fault is of this field or of something in it. */
export const isAt = (path: string, here: FieldPath): boolean => {
  const own = formatPath(here);
  return own !== null && (path === own || path.startsWith(`${own}.`) || path.startsWith(`${own}[`));
};

/** The same of a field that something was typed into: what was found is what was typed, not what the file would have of it. */
const asTyped = (fault: Fault, here: FieldPath, typed: string | null): Fault => {
  if (typed === null || fault.path !== formatPath(here)) return fault;
  // numbers alone: of names and words the file has what was typed
  return /^-?\d/.test(fault.found ?? '') ? { ...fault, found: `“${typed}”` } : fault;
};

/** A field that cannot be empty, by the fault of one that was emptied; null where the fault is another. */
const neededWords = ({ code, expected }: Fault, here: FieldPath): string | null => {
  const key = String(here.at(-1));
  if (code !== 'missing-key' || expected === null || !expected.startsWith(`"${key}"`)) return null;
  const what = expected.slice(key.length + 2).replace(/^:\s*/, '');
  return what === '' ? 'This is needed.' : `This is needed: ${what}.`;
};

/**
 * What a field says of an edit's faults: those of the field itself first, else the first one there is.
 * @param typed - as it was typed, with the unit that it was taken in; null: nothing was
 */
export const faultOf = (faults: readonly Fault[], here: FieldPath, typed: string | null = null): string | null => {
  const own = faults.find(({ path }) => path !== null && isAt(path, here)) ?? faults[0];
  if (!own) return null;
  const more = faults.length - 1;
  const words = neededWords(own, here) ?? faultWords(asTyped(own, here, typed), here);
  return `${words}${more > 0 ? ` ${more} more ${more === 1 ? 'fault' : 'faults'} with it.` : ''}`;
};
