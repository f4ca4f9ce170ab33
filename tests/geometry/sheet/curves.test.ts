import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  findSetup,
  layOutSheet,
  PAPERS,
  printedPart,
  readingsOfAxle,
  sheetHtml,
  STANDARD_UNITS,
  toDegrees,
  toMechanism,
  WHOLE_SHEET,
  type CarDocument,
} from '../../../geometry/index';
import { sampleNamed } from '../../samples/samples';
import { sectionsOf, sheetOf } from './sheets';

const hatch = sampleNamed('saltmarsh-hatch').document;

const named = (setup: string) => ({ name: setup, setup: findSetup(hatch, setup) });
const curvesOf = (setup: string, from: string | null, more = {}) =>
  sectionsOf(sheetOf(hatch, setup, { onCar: from === null ? null : named(from), ...more }), 'curves')[0]!;

/** The same question asked of the readings, one position at a time. */
const readAt = (document: CarDocument, setup: string, axle: 'front' | 'rear', travel: number, side: 'left' | 'right') => {
  const car = assembleCar(toMechanism(document), findSetup(document, setup));
  if (!car.ok) throw new Error(car.failure.message);
  const row = readingsOfAxle(car.value, axle, { travel });
  if (!row.ok) throw new Error(row.failure.message);
  return row.value[side];
};

describe('toe and camber through the travel', () => {
  test('are those of the readings, over those of the setup on the car', () => {
    const { plots, note } = curvesOf('Sprint', 'Baseline');
    expect(plots.map(({ name }) => name)).toEqual(['Toe, front', 'Camber, front', 'Toe, rear', 'Camber, rear']);
    expect(note).toContain('Baseline dotted');
    for (const plot of plots) {
      const axle = plot.name.endsWith('front') ? 'front' : 'rear';
      const key = plot.name.startsWith('Toe') ? 'toe' : 'camber';
      expect(plot.curves.map(({ of }) => of)).toEqual(['was', 'both']);
      expect(plot.travels[12]).toBe(0);
      for (const index of [0, 7, 12, 24])
        for (const [at, setup] of ['Baseline', 'Sprint'].entries()) {
          const read = toDegrees(readAt(hatch, setup, axle, plot.travels[index]!, 'left')[key]);
          expect(plot.curves[at]!.values[index]!.value, `${plot.name}, ${setup}`).toBeCloseTo(read, 9);
        }
    }
  });

  test('sides that differ are two lines; a sheet of the setup on the car has nothing to compare with', () => {
    const apart = { ...hatch, setups: { ...hatch.setups, Apart: { front: { left: { plateAcross: -6 } } } } } as CarDocument;
    const [section] = sectionsOf(sheetOf(apart, 'Apart', { onCar: null, axles: ['front'] }), 'curves');
    expect(section!.plots[1]!.curves.map(({ of }) => of)).toEqual(['left', 'right']);
    expect(section!.note).toContain('left solid, right dashed');
    expect(curvesOf('Sprint', 'Sprint').plots[0]!.curves.map(({ of }) => of)).toEqual(['both']);
  });

  test('are in the units of the sheet, left out when not asked for, and told to those who hear the page', () => {
    const units = { ...STANDARD_UNITS, length: 'in' } as const;
    const inches = curvesOf('Wet', 'Baseline', { units }).plots[0]!;
    expect(inches.travelUnit).toBe('in');
    expect(inches.travels.at(-1)).toBeCloseTo(60 / 25.4, 9);
    expect(sectionsOf(sheetOf(hatch, 'Wet', { parts: { ...WHOLE_SHEET, curves: false } }), 'curves')).toEqual([]);
    const sheet = sheetOf(hatch, 'Sprint', { onCar: named('Baseline') });
    const { curves } = sectionsOf(sheet, 'curves')[0]!.plots[1]!;
    const html = sheetHtml(sheet, layOutSheet(sheet, PAPERS.A4));
    expect(html).toContain(
      `<tr><th scope="row">+60</th><td>${curves[0]!.values[24]!.said}</td><td>${curves[1]!.values[24]!.said}</td></tr>`,
    );
  });

  test('never cost a third page: without room they are on no page and in no table', () => {
    const tight = sheetOf(hatch, 'Sprint', { onCar: named('Baseline') });
    const letter = layOutSheet(tight, PAPERS.Letter);
    expect(letter).toHaveLength(2);
    expect(sectionsOf(printedPart(tight, PAPERS.Letter), 'curves')).toEqual([]);
    expect(sectionsOf(printedPart(tight, PAPERS.A4), 'curves')).toHaveLength(1);
    expect(sheetHtml(tight, letter)).not.toContain('Through the travel');
    expect(sheetHtml(tight, layOutSheet(tight, PAPERS.A4))).toContain('Through the travel');
  });
});
