import type { PathCommand } from '../drawing/flatten';
import { sheetTitle } from './html/sheetHtml';
import { HEADING, TITLE } from './layout/block';
import type { SheetPage } from './layout/layOutSheet';
import { INKS, type Ink, type Primitive, type TextPrimitive } from './layout/primitives';
import type { Sheet } from './sheet';
import { needsOther, otherTypeface, runsOf, sheetTypeface, type Run, type Weight } from './typeface/typeface';

/** A line of text; the page's top left corner is the origin, y down, everything in points. */
export interface PrintedText {
  readonly kind: 'text';
  /** what it is to a reader who hears the page */
  readonly tag: 'H1' | 'H2' | 'P';
  readonly text: string;
  /** the text by typeface, where letters of the second are in it: each stretch begins at its own x; else it is all of the first */
  readonly runs?: readonly Run[];
  /** where the text begins, and its baseline */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: Weight;
  /** #rrggbb, as every colour here */
  readonly colour: string;
}

/** Lines and surfaces; filled, stroked or both. */
export interface PrintedPath {
  readonly kind: 'path';
  readonly commands: readonly PathCommand[];
  readonly fill: string | null;
  readonly stroke: string | null;
  readonly width: number;
  readonly dash: readonly number[] | null;
  readonly isRound: boolean;
}

/** Whole TrueType files: the typeface, and that of Greek and Cyrillic letters where one of them is printed. */
export interface PrintedFonts extends Readonly<Record<Weight, Uint8Array>> {
  readonly other?: Readonly<Record<Weight, Uint8Array>>;
}

/** All that a writer of a file needs to know of a sheet, in plain values: no more of geometry/ goes with it. */
export interface PrintedSheet {
  readonly title: string;
  /** YYYY-MM-DD */
  readonly date: string;
  readonly fonts: PrintedFonts;
  readonly pages: readonly {
    readonly width: number;
    readonly height: number;
    /** in the order of reading */
    readonly marks: readonly (PrintedText | PrintedPath)[];
  }[];
}

const tagOf = ({ size, weight }: TextPrimitive): PrintedText['tag'] =>
  size === TITLE.size ? 'H1' : size === HEADING.size && weight === 'bold' ? 'H2' : 'P';

const colourOf = (ink: Ink | null): string | null => (ink === null ? null : INKS[ink]);

const markOf = (primitive: Primitive): PrintedText | PrintedPath => {
  if (primitive.kind === 'path') return { ...primitive, fill: colourOf(primitive.fill), stroke: colourOf(primitive.stroke) };
  const { ink, ...text } = primitive;
  return inRuns({ ...text, colour: INKS[ink], tag: tagOf(primitive) });
};

/** A line of text with its stretches by typeface, where it has more than the first. */
export const inRuns = (line: PrintedText): PrintedText =>
  needsOther(line.text) ? { ...line, runs: runsOf(line.text, line.x, line.size, line.weight) } : line;

/** The fonts that these marks need. */
export const fontsFor = (marks: readonly (PrintedText | PrintedPath)[]): PrintedFonts => {
  const { regular, bold } = sheetTypeface();
  const fonts = { regular: regular.font.bytes, bold: bold.font.bytes };
  if (!marks.some((mark) => mark.kind === 'text' && mark.runs !== undefined)) return fonts;
  const other = otherTypeface();
  return { ...fonts, other: { regular: other.regular.font.bytes, bold: other.bold.font.bytes } };
};

/** Pages of a sheet as they go to a file of pages. @param date - day of the sheet, YYYY-MM-DD */
export const printedSheet = (sheet: Sheet, pages: readonly SheetPage[], date: string): PrintedSheet => {
  const printed = pages.map(({ paper, primitives }) => ({
    width: paper.width,
    height: paper.height,
    marks: primitives.map(markOf),
  }));
  return { title: sheetTitle(sheet), date, fonts: fontsFor(printed.flatMap(({ marks }) => marks)), pages: printed };
};
