const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null;

const entriesOf = (value: Readonly<Record<string, unknown>>): readonly (readonly [string, unknown])[] =>
  Object.entries(value).filter(([, entry]) => entry !== undefined);

/**
 * Whether two documents say the same: keys in any order, one set to undefined as good as left out. Parts that both share, as
 * documents do that grew from one another, are not looked into.
 */
export const isSameDocument = (a: unknown, b: unknown): boolean => {
  if (Object.is(a, b)) return true;
  if (!isObject(a) || !isObject(b) || Array.isArray(a) !== Array.isArray(b)) return false;
  const [inA, inB] = [entriesOf(a), entriesOf(b)];
  return inA.length === inB.length && inA.every(([key, value]) => Object.hasOwn(b, key) && isSameDocument(value, b[key]));
};
