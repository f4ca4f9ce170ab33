import DxfParser from 'dxf-parser';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { inflateSync } from 'node:zlib';
import { beforeEach, describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { fitted } from '../../geometry/fitup/envelopes';
import { readPdf } from '../../geometry/sheet/pdfReader';
import { inInches } from '../../golden/inInches';
import { temporaryFolder } from '../temporaryFolder';
import { jounce, jounceJson } from './jounce';

const CAR = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
const ASKED = ['--of', 'armFront', '--axle', 'front', '--setups', 'Baseline', '--bound', '4', '--plane', '-100,500,200,0,0,1'];
const MM = 72 / 25.4;
let folder = '';
const file = (name: string): string => path.join(folder, name);

beforeEach(async () => {
  folder = await temporaryFolder();
});

/** The lines of two points that the pages of a PDF draw, in its own units. */
function linesOf(bytes: Buffer): { readonly from: readonly number[]; readonly to: readonly number[] }[] {
  const text = bytes.toString('latin1');
  return [...text.matchAll(/stream\n([\s\S]*?)\nendstream/g)].flatMap(([, raw]) => {
    let content: string;
    try {
      content = inflateSync(Buffer.from(raw!, 'latin1')).toString('latin1');
    } catch {
      return [];
    }
    return [...content.matchAll(/([\d.-]+) ([\d.-]+) m\n([\d.-]+) ([\d.-]+) l\nS/g)].map(([, a, b, c, d]) => ({
      from: [Number(a), Number(b)],
      to: [Number(c), Number(d)],
    }));
  });
}

/** Lines of 100 mm along the paper, to 0.01 mm. */
const barsOf = (bytes: Buffer) =>
  linesOf(bytes).filter(({ from, to }) => {
    const long = Math.hypot(to[0]! - from[0]!, to[1]! - from[1]!) / MM;
    return Math.abs(long - 100) < 0.01 && (from[0] === to[0] || from[1] === to[1]);
  });

const areasOf = (document: Record<string, unknown>): number[] =>
  (document['outlines'] as { area: number }[]).map(({ area }) => area);

describe('template', () => {
  test.each([
    ['A4', 210, 297],
    ['Tabloid', 279.4, 431.8],
  ])('on %s has its size, both bars of 100 mm, and words on how to print it', async (paper, width, height) => {
    const { status, document } = await jounceJson(['template', CAR, file('a.pdf'), ...ASKED, '--paper', paper]);
    expect(status).toBe(0);
    const bytes = await readFile(file('a.pdf'));
    const { pages } = readPdf(bytes);
    const tiles = document['tiles'] as unknown as number;
    expect(pages).toHaveLength(tiles + 1);
    for (const page of pages) {
      expect(page.width).toBeCloseTo(width * MM, 2);
      expect(page.height).toBeCloseTo(height * MM, 2);
    }
    const all = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    for (const said of ['100 %', 'FRONT', 'OUTBOARD', 'UP points out of the paper', 'Prove it on the car', 'left side'])
      expect(all).toContain(said);
    expect(barsOf(bytes)).toHaveLength(2 * tiles);
  });

  test('of the right side is the mirror of the left', async () => {
    const [left, right] = [file('left.pdf'), file('right.pdf')];
    const ofLeft = await jounceJson(['template', CAR, left, ...ASKED, '--paper', 'Letter']);
    const asked = [...ASKED.slice(0, -1), '-100,-500,200,0,0,1', '--side', 'right'];
    const ofRight = await jounceJson(['template', CAR, right, ...asked, '--paper', 'Letter']);
    expect([ofLeft.status, ofRight.status]).toEqual([0, 0]);
    expect(ofRight.document).toMatchObject({ side: 'right', tiles: ofLeft.document['tiles'] });
    const [[a], [b]] = [areasOf(ofLeft.document), areasOf(ofRight.document)];
    // the meshes are not the mirror of each other, what they hold is: within the bound of 4 mm
    expect(Math.abs(b! / a! - 1)).toBeLessThan(0.05);
    const { pages } = readPdf(await readFile(right));
    const all = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    expect(all).toContain('right side');
    expect(all).not.toContain('left side');
    expect(pages[0]).toMatchObject({ width: 612, height: 792 });
    expect(barsOf(await readFile(right))).toHaveLength(2 * (ofRight.document['tiles'] as unknown as number));
  });

  test('of a car in inches is as large as of the same car in mm, and its bars are 100 mm', async () => {
    const plain = fitted('car-22');
    const [x, y, z] = plain.front!.points.wheelCentre as readonly [number, number, number];
    const at = [x - 60, y - 70, z + 90] as const;
    const ballIn = (unit: number) => ({
      ball: { axle: 'front', on: 'knuckle', shape: { kind: 'sphere', at: at.map((mm) => mm / unit), radius: 40 / unit } },
    });
    await writeFile(file('mm.json'), JSON.stringify({ ...plain, parts: ballIn(1) }));
    await writeFile(file('in.json'), JSON.stringify({ ...inInches(plain), parts: ballIn(25.4) }));
    const words = ['--of', 'ball', '--axle', 'front', '--setups', 'Baseline', '--plane', `${at.join(',')},0,1,0`];
    const [mm, inches] = [
      await jounceJson(['template', file('mm.json'), file('mm.pdf'), ...words]),
      await jounceJson(['template', file('in.json'), file('in.pdf'), ...words]),
    ];
    expect([mm.status, inches.status]).toEqual([0, 0]);
    expect(areasOf(inches.document)).toHaveLength(1);
    // no smaller than the ball itself
    expect(areasOf(inches.document)[0]).toBeGreaterThan(Math.PI * 40 * 40);
    expect(areasOf(inches.document)[0]! / areasOf(mm.document)[0]!).toBeCloseTo(1, 6);
    expect(inches.document).toMatchObject({ units: { length: 'mm' }, tiles: mm.document['tiles'] });
    expect(barsOf(await readFile(file('in.pdf')))).toHaveLength(2 * (inches.document['tiles'] as unknown as number));
  });

  test('as DXF is as long round as it is said to be, and as the PDF says', async () => {
    const dxf = await jounceJson(['template', CAR, file('a.dxf'), ...ASKED]);
    const pdf = await jounceJson(['template', CAR, file('a.pdf'), ...ASKED]);
    expect([dxf.status, pdf.status]).toEqual([0, 0]);
    expect(dxf.document['outlines']).toEqual(pdf.document['outlines']);
    const outlines = dxf.document['outlines'] as unknown as { length: number; points: number }[];
    const read = new DxfParser().parseSync(await readFile(file('a.dxf'), 'latin1'));
    const lines = (read?.entities ?? []).filter(({ type }) => type === 'POLYLINE') as unknown as {
      vertices: { x: number; y: number }[];
    }[];
    expect(lines.length).toBe(outlines.length);
    expect(lines.length).toBeGreaterThan(0);
    lines.forEach(({ vertices }, i) => {
      const round = vertices.reduce((sum, { x, y }, k) => {
        const next = vertices[(k + 1) % vertices.length]!;
        return sum + Math.hypot(next.x - x, next.y - y);
      }, 0);
      expect(round).toBeCloseTo(outlines[i]!.length, 4);
    });
  });

  test.each([
    [['a.svg', ...ASKED], 'neither in .pdf nor in .dxf'],
    [['a.pdf', '--of', 'armFront'], '--plane is needed'],
    [['a.pdf', ...ASKED.slice(0, -1), '0,0,0,0,0,0'], 'has no length'],
    [['a.pdf', ...ASKED.slice(0, -1), '0,0,2000,0,0,1'], 'behind the plane'],
    [['a.pdf', ...ASKED, '--side', 'both'], 'is not one of'],
    [['a.dxf', ...ASKED, '--paper', 'A3'], '--paper: a DXF has no paper'],
  ])('%j is refused and nothing is written', async ([out = '', ...words], message) => {
    const { status, stderr } = await jounce(['template', CAR, out, ...words], { folder });
    expect(status).toBe(2);
    expect(stderr).toContain(message);
    expect(await readdir(folder)).toEqual([]);
  });
});
