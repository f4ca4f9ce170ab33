/**
 * Makes the typeface of the sheet: `npm run typeface -- FOLDER`, where FOLDER holds
 * EncodeSansSemiCondensed_400Regular.ttf and EncodeSansSemiCondensed_600SemiBold.ttf of the package
 * @expo-google-fonts/encode-sans-semi-condensed 0.2.3 (SIL Open Font License 1.1).
 *
 * The window's own typeface comes in files without fractions and comparison signs; these have them. Kept are all Latin letters
 * that the font has, with their signs, and the symbols of a workshop; numerals are those of one width, so that columns of
 * numbers stand under each other. It has neither Greek nor Cyrillic letters to keep.
 * The licence reserves the font's name: what is changed bears another.
 */
import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { Font, type TTF } from 'fonteditor-core';
import { ROOT } from '../../electron/building/products.mjs';
import { toBase64 } from '../../geometry/sheet/typeface/base64';

const FONTS = [
  { file: 'EncodeSansSemiCondensed_400Regular.ttf', weight: 'Regular', name: 'sheetRegular' },
  { file: 'EncodeSansSemiCondensed_600SemiBold.ttf', weight: 'SemiBold', name: 'sheetSemiBold' },
] as const;

const SYMBOLS = '–—‘’‚“”„†‡•…‰′″‹›⁄€™ℓΩ⅓⅔⅛⅜⅝⅞←↑→↓∂∆∏∑−√∞∫≈≠≤≥◊';
/** Latin with its supplement, Extended-A and -B; Extended Additional. */
const LETTERS = [
  [0x20, 0x7e],
  [0xa0, 0x24f],
  [0x1e00, 0x1eff],
] as const;
const isKept = (code: number): boolean =>
  LETTERS.some(([first, last]) => code >= first && code <= last) || SYMBOLS.includes(String.fromCodePoint(code));

const FIGURES = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** A composite glyph has parts, by their place among the glyphs; the library's types do not say so. */
interface Glyph extends TTF.Glyph {
  readonly glyfs?: readonly { readonly glyphIndex: number }[];
}

/** Glyphs with the letters that they are kept for: numerals are those of one width. */
const withLetters = (glyphs: readonly Glyph[]): readonly Glyph[] =>
  glyphs.map((glyph) => {
    const figure = FIGURES.findIndex((name) => glyph.name === `${name}.tf`);
    const letters = (glyph.unicode ?? []).filter((code) => isKept(code) && !(code >= 0x30 && code <= 0x39));
    return { ...glyph, unicode: figure < 0 ? letters : [0x30 + figure] };
  });

/** The glyphs of the kept letters and their parts, in their order; the first is what stands for a missing letter. */
const cut = (glyphs: readonly Glyph[]): readonly Glyph[] => {
  const kept = new Set([0]);
  const keep = (place: number): void => {
    kept.add(place);
    for (const part of glyphs[place]?.glyfs ?? []) keep(part.glyphIndex);
  };
  glyphs.forEach(({ unicode }, place) => {
    if (unicode.length > 0) keep(place);
  });
  const order = [...kept].sort((a, b) => a - b);
  const placeOf = new Map(order.map((from, to) => [from, to]));
  return order.flatMap((from) => {
    const glyph = glyphs[from];
    if (glyph === undefined) return [];
    const parts = glyph.glyfs?.map((part) => ({ ...part, glyphIndex: placeOf.get(part.glyphIndex) ?? 0 }));
    return [parts === undefined ? glyph : { ...glyph, glyfs: parts }];
  });
};

/** The names that a system asks a font for. */
const namesOf = (weight: string): Record<string, string> => ({
  copyright: 'Copyright 2012 The Encode Project Authors (impallari@gmail.com), with Reserved Font Name "Encode Sans".',
  fontFamily: `Jounce Sheet ${weight}`,
  fontSubFamily: 'Regular',
  fullName: `Jounce Sheet ${weight}`,
  postScriptName: `JounceSheet-${weight}`,
  licence: 'This Font Software is licensed under the SIL Open Font License, Version 1.1.',
});

const [folder = '.'] = process.argv.slice(2);
for (const { file, weight, name } of FONTS) {
  const source = await readFile(path.join(folder, file));
  const font = Font.create(source, { type: 'ttf', hinting: false });
  const whole = font.get();
  const glyphs = cut(withLetters(whole.glyf));
  const figures = glyphs.flatMap(({ unicode, advanceWidth }) =>
    unicode.some((code) => code >= 0x30 && code <= 0x39) ? [advanceWidth] : [],
  );
  if (figures.length !== FIGURES.length || new Set(figures).size !== 1)
    throw new RangeError(`${file} has no numerals of one width: ${figures.join(', ')}`);
  font.set({ ...whole, glyf: [...glyphs], name: namesOf(weight) as unknown as TTF.Name });
  const bytes = Uint8Array.from(font.write({ type: 'ttf', hinting: false, toBuffer: true }) as Buffer);
  const lines = toBase64(bytes).match(/.{1,180}/g) ?? [];
  const target = path.join(ROOT, 'geometry/sheet/typeface', `${name}.ts`);
  const digest = createHash('sha256').update(source).digest('hex');
  await writeFile(
    target,
    `// Made by tests/documents/makeTypeface.ts from ${file}, sha256 ${digest}.\n` +
      '// SIL Open Font License 1.1: OFL.txt beside this file.\n' +
      `export const ${name} = (): string =>\n  \`\n${lines.join('\n')}\n\`.replace(/\\n/g, '');\n`,
  );
  const letters = glyphs.reduce((sum, { unicode }) => sum + unicode.length, 0);
  process.stdout.write(`${target}: ${letters} letters, ${bytes.length} bytes\n`);
}
