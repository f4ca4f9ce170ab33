import { viewOf, type FontFile } from '../../geometry/sheet/typeface/fontFile';

/** A font of some of another's glyphs, and which of its glyphs each of the other's has become. */
export interface SubsetFont {
  readonly bytes: Uint8Array;
  readonly glyphs: ReadonlyMap<number, number>;
}

const MORE_COMPONENTS = 0x20;
const WORDS = 0x01;
const SCALE = 0x08;
const TWO_SCALES = 0x40;
const MATRIX = 0x80;
const INSTRUCTIONS = 0x100;

/** Where the numbers of the glyphs stand that a composite one is made of. */
const componentsOf = (outline: Uint8Array): readonly number[] => {
  if (outline.length < 10 || viewOf(outline).getInt16(0) >= 0) return [];
  const view = viewOf(outline);
  const places: number[] = [];
  let at = 10;
  for (let flags = MORE_COMPONENTS; flags & MORE_COMPONENTS;) {
    flags = view.getUint16(at);
    places.push(at + 2);
    at += 4 + (flags & WORDS ? 4 : 2) + (flags & MATRIX ? 8 : flags & TWO_SCALES ? 4 : flags & SCALE ? 2 : 0);
  }
  return places;
};

/** The outline of a plain glyph without the instructions for small screens, of a composite one with its parts' new numbers. */
const carriedOutline = (outline: Uint8Array, glyphs: ReadonlyMap<number, number>): Uint8Array => {
  if (outline.length === 0) return outline;
  const view = viewOf(outline);
  const contours = view.getInt16(0);
  if (contours >= 0) {
    const end = 10 + 2 * contours;
    const skipped = view.getUint16(end);
    const kept = new Uint8Array(outline.length - skipped);
    kept.set(outline.subarray(0, end + 2));
    kept.set(outline.subarray(end + 2 + skipped), end + 2);
    viewOf(kept).setUint16(end, 0);
    return kept;
  }
  const copy = outline.slice();
  const changed = viewOf(copy);
  for (const place of componentsOf(outline)) {
    changed.setUint16(place, glyphs.get(view.getUint16(place)) ?? 0);
    changed.setUint16(place - 2, changed.getUint16(place - 2) & ~INSTRUCTIONS);
  }
  return copy;
};

const withComponents = (font: FontFile, wanted: readonly number[]): readonly number[] => {
  const found = new Set<number>([0]);
  const take = (glyph: number): void => {
    if (found.has(glyph)) return;
    found.add(glyph);
    const outline = font.outlineOf(glyph);
    for (const place of componentsOf(outline)) take(viewOf(outline).getUint16(place));
  };
  wanted.forEach(take);
  return [...found];
};

const joined = (parts: readonly Uint8Array[]): Uint8Array => {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
};

const padded = (bytes: Uint8Array): Uint8Array => {
  const all = new Uint8Array(Math.ceil(bytes.length / 4) * 4);
  all.set(bytes);
  return all;
};

const sumOf = (bytes: Uint8Array): number => {
  const view = viewOf(bytes);
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
};

/** A table of letters in format 4, one segment a run of letters whose glyphs follow one another. */
const letterTable = (letters: readonly (readonly [number, number])[]): Uint8Array => {
  const segments: { first: number; last: number; delta: number }[] = [];
  for (const [code, glyph] of [...letters].sort((a, b) => a[0] - b[0])) {
    const before = segments.at(-1);
    const delta = (glyph - code) & 0xffff;
    if (before && before.last === code - 1 && before.delta === delta) before.last = code;
    else segments.push({ first: code, last: code, delta });
  }
  segments.push({ first: 0xffff, last: 0xffff, delta: 1 });
  const count = segments.length;
  const bytes = new Uint8Array(12 + 16 + 8 * count);
  const view = viewOf(bytes);
  const power = 1 << Math.floor(Math.log2(count));
  [0, 1, 3, 1, 0, 12, 4, 16 + 8 * count, 0, 2 * count, 2 * power, Math.log2(power), 2 * (count - power)].forEach((word, index) =>
    view.setUint16(2 * index, word),
  );
  segments.forEach(({ first, last, delta }, index) => {
    view.setUint16(26 + 2 * index, last);
    view.setUint16(28 + 2 * count + 2 * index, first);
    view.setUint16(28 + 4 * count + 2 * index, delta);
  });
  return bytes;
};

