import { withKeyRenamed } from '../fields/pathValue';

/** What a name is called after it was given another one. */
export type Renamed = (name: string) => string;

export const renamedFrom =
  (from: string, to: string): Renamed =>
  (name) =>
    name === from ? to : name;

/** A copy in which one part is another, in its place; the same object where it has no such part. */
export const withPart = <Holder extends object, Key extends keyof Holder>(
  holder: Holder,
  key: Key,
  changed: (part: NonNullable<Holder[Key]>) => Holder[Key],
): Holder => {
  const part = holder[key];
  return part === undefined || part === null ? holder : { ...holder, [key]: changed(part as NonNullable<Holder[Key]>) };
};

/** The same for parts that are names: those that a holder has. */
export const withNames = <Holder extends object>(
  holder: Holder,
  keys: readonly (keyof Holder & string)[],
  renamed: Renamed,
): Holder =>
  keys.reduce((now, key) => {
    const name: unknown = now[key];
    return typeof name === 'string' ? { ...now, [key]: renamed(name) } : now;
  }, holder);

/** A record in which a key has another name, in the same place; the same one where it has no such key. */
export const withKey = <Value>(
  record: Readonly<Record<string, Value>>,
  from: string,
  to: string,
): Readonly<Record<string, Value>> =>
  Object.hasOwn(record, from) ? (withKeyRenamed(record, from, to) as Readonly<Record<string, Value>>) : record;

/** A record with every value changed, keys in their places. */
export const withValues = <Value>(
  record: Readonly<Record<string, Value>>,
  changed: (value: Value, key: string) => Value,
): Readonly<Record<string, Value>> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, changed(value, key)]));
