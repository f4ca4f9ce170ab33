import { PDFDocument } from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import type { StructureElement } from 'pdfkit';
import type { PrintedPath, PrintedSheet } from '../index';

/**
 * The library repeats title and day in XML and leaves a title's & and < there as they are: the information dictionary says the
 * same, and says it right.
 */
class SheetDocument extends PDFDocument {
  override endMetadata(): void {}
}

const timeOf = (date: string): Date => {
  const time = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(time.getTime())) throw new RangeError(`"${date}" is not a day, as in 2026-05-16`);
  return time;
};

const drawStroke = (document: PDFDocument, stroke: PrintedPath['commands'][number]): void => {
  switch (stroke[0]) {
    case 'M':
      document.moveTo(stroke[1], stroke[2]);
      return;
    case 'L':
      document.lineTo(stroke[1], stroke[2]);
      return;
    case 'C':
      document.bezierCurveTo(stroke[1], stroke[2], stroke[3], stroke[4], stroke[5], stroke[6]);
      return;
    case 'Z':
      document.closePath();
  }
};

/** Lines and surfaces are no text: who hears the page is not told of them. */
const drawPath = (document: PDFDocument, { commands, fill, stroke, width, dash, isRound }: PrintedPath): void => {
  document.markContent('Artifact').save();
  if (fill !== null) document.fillColor(fill);
  if (stroke !== null) document.strokeColor(stroke).lineWidth(width);
  if (dash !== null) document.dash(dash);
  if (isRound) document.lineCap('round');
  for (const command of commands) drawStroke(document, command);
  if (fill === null) document.stroke();
  else if (stroke === null) document.fill();
  else document.fillAndStroke();
  document.restore().endMarkedContent();
};

type PrintedText = Exclude<PrintedSheet['pages'][number]['marks'][number], PrintedPath>;

/** A line of text; one that changes its typeface on the way is still one paragraph, in pieces. */
const drawText = (document: PDFDocument, whole: StructureElement, mark: PrintedText): void => {
  const { tag, text, runs, x, y, size, weight, colour } = mark;
  const write = (font: string, words: string, from: number, structParent: StructureElement, structType: string): void => {
    document
      .font(font, size)
      .fillColor(colour)
      .text(words, from, y, { lineBreak: false, baseline: 'alphabetic', structParent, structType })
      .endMarkedContent();
  };
  if (runs === undefined) {
    write(weight, text, x, whole, tag);
    return;
  }
  const line = document.struct(tag);
  whole.add(line);
  for (const run of runs) write(run.isOther ? `other ${weight}` : weight, run.text, run.x, line, 'Span');
  line.end();
};

/**
 * The sheet as a PDF: the pages of the layout stroke by stroke, with real text in the typeface that the file carries, its title,
 * its language and the order of reading. The same sheet of the same day is the same file, to the last byte.
 *
 * @throws RangeError for a date that is no day
 */
export const sheetPdf = async ({ title, date, fonts, pages }: PrintedSheet): Promise<Uint8Array<ArrayBuffer>> => {
  const document = new SheetDocument({
    pdfVersion: '1.7',
    autoFirstPage: false,
    font: null,
    tagged: true,
    lang: 'en',
    displayTitle: true,
    info: { Title: title, Creator: 'Jounce', CreationDate: timeOf(date) },
  });
  document.registerFont('regular', fonts.regular).registerFont('bold', fonts.bold);
  if (fonts.other) document.registerFont('other regular', fonts.other.regular).registerFont('other bold', fonts.other.bold);
  const whole = document.struct('Document');
  document.addStructure(whole);
  for (const { width, height, marks } of pages) {
    document.addPage({ size: [width, height], margin: 0 });
    for (const mark of marks) {
      if (mark.kind === 'path') drawPath(document, mark);
      else drawText(document, whole, mark);
    }
  }
  whole.end();
  const bytes = toBytes(document);
  document.end();
  return bytes;
};
