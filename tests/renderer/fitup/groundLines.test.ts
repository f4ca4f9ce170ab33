import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { parseCar, type CarDocument, type ClearanceAnswer } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import { attitudesOf, groundLines, groundPlain, type GroundLine } from '../../../renderer/fitup/clearance/groundLines';
import { askedSetups, clearanceOrder } from '../../../renderer/fitup/fitUpQuestion';
import type { ShownUnits } from '../../../renderer/units/unitChoice';
import { jounceJson, type Json } from '../../electron/command/jounce';

const MM: ShownUnits = { length: 'mm', angle: 'degrees', toe: 'angle', toeDiameter: null, force: 'newton' };
const INCHES: ShownUnits = { ...MM, length: 'in' };
const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');

type Ground = NonNullable<ClearanceAnswer['ground']>;

/** The sample with one low part and a margin over the ground. */
function groundOf(z: number, margin: number): { readonly document: CarDocument; readonly ground: Ground } {
  const car = JSON.parse(readFileSync(HATCH, 'utf8')) as object;
  const parts = { splitter: { axle: 'front', on: 'body', shape: { kind: 'box', centre: [500, 300, z], size: [100, 300, 10] } } };
  const read = parseCar(JSON.stringify({ ...car, parts, margins: { ground: margin } }));
  if (!read.ok) throw new Error(JSON.stringify(read.failure.faults));
  const { document } = read.value;
  const result = answerFitUp(clearanceOrder(document, 'front', 'both', askedSetups(document, []), {}), searchMesh);
  if (!result.ok) throw new Error(result.failure.message);
  return { document, ground: result.value.ground! };
}

const lineOf = (lines: readonly GroundLine[], name: string, side: string): GroundLine =>
  lines.find((line) => line.name === name && line.side === side)!;

describe('parts over the ground, as the page shows them', () => {
  let low: ReturnType<typeof groundOf>;
  beforeAll(() => {
    low = groundOf(100, 60);
  });

  test('of each attitude the setup in which a part is lowest, as the command line has them', async () => {
    const { document: theirs } = await jounceJson(['clearance', '-', '--axle', 'front', '--ground'], {
      stdin: JSON.stringify(low.document),
    });
    const rows = theirs['ground']?.['rows'] as unknown as readonly Json[];
    const lines = groundLines(low.ground, MM);
    const names = attitudesOf(low.ground).map(({ name }) => name);
    expect(names).toEqual(['standing', 'left-flat', 'right-flat', 'solid']);
    expect(lines.length).toBeGreaterThan(4);
    for (const { cells, key } of lines) {
      const [axle, side, part] = key.split('|');
      cells.forEach((cell, index) => {
        const heights = rows
          .filter((row) => row['part'] === part && row['side'] === side && String(row['axle']) === axle)
          .filter((row) => row['attitude'] === names[index])
          .map((row) => row['height'] as number);
        expect(cell!.row.height).toBeCloseTo(Math.min(...heights), 9);
      });
    }
    const spares = lines.map(({ spare }) => spare);
    expect(spares).toEqual([...spares].sort((a, b) => a - b));
  });

  test('what is short of its margin, or under the ground, says so; in inches too', () => {
    // both front wheels flat on one side drop it by a third of a rim: 95 mm up it stays over the ground, and under 60 mm
    const splitter = lineOf(groundLines(low.ground, MM), 'Splitter', 'left');
    const [standing, leftFlat, rightFlat] = splitter.cells;
    expect(standing?.verdict).toBe('within');
    expect(leftFlat?.verdict).toBe('broken');
    expect(leftFlat!.row.height).toBeLessThan(rightFlat!.row.height);
    const inches = lineOf(groundLines(low.ground, INCHES), 'Splitter', 'left');
    expect(Number(inches.cells[0]!.height)).toBeCloseTo(standing!.row.height / 25.4, 2);
    const under = lineOf(groundLines(groundOf(30, 0).ground, MM), 'Splitter', 'left');
    expect(under.cells[1]?.row.verdict).toBe('cuts');
  });

  test('copied it is every setup and attitude, in the units that are read', () => {
    const plain = groundPlain(low.ground, INCHES);
    expect(plain.rows).toHaveLength(low.ground.rows.length);
    expect(plain.heads[5]).toBe('height [in]');
    expect(plain.rows[0]![5]).toBeCloseTo(low.ground.rows[0]!.height / 25.4, 9);
  });
});