/** Tables in a file: their directory first, each at a multiple of four, with the sums that a reader may check. */
const fileOf = (tables: readonly (readonly [string, Uint8Array])[]): Uint8Array => {
  const sorted = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const count = sorted.length;
  const power = 1 << Math.floor(Math.log2(count));
  const directory = new Uint8Array(12 + 16 * count);
  const view = viewOf(directory);
  view.setUint32(0, 0x00010000);
  [count, 16 * power, Math.log2(power), 16 * (count - power)].forEach((word, index) => view.setUint16(4 + 2 * index, word));
  let at = directory.length;
  sorted.forEach(([name, bytes], index) => {
    [...name].forEach((letter, place) => (directory[12 + 16 * index + place] = letter.charCodeAt(0)));
    view.setUint32(16 + 16 * index, sumOf(padded(bytes)));
    view.setUint32(20 + 16 * index, at);
    view.setUint32(24 + 16 * index, bytes.length);
    at += padded(bytes).length;
  });
  const file = joined([directory, ...sorted.map(([, bytes]) => padded(bytes))]);
  const head = sorted.findIndex(([name]) => name === 'head');
  const start = view.getUint32(20 + 16 * head);
  viewOf(file).setUint32(start + 8, (0xb1b0afba - sumOf(file)) >>> 0);
  return file;
};

/**
 * A font of the wanted glyphs alone, numbered anew: the blank one of missing letters, then the wanted in their order, then the
 * parts that composite ones are made of. Instructions for small screens and kerning are left out.
 *
 * @param wanted - glyphs of the font, in the order in which they are numbered
 * @param letters - letters that the new font knows, with the font's own glyphs; none where nobody asks it for letters
 * @param tables - further tables as they are to stand in the file: names, and what a system asks of a font
 */
export const subsetFont = (
  font: FontFile,
  wanted: readonly number[],
  letters: readonly (readonly [number, number])[] = [],
  tables: readonly (readonly [string, Uint8Array])[] = [],
): SubsetFont => {
  const kept = withComponents(font, wanted);
  const glyphs = new Map(kept.map((glyph, index) => [glyph, index]));
  const outlines = kept.map((glyph) => padded(carriedOutline(font.outlineOf(glyph), glyphs)));
  const loca = new Uint8Array(4 * (kept.length + 1));
  const hmtx = new Uint8Array(4 * kept.length);
  let at = 0;
  kept.forEach((glyph, index) => {
    at += outlines[index]!.length;
    viewOf(loca).setUint32(4 * (index + 1), at);
    viewOf(hmtx).setUint16(4 * index, font.advanceOf(glyph));
    viewOf(hmtx).setInt16(4 * index + 2, font.bearingOf(glyph));
  });
  const head = font.table('head').slice();
  viewOf(head).setUint32(8, 0);
  viewOf(head).setInt16(50, 1);
  const hhea = font.table('hhea').slice();
  viewOf(hhea).setUint16(34, kept.length);
  const maxp = font.table('maxp').slice();
  viewOf(maxp).setUint16(4, kept.length);
  viewOf(maxp).setUint16(26, 0); // no instructions
  const bytes = fileOf([
    ['head', head],
    ['hhea', hhea],
    ['maxp', maxp],
    ['hmtx', hmtx],
    ['loca', loca],
    ['glyf', joined(outlines)],
    ['cmap', letterTable(letters.map(([code, glyph]) => [code, glyphs.get(glyph) ?? 0]))],
    ...tables,
  ]);
  return { bytes, glyphs };
};
