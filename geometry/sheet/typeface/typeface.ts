import { fromBase64 } from './base64';
import { readFont, type FontFile } from './fontFile';
import { otherRegular } from './otherRegular';
import { otherSemiBold } from './otherSemiBold';
import { sheetRegular } from './sheetRegular';
import { sheetSemiBold } from './sheetSemiBold';

export type Weight = 'regular' | 'bold';

/** What a letter is printed as that neither typeface has. */
export const MISSING_LETTER = '?';

/** The names under which the typefaces are known to a page that shows a sheet: letters that the first lacks are of the other. */
export const SHEET_FAMILY = 'Jounce Sheet';
export const OTHER_FAMILY = 'Jounce Sheet Other';

/** One weight of a typeface of the sheet: it measures lines, and is what HTML and PDF carry with them. */
export interface Face {
  readonly font: FontFile;
  readonly base64: string;
}

type Typeface = Readonly<Record<Weight, Face>>;

const faceOf = (base64: string): Face => ({ font: readFont(fromBase64(base64)), base64 });

let kept: Typeface | null = null;
let keptOther: Typeface | null = null;

/** The typeface that every sheet is set in; read when it is first asked for. */
export const sheetTypeface = (): Typeface => (kept ??= { regular: faceOf(sheetRegular()), bold: faceOf(sheetSemiBold()) });

/** That of Greek and Cyrillic letters, and of nothing else; read when the first of them is met. */
export const otherTypeface = (): Typeface => (keptOther ??= { regular: faceOf(otherRegular()), bold: faceOf(otherSemiBold()) });

const codeOf = (letter: string): number => letter.codePointAt(0) ?? 0;

const isOfFirst = (letter: string): boolean => sheetTypeface().regular.font.glyphOf.has(codeOf(letter));
const isOfOther = (letter: string): boolean => !isOfFirst(letter) && otherTypeface().regular.font.glyphOf.has(codeOf(letter));

/** What is printed of a text: one form of each letter, blanks for control characters and line breaks. */
const printable = (text: string): string => text.normalize('NFC').replace(/\s|\p{Cc}/gu, ' ');

/** A text in letters that the typefaces have; control characters and line breaks are blanks. */
export const inTypeface = (text: string): string =>
  [...printable(text)].map((letter) => (isOfFirst(letter) || isOfOther(letter) ? letter : MISSING_LETTER)).join('');

/** The letters of a text that are printed as question marks, each once. */
export const lettersMissing = (text: string): readonly string[] =>
  [...new Set(printable(text))].filter((letter) => !isOfFirst(letter) && !isOfOther(letter));

/** Whether a text has letters of the other typeface. */
export const needsOther = (text: string): boolean => [...text].some(isOfOther);

/** Width of a text [pt]. @param size - of the letters [pt] */
export const widthOf = (text: string, size: number, weight: Weight): number => {
  const first = sheetTypeface()[weight].font;
  let width = 0;
  for (const letter of text) {
    const font = isOfOther(letter) ? otherTypeface()[weight].font : first;
    width += font.advanceOf(font.glyphOf.get(codeOf(letter)) ?? 0) / font.unitsPerEm;
  }
  return width * size;
};

/** A stretch of a line that is of one typeface, and where it begins [pt]. */
export interface Run {
  readonly isOther: boolean;
  readonly text: string;
  readonly x: number;
}

/** A line by typeface, from left to right. @param x - where it begins [pt] */
export const runsOf = (text: string, x: number, size: number, weight: Weight): readonly Run[] => {
  const runs: Run[] = [];
  let at = x;
  for (const letter of text) {
    const isOther = isOfOther(letter);
    const last = runs.at(-1);
    if (last?.isOther === isOther) runs[runs.length - 1] = { ...last, text: last.text + letter };
    else runs.push({ isOther, text: letter, x: at });
    at += widthOf(letter, size, weight);
  }
  return runs;
};

/** The font files for a page that shows the sheet: family and weight in the sense of CSS, and the bytes. */
export const sheetFonts = (): readonly {
  readonly family: string;
  readonly weight: 400 | 600;
  readonly bytes: Uint8Array;
}[] => {
  const of = (family: string, { regular, bold }: Typeface) =>
    [
      { family, weight: 400, bytes: regular.font.bytes },
      { family, weight: 600, bytes: bold.font.bytes },
    ] as const;
  return [...of(SHEET_FAMILY, sheetTypeface()), ...of(OTHER_FAMILY, otherTypeface())];
};
