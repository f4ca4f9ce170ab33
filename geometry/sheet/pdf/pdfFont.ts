import { viewOf } from '../typeface/fontFile';
import { subsetFont } from '../typeface/subsetFont';
import { sheetTypeface, type Weight } from '../typeface/typeface';
import { hex4, latin, type PdfFile } from './pdfFile';

/** A font as the file carries it, and how texts are written in it. */
export interface PdfFont {
  readonly object: number;
  /** glyph numbers of a text, four digits each */
  readonly encode: (text: string) => string;
}

const POSTSCRIPT: Readonly<Record<Weight, string>> = { regular: 'JounceSheet-Regular', bold: 'JounceSheet-SemiBold' };
/** Width of an upright stroke, for viewers that have to do without the font itself. */
const STEM: Readonly<Record<Weight, number>> = { regular: 78, bold: 112 };

/** Six letters that tell parts of one font apart: made of what is in it, so that the same sheet is the same file. */
const tagOf = (letters: readonly number[]): string => {
  let hash = 2166136261;
  for (const letter of letters) hash = Math.imul(hash ^ letter, 16777619) >>> 0;
  return Array.from({ length: 6 }, (_, place) => {
    const letter = String.fromCharCode(65 + (hash % 26));
    hash = (Math.floor(hash / 26) + place * 7919) >>> 0;
    return letter;
  }).join('');
};

/** Which letters the glyphs are: what a reader copies and searches. */
const letterMap = (letters: readonly (readonly [number, number])[]): string => {
  const parts: string[] = [];
  for (let at = 0; at < letters.length; at += 100) {
    const some = letters.slice(at, at + 100);
    parts.push(`${some.length} beginbfchar`, ...some.map(([glyph, code]) => `<${hex4(glyph)}> <${hex4(code)}>`), 'endbfchar');
  }
  return [
    '/CIDInit /ProcSet findresource begin',
    '12 dict begin',
    'begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def',
    '/CMapType 2 def',
    '1 begincodespacerange',
    '<0000> <FFFF>',
    'endcodespacerange',
    ...parts,
    'endcmap',
    'CMapName currentdict /CMap defineresource pop',
    'end',
    'end',
  ].join('\n');
};

/**
 * Puts the letters that the pages use of a weight into the file, as a composite font of glyph numbers.
 * @see ISO 32000-1:2008, 9.7.4 (CIDFonts), 9.8 (font descriptors), 9.10.3 (ToUnicode)
 */
export const addFont = (file: PdfFile, weight: Weight, texts: Iterable<string>): PdfFont => {
  const { font } = sheetTypeface()[weight];
  const codes = [...new Set([...texts].flatMap((text) => [...text].map((letter) => letter.codePointAt(0) ?? 0)))].sort(
    (a, b) => a - b,
  );
  const subset = subsetFont(
    font,
    codes.map((code) => font.glyphOf.get(code) ?? 0),
  );
  const glyphOf = new Map(codes.map((code) => [code, subset.glyphs.get(font.glyphOf.get(code) ?? 0) ?? 0]));
  const scale = 1000 / font.unitsPerEm;
  const name = `${tagOf(codes)}+${POSTSCRIPT[weight]}`;
  const head = viewOf(font.table('head'));
  const box = [36, 38, 40, 42].map((at) => Math.round(head.getInt16(at) * scale)).join(' ');
  const widths = [...subset.glyphs.keys()].map((glyph) => font.advanceOf(glyph) * scale).join(' ');
  const letters = [...glyphOf].map(([code, glyph]) => [glyph, code] as const);
  const data = file.stream(`/Length1 ${subset.bytes.length}`, subset.bytes);
  const descriptor = file.add(
    `<< /Type /FontDescriptor /FontName /${name} /Flags 4 /FontBBox [${box}] /ItalicAngle 0 ` +
      `/Ascent ${Math.round(font.ascent * scale)} /Descent ${Math.round(font.descent * scale)} /CapHeight 740 ` +
      `/StemV ${STEM[weight]} /FontFile2 ${data} 0 R >>`,
  );
  const descendant = file.add(
    `<< /Type /Font /Subtype /CIDFontType2 /BaseFont /${name} ` +
      `/CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> ` +
      `/FontDescriptor ${descriptor} 0 R /DW 1000 /W [0 [${widths}]] /CIDToGIDMap /Identity >>`,
  );
  const unicode = file.stream('', latin(letterMap(letters)));
  const object = file.add(
    `<< /Type /Font /Subtype /Type0 /BaseFont /${name} /Encoding /Identity-H ` +
      `/DescendantFonts [${descendant} 0 R] /ToUnicode ${unicode} 0 R >>`,
  );
  return { object, encode: (text) => [...text].map((letter) => hex4(glyphOf.get(letter.codePointAt(0) ?? 0) ?? 0)).join('') };
};
