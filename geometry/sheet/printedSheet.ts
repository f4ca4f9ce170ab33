import type { PathCommand } from '../drawing/flatten';
import { sheetTitle } from './html/sheetHtml';
import { HEADING, TITLE } from './layout/block';
import type { SheetPage } from './layout/layOutSheet';
import { INKS, type Ink, type Primitive, type TextPrimitive } from './layout/primitives';
import type { Sheet } from './sheet';
import { sheetTypeface, type Weight } from './typeface/typeface';

/** A line of text; the page's top left corner is the origin, y down, everything in points. */
export interface PrintedText {
  readonly kind: 'text';
  /** what it is to a reader who hears the page */
  readonly tag: 'H1' | 'H2' | 'P';
  readonly text: string;
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

/** All that a writer of a file needs to know of a sheet, in plain values: no more of geometry/ goes with it. */
export interface PrintedSheet {
  readonly title: string;
  /** YYYY-MM-DD */
  readonly date: string;
  /** whole TrueType files */
  readonly fonts: Readonly<Record<Weight, Uint8Array>>;
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
  return { ...text, colour: INKS[ink], tag: tagOf(primitive) };
};

/** Pages of a sheet as they go to a file of pages. @param date - day of the sheet, YYYY-MM-DD */
export const printedSheet = (sheet: Sheet, pages: readonly SheetPage[], date: string): PrintedSheet => {
  const { regular, bold } = sheetTypeface();
  return {
    title: sheetTitle(sheet),
    date,
    fonts: { regular: regular.font.bytes, bold: bold.font.bytes },
    pages: pages.map(({ paper, primitives }) => ({ width: paper.width, height: paper.height, marks: primitives.map(markOf) })),
  };
};
