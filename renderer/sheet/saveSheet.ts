import { printedSheet, sheetHtml, sheetTitle, type Sheet, type SheetPage } from '../../geometry/index';
import { saveFile } from '../look/saveFile';

/** The sheet as a PDF among the downloads: the pages that are shown, by the code of the command line, loaded when it is asked for. */
export const savePdf = async (sheet: Sheet, pages: readonly SheetPage[], date: string): Promise<void> => {
  const { sheetPdf } = await import('../../geometry/pdf/sheetPdf');
  const bytes = await sheetPdf(printedSheet(sheet, pages, date));
  saveFile(`${sheetTitle(sheet)}.pdf`, new Blob([bytes], { type: 'application/pdf' }));
};

export const saveHtml = (sheet: Sheet, pages: readonly SheetPage[]): void =>
  saveFile(`${sheetTitle(sheet)}.html`, new Blob([sheetHtml(sheet, pages)], { type: 'text/html' }));
