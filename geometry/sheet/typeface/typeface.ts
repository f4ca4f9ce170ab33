import { fromBase64 } from './base64';
import { readFont, type FontFile } from './fontFile';
import { sheetRegular } from './sheetRegular';
import { sheetSemiBold } from './sheetSemiBold';

export type Weight = 'regular' | 'bold';

/** What a letter is printed as that the typeface does not have. */
export const MISSING_LETTER = '?';

/** One weight of the sheet's typeface: it measures lines, and is what HTML and PDF carry with them. */
export interface Face {
  readonly font: FontFile;
  readonly base64: string;
}

const faceOf = (base64: string): Face => ({ font: readFont(fromBase64(base64)), base64 });

let kept: Readonly<Record<Weight, Face>> | null = null;

/** The typeface that every sheet is set in; read when it is first asked for. */
export const sheetTypeface = (): Readonly<Record<Weight, Face>> =>
  (kept ??= { regular: faceOf(sheetRegular()), bold: faceOf(sheetSemiBold()) });

/** A text in letters that the typeface has; control characters and line breaks are blanks. */
export const inTypeface = (text: string): string => {
  const { font } = sheetTypeface().regular;
  return [...text.normalize('NFC').replace(/\s|\p{Cc}/gu, ' ')]
    .map((letter) => (font.glyphOf.has(letter.codePointAt(0) ?? 0) ? letter : MISSING_LETTER))
    .join('');
};

/** The letters of a text that are printed as question marks, each once. */
export const lettersMissing = (text: string): readonly string[] => {
  const { font } = sheetTypeface().regular;
  const letters = [...new Set(text.normalize('NFC').replace(/\s|\p{Cc}/gu, ' '))];
  return letters.filter((letter) => !font.glyphOf.has(letter.codePointAt(0) ?? 0));
};

/** Width of a text [pt]. @param size - of the letters [pt] */
export const widthOf = (text: string, size: number, weight: Weight): number => {
  const { font } = sheetTypeface()[weight];
  let units = 0;
  for (const letter of text) units += font.advanceOf(font.glyphOf.get(letter.codePointAt(0) ?? 0) ?? 0);
  return (units * size) / font.unitsPerEm;
};

/** The two weights as font files, for a page that shows the sheet: weight in the sense of CSS, and the bytes. */
export const sheetFonts = (): readonly { readonly weight: 400 | 600; readonly bytes: Uint8Array }[] => {
  const { regular, bold } = sheetTypeface();
  return [
    { weight: 400, bytes: regular.font.bytes },
    { weight: 600, bytes: bold.font.bytes },
  ];
};
