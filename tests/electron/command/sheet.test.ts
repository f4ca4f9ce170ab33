import { readFile, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { readPdf } from '../../geometry/sheet/pdfReader';
import { temporaryFolder } from '../temporaryFolder';
import { jounce, jounceBatch, jounceJson } from './jounce';

const CAR = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
const DAY = ['--date', '2026-05-16'];
let folder = '';
const file = (name: string): string => path.join(folder, name);

beforeEach(async () => {
  folder = await temporaryFolder();
});

describe('written', () => {
  test('PDF and HTML have the same texts, and the answer says what was written', async () => {
    const asked = ['--setup', 'Sprint', '--paper', 'Letter', ...DAY];
    const pdf = await jounceJson(['sheet', CAR, file('a.pdf'), ...asked]);
    const html = await jounceJson(['sheet', CAR, file('a.html'), ...asked]);
    expect([pdf.status, html.status]).toEqual([0, 0]);
    expect(pdf.document).toMatchObject({
      car: 'Saltmarsh hatch',
      setup: 'Sprint',
      from: 'Trial 3',
      axles: ['front', 'rear'],
      date: '2026-05-16',
      file: file('a.pdf'),
      kind: 'pdf',
      paper: 'Letter',
      warnings: [{ code: 'left-out', path: null, message: 'Curves left out: no room' }],
      contract: 1,
    });
    expect(Object.keys(pdf.document).sort()).toEqual(
      ['axles', 'by', 'car', 'changes', 'contract', 'date', 'file', 'from', 'kind', 'pages', 'paper', 'setup', 'warnings'].sort(),
    );
    expect(html.document['changes']).toEqual(pdf.document['changes']);
    const read = readPdf(await readFile(file('a.pdf')));
    const shown = await readFile(file('a.html'), 'utf8');
    expect(read.pages.length).toBe(pdf.document['pages']);
    expect(shown.match(/<svg /g)).toHaveLength(read.pages.length);
    const texts = [...shown.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map(([, text]) =>
      text!.replaceAll('&amp;', '&').replaceAll('&#39;', "'"),
    );
    expect(read.pages.flatMap((page) => page.texts.map(({ text }) => text))).toEqual(texts);
    expect(texts).toContain('16 May 2026');
    expect(texts).toContain('saltmarsh-hatch.jounce.json');
  });

  test('twice the same is the same file', async () => {
    for (const name of ['a.pdf', 'b.pdf']) expect((await jounce(['sheet', CAR, file(name), ...DAY])).status).toBe(0);
    expect(Buffer.compare(await readFile(file('a.pdf')), await readFile(file('b.pdf')))).toBe(0);
  });

  test('today when no day is given, the first setup when none is, from standard input without a file name', async () => {
    const { status, document } = await jounceJson(['sheet', '-', file('a.html')], { stdin: await readFile(CAR) });
    expect(status).toBe(0);
    expect(document['setup']).toBe('Baseline');
    expect(document['date']).toMatch(/^\d{4}-\d{2}-\d{2}$/);
    expect(await readFile(file('a.html'), 'utf8')).not.toContain('Car file');
  });

  test('--from, --axle and --set are on it', async () => {
    const asked = ['--setup', 'Sprint', '--from', 'Wet', '--axle', 'rear', '--set', 'rear.both.perch=0.5'];
    const { document } = await jounceJson(['sheet', CAR, file('a.html'), ...asked, ...DAY]);
    expect(document).toMatchObject({ from: 'Wet', axles: ['rear'] });
    const items = document['changes']!.flatMap((step) => step['items']!.map((item) => `${item['axle']} ${item['text']}`));
    expect(items.some((item) => item.startsWith('front'))).toBe(false);
    expect(items).toContain('rear Spring perch: ½ turn up (was 1 turn up)');
    expect(await readFile(file('a.html'), 'utf8')).toContain('Sprint, changed');
  });

  test('a sheet with room for all of it does not say that anything is left out', async () => {
    const { document } = await jounceJson(['sheet', CAR, file('b.html'), '--axle', 'front', '--setup', 'Sprint', ...DAY]);
    expect(JSON.stringify(document['warnings'])).not.toContain('left-out');
  });

  test('letters that are printed as question marks are said', async () => {
    const car = JSON.parse(await readFile(CAR, 'utf8')) as { name: string };
    const { document } = await jounceJson(['sheet', '-', file('a.pdf')], { stdin: JSON.stringify({ ...car, name: '車' }) });
    expect(document['warnings']).toEqual([{ code: 'letters-missing', path: null, message: 'printed as question marks: 車' }]);
  });
});

describe('refused', () => {
  const refused = async (words: readonly string[]): Promise<[number | null, string]> => {
    const { status, document } = await jounceJson(['sheet', ...words]);
    return [status, (document['error']?.['message'] as unknown as string | undefined) ?? ''];
  };

  test('what is no such command: 2', async () => {
    expect(await refused([CAR])).toEqual([2, 'sheet needs OUT: jounce sheet CAR OUT']);
    expect((await refused([CAR, file('a.doc')]))[1]).toContain('neither in .pdf nor in .html');
    expect((await refused([CAR, '-']))[0]).toBe(2);
    expect((await refused([CAR, file('a.pdf'), '--date', '2026-02-30']))[1]).toContain('is not a day');
    expect((await refused([CAR, file('a.pdf'), '--paper', 'A3']))[0]).toBe(2);
    expect((await refused([CAR, file('a.pdf'), '--setup', 'Sprnt']))[0]).toBe(2);
    expect((await refused([CAR, file('a.pdf'), '--from', 'Sprnt']))[1]).toContain('no setup "Sprnt"');
    expect((await refused([CAR, file('a.pdf'), '--out', file('b.pdf')]))[1]).toContain('twice');
    expect(await readdir(folder)).toEqual([]);
  });

  test('a setup that cannot be put together: 1, and nothing is written', async () => {
    const [status] = await refused([CAR, file('a.pdf'), '--set', 'rear.rideHeight=-400']);
    expect(status).toBe(1);
    expect(await readdir(folder)).toEqual([]);
  });

  test('a file that is there: 3, and it stays; --force replaces it', async () => {
    await writeFile(file('a.pdf'), 'mine');
    const [status, message] = await refused([CAR, file('a.pdf')]);
    expect([status, message]).toEqual([3, `${file('a.pdf')} exists; --force replaces it`]);
    expect(await readFile(file('a.pdf'), 'utf8')).toBe('mine');
    expect((await jounce(['sheet', CAR, file('a.pdf'), '--force'])).status).toBe(0);
    expect((await readFile(file('a.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
    expect((await refused([CAR, path.join(folder, 'nowhere', 'a.pdf')]))[0]).toBe(3);
    expect(await readdir(folder)).toEqual(['a.pdf']);
  });

  test('in a batch', async () => {
    const { answers } = await jounceBatch([{ car: CAR, ask: 'sheet', options: { out: file('a.pdf') } }]);
    expect(answers[0]!['error']).toMatchObject({ kind: 'usage', message: 'sheet writes a file, which a batch does not' });
  });
});
