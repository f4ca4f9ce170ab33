import type { CarDocument, SetupDocument } from '../car/document';

/** What a car without setups stands as: every adjuster at its zero. */
export const PLAIN_SETUP = 'Baseline';

/** The setups of a car in the order of the file; a car that lists none has one, with nothing changed. */
export function setupNames(document: CarDocument): readonly string[] {
  const names = Object.keys(document.setups ?? {});
  return names.length === 0 ? [PLAIN_SETUP] : names;
}

/**
 * The setup of that name.
 * @throws RangeError when the car has none of that name: ask `setupNames` first
 */
export function findSetup(document: CarDocument, name: string): SetupDocument {
  const setups = document.setups ?? {};
  if (Object.hasOwn(setups, name)) return setups[name];
  if (Object.keys(setups).length === 0 && name === PLAIN_SETUP) return {};
  throw new RangeError(`The car has no setup "${name}"; it has ${setupNames(document).join(', ')}.`);
}
