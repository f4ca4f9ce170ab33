import { fieldWords } from './fieldWords';

/** A path of the file as the table of words is asked: entries of a list are "[]". */
const patternOf = (path: string): string[] =>
  path
    .replace(/\[\d+\]/g, '.[]')
    .split('.')
    .filter((step) => step !== '');

/** The same where a name that the person gave stands last. */
const ofAnyName = (pattern: readonly string[]): string[] => [...pattern.slice(0, -1), '*'];

/**
 * The label of a field that is named by its key in a report about a path: in the part itself, or beside the field that it is about.
 * @returns null where no field near it has this key
 */
export const labelAt = (path: string, key: string): string | null => {
  const here = patternOf(path);
  const beside = here.slice(0, -1);
  const found = [here, ofAnyName(here), beside, ofAnyName(beside)]
    .filter((pattern) => pattern.length > 0)
    .map((pattern) => fieldWords([pattern.at(-1) ?? '', key]) ?? fieldWords([...pattern.slice(-2), key]))
    .find((words) => words !== null);
  return found?.label ?? null;
};
