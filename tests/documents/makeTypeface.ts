/**
 * Makes the typeface of the sheet: `npm run typeface -- FOLDER`, where FOLDER holds
 * EncodeSansSemiCondensed_400Regular.ttf and EncodeSansSemiCondensed_600SemiBold.ttf of the package
 * @expo-google-fonts/encode-sans-semi-condensed 0.2.3 (SIL Open Font License 1.1).
 *
 * The window's own typeface comes in files without fractions and comparison signs; these have them. Kept are Latin letters with
 * their signs and the symbols of a workshop; numerals are those of one width, so that columns of numbers stand under each other.
 * The licence reserves the font's name: what is changed bears another.
 */
import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../electron/building/products.mjs';
import { toBase64 } from '../../geometry/sheet/typeface/base64';
import { readFont, viewOf, type FontFile } from '../../geometry/sheet/typeface/fontFile';
import { subsetFont } from './subsetFont';

const FONTS = [
  { file: 'EncodeSansSemiCondensed_400Regular.ttf', weight: 'Regular', name: 'sheetRegular' },
  { file: 'EncodeSansSemiCondensed_600SemiBold.ttf', weight: 'SemiBold', name: 'sheetSemiBold' },
] as const;

const SYMBOLS = '–—‘’‚“”„†‡•…‰′″‹›⁄€™ℓΩ⅓⅔⅛⅜⅝⅞←↑→↓∂∆∏∑−√∞∫≈≠≤≥◊';
const isKept = (code: number): boolean =>
  (code >= 0x20 && code < 0x7f) || (code >= 0xa0 && code < 0x180) || SYMBOLS.includes(String.fromCodePoint(code));

/** Names of the glyphs in the table post, format 2. */
const glyphNames = (font: FontFile): readonly (string | null)[] => {
  const post = font.table('post');
  const view = viewOf(post);
  const count = view.getUint16(32);
  const strings: string[] = [];
  for (let at = 34 + 2 * count; at < post.length; at += 1 + (post[at] ?? 0))
    strings.push(String.fromCharCode(...post.subarray(at + 1, at + 1 + (post[at] ?? 0))));
  return Array.from({ length: count }, (_, glyph) => strings[view.getUint16(34 + 2 * glyph) - 258] ?? null);
};

const FIGURES = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** The glyphs of the numerals that are all of one width. */
const figuresOf = (font: FontFile): ReadonlyMap<number, number> => {
  const names = glyphNames(font);
  return new Map(
    FIGURES.map((name, digit) => {
      const glyph = names.findIndex((candidate) => candidate === `${name}.tf` || candidate === `${name}.tnum`);
      if (glyph < 0)
        throw new RangeError(`No numeral of one width for ${name}: ${names.filter((one) => one?.startsWith(name)).join(', ')}`);
      return [0x30 + digit, glyph];
    }),
  );
};

/** The names that a system asks a font for. */
const nameTable = (weight: string): Uint8Array => {
  const names = [
    [0, 'Copyright 2012 The Encode Project Authors (impallari@gmail.com), with Reserved Font Name "Encode Sans".'],
    [1, `Jounce Sheet ${weight}`],
    [2, 'Regular'],
    [4, `Jounce Sheet ${weight}`],
    [6, `JounceSheet-${weight}`],
    [13, 'This Font Software is licensed under the SIL Open Font License, Version 1.1.'],
  ] as const;
  const texts = names.map(([, text]) => Buffer.from(text, 'utf16le').swap16());
  const bytes = Buffer.alloc(6 + 12 * names.length);
  bytes.writeUInt16BE(names.length, 2);
  bytes.writeUInt16BE(bytes.length, 4);
  let at = 0;
  names.forEach(([id], index) => {
    [3, 1, 0x409, id, texts[index]!.length, at].forEach((word, place) => bytes.writeUInt16BE(word, 6 + 12 * index + 2 * place));
    at += texts[index]!.length;
  });
  return Buffer.concat([bytes, ...texts]);
};

const [folder = '.'] = process.argv.slice(2);
for (const { file, weight, name } of FONTS) {
  const source = await readFile(path.join(folder, file));
  const font = readFont(source);
  const figures = figuresOf(font);
  const letters = [...font.glyphOf]
    .filter(([code]) => isKept(code))
    .map(([code, glyph]) => [code, figures.get(code) ?? glyph] as const);
  const post = new Uint8Array(32);
  viewOf(post).setUint32(0, 0x00030000);
  const made = subsetFont(
    font,
    letters.map(([, glyph]) => glyph),
    letters,
    [
      ['OS/2', font.table('OS/2')],
      ['name', nameTable(weight)],
      ['post', post],
    ],
  );
  const lines = toBase64(made.bytes).match(/.{1,110}/g) ?? [];
  const target = path.join(ROOT, 'geometry/sheet/typeface', `${name}.ts`);
  const digest = createHash('sha256').update(source).digest('hex');
  await writeFile(
    target,
    `// Made by tests/documents/makeTypeface.ts from ${file}, sha256 ${digest}.\n` +
      '// SIL Open Font License 1.1: OFL.txt beside this file.\n' +
      `export const ${name} = (): string =>\n  \`\n${lines.join('\n')}\n\`.replace(/\\n/g, '');\n`,
  );
  process.stdout.write(`${target}: ${letters.length} letters, ${made.bytes.length} bytes\n`);
}
