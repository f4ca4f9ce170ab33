/**
 * Reads what lines are measured with from a TrueType file: which glyph a letter is, and how wide it is.
 * @see OpenType specification 1.9: tables cmap (format 4), head, hhea, hmtx
 */
export interface FontFile {
  readonly bytes: Uint8Array;
  /** units of one em */
  readonly unitsPerEm: number;
  /** Unicode code point -> glyph; what is not there is not in the font */
  readonly glyphOf: ReadonlyMap<number, number>;
  /** width of a glyph [units] */
  readonly advanceOf: (glyph: number) => number;
}

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

const tablesOf = (bytes: Uint8Array): ReadonlyMap<string, Uint8Array> => {
  const view = viewOf(bytes);
  const tables = new Map<string, Uint8Array>();
  for (let index = 0; index < view.getUint16(4); index += 1) {
    const at = 12 + 16 * index;
    const name = String.fromCharCode(...bytes.subarray(at, at + 4));
    const start = view.getUint32(at + 8);
    tables.set(name, bytes.subarray(start, start + view.getUint32(at + 12)));
  }
  return tables;
};

/** The first subtable of format 4: every letter of the basic plane. */
const readLetters = (cmap: Uint8Array): Map<number, number> => {
  const view = viewOf(cmap);
  const letters = new Map<number, number>();
  for (let index = 0; index < view.getUint16(2); index += 1) {
    const start = view.getUint32(8 + 8 * index);
    if (view.getUint16(start) !== 4) continue;
    const size = view.getUint16(start + 6); // twice the number of segments
    for (let segment = 0; segment < size; segment += 2) {
      const end = view.getUint16(start + 14 + segment);
      const first = view.getUint16(start + 16 + size + segment);
      const delta = view.getUint16(start + 16 + 2 * size + segment);
      const rangeAt = start + 16 + 3 * size + segment;
      const range = view.getUint16(rangeAt);
      for (let code = first; code <= end && code < 0xffff; code += 1) {
        const found = range === 0 ? code : view.getUint16(rangeAt + range + 2 * (code - first));
        const glyph = found === 0 ? 0 : (found + delta) & 0xffff;
        if (glyph !== 0) letters.set(code, glyph);
      }
    }
    return letters;
  }
  return letters;
};

/** @throws RangeError for bytes that are no TrueType font */
export const readFont = (bytes: Uint8Array): FontFile => {
  const tables = tablesOf(bytes);
  const table = (name: string): Uint8Array => {
    const found = tables.get(name);
    if (found === undefined) throw new RangeError(`This is no TrueType font: it has no table "${name}".`);
    return found;
  };
  const hmtx = viewOf(table('hmtx'));
  const metrics = viewOf(table('hhea')).getUint16(34);
  return {
    bytes,
    unitsPerEm: viewOf(table('head')).getUint16(18),
    glyphOf: readLetters(table('cmap')),
    advanceOf: (glyph) => hmtx.getUint16(4 * Math.min(glyph, metrics - 1)),
  };
};
