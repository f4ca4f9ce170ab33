import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  findSetup,
  layOutSheet,
  PAPERS,
  parseCar,
  setupNames,
  WHOLE_SHEET,
  type CarDocument,
  type PaperName,
  type Sheet,
  type SheetPage,
  type SheetQuestion,
} from '../../../geometry/index';
import { MARGIN } from '../../../geometry/sheet/layout/layOutSheet';
import { inTypeface, widthOf } from '../../../geometry/sheet/typeface/typeface';
import { SAMPLES, sampleNamed } from '../../samples/samples';
import { sheetOf } from './sheets';

const PAPER_NAMES = ['A4', 'Letter'] as const;
const REFERENCE_CARS = ['golden', 'fixtures'].flatMap((kind) => {
  const folder = path.resolve(import.meta.dirname, '../..', kind, 'cars');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.jounce.json'))
    .map((name) => {
      const parsed = parseCar(readFileSync(path.join(folder, name), 'utf8'));
      if (!parsed.ok) throw new Error(name);
      return { name, document: parsed.value.document };
    });
});
const hatch = sampleNamed('saltmarsh-hatch').document;

/** Letters reach so far over their baseline and under it, as a share of their size. */
const [OVER, UNDER] = [0.74, 0.2];
/** Boxes that touch do not overlap [pt]. */
const TOUCH = 0.05;

