/** How a text is laid out: what one level of nesting is, and what ends a line. */
export interface Layout {
  readonly indent: string;
  readonly newline: string;
}

export const DEFAULT_LAYOUT: Layout = { indent: '  ', newline: '\n' };

/** Lists of lists longer than this go on lines of their own. */
const LONGEST_LINE = 100;

/** The layout of a text, from its first line end and its first indented line. */
export function layoutOf(text: string): Layout {
  const newline = /\r\n|\n|\r/.exec(text)?.[0] ?? DEFAULT_LAYOUT.newline;
  const indent = /[\r\n]([ \t]+)\S/.exec(text)?.[1] ?? DEFAULT_LAYOUT.indent;
  return { indent, newline };
}

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);

/** Keys of an object that hold something: a key set to undefined is a key that is not there. */
export const keysOf = (value: object): string[] =>
  Object.keys(value).filter((key) => (value as Readonly<Record<string, unknown>>)[key] !== undefined);

export const isPlainObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !isList(value);

/** A value as JSON: objects a key a line, lists of plain values on one line. */
export function formatValue(value: unknown, layout: Layout, depth: number): string {
  const lines = (open: string, entries: readonly string[], close: string): string => {
    const inner = layout.newline + layout.indent.repeat(depth + 1);
    return `${open}${entries.map((entry) => inner + entry).join(',')}${layout.newline}${layout.indent.repeat(depth)}${close}`;
  };
  if (isList(value)) {
    const isFlat = value.every(
      (item) => !isPlainObject(item) && !(isList(item) && item.some((inner) => typeof inner === 'object' && inner !== null)),
    );
    const entries = value.map((item) => formatValue(item, layout, depth + 1));
    const line = `[${entries.join(', ')}]`;
    const isPlain = value.every((item) => typeof item !== 'object' || item === null);
    return isPlain || (isFlat && line.length <= LONGEST_LINE) ? line : lines('[', entries, ']');
  }
  if (isPlainObject(value)) {
    const keys = keysOf(value);
    if (keys.length === 0) return '{}';
    return lines(
      '{',
      keys.map((key) => `${JSON.stringify(key)}: ${formatValue(value[key], layout, depth + 1)}`),
      '}',
    );
  }
  return JSON.stringify(value);
}

/** Whether two values say the same, keys in the same order; 0 and −0 do. */
export function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (isList(a)) return isList(b) && a.length === b.length && a.every((item, i) => isSame(item, b[i]));
  if (!isPlainObject(a) || !isPlainObject(b)) return false;
  const [keys, others] = [keysOf(a), keysOf(b)];
  return keys.length === others.length && keys.every((key, i) => key === others[i] && isSame(a[key], b[key]));
}
