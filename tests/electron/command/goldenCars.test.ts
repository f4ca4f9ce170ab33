import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { findReading } from '../../../geometry/index';
import { CARS, carPath, jounceBatch, readJsonFile, type Json } from './jounce';

interface GoldenRow {
  readonly setup: string;
  readonly axle: string;
  readonly motion: string;
  readonly input?: number;
  readonly position?: {
    readonly travel: { readonly left: number; readonly right: number };
    readonly rack: number;
    readonly roll: number;
  };
  readonly left: Readonly<Record<string, number | null | readonly number[]>>;
  readonly right: GoldenRow['left'];
  readonly both: GoldenRow['left'];
}

/** A row as a line of a batch. */
function lineOf(row: GoldenRow, id: number, car: string): object {
  const options: Record<string, unknown> = { axle: row.axle, setup: row.setup };
  if (row.position) {
    const { travel, rack, roll } = row.position;
    Object.assign(options, { travel: [travel.left, travel.right], rack, roll });
  } else options[row.motion === 'bump' ? 'travel' : row.motion === 'steer' ? 'rack' : 'roll'] = row.input;
  return { id, car, ask: 'readings', options };
}

/** How far a reading may be off, as the makers of the figures state it. */
function toleranceOf(key: string, expected: number): number {
  if (/InstantCentre|rollCentre/.test(key)) return Math.max(1e-3, 1e-5 * Math.abs(expected));
  switch (findReading(key)?.quantity) {
    case 'length':
      return 1e-6;
    case 'angle':
      return 1e-7;
    default:
      return Math.max(1e-8, 1e-5 * Math.abs(expected));
  }
}

describe('the cars of an independent solver, through the built command', () => {
  test.each([21, 22, 23, 24])('car %i', async (number) => {
    const rows = (await readJsonFile(path.join(CARS, `car-${number}.expected.json`))) as unknown as readonly GoldenRow[];
    const { answers } = await jounceBatch(rows.map((row, index) => lineOf(row, index, carPath(number))));
    expect(answers).toHaveLength(rows.length);
    const wrong: string[] = [];
    rows.forEach((row, index) => {
      const answer = answers[index]?.['answer']?.['rows']?.[0];
      for (const side of ['left', 'right', 'both'] as const)
        for (const [key, expected] of Object.entries(row[side])) {
          const got = answer?.[side]?.[key] as Json | number | null | undefined;
          const pairs = Array.isArray(expected)
            ? expected.map((value, at) => [value, (got as readonly number[] | null | undefined)?.[at]] as const)
            : [[expected, got] as const];
          for (const [wanted, found] of pairs) {
            const same =
              wanted === null
                ? found === null
                : typeof found === 'number' && Math.abs(found - (wanted as number)) <= toleranceOf(key, wanted as number);
            if (!same) wrong.push(`${row.setup} ${row.axle} ${row.motion} ${row.input} ${side}.${key}: ${found} for ${wanted}`);
          }
        }
    });
    expect(wrong).toEqual([]);
  });
});
