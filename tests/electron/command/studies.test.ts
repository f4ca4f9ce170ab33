import { describe, expect, test } from 'vitest';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';
import { temporaryFolder } from '../temporaryFolder';
import { jounce, jounceJson, readJsonFile, type Json } from './jounce';

const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
const QUESTION = path.join(ROOT, 'samples/camber-and-roll-centre.question.json');

const keysOf = (value: Json | undefined): string[] => Object.keys(value ?? {}).sort();
const isNarrow = (text: string): boolean => text.split('\n').every((line) => line.length <= 100);

describe('ways', () => {
  test('answers in the form of the contract, and the settings read back', async () => {
    const { status, document } = await jounceJson(['ways', HATCH, 'camber=-1.6', '--axle', 'front', '--toe-reset']);
    expect(status).toBe(0);
    expect(keysOf(document)).toEqual(['by', 'car', 'contract', 'from', 'setup', 'units', 'wanted', 'ways']);
    const [way] = document['ways'] as Json;
    expect(keysOf(way)).toEqual([
      'adjusters',
      'changes',
      'continuous',
      'leastGap',
      'leastSpare',
      'missBy',
      'rangeUsed',
      'reaches',
      'settings',
      'value',
    ]);
    const [[name, setting]] = Object.entries(way?.['settings']?.['front']?.['both'] ?? {}) as unknown as [[string, number]];
    const set = ['--set', `front.both.${name}=${setting}`, '--set', 'front.setToe=0.05'];
    const there = (await jounceJson(['readings', HATCH, '--axle', 'front', ...set])).document;
    expect(there['rows']?.[0]?.['left']?.['camber']).toBeCloseTo((way?.['value']?.['left'] ?? NaN) as unknown as number, 9);
    const words = await jounce(['ways', HATCH, 'camber=-1.6', '--axle', 'front', '--pairs']);
    expect(words.status).toBe(0);
    expect(isNarrow(words.stdout)).toBe(true);
  });

  test('names the pair that is short beside the least gap, and none where nothing is', async () => {
    const asked = ['ways', HATCH, 'camber=-1.6', '--axle', 'front'];
    const { document } = await jounceJson(asked);
    const { stdout } = await jounce(asked);
    const said = stdout.split('\n').filter((line) => line.trim().startsWith('least gap'));
    const wanted = [...(document['ways'] as Json)].map((way) => {
      const { pair, spare, verdict } = way['leastSpare'] as unknown as { pair: string[]; spare: number; verdict: string };
      const gap = `    least gap ${Number(way['leastGap']).toFixed(1)} mm`;
      return verdict === 'short' ? `${gap}; ${pair.join(' – ')} short by ${(-spare).toFixed(1)}` : gap;
    });
    expect(said).toEqual(wanted);
    expect(said.filter((line) => line.includes('short by')).length).toBeGreaterThan(0);
    expect(said.filter((line) => !line.includes('short by')).length).toBeGreaterThan(0);
  });

  test('a way that misses is short of the value or past it, by where one began', async () => {
    const asked = ['ways', HATCH, 'camber=-1.6', '--axle', 'front', '--tolerance', '0.001'];
    const { document } = await jounceJson(asked);
    const at = (value: Json | undefined): number => Number(typeof value === 'object' ? value?.['left'] : value);
    const isOver = at(document['from']) < -1.6;
    const expected = Object.values(document['ways'] ?? {}).map((way) => {
      if (way['reaches'] as unknown as boolean) return null;
      return at(way['value']) < -1.6 === isOver ? 'short' : 'past';
    });
    expect(expected).toContain('past');
    const { stdout } = await jounce(asked);
    const said = [...stdout.replace(/\s+/g, ' ').matchAll(/, [\d.]+ (short|past)/g)].map(([, word]) => word);
    expect(said).toEqual(expected.filter((word) => word !== null));
  });

  test('says what is wrong', async () => {
    for (const [words, said] of [
      [['camber'], 'READING=VALUE'],
      [['cambr=-1'], 'did you mean'],
      [['wheelCentre=3'], 'one number'],
      [['camber=-1', '--tolerance', '0'], 'above 0'],
      [[], 'needs READING=VALUE'],
      [['camber=-1', 'more'], 'too many'],
    ] as const) {
      const { status, document } = await jounceJson(['ways', HATCH, ...words, '--axle', 'front']);
      expect(status).toBe(2);
      expect(String(document['error']?.['message'])).toContain(said);
    }
    const neither = await jounceJson(['ways', HATCH, 'camber=-1']);
    expect(String(neither.document['error']?.['message'])).toContain('--axle');
  });
});

