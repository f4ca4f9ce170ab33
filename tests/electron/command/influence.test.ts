import { describe, expect, test } from 'vitest';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';
import { jounce, jounceJson, type Json } from './jounce';

const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
const BOARD = path.join(ROOT, 'samples/chalkboard.jounce.json');

/** The number of a dotted name in the document of `readings`. */
const numberIn = (document: Json, name: string): number | null => {
  const [axle = '', owner = '', key = ''] = name.split('.');
  const row = axle === 'wholeCar' ? document['wholeCar']?.[owner] : document[axle]?.['rows']?.[0]?.[owner]?.[key];
  return typeof row === 'number' ? row : null;
};

const expectDifferences = (changes: Json, before: Json, after: Json): void => {
  const names = Object.keys(changes);
  expect(names.length).toBeGreaterThan(100);
  for (const name of names) {
    const [now, then] = [numberIn(before, name), numberIn(after, name)];
    expect(changes[name], name).toBe(now === null || then === null ? null : then - now || 0);
  }
};

const AT = ['--travel', '12', '--rack', '8'];

describe('influence', () => {
  test('is the difference of two calls of readings, to the last bit', async () => {
    const { document } = await jounceJson(['influence', HATCH, '--setup', 'Trial 3', ...AT]);
    const before = (await jounceJson(['readings', HATCH, '--setup', 'Trial 3', ...AT])).document;
    const rows = document['rows'] as Json;
    const plate = [...rows].find(({ adjuster }) => (adjuster as unknown) === 'plateAcross');
    expect([plate?.['step'], plate?.['unit'], plate?.['side']]).toEqual([1, 'mm', 'both']);
    for (const [key, setting] of [
      ['more', -5],
      ['less', -7],
    ] as const) {
      const set = ['--set', `front.both.plateAcross=${setting}`];
      const after = (await jounceJson(['readings', HATCH, '--setup', 'Trial 3', ...AT, ...set])).document;
      expectDifferences(plate?.[key] as Json, before, after);
    }
    const rear = [...rows].find(({ axle, adjuster }) => (axle as unknown) === 'rear' && (adjuster as unknown) === 'camberBolt');
    const set = ['--set', 'rear.both.camberBolt=45'];
    expectDifferences(
      rear?.['more'] as Json,
      before,
      (await jounceJson(['readings', HATCH, '--setup', 'Trial 3', ...AT, ...set])).document,
    );
  });

  test('one side, with toe set after every step', async () => {
    const { document } = await jounceJson(['influence', HATCH, '--axle', 'front', '--side', 'left', '--toe-reset', '0.1']);
    const toe = ['--set', 'front.setToe=0.1'];
    const before = (await jounceJson(['readings', HATCH, ...toe])).document;
    const after = (await jounceJson(['readings', HATCH, ...toe, '--set', 'front.left.plateAcross=1'])).document;
    const plate = [...(document['rows'] as Json)].find(({ adjuster }) => (adjuster as unknown) === 'plateAcross');
    expectDifferences(plate?.['more'] as Json, before, after);
    const rod = [...(document['rows'] as Json)].find(({ adjuster }) => (adjuster as unknown) === 'tieRod');
    expect([rod?.['more'], (rod?.['why'] as Json)['more']]).toEqual([null, 'the toe reset turns it']);
  });

  test('a bushing that is not fitted is tried at each mark; the end of a range is said; locked parts stay', async () => {
    const { document } = await jounceJson(['influence', HATCH, '--axle', 'front']);
    const rows = [...(document['rows'] as Json)];
    const bushing = rows.find(({ adjuster }) => (adjuster as unknown) === 'rearBush');
    const clocks = [...(bushing?.['fit'] as Json)].map(({ clock }) => clock as unknown);
    expect(clocks).toEqual([0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330]);
    const before = (await jounceJson(['readings', HATCH])).document;
    const after = (await jounceJson(['readings', HATCH, '--set', 'front.both.rearBush=90'])).document;
    expectDifferences((bushing?.['fit'] as Json)[3]?.['changes'] as Json, before, after);
    const shim = rows.find(({ adjuster }) => (adjuster as unknown) === 'rodShim');
    expect([shim?.['less'], (shim?.['why'] as Json)['less']]).toEqual([null, 'the range ends at 0']);
    expect(rows.map(({ adjuster }) => adjuster as unknown)).not.toContain('armBolt');
    const all = await jounceJson(['influence', HATCH, '--axle', 'front', '--locked']);
    expect((all.document['rows'] as Json).length).toBeGreaterThan(rows.length);
  });

  test('two rods that do the same thing are alike; what can be set independently is counted', async () => {
    const { document } = await jounceJson(['influence', BOARD, '--axle', 'front']);
    const values = document['singularValues'] as unknown as number[];
    expect(values).toEqual([...values].sort((a, b) => b - a));
    expect(document['independent'] as unknown).toBeGreaterThan(0);
    expect(document['independent'] as unknown).toBeLessThanOrEqual(values.length);
  });

  test('says what is wrong with the question, and fits 100 columns in words', async () => {
    for (const words of [
      ['--axle', 'middle'],
      ['--side', 'up'],
      ['--toe-reset=much'],
      ['--setup', 'Nowhere'],
      ['--set', 'front.both.nothing=1'],
    ]) {
      const { status, document } = await jounceJson(['influence', HATCH, ...words]);
      expect(status, words.join(' ')).toBe(2);
      expect(document['error']?.['message'] as unknown).toBeTypeOf('string');
    }
    const { stdout, status } = await jounce(['influence', HATCH, '--toe-reset']);
    expect(status).toBe(0);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
    expect(stdout).toContain('front plateAcross, both sides, by 1 mm');
  });

  test('through a batch, with the options of JSON', async () => {
    const ask = (options: object) => JSON.stringify({ id: 1, car: HATCH, ask: 'influence', options });
    const lines = [
      ask({ axle: 'front', 'toe-reset': true }),
      ask({ axle: 'front', 'toe-reset': 0.1 }),
      ask({ 'toe-reset': 'x' }),
    ];
    const { stdout } = await jounce(['batch'], { stdin: `${lines.join('\n')}\n` });
    const [asSet, tenth, wrong] = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Json);
    expect((asSet?.['answer']?.['rows'] as Json).length).toBe((tenth?.['answer']?.['rows'] as Json).length);
    expect(wrong?.['error']?.['kind'] as unknown).toBe('usage');
  });
});
