import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  assembleCar,
  findSetup,
  parseCar,
  readingsOfAxle,
  ROW_WARNING_CODES,
  toMechanism,
  type Position,
} from '../../../geometry/index';

const TEXT = readFileSync(path.join(import.meta.dirname, '../../../samples/saltmarsh-hatch.jounce.json'), 'utf8');

function warningsAt(position: Position, edit: (text: string) => string = (text) => text) {
  const parsed = parseCar(edit(TEXT));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const { document } = parsed.value;
  const car = assembleCar(toMechanism(document), findSetup(document, 'Baseline'));
  const row = car.ok ? readingsOfAxle(car.value, 'front', position) : car;
  if (!row.ok) throw new Error(row.failure.message);
  for (const { code } of row.value.warnings) expect(Object.keys(ROW_WARNING_CODES)).toContain(code);
  return row.value.warnings.map(({ code, path: place, message }) => [code, place, message]);
}

/** The sample with its front damper taken out and an envelope of the axle put in. */
const withTravel = (text: string): string => {
  const car = JSON.parse(text) as { front: Record<string, unknown> };
  delete car.front['damper'];
  return JSON.stringify({ ...car, front: { ...car.front, travel: [-40, 45] } });
};

describe('warnings of a row', () => {
  it('the rack on its end is no matter, past it is one', () => {
    expect(warningsAt({ rack: 70 })).toEqual([]);
    expect(warningsAt({ rack: 71 })).toEqual([
      ['rack-past-end', 'front.steering.travel', 'The rack at 71 mm is past the end of its travel, 70 mm.'],
    ]);
    expect(warningsAt({ rack: -71 })).toEqual([
      ['rack-past-end', 'front.steering.travel', 'The rack at −71 mm is past the end of its travel, −70 mm.'],
    ]);
  });

  it('a wheel past what its damper allows', () => {
    const [bump, droop] = [warningsAt({ travel: { left: 120, right: 0 } }), warningsAt({ travel: { left: 0, right: -95 } })];
    expect(bump).toEqual([
      ['travel-past-end', 'front.damper', expect.stringMatching(/^The left wheel at travel 120 mm .* of damper past solid\.$/)],
    ]);
    expect(droop).toEqual([
      ['travel-past-end', 'front.damper', expect.stringMatching(/^The right wheel at travel −95 mm .* past its full length\.$/)],
    ]);
  });

  it("the axle's travel counts where no damper says it", () => {
    expect(warningsAt({ travel: { left: 45, right: -40 } }, withTravel)).toEqual([]);
    expect(warningsAt({ travel: { left: 46, right: -41 } }, withTravel)).toEqual([
      ['travel-past-end', 'front.travel', 'The left wheel at travel 46 mm from design is past the end of its travel, 45 mm.'],
      ['travel-past-end', 'front.travel', 'The right wheel at travel −41 mm from design is past the end of its travel, −40 mm.'],
    ]);
  });
});
