import { describe, expect, test } from 'vitest';
import {
  layOutSheet,
  PAPERS,
  printedSheet,
  setupNames,
  sheetHtml,
  type CarDocument,
  type Sheet,
  type SheetPage,
} from '../../../geometry/index';
import { readFont } from '../../../geometry/sheet/typeface/fontFile';
import { sheetTypeface } from '../../../geometry/sheet/typeface/typeface';
import { sheetPdf } from '../../../geometry/pdf/sheetPdf';
import { SAMPLES, sampleNamed } from '../../samples/samples';
import { readPdf } from './pdfReader';
import { DAY, sheetOf } from './sheets';

const hatch = sampleNamed('saltmarsh-hatch').document;

const UNESCAPED: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" };
const plain = (text: string): string => text.replace(/&(amp|lt|gt|quot|#39);/g, (entity) => UNESCAPED[entity] ?? entity);

/** The texts that the HTML shows, page by page, as it places them. */
const textsOfHtml = (html: string) =>
  [...html.matchAll(/<svg [^>]*>(.*?)<\/svg>/gs)].map(([, inner]) =>
    [...inner!.matchAll(/<text x="(\S+)" y="(\S+)" font-size="(\S+)"[^>]*>([^<]*)<\/text>/g)].map(([, x, y, size, text]) => ({
      text: plain(text!),
      x: Number(x),
      y: Number(y),
      size: Number(size),
    })),
  );

const pdfOf = (sheet: Sheet, pages: readonly SheetPage[], day = DAY) => sheetPdf(printedSheet(sheet, pages, day));

const made = async (document: CarDocument, setup: string, paper: 'A4' | 'Letter' = 'A4') => {
  const sheet = sheetOf(document, setup);
  const pages = layOutSheet(sheet, PAPERS[paper]);
  return { sheet, pages, html: sheetHtml(sheet, pages), pdf: await pdfOf(sheet, pages) };
};

test('HTML and PDF have the same texts in the same places on the same pages, and all of them', async () => {
  for (const { document } of SAMPLES)
    for (const setup of setupNames(document))
      for (const paper of ['A4', 'Letter'] as const) {
        const { pages, html, pdf } = await made(document, setup, paper);
        const read = readPdf(pdf);
        const shown = textsOfHtml(html);
        expect(read.pages.length).toBe(pages.length);
        expect(shown.length).toBe(pages.length);
        pages.forEach((page, index) => {
          const texts = page.primitives.flatMap((one) =>
            one.kind === 'text' ? [{ text: one.text, x: one.x, y: one.y, size: one.size }] : [],
          );
          expect(read.pages[index]!.texts.map(({ text, x, y, size }) => ({ text, x, y, size }))).toEqual(texts);
          expect(shown[index]).toEqual(texts);
          expect(read.pages[index]).toMatchObject({ width: page.paper.width, height: page.paper.height });
        });
      }
});

describe('the PDF', async () => {
  const { sheet, pages, pdf } = await made(hatch, 'Sprint');
  const read = readPdf(pdf);

  test('is the same file for the same sheet of the same day', async () => {
    expect(Buffer.compare(pdf, await pdfOf(sheet, pages))).toBe(0);
    expect(Buffer.compare(pdf, await pdfOf(sheet, pages, '2026-05-17'))).not.toBe(0);
    await expect(pdfOf(sheet, pages, 'today')).rejects.toThrow('"today" is not a day');
  });

  test('has title, language, day, and the order of reading with its headings', () => {
    expect(read.catalog).toContain('/Lang (en)');
    expect(read.catalog).not.toContain('/Metadata'); // the library's would not be XML for every title
    expect(read.preferences).toContain('/DisplayDocTitle true');
    expect(read.title).toBe('Set-up sheet – Saltmarsh hatch – Sprint');
    expect(read.created).toBe('D:20260516000000Z');
    const headings = read.pages.flatMap(({ texts }) =>
      texts.filter(({ tag }) => tag !== 'P').map(({ tag, text }) => `${tag} ${text}`),
    );
    expect(headings[0]).toBe('H1 Saltmarsh hatch');
    expect(headings).toContain('H2 Settings, front');
    expect(headings).toContain('H2 Alignment');
    expect(read.reading).toEqual(read.pages.flatMap(({ texts }, page) => texts.map(({ tag }, mark) => ({ tag, page, mark }))));
  });

  test('carries no more of the typeface than it shows', () => {
    expect(pdf.length).toBeLessThan(100_000);
    expect(read.fontFiles).toHaveLength(2);
    for (const { length } of read.fontFiles) expect(length).toBeLessThan(sheetTypeface().regular.font.bytes.length);
  });

  test('takes names in any letters, brackets and line breaks among them', async () => {
    const document = { ...hatch, name: 'Łódź (a\\b) <c> & "d" 车\n' } as CarDocument;
    const odd = await made(document, 'Sprint');
    const oddRead = readPdf(odd.pdf);
    expect(oddRead.title).toBe('Set-up sheet – Łódź (a\\b) <c> & "d" 车\n – Sprint');
    const texts = oddRead.pages[0]!.texts.map(({ text }) => text);
    expect(texts.some((text) => text.startsWith('Łódź (a\\b) <c> & "d" ?'))).toBe(true);
    expect(odd.html).toContain('<title>Set-up sheet – Łódź (a\\b) &lt;c&gt; &amp; &quot;d&quot; 车');
    expect(odd.html).not.toContain('<c>');
  });
});

test('Greek and Cyrillic names are printed in a typeface of their own, one paragraph to a line', async () => {
  const document = {
    ...hatch,
    name: 'Λευκό Lada 1 Белая 车',
    setups: { ...hatch.setups, Sprint: { ...hatch.setups?.['Sprint'], notes: 'Ρύθμισε πρώτα, потом 2 мм' } },
  } as CarDocument;
  const odd = await made(document, 'Sprint');
  const { pages, fontFiles, reading } = readPdf(odd.pdf);
  const texts = pages.flatMap((page) => page.texts.map(({ text }) => text));
  for (const run of ['Λευκό', 'Белая', 'Ρύθμισε', 'потом', 'мм']) expect(texts).toContain(run);
  expect(texts).toContain(' Lada 1 ');
  expect(texts.join('')).toContain('Λευκό Lada 1 Белая ?');
  expect(fontFiles).toHaveLength(4);
  // in their order, page by page
  expect(reading).toEqual(pages.flatMap((one, page) => one.texts.map(({ tag }, mark) => ({ tag, page, mark }))));
  expect([...odd.html.matchAll(/@font-face\{font-family:'([^']+)'/g)].map(([, family]) => family)).toEqual([
    'Jounce Sheet',
    'Jounce Sheet',
    'Jounce Sheet Other',
    'Jounce Sheet Other',
  ]);
  expect(odd.html).toContain('>Λευκό Lada 1 Белая ?</text>');
});

describe('the HTML', async () => {
  const { html, sheet, pages } = await made(hatch, 'Sprint');

  test('needs nothing beside it and names its language, title and paper', () => {
    expect(html).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(html).toContain('<title>Set-up sheet – Saltmarsh hatch – Sprint</title>');
    expect(html).toContain('@page{size:595.28pt 841.89pt;margin:0}');
    expect(html.replaceAll('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(/https?:|<script|<link|<img/);
    const carried = [...html.matchAll(/base64,([A-Za-z0-9+/=]+)\)/g)].map(([, data]) =>
      readFont(new Uint8Array(Buffer.from(data!, 'base64'))),
    );
    const letters = sheetTypeface().regular.font.glyphOf.size;
    expect(letters).toBeGreaterThan(500);
    expect(carried.map(({ glyphOf }) => glyphOf.size)).toEqual([letters, letters]);
  });

  test('reads as tables and lists: every setting, target and caution is in words', () => {
    const read = plain(/<main class="read">(.*?)<\/main>/s.exec(html)![1]!);
    for (const section of sheet.sections) {
      if (section.kind === 'settings')
        for (const row of section.rows.filter(({ locked }) => locked === null)) {
          expect(read).toContain(row.name);
          expect(read).toContain(row.left.words);
          expect(read).toContain(row.right.words);
        }
      if (section.kind === 'targets')
        for (const row of section.rows)
          expect(read).toContain(`<th scope="row">${row.name}${row.unit === '' ? '' : `, ${row.unit}`}</th>`);
      if (section.kind === 'cautions') for (const line of section.lines) expect(read).toContain(`<li>${line}</li>`);
    }
    expect(read.match(/<caption>/g)).toHaveLength(4);
    expect(html.match(/<svg [^>]*aria-hidden="true"/g)).toHaveLength(pages.length);
  });
});

test('what somebody wrote into the car file is text and never markup', async () => {
  const EVIL = `"><img src=x onerror="a()">'<script>b()</script>&amp;`;
  /** Every text that a person may write, as markup. */
  const spoiled = (value: unknown, key = ''): unknown => {
    if (typeof value === 'string')
      return ['label', 'notes', 'torque', 'locked', 'name', 'revision', 'why', 'source', 'unit'].includes(key) ? EVIL : value;
    if (Array.isArray(value)) return value.map((one) => spoiled(one));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, spoiled(one, name)]));
  };
  const document = {
    ...(spoiled(hatch) as CarDocument),
    setups: { [EVIL]: { ...hatch.setups!['Sprint'], notes: EVIL } },
    onCar: EVIL,
  };
  const { html, pages, pdf } = await made(document as CarDocument, EVIL);
  const [, body] = html.split('</style>');
  expect(body).not.toMatch(/<img|<script|onerror="/);
  expect(body).toContain('&lt;img src=x');
  expect(readPdf(pdf).pages.length).toBe(pages.length);
});

test('one description gives one set of pages', () => {
  const lay = (sheet: Sheet): readonly SheetPage[] => layOutSheet(sheet, PAPERS.A4);
  expect(lay(sheetOf(hatch, 'Sprint'))).toEqual(lay(sheetOf(hatch, 'Sprint')));
});
