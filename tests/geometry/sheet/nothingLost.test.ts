import { describe, expect, test } from 'vitest';
import {
  layOutSheet,
  PAPERS,
  printedPart,
  printedSheet,
  setupNames,
  sheetHtml,
  STANDARD_UNITS,
  type PaperName,
  type Sheet,
  type SheetPage,
  type UnitChoice,
} from '../../../geometry/index';
import { sheetPdf } from '../../../geometry/pdf/sheetPdf';
import { inTypeface } from '../../../geometry/sheet/typeface/typeface';
import { SAMPLES, sampleNamed } from '../../samples/samples';
import { readPdf } from './pdfReader';
import { DAY, sectionsOf, sheetOf } from './sheets';

const RIM: UnitChoice = { ...STANDARD_UNITS, toe: 'rim' };
const IMPERIAL: UnitChoice = { length: 'in', angle: 'minutes', toe: 'rim', force: 'pound' };
const UNITS: readonly (readonly [string, UnitChoice])[] = [
  ['degrees', STANDARD_UNITS],
  ['toe across the rim', RIM],
  ['inches and minutes', IMPERIAL],
];
const AXLES = [['front', 'rear'], ['front'], ['rear']] as const;
const PAPER_NAMES: readonly PaperName[] = ['A4', 'Letter'];

/** What is broken over lines is whole without its blanks. */
const squeezed = (text: string): string => inTypeface(text).replace(/\s/g, '');

const rowsOf = (sheet: Sheet) => sectionsOf(sheet, 'settings').flatMap(({ rows }) => rows);

/** What a row has to say: its part, and how it stands on both sides or why it is left alone. */
const missingIn = (sheet: Sheet, printed: string): readonly string[] => {
  const page = squeezed(printed);
  return rowsOf(sheet)
    .flatMap(({ name, left, right, locked }) => [name, ...(locked === null ? [left.words, right.words] : [locked])])
    .filter((words) => !page.includes(squeezed(words)));
};

/** Side of a box in which a setting is ticked off as done [pt]; those of what to change are smaller, those of readings wider. */
const DONE = 11;
/** Places on the page are rounded to a hundredth. */
const ROUNDED = 0.021;

const isDoneBox = (one: SheetPage['primitives'][number]): boolean => {
  if (one.kind === 'text' || one.stroke === null || one.commands.length !== 5) return false;
  const numbers = one.commands.flatMap(([, ...rest]) => rest as readonly number[]);
  const [xs, ys] = [numbers.filter((_, at) => at % 2 === 0), numbers.filter((_, at) => at % 2 === 1)];
  return [xs, ys].every((all) => Math.abs(Math.max(...all) - Math.min(...all) - DONE) < ROUNDED);
};

const textsOf = (pages: readonly SheetPage[]): string =>
  pages.flatMap(({ primitives }) => primitives.flatMap((one) => (one.kind === 'text' ? [one.text] : []))).join(' ');

describe.each(SAMPLES.map(({ document }) => [document.name, document] as const))('of %s', (_, document) => {
  test.each(UNITS)('in %s every setting is on a page with its box, however little room there is', (__, units) => {
    for (const setup of setupNames(document))
      for (const axles of AXLES) {
        if (axles.some((axle) => document[axle] === undefined)) continue;
        const sheet = sheetOf(document, setup, { units, axles });
        for (const paper of PAPER_NAMES) {
          const pages = layOutSheet(sheet, PAPERS[paper]);
          const where = `${setup}, ${axles.join(' and ')}, ${paper}`;
          expect(missingIn(sheet, textsOf(pages)), where).toEqual([]);
          expect(pages.flatMap(({ primitives }) => primitives.filter(isDoneBox)).length, where).toBe(rowsOf(sheet).length);
        }
      }
  });
});

const hatch = sampleNamed('saltmarsh-hatch').document;

/** The texts that the pages of the HTML show, without what is for those who hear it. */
const shownIn = (html: string): string =>
  [...html.matchAll(/<svg [^>]*>(.*?)<\/svg>/gs)]
    .flatMap(([, inner]) => [...inner!.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map(([, text]) => text!))
    .join(' ')
    .replace(/&(amp|lt|gt|quot|#39);/g, (entity) => ({ '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' })[entity] ?? "'");

test('in HTML and PDF too, on any paper and in any units', async () => {
  for (const [name, units] of UNITS)
    for (const paper of PAPER_NAMES)
      for (const setup of setupNames(hatch)) {
        const sheet = sheetOf(hatch, setup, { units });
        const pages = layOutSheet(sheet, PAPERS[paper]);
        const where = `${setup}, ${name}, ${paper}`;
        expect(missingIn(sheet, shownIn(sheetHtml(sheet, pages))), where).toEqual([]);
        const pdf = readPdf(await sheetPdf(printedSheet(sheet, pages, DAY)));
        expect(missingIn(sheet, pdf.pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ')), where).toEqual([]);
        // toe and ride height stand in Settings, not in the alignment alone
        const settings = rowsOf(sheet).filter(({ name: row }) => row.startsWith('Toe, each wheel'));
        expect(shownIn(sheetHtml(sheet, pages)).split('Toe, each wheel').length - 1, where).toBe(settings.length);
      }
});

test('curves for which there is no room are missing in writing: in the foot of the last page and to those who hear it', () => {
  const says = /Curves left out/;
  const tight = sheetOf(hatch, 'Sprint', { onCar: { name: 'Wet', setup: hatch.setups!['Wet']! }, units: RIM });
  expect(printedPart(tight, PAPERS.A4).leftOut).toMatch(says);
  const pages = layOutSheet(tight, PAPERS.A4);
  expect(pages.map((page) => says.test(textsOf([page])))).toEqual(pages.map((_, at) => at === pages.length - 1));
  expect(/<main class="read">(.*?)<\/main>/s.exec(sheetHtml(tight, pages))![1]).toMatch(says);
  const roomy = sheetOf(hatch, 'Baseline', { axles: ['front'] });
  expect(printedPart(roomy, PAPERS.A4).leftOut).toBeUndefined();
  expect(textsOf(layOutSheet(roomy, PAPERS.A4))).not.toMatch(says);
});
