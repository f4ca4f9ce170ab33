import { setupNames } from '../../geometry/index';
import type { Bench } from './benchStore';

/** Setups that were begun in this window, each with the one that it was begun as a copy of. */
export type SetupCopies = Readonly<Record<string, string>>;

/**
 * The setup that the one on the bench was begun as a copy of, by its name now.
 * @returns null for one that came with the file, was made with nothing changed, or whose source is not there any more
 */
export const copiedFrom = ({ document, setup, copies = {} }: Bench): string | null => {
  const from = Object.hasOwn(copies, setup) ? copies[setup] : undefined;
  return from !== undefined && setupNames(document).includes(from) ? from : null;
};

/**
 * The way from a setup to one that is known, over those that it was begun as a copy of: itself first, the known one last.
 * @returns null where nothing of the kind leads to one
 */
export const wayToKnown = (setup: string, known: readonly string[], copies: SetupCopies = {}): readonly string[] | null => {
  const way: string[] = [];
  for (
    let at: string | undefined = setup;
    at !== undefined && !way.includes(at);
    at = Object.hasOwn(copies, at) ? copies[at] : undefined
  ) {
    way.push(at);
    if (known.includes(at)) return way;
  }
  return null;
};

export const withCopy = (copies: SetupCopies = {}, setup: string, from: string): SetupCopies => ({ ...copies, [setup]: from });

export const copiesRenamed = (copies: SetupCopies = {}, from: string, to: string): SetupCopies => {
  const now = (name: string): string => (name === from ? to : name);
  return Object.fromEntries(Object.entries(copies).map(([setup, source]) => [now(setup), now(source)]));
};

/** Nothing is known of a setup that was deleted: another one may get its name. */
export const copiesWithout = (copies: SetupCopies = {}, name: string): SetupCopies =>
  Object.fromEntries(Object.entries(copies).filter(([setup, source]) => setup !== name && source !== name));
