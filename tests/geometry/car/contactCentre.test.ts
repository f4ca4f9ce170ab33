import { describe, expect, it } from 'vitest';
import { contactCentre } from '../../../geometry/car/contactCentre';
import type { AxleDocument, CarDocument } from '../../../geometry/car/document';
import { readFileSync } from 'node:fs';
import { readGolden, GOLDEN_NAMES } from './fixtures';

interface Row {
  readonly setup: string;
  readonly axle: 'front' | 'rear';
  readonly motion: string;
  readonly input?: number;
  readonly left: { readonly contactCentre: readonly number[] };
  readonly right: { readonly contactCentre: readonly number[] };
}
const rowsOf = (name: string): readonly Row[] =>
  JSON.parse(readFileSync(new URL(`../../golden/cars/${name}.expected.json`, import.meta.url), 'utf8')) as Row[];

describe('contact centre at design', () => {
  it('of an upright wheel is straight below its centre', () => {
    const axle = {
      layout: 'strut',
      points: { wheelCentre: [1, 700, 310] },
      wheel: { camber: 0, toe: 0, loadedRadius: 300 },
    } as const satisfies AxleDocument;
    expect(contactCentre(axle, 'left')).toEqual([1, 700, 10]);
    expect(contactCentre(axle, 'right')).toEqual([1, -700, 10]);
  });

  it.each(GOLDEN_NAMES)('agrees with the independent solver on %s', (name) => {
    const car = JSON.parse(readGolden(name)) as CarDocument;
    const rows = rowsOf(name).filter((row) => row.setup === 'Baseline' && row.motion === 'bump' && row.input === 0);
    expect(rows.length).toBe(2);
    for (const row of rows) {
      for (const side of ['left', 'right'] as const) {
        const here = contactCentre(car[row.axle]!, side);
        row[side].contactCentre.forEach((value, i) => expect(Math.abs(here[i] - value)).toBeLessThan(1e-6));
      }
    }
  });
});
