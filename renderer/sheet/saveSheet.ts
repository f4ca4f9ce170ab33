import { sheetHtml, sheetPdf, sheetTitle, type Sheet, type SheetPage } from '../../geometry/index';
import { saveFile } from '../look/saveFile';

/** The sheet as a PDF among the downloads: the pages that are shown, by the code of the command line. */
export const savePdf = (sheet: Sheet, pages: readonly SheetPage[], date: string): void =>
  saveFile(`${sheetTitle(sheet)}.pdf`, new Blob([sheetPdf(sheet, pages, date).slice().buffer], { type: 'application/pdf' }));

export const saveHtml = (sheet: Sheet, pages: readonly SheetPage[]): void =>
  saveFile(`${sheetTitle(sheet)}.html`, new Blob([sheetHtml(sheet, pages)], { type: 'text/html' }));
