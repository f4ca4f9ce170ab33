import {
  templateDxf,
  templatePages,
  tilesOf,
  type PrintedSheet,
  type TemplateDrawing,
  type TemplatePaper,
} from '../../../geometry/index';
import { sheetPdf } from '../../../geometry/pdf/sheetPdf';

/** What is to be made of the templates of one or both sides. */
export interface TemplateFileOrder {
  readonly kind: 'pdf' | 'dxf' | 'pages';
  readonly drawings: readonly TemplateDrawing[];
  readonly paper: TemplatePaper;
  /** YYYY-MM-DD */
  readonly date: string;
}

export type TemplateFile =
  | { readonly kind: 'pdf'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'dxf'; readonly texts: readonly string[] }
  | { readonly kind: 'pages'; readonly pages: PrintedSheet['pages'] };

/** Templates as they go to a file or a printer, by the code of the command line. @throws where a side takes too many sheets */
export const writeTemplate = async ({ kind, drawings, paper, date }: TemplateFileOrder): Promise<TemplateFile> => {
  if (kind === 'dxf') return { kind, texts: drawings.map((drawing) => templateDxf(drawing, date)) };
  const sheets = drawings.map((drawing) => {
    const grid = tilesOf(
      drawing.outlines,
      paper,
      drawing.points.map(({ at }) => at),
    );
    if ('fault' in grid) throw new Error(grid.message);
    return templatePages(drawing, grid, paper, date);
  });
  const [first] = sheets;
  if (!first) throw new RangeError('writeTemplate: no drawing');
  const pages = sheets.flatMap((sheet) => sheet.pages);
  if (kind === 'pages') return { kind, pages };
  // a side whose names need more letters has more fonts
  const fonts = sheets.reduce((all, sheet) => ({ ...all, ...sheet.fonts }), first.fonts);
  return { kind, bytes: await sheetPdf({ ...first, fonts, pages }) };
};
