/** Where a value is in the car file: keys, and numbers in lists. */
export type FieldPath = readonly (string | number)[];

type Holder = Readonly<Record<string, unknown>>;

/** The value at a place; undefined where there is none. */
export const valueAt = (holder: unknown, path: FieldPath): unknown =>
  path.reduce<unknown>((value, step) => (value === null || value === undefined ? undefined : (value as Holder)[step]), holder);

/**
 * A copy with another value at a place, sharing all else. Objects on the way there are made; undefined takes the key or the
 * entry of a list away.
 */
export const withValue = <Value>(holder: Value, path: FieldPath, value: unknown): Value => {
  const [step, ...rest] = path;
  if (step === undefined) return value as Value;
  const inner =
    rest.length === 0 ? value : withValue(valueAt(holder, [step]) ?? (typeof rest[0] === 'number' ? [] : {}), rest, value);
  if (typeof step === 'number') {
    const list = [...((holder as readonly unknown[] | undefined) ?? [])];
    if (inner === undefined) list.splice(step, 1);
    else list[step] = inner;
    return list as Value;
  }
  if (inner === undefined) {
    const { [step]: _gone, ...others } = holder as Holder;
    return others as Value;
  }
  return { ...(holder as Holder), [step]: inner } as Value;
};

/** A copy of an object in which one key has another name, in the same place. */
export const withKeyRenamed = (holder: Holder, from: string, to: string): Holder =>
  Object.fromEntries(Object.entries(holder).map(([key, value]) => [key === from ? to : key, value]));
