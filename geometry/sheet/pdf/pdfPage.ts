import type { PathCommand } from '../../drawing/flatten';
import { HEADING, TITLE } from '../layout/block';
import type { SheetPage } from '../layout/layOutSheet';
import { INKS, type Ink, type PathPrimitive, type TextPrimitive } from '../layout/primitives';
import type { Weight } from '../typeface/typeface';
import type { PdfFont } from './pdfFont';

/** What a text is to a reader who hears the page. */
export type TextTag = 'H1' | 'H2' | 'P';

export interface DrawnPage {
  readonly content: string;
  /** one a text, in the order of reading */
  readonly tags: readonly TextTag[];
}

const colour = (ink: Ink): string =>
  [1, 3, 5].map((at) => Number((Number.parseInt(INKS[ink].slice(at, at + 2), 16) / 255).toFixed(3))).join(' ');

const LETTERS: Readonly<Record<PathCommand[0], string>> = { M: 'm', L: 'l', C: 'c', Z: 'h' };

const stroke = ([letter, ...numbers]: PathCommand): string => [...numbers, LETTERS[letter]].join(' ');

/** Lines and surfaces are no text: who hears the page is not told of them. */
const pathContent = ({ commands, fill, stroke: ink, width, dash, isRound }: PathPrimitive): string =>
  [
    '/Artifact BMC q',
    fill === null ? null : `${colour(fill)} rg`,
    ink === null ? null : `${colour(ink)} RG ${width} w`,
    dash === null ? null : `[${dash.join(' ')}] 0 d`,
    isRound ? '1 J' : null,
    ...commands.map(stroke),
    fill !== null && ink !== null ? 'B' : fill !== null ? 'f' : 'S',
    'Q EMC',
  ]
    .filter((part) => part !== null)
    .join(' ');

const tagOf = ({ size, weight }: TextPrimitive): TextTag =>
  size === TITLE.size ? 'H1' : size === HEADING.size && weight === 'bold' ? 'H2' : 'P';

export const FONT_NAMES: Readonly<Record<Weight, string>> = { regular: 'F1', bold: 'F2' };

/** A page's strokes and texts. The page is turned over first, so that every number is that of the layout. */
export const drawPage = ({ paper, primitives }: SheetPage, fonts: Readonly<Record<Weight, PdfFont>>): DrawnPage => {
  const tags: TextTag[] = [];
  const lines = primitives.map((primitive) => {
    if (primitive.kind === 'path') return pathContent(primitive);
    const { text, x, y, size, weight, ink } = primitive;
    const tag = tagOf(primitive);
    tags.push(tag);
    return (
      `/${tag} << /MCID ${tags.length - 1} >> BDC BT ${colour(ink)} rg /${FONT_NAMES[weight]} ${size} Tf ` +
      `1 0 0 -1 ${x} ${y} Tm <${fonts[weight].encode(text)}> Tj ET EMC`
    );
  });
  return { content: [`1 0 0 -1 0 ${paper.height} cm`, ...lines].join('\n'), tags };
};
