/** A document with no more rows than this is indented for eyes; longer ones have one row per line. */
const MOST_INDENTED = 4;

/**
 * A JSON document in pieces, so that a long sweep needs no single text of its whole size.
 * Arrays under a key `rows` of the document or of its axles are written row by row.
 */
export function* jsonPieces(document: object): Generator<string> {
  const values = Object.values(document) as unknown[];
  const lists = [document, ...values].map(rowsOf).filter((rows) => rows !== null);
  if (lists.every((rows) => rows.length <= MOST_INDENTED)) {
    yield `${JSON.stringify(document, null, 2)}\n`;
    return;
  }
  yield* objectPieces(document, true);
  yield '\n';
}

const rowsOf = (value: unknown): readonly unknown[] | null => {
  if (typeof value !== 'object' || value === null) return null;
  const rows = (value as { rows?: unknown }).rows;
  return Array.isArray(rows) ? rows : null;
};

function* objectPieces(object: object, outer: boolean): Generator<string> {
  let before = '{';
  for (const [key, value] of Object.entries(object) as [string, unknown][]) {
    if (value === undefined) continue;
    yield `${before}${JSON.stringify(key)}:`;
    before = ',';
    if (key === 'rows' && Array.isArray(value)) yield* rowPieces(value);
    else if (outer && rowsOf(value)) yield* objectPieces(value as object, false);
    else yield JSON.stringify(value);
  }
  yield before === '{' ? '{}' : '}';
}

function* rowPieces(rows: readonly unknown[]): Generator<string> {
  yield '[\n';
  for (const [index, row] of rows.entries()) yield `${JSON.stringify(row)}${index === rows.length - 1 ? '' : ','}\n`;
  yield ']';
}
