import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { parseCar, type CarDocument } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import type { FitUpAnswers } from '../../../renderer/compute/fitup/fitUpOrder';
import { askedSetups, strokeOrder } from '../../../renderer/fitup/fitUpQuestion';
import { strokeCounts, strokeLines, type StrokeLine } from '../../../renderer/fitup/stroke/strokeLines';
import { shownStroke, strokePlain } from '../../../renderer/fitup/stroke/strokeTable';
import type { ShownUnits } from '../../../renderer/units/unitChoice';
import { jounceJson, type Json } from '../../electron/command/jounce';

const MM: ShownUnits = { length: 'mm', angle: 'degrees', toe: 'angle', toeDiameter: null, force: 'newton' };
const INCHES: ShownUnits = { length: 'in', angle: 'minutes', toe: 'angle', toeDiameter: null, force: 'newton' };
const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');

let document: CarDocument;
beforeAll(() => {
  const read = parseCar(readFileSync(HATCH, 'utf8'));
  if (!read.ok) throw new Error('the sample has faults');
  document = read.value.document;
});

const answerOf = (car: CarDocument, axle: 'front' | 'rear'): FitUpAnswers['stroke'] => {
  const result = answerFitUp(strokeOrder(car, axle, askedSetups(car, [])), searchMesh);
  if (!result.ok) throw new Error(result.failure.message);
  return result.value;
};
const linesOf = (car: CarDocument, axle: 'front' | 'rear'): readonly StrokeLine[] => {
  const { rows, envelope } = answerOf(car, axle);
  return strokeLines(rows, envelope);
};
const lineOf = (lines: readonly StrokeLine[], key: string): StrokeLine => {
  const found = lines.find((one) => one.key === key);
  if (!found) throw new Error(`no line ${key}`);
  return found;
};
const edited = (edit: (front: Record<string, never>) => void): CarDocument => {
  const copy = structuredClone(document) as unknown as { front: Record<string, never> };
  edit(copy.front);
  return copy as unknown as CarDocument;
};

describe('what has an end, as the page shows it', () => {
  test('says of every setup what the command line says', async () => {
    const lines = linesOf(document, 'front');
    const { document: theirs } = await jounceJson(['stroke', HATCH, '--axle', 'front']);
    const rows = (theirs['rows'] ?? []) as readonly Json[];
    expect(rows.length).toBeGreaterThan(3);
    for (const row of rows) {
      const side = row['side'] as string;
      const value = (id: string) =>
        lineOf(lines, `front|${side}|${id}`).every.find(({ setup }) => setup === row['setup'])?.value ?? null;
      const shaft = row['shaft'] as Record<string, number>;
      const span = (row['spans'] as Record<string, Record<string, number>>)['frontHose'];
      const threads = row['threads'] as readonly Json[];
      expect(value('bumpLeft')).toBeCloseTo(row['bumpLeft'] as number, 9);
      expect(value('solidLeft')).toBeCloseTo(row['solidLeft'] as number, 9);
      expect(value('droopLeft')).toBeCloseTo(row['droopLeft'] as number, 9);
      expect(value('looseAt')).toBeCloseTo((row['looseAt'] ?? row['looseLeft']) as number, 9);
      expect(value('bindAt')).toBeCloseTo((row['bindAt'] ?? row['bindLeft']) as number, 9);
      expect(value('plungeIn')).toBeCloseTo(shaft['plungeIn']!, 9);
      expect(((value('angleOuter') ?? NaN) * 180) / Math.PI).toBeCloseTo(shaft['angleOuter']!, 9);
      expect(value('spans.frontHose')).toBeCloseTo(span!['greatest']!, 9);
      for (const thread of threads)
        expect(value(`threads.${String(thread['kind'])}.${String(thread['name'])}`)).toBeCloseTo(thread['times'] as number, 9);
    }
  }, 60_000);

  test('what is past its end stands first, what cannot be judged last', () => {
    const car = edited((front) => {
      const axle = front as unknown as { driveShaft: { maxAngleOuter: number }; damper: { bumpStopAt: number } };
      axle.driveShaft.maxAngleOuter = 30;
      axle.damper.bumpStopAt = -5;
    });
    const lines = linesOf(car, 'front');
    const [first] = lines;
    expect(first?.key).toMatch(/angleOuter$/);
    expect(first?.worst.verdict).toBe('broken');
    expect(shownStroke(first!, first!.worst, MM).verdictWords).toMatch(/too much$/);
    const rubber = lineOf(lines, 'front|left|bumpLeft');
    expect(rubber.worst.verdict).toBe('close');
    expect(shownStroke(rubber, rubber.worst, MM).verdictWords).toBe('on its rubber');
    const ranks = lines.map(({ worst }) => ['broken', 'close', 'within', null].indexOf(worst.verdict));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(lines.at(-1)?.kind).toBe('bar');
    expect(strokeCounts(lines)[0]).toEqual({ verdict: 'broken', words: '2 past its end' });
  });

  test('the setup with the least left stands for all of them', () => {
    for (const { worst, every } of linesOf(document, 'rear'))
      for (const one of every)
        if (one.share !== null && worst.share !== null && one.verdict === worst.verdict)
          expect(worst.share).toBeLessThanOrEqual(one.share);
  });

  test('a spring that comes loose says where, how far before the damper is open, and that it is to be watched', () => {
    const car = edited((front) => {
      const spring = (front as unknown as { spring: { freeLength: number } }).spring;
      spring.freeLength -= 40;
    });
    const { rows, envelope } = answerOf(car, 'front');
    const line = lineOf(strokeLines(rows, envelope), 'front|left|looseAt');
    const row = rows.find(({ setup, side }) => setup === line.worst.setup && side === 'left')!;
    const own = envelope.find(({ setup, side }) => setup === line.worst.setup && side === 'left')!;
    expect(row.looseAt).not.toBeNull();
    expect(line.worst).toMatchObject({
      verdict: 'close',
      state: 'loose',
      value: row.looseAt,
      at: { travel: row.looseAt, rack: 0 },
    });
    expect(line.worst.spare).toBeCloseTo(own.open - row.looseAt!, 9);
    const watched = strokeLines(rows, envelope).filter(({ worst }) => worst.verdict === 'close').length;
    expect(watched).toBeGreaterThan(0);
    expect(strokeCounts(strokeLines(rows, envelope))).toContainEqual({ verdict: 'close', words: `${watched} to watch` });
    expect(own.open).toBeLessThan(row.looseAt!);
    expect(shownStroke(line, line.worst, MM).verdictWords).toMatch(/^loose \d+\.\d mm before open$/);
  });

  test('units are those that are read, at any time', () => {
    const lines = linesOf(document, 'front');
    const hose = lineOf(lines, 'front|left|spans.frontHose');
    const [mm, inches] = [shownStroke(hose, hose.worst, MM), shownStroke(hose, hose.worst, INCHES)];
    expect([mm.unit, inches.unit]).toEqual(['mm', 'in']);
    expect(Number(inches.value) * 25.4).toBeCloseTo(Number(mm.value), 0);
    const joint = lineOf(lines, 'front|left|angleOuter');
    expect(shownStroke(joint, joint.worst, MM).value).toMatch(/^\d+\.\d$/);
    expect(shownStroke(joint, joint.worst, INCHES).value).toMatch(/^\d+°\d\d′$/);
    const { heads, rows } = strokePlain('front', lines, INCHES);
    expect(heads).toContain('rack [in]');
    expect(rows.length).toBe(lines.reduce((sum, { every }) => sum + every.length, 0));
    for (const row of rows) expect(row.length).toBe(heads.length);
  });
});
