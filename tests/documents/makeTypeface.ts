/**
 * Makes the typefaces of the sheet: `npm run typeface -- FOLDER`, where FOLDER holds
 * EncodeSansSemiCondensed_400Regular.ttf and EncodeSansSemiCondensed_600SemiBold.ttf of the package
 * @expo-google-fonts/encode-sans-semi-condensed 0.2.3, and NotoSans_400Regular.ttf and NotoSans_600SemiBold.ttf of
 * @expo-google-fonts/noto-sans 0.4.2 (all under the SIL Open Font License 1.1).
 *
 * The window's own typeface comes in files without fractions and comparison signs; these have them. Kept are all Latin letters
 * that the font has, with their signs, and the symbols of a workshop; numerals are those of one width, so that columns of
 * numbers stand under each other. It has neither Greek nor Cyrillic letters: those, and nothing else, are of the second.
 * The licence of the first reserves the font's name: what is changed bears another.
 */
import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { Font, type TTF } from 'fonteditor-core';
import { ROOT } from '../../electron/building/products.mjs';
import { toBase64 } from '../../geometry/sheet/typeface/base64';

/** A typeface of the sheet: its files and the letters that are kept of them. */
interface Source {
  readonly file: string;
  readonly family: string;
  readonly weight: string;
  readonly name: string;
  readonly isKept: (code: number) => boolean;
  readonly hasFigures: boolean;
  readonly copyright: string;
  readonly licence: string;
}

const SYMBOLS = '–—‘’‚“”„†‡•…‰′″‹›⁄€™ℓΩ⅓⅔⅛⅜⅝⅞←↑→↓∂∆∏∑−√∞∫≈≠≤≥◊';
/** Latin with its supplement, Extended-A and -B; Extended Additional. */
const LETTERS = [
  [0x20, 0x7e],
  [0xa0, 0x24f],
  [0x1e00, 0x1eff],
] as const;
const isLatin = (code: number): boolean =>
  LETTERS.some(([first, last]) => code >= first && code <= last) || SYMBOLS.includes(String.fromCodePoint(code));

/** Greek with tonos; Cyrillic of the Slavic languages, and what Kazakh, Kyrgyz and Tatar have beside it; the numero sign. */
const OTHERS = [
  [0x386, 0x3ce],
  [0x400, 0x45f],
  [0x490, 0x493],
  [0x49a, 0x49b],
  [0x4a2, 0x4a3],
  [0x4ae, 0x4b1],
  [0x4ba, 0x4bb],
  [0x4d8, 0x4d9],
  [0x4e8, 0x4e9],
  [0x2116, 0x2116],
] as const;
const isOther = (code: number): boolean => OTHERS.some(([first, last]) => code >= first && code <= last);

const FIRST = {
  family: 'Jounce Sheet',
  isKept: isLatin,
  hasFigures: true,
  copyright: 'Copyright 2012 The Encode Project Authors (impallari@gmail.com), with Reserved Font Name "Encode Sans".',
  licence: 'OFL.txt',
} as const;
const SECOND = {
  family: 'Jounce Sheet Other',
  isKept: isOther,
  hasFigures: false,
  copyright: 'Copyright 2022 The Noto Project Authors (https://github.com/notofonts/latin-greek-cyrillic)',
  licence: 'OFL-other.txt',
} as const;

const FONTS: readonly Source[] = [
  { ...FIRST, file: 'EncodeSansSemiCondensed_400Regular.ttf', weight: 'Regular', name: 'sheetRegular' },
  { ...FIRST, file: 'EncodeSansSemiCondensed_600SemiBold.ttf', weight: 'SemiBold', name: 'sheetSemiBold' },
  { ...SECOND, file: 'NotoSans_400Regular.ttf', weight: 'Regular', name: 'otherRegular' },
  { ...SECOND, file: 'NotoSans_600SemiBold.ttf', weight: 'SemiBold', name: 'otherSemiBold' },
];

const FIGURES = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** A composite glyph has parts, by their place among the glyphs; the library's types do not say so. */
interface Glyph extends TTF.Glyph {
  readonly glyfs?: readonly { readonly glyphIndex: number }[];
}

/** Glyphs with the letters that they are kept for: numerals are those of one width. */
const withLetters = (glyphs: readonly Glyph[], { isKept, hasFigures }: Source): readonly Glyph[] =>
  glyphs.map((glyph) => {
    const figure = hasFigures ? FIGURES.findIndex((name) => glyph.name === `${name}.tf`) : -1;
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
const namesOf = ({ family, weight, copyright }: Source): Record<string, string> => ({
  copyright,
  fontFamily: `${family} ${weight}`,
  fontSubFamily: 'Regular',
  fullName: `${family} ${weight}`,
  postScriptName: `${family.replace(/ /g, '')}-${weight}`,
  licence: 'This Font Software is licensed under the SIL Open Font License, Version 1.1.',
});

const [folder = '.'] = process.argv.slice(2);
for (const from of FONTS) {
  const { file, name } = from;
  const source = await readFile(path.join(folder, file));
  const font = Font.create(source, { type: 'ttf', hinting: false });
  const whole = font.get();
  const glyphs = cut(withLetters(whole.glyf, from));
  const figures = glyphs.flatMap(({ unicode, advanceWidth }) =>
    unicode.some((code) => code >= 0x30 && code <= 0x39) ? [advanceWidth] : [],
  );
  if (from.hasFigures && (figures.length !== FIGURES.length || new Set(figures).size !== 1))
    throw new RangeError(`${file} has no numerals of one width: ${figures.join(', ')}`);
  // names of glyphs are of no use to a page: the second goes without
  const post = from.hasFigures ? whole.post : { ...whole.post, format: 3 };
  font.set({ ...whole, post, glyf: [...glyphs], name: namesOf(from) as unknown as TTF.Name });
  const bytes = Uint8Array.from(font.write({ type: 'ttf', hinting: false, toBuffer: true }) as Buffer);
  const lines = toBase64(bytes).match(/.{1,180}/g) ?? [];
  const target = path.join(ROOT, 'geometry/sheet/typeface', `${name}.ts`);
  const digest = createHash('sha256').update(source).digest('hex');
  await writeFile(
    target,
    `// Made by tests/documents/makeTypeface.ts from ${file}, sha256 ${digest}.\n` +
      `// SIL Open Font License 1.1: ${from.licence} beside this file.\n` +
      `export const ${name} = (): string =>\n  \`\n${lines.join('\n')}\n\`.replace(/\\n/g, '');\n`,
  );
  const letters = glyphs.reduce((sum, { unicode }) => sum + unicode.length, 0);
  process.stdout.write(`${target}: ${letters} letters, ${bytes.length} bytes\n`);
}