interface Box {
  readonly what: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const textBoxes = ({ primitives }: SheetPage): readonly Box[] =>
  primitives.flatMap((primitive) => {
    if (primitive.kind !== 'text') return [];
    const { text, x, y, size, weight } = primitive;
    return [{ what: text, left: x, right: x + widthOf(text, size, weight), top: y - OVER * size, bottom: y + UNDER * size }];
  });

const overlaps = (boxes: readonly Box[]): readonly string[] =>
  boxes.flatMap((a, index) =>
    boxes
      .slice(index + 1)
      .filter((b) => a.left < b.right - TOUCH && b.left < a.right - TOUCH && a.top < b.bottom - TOUCH && b.top < a.bottom - TOUCH)
      .map((b) => `${a.what} | ${b.what}`),
  );

const outside = (page: SheetPage): readonly string[] => {
  const { width, height } = page.paper;
  const texts = textBoxes(page)
    .filter(
      ({ left, right, top, bottom }) =>
        left < MARGIN - TOUCH || right > width - MARGIN + TOUCH || top < MARGIN - 1 || bottom > height - MARGIN + 2,
    )
    .map(({ what }) => what);
  const strokes = page.primitives.flatMap((primitive) => {
    if (primitive.kind === 'text') return [];
    const numbers = primitive.commands.flatMap(([, ...rest]) => rest as readonly number[]);
    const [xs, ys] = [numbers.filter((_, at) => at % 2 === 0), numbers.filter((_, at) => at % 2 === 1)];
    const isIn =
      xs.every((x) => x >= MARGIN - 3 && x <= width - MARGIN + 3) && ys.every((y) => y >= MARGIN - 3 && y <= height - MARGIN + 3);
    return isIn ? [] : [JSON.stringify(primitive.commands)];
  });
  return [...texts, ...strokes];
};

const faultsOf = (sheet: Sheet, paper: PaperName): readonly string[] =>
  layOutSheet(sheet, PAPERS[paper]).flatMap((page) => [
    ...overlaps(textBoxes(page)).map((fault) => `page ${page.number} overlap: ${fault}`),
    ...outside(page).map((fault) => `page ${page.number} outside: ${fault}`),
  ]);

const textsOf = (pages: readonly SheetPage[]): string =>
  pages.flatMap(({ primitives }) => primitives.flatMap((one) => (one.kind === 'text' ? [one.text] : []))).join(' ');

const LONG =
  'A name that somebody wrote at length, ' +
  'with all that could be said about it '.repeat(4) +
  'und-einem-sehr-langen-Wort'.repeat(6);

/** A car whose every name is long. */
const wordy = (document: CarDocument): CarDocument => {
  const copy = structuredClone(document) as unknown as {
    name: string;
    revision: string;
    front: { adjusters: Record<string, { label?: string; torque?: string; locked?: string }>; heightAt: { name: string } };
    setups: Record<string, { notes?: string; record?: unknown }>;
  };
  copy.name = LONG;
  copy.revision = LONG;
  for (const adjuster of Object.values(copy.front.adjusters)) Object.assign(adjuster, { label: LONG, torque: LONG });
  copy.front.adjusters['armBolt']!.locked = LONG;
  copy.front.heightAt.name = LONG;
  copy.setups['Sprint']!.notes = `${LONG}\n`.repeat(30);
  copy.setups['Sprint']!.record = [{ label: LONG, unit: LONG, values: { frontLeft: LONG, note: LONG } }];
  return copy as unknown as CarDocument;
};

/** A car with many more adjusters than any has. */
const crowded = (count: number): CarDocument => {
  const adjusters = Object.fromEntries(
    Array.from({ length: count }, (_, index) => [
      `extra${index}`,
      { ...hatch.front!.adjusters!['plateAcross']!, label: `Plate ${index}` },
    ]),
  );
  return { ...hatch, front: { ...hatch.front!, adjusters } } as CarDocument;
};

describe.each(PAPER_NAMES)('on %s', (paper) => {
  test('no text meets another or leaves the paper, for every setup of every sample', () => {
    for (const { document } of SAMPLES)
      for (const setup of setupNames(document))
        expect(faultsOf(sheetOf(document, setup), paper), `${document.name}, ${setup}`).toEqual([]);
  });

  test('nor of the reference cars and of those that use every key of the file', () => {
    for (const { name, document } of REFERENCE_CARS)
      for (const setup of setupNames(document))
        expect(faultsOf(sheetOf(document, setup), paper), `${name}, ${setup}`).toEqual([]);
  });

  test.each([
    ['one axle', { axles: ['front'] }],
    [
      'nothing but the settings',
      { parts: { drawings: false, boxes: false, rules: false, makes: false, changes: false, curves: false } },
    ],
    ['no boxes', { parts: { ...WHOLE_SHEET, boxes: false } }],
    ['no rules', { parts: { ...WHOLE_SHEET, rules: false } }],
    ['clocks of the file', { clock: 'file' }],
    ['inches', { units: { length: 'in', angle: 'minutes', toe: 'rim', force: 'pound' } }],
  ] as [string, Partial<SheetQuestion>][])('nor with %s', (_, more) => {
    expect(faultsOf(sheetOf(hatch, 'Sprint', more), paper)).toEqual([]);
  });

  test('nor with long names: what is printed is whole', () => {
    const sheet = sheetOf(wordy(hatch), 'Sprint', { fileName: `${LONG}.jounce.json` });
    expect(faultsOf(sheet, paper)).toEqual([]);
    const printed = textsOf(layOutSheet(sheet, PAPERS[paper])).replace(/ /g, '');
    const whole = inTypeface(LONG).replace(/ /g, '');
    expect(printed.split(whole).length - 1).toBeGreaterThan(30);
  });

  test('a page is added only when the last is full, and none is lost', () => {
    const counts = [1, 4, 12, 40, 90].map((count) => {
      const sheet = sheetOf(crowded(count), 'Baseline', { axles: ['front'], onCar: null });
      const pages = layOutSheet(sheet, PAPERS[paper]);
      expect(faultsOf(sheet, paper)).toEqual([]);
      const printed = textsOf(pages);
      for (let index = 0; index < count; index += 1) expect(printed).toContain(`Plate ${index}`);
      return pages.length;
    });
    expect(counts[0]).toBe(1);
    expect(counts[1]).toBe(1);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(counts.at(-1)).toBeGreaterThan(2);
  });
});

test('the sheet of a sample takes two pages at most, whatever was on the car; on Letter too, from the setup that the file names', () => {
  for (const { document } of SAMPLES)
    for (const setup of setupNames(document)) {
      expect(layOutSheet(sheetOf(document, setup), PAPERS.Letter).length, setup).toBeLessThanOrEqual(2);
      for (const from of setupNames(document)) {
        const onCar = { name: from, setup: findSetup(document, from) };
        expect(layOutSheet(sheetOf(document, setup, { onCar }), PAPERS.A4).length, `${setup} from ${from}`).toBeLessThanOrEqual(
          2,
        );
      }
    }
});

test('pages are numbered, and every one says whose it is and has room for names', () => {
  const pages = layOutSheet(sheetOf(hatch, 'Sprint'), PAPERS.Letter);
  pages.forEach((page, index) => {
    const printed = textsOf([page]);
    expect(printed).toContain('Saltmarsh hatch');
    expect(printed).toContain('Sprint');
    expect(printed).toContain('Set by');
    expect(printed).toContain('Checked by');
    expect(printed).toContain(`${index + 1} of ${pages.length}`);
  });
});

test('no letter is smaller than nine points', () => {
  for (const page of layOutSheet(sheetOf(hatch, 'Sprint'), PAPERS.A4))
    for (const primitive of page.primitives) if (primitive.kind === 'text') expect(primitive.size).toBeGreaterThanOrEqual(9);
});

test('letters that the typeface lacks are printed as question marks, not lost', () => {
  const document = { ...hatch, name: '车 hatch' };
  expect(textsOf(layOutSheet(sheetOf(document, 'Sprint'), PAPERS.A4))).toContain('? hatch');
});
