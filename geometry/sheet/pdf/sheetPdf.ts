import { sheetTitle } from '../html/sheetHtml';
import type { SheetPage } from '../layout/layOutSheet';
import type { Sheet } from '../sheet';
import type { Weight } from '../typeface/typeface';
import { latin, PdfFile, pdfText } from './pdfFile';
import { addFont, type PdfFont } from './pdfFont';
import { drawPage, FONT_NAMES } from './pdfPage';

const textsOf = (pages: readonly SheetPage[], weight: Weight): readonly string[] =>
  pages.flatMap(({ primitives }) =>
    primitives.flatMap((primitive) => (primitive.kind === 'text' && primitive.weight === weight ? [primitive.text] : [])),
  );

/** Where the texts of a page stand in the tree that a screen reader goes along. */
interface Tagged {
  readonly page: number;
  readonly elements: readonly number[];
}

/**
 * The sheet as a PDF: the pages of the layout stroke by stroke, with real text in the typeface that the file carries, its title,
 * its language and the order of reading. The same sheet of the same day is the same file, to the last byte.
 *
 * It is written here, and not by a library, so that window and command line make one file from one code, without anything to
 * load: the pages need lines, curves and texts alone.
 *
 * @param date - day of the sheet, YYYY-MM-DD
 */
export const sheetPdf = (sheet: Sheet, pages: readonly SheetPage[], date: string): Uint8Array => {
  const file = new PdfFile();
  const fonts: Readonly<Record<Weight, PdfFont>> = {
    regular: addFont(file, 'regular', textsOf(pages, 'regular')),
    bold: addFont(file, 'bold', textsOf(pages, 'bold')),
  };
  const [catalog, tree, root, whole] = [file.reserve(), file.reserve(), file.reserve(), file.reserve()];
  const resources = `<< /Font << /${FONT_NAMES.regular} ${fonts.regular.object} 0 R /${FONT_NAMES.bold} ${fonts.bold.object} 0 R >> >>`;
  const drawn = pages.map((page, index): Tagged => {
    const { content, tags } = drawPage(page, fonts);
    const stream = file.stream('', latin(content));
    const number = file.add(
      `<< /Type /Page /Parent ${tree} 0 R /MediaBox [0 0 ${page.paper.width} ${page.paper.height}] ` +
        `/Resources ${resources} /Contents ${stream} 0 R /StructParents ${index} /Tabs /S >>`,
    );
    const elements = tags.map((tag, mark) =>
      file.add(`<< /Type /StructElem /S /${tag} /P ${whole} 0 R /Pg ${number} 0 R /K ${mark} >>`),
    );
    return { page: number, elements };
  });
  const references = (numbers: readonly number[]): string => numbers.map((number) => `${number} 0 R`).join(' ');
  const parents = file.add(`<< /Nums [${drawn.map(({ elements }, index) => `${index} [${references(elements)}]`).join(' ')}] >>`);
  const all = drawn.flatMap(({ elements }) => elements);
  file.write(whole, `<< /Type /StructElem /S /Document /P ${root} 0 R /K [${references(all)}] >>`);
  file.write(root, `<< /Type /StructTreeRoot /K [${whole} 0 R] /ParentTree ${parents} 0 R /ParentTreeNextKey ${pages.length} >>`);
  file.write(tree, `<< /Type /Pages /Count ${pages.length} /Kids [${references(drawn.map(({ page }) => page))}] >>`);
  file.write(
    catalog,
    `<< /Type /Catalog /Pages ${tree} 0 R /Lang (en) /MarkInfo << /Marked true >> /StructTreeRoot ${root} 0 R ` +
      `/ViewerPreferences << /DisplayDocTitle true >> >>`,
  );
  const day = /^\d{4}-\d{2}-\d{2}$/.test(date) ? ` /CreationDate (D:${date.replace(/-/g, '')}000000Z)` : '';
  const info = file.add(`<< /Title ${pdfText(sheetTitle(sheet))} /Creator (Jounce) /Producer (Jounce)${day} >>`);
  return file.bytes(catalog, info);
};
