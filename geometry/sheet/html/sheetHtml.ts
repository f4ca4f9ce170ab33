import { printedPart, type SheetPage } from '../layout/layOutSheet';
import type { Sheet } from '../sheet';
import { needsOther, OTHER_FAMILY, otherTypeface, SHEET_FAMILY, sheetTypeface } from '../typeface/typeface';
import { escaped, pageSvg } from './pageSvg';
import { readableSheet } from './readableSheet';

/** What a sheet is called: the title of its file. */
export const sheetTitle = ({ car, head }: Sheet): string =>
  ['Set-up sheet', car, head[0]?.value].filter((part) => part !== undefined).join(' – ');

const fontFace = (family: string, base64: string, weight: number): string =>
  `@font-face{font-family:'${family}';font-weight:${weight};src:url(data:font/ttf;base64,${base64}) format('truetype')}`;

/** The typefaces that the pages show: the second only where a letter of it stands on them. */
const fontFaces = (pages: readonly SheetPage[]): readonly string[] => {
  const first = sheetTypeface();
  const hasOther = pages.some(({ primitives }) => primitives.some((one) => one.kind === 'text' && needsOther(one.text)));
  const of = (family: string, { regular, bold }: typeof first) => [
    fontFace(family, regular.base64, 400),
    fontFace(family, bold.base64, 600),
  ];
  return [...of(SHEET_FAMILY, first), ...(hasOther ? of(OTHER_FAMILY, otherTypeface()) : [])];
};

const styles = (pages: readonly SheetPage[], { paper }: SheetPage): string =>
  [
    ...fontFaces(pages),
    `@page{size:${paper.width}pt ${paper.height}pt;margin:0}`,
    'html{background:#d5dad8}body{margin:0;padding:16px 0}',
    '.page{background:#fff;margin:0 auto 16px;width:max-content;box-shadow:0 2px 14px rgba(0,0,0,.25)}.page svg{display:block}',
    '.read{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}',
    '@media print{html{background:#fff}body{padding:0}.read{display:none}',
    '.page{margin:0;box-shadow:none;break-after:page;break-inside:avoid}.page:last-child{break-after:auto}}',
  ].join('');

/**
 * The sheet as one file that needs nothing beside it: its pages as they print, with real text in the typeface that it carries,
 * and the same as tables and lists for those who hear it read.
 */
export const sheetHtml = (sheet: Sheet, pages: readonly SheetPage[]): string =>
  [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width">',
    `<title>${escaped(sheetTitle(sheet))}</title>`,
    `<style>${styles(pages, pages[0]!)}</style>`,
    '</head>',
    '<body>',
    `<main class="read">${readableSheet(pages[0] ? printedPart(sheet, pages[0].paper) : sheet)}</main>`,
    ...pages.map((page) => `<div class="page">${pageSvg(page)}</div>`),
    '</body>',
    '</html>',
    '',
  ].join('\n');
