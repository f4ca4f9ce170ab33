/**
 * What a person likes, kept from one start to the next: names with a text, a number or a yes. Nothing of it is part of a car.
 */
export type Preferences = Readonly<Record<string, string | number | boolean>>;

/** A list kept as one text; its parts have no comma. */
export const preferredList = (preferences: Preferences, name: string, fallback: readonly string[]): readonly string[] => {
  const text = preferences[name];
  return typeof text === 'string' ? text.split(',').filter((part) => part !== '') : fallback;
};

/** One of several words; the first where none of them was kept. */
export const preferredOf = <Word extends string>(
  preferences: Preferences,
  name: string,
  words: readonly [Word, ...Word[]],
): Word => words.find((word) => word === preferences[name]) ?? words[0];
