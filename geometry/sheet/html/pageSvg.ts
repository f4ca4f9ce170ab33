import type { PathCommand } from '../../drawing/flatten';
import type { SheetPage } from '../layout/layOutSheet';
import { INKS, type PathPrimitive, type Primitive, type TextPrimitive } from '../layout/primitives';
import { OTHER_FAMILY, SHEET_FAMILY } from '../typeface/typeface';

/** The typefaces of a page that shows a sheet, as CSS has them: letter by letter the first that has it. */
export const SHEET_FAMILIES = `'${SHEET_FAMILY}', '${OTHER_FAMILY}', sans-serif`;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text as it may stand in HTML, in an attribute too. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (letter) => ENTITIES[letter] ?? letter);

const stroke = ([letter, ...numbers]: PathCommand): string => `${letter}${numbers.join(' ')}`;

const pathSvg = ({ commands, fill, stroke: ink, width, dash, isRound }: PathPrimitive): string =>
  [
    `<path d="${commands.map(stroke).join('')}"`,
    ` fill="${fill === null ? 'none' : INKS[fill]}"`,
    ink === null ? '' : ` stroke="${INKS[ink]}" stroke-width="${width}"`,
    dash === null ? '' : ` stroke-dasharray="${dash.join(' ')}"`,
    isRound ? ' stroke-linecap="round"' : '',
    '/>',
  ].join('');

const textSvg = ({ text, x, y, size, weight, ink }: TextPrimitive): string =>
  `<text x="${x}" y="${y}" font-size="${size}"${weight === 'bold' ? ' font-weight="600"' : ''} fill="${INKS[ink]}">${escaped(text)}</text>`;

const primitiveSvg = (primitive: Primitive): string => (primitive.kind === 'text' ? textSvg(primitive) : pathSvg(primitive));

/**
 * A page as an SVG of its own with real text, in points. It is a picture of what `readableSheet` says: for those who hear a
 * page read, it is left out.
 */
export const pageSvg = ({ paper, primitives }: SheetPage): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${paper.width} ${paper.height}" width="${paper.width}pt" height="${paper.height}pt" ` +
  `font-family="${SHEET_FAMILIES}" xml:space="preserve" aria-hidden="true" focusable="false">` +
  `${primitives.map(primitiveSvg).join('')}</svg>`;