describe('reach', () => {
  test('a file, a question of the car, a document in a batch: one answer', async () => {
    const { status, document } = await jounceJson(['reach', HATCH, QUESTION]);
    expect(status).toBe(0);
    expect(keysOf(document)).toEqual([
      'all',
      'answers',
      'by',
      'car',
      'contract',
      'helps',
      'reachable',
      'setup',
      'tried',
      'units',
    ]);
    expect([document['reachable'], document['all'], document['tried'], (document['answers'] as Json).length]).toEqual([
      true,
      true,
      6825,
      3,
    ]);
    const question = await readJsonFile(QUESTION);
    const car = { ...((await readJsonFile(HATCH)) as object), questions: { 'camber up': question } };
    const folder = await temporaryFolder({ 'asked.jounce.json': JSON.stringify(car) });
    const kept = await jounceJson(['reach', 'asked.jounce.json', 'camber up'], { folder });
    expect(kept.document['answers']).toEqual(document['answers']);
    const line = JSON.stringify({ id: 7, car: HATCH, ask: 'reach', options: { question } });
    const { stdout } = await jounce(['batch'], { stdin: `${line}\n` });
    const answered = JSON.parse(stdout) as Json;
    expect(answered['answer']?.['answers']).toEqual(document['answers']);
    const wide = { wanted: [{ reading: 'camber', axle: 'front', range: [-4, 0], tolerance: 0.1 }] };
    const asked = JSON.stringify({ ...wide, may: [{ axle: 'front', adjuster: 'plateAcross' }] });
    const already = await jounce(['reach', HATCH, '-'], { stdin: asked });
    expect(already.stdout).toContain('Nothing to do: the setup has all of it already.');
    const words = await jounce(['reach', HATCH, QUESTION]);
    expect(words.stdout).toContain('All 6,825 combinations tried.');
    expect(isNarrow(words.stdout)).toBe(true);
  });

  test('every fault of a question is named with its place in its own text', async () => {
    const folder = await temporaryFolder({
      'bad.json':
        '{\n  "wanted": [ { "reading": "cambr", "axle": "front", "value": -3, "tolerance": 0 } ],\n  "may": [ { "axle": "front", "adjuster": "plate" } ]\n}\n',
      'two.json':
        '{ "wanted": [ { "reading": "camber", "axle": "front", "value": -3, "tolerance": 1 } ], "may": [ { "axle": "front", "adjuster": "plateAcross" } ] }, "more": { "wanted": [], "may": [] }',
      'odd.json': JSON.stringify({
        wanted: [
          { reading: 'camber', axle: 'front', range: [null, null], tolerance: 1 },
          { reading: 'camber', axle: 'front', value: -2, tolerance: 1e-300 },
        ],
        may: [
          { axle: 'front', adjuster: 'plateAcross' },
          { axle: 'front', adjuster: 'plateAcross', sides: 'apart' },
          { axle: 'front', point: 'tieRodEnd', along: [0, 0, 1], range: [0.2, 0.8], step: 1 },
        ],
      }),
      'ways.json': '{ "ask": "ways", "axle": "front", "reading": "camber", "value": -3 }',
      'empty.json': '{ "wanted": [], "may": [] }',
      'nan.json': '{ "wanted": [ { "reading": "camber", "axle": "front", "value": NaN, "tolerance": 1 } ] }',
      'round.json':
        '{ "wanted": [ { "reading": "camber", "axle": "front", "range": [1, -1], "tolerance": 1 } ], "may": [ { "axle": "front", "adjuster": "plateAcross" } ] }',
    });
    const faultsOf = async (name: string): Promise<readonly Json[]> => {
      const { status, document } = await jounceJson(['reach', HATCH, name], { folder });
      expect(status, name).toBe(2);
      return [...(document['error']?.['faults'] as Json)];
    };
    const bad = await faultsOf('bad.json');
    expect(bad.map((fault) => [fault['path'], fault['line']])).toEqual(
      expect.arrayContaining([
        ['wanted[0].reading', 2],
        ['wanted[0].tolerance', 2],
        ['may[0].adjuster', 3],
      ]),
    );
    for (const name of ['two.json', 'empty.json', 'nan.json', 'round.json'])
      expect((await faultsOf(name)).length, name).toBeGreaterThan(0);
    // a question of another study is none of this one
    expect(await faultsOf('ways.json')).toMatchObject([{ code: 'question-form', path: 'ask', found: '"ways"' }]);
    const odd = await faultsOf('odd.json');
    expect(odd.map((fault) => fault['path'])).toEqual(
      expect.arrayContaining(['wanted[0].range', 'wanted[1].tolerance', 'may[1].adjuster', 'may[2].range']),
    );
    const missing = await jounceJson(['reach', HATCH, 'nowhere.json'], { folder });
    expect(missing.status).toBe(2);
    // the sample keeps questions of its own: they are offered
    expect(String(missing.document['error']?.['message'])).toMatch(/no such file; the car keeps "/);
  });
});

describe('map', () => {
  test('answers in the form of the contract; one value is that of readings', async () => {
    const words = [
      'map',
      HATCH,
      '--x',
      'front.both.plateAcross',
      '--y',
      'travel',
      '--reading',
      'front.left.camber',
      '--nx',
      '5',
      '--ny',
      '3',
    ];
    const { status, document } = await jounceJson(words);
    expect(status).toBe(0);
    expect(keysOf(document)).toEqual([
      'by',
      'car',
      'contract',
      'now',
      'reading',
      'setup',
      'steps',
      'units',
      'why',
      'x',
      'y',
      'z',
    ]);
    expect(document['x']).toEqual({ name: 'front.both.plateAcross', values: [-12, -7, -2, 3, 8] });
    const [, , travel] = document['y']?.['values'] as unknown as readonly number[];
    const there = await jounceJson([
      'readings',
      HATCH,
      '--axle',
      'front',
      '--set',
      'front.both.plateAcross=3',
      '--travel',
      String(travel),
    ]);
    // swept from its neighbour: the same but for rounding
    expect((document['z'] as unknown as number[][])[2][3]).toBeCloseTo(
      there.document['rows']?.[0]?.['left']?.['camber'] as unknown as number,
      10,
    );
    expect(isNarrow((await jounce(words)).stdout)).toBe(true);
  });

  test('says what is wrong', async () => {
    const reading = ['--reading', 'front.left.camber'];
    for (const [words, said] of [
      [['--x', 'front.both.plate', '--y', 'travel', ...reading], 'did you mean'],
      [['--x', 'travel', '--y', 'roll', ...reading], 'adjuster'],
      [['--x', 'travel', '--y', 'travel', ...reading], 'two things'],
      [['--x', 'front.both.plateAcross', '--y', 'travel', '--reading', 'front.both.camber'], 'left or right'],
      [['--x', 'front.both.plateAcross', '--y', 'travel'], '--reading'],
      [['--x', 'front.both.plateAcross', '--y', 'travel', ...reading, '--from', '3'], 'go together'],
    ] as const) {
      const { status, document } = await jounceJson(['map', HATCH, ...words]);
      expect(status, words.join(' ')).toBe(2);
      expect(String(document['error']?.['message'])).toContain(said);
    }
  });
});
