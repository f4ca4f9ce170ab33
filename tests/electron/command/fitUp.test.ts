import { describe, expect, test } from 'vitest';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';
import { jounce, jounceJson, type Json } from './jounce';

const EVERYTHING = path.join(ROOT, 'tests/fixtures/cars/everything.jounce.json');
const SAMPLES = ['saltmarsh-hatch', 'marram-coupe', 'chalkboard'].map((name) => path.join(ROOT, `samples/${name}.jounce.json`));
const [HATCH = ''] = SAMPLES;
const keysOf = (value: Json | undefined): string[] => Object.keys(value ?? {}).sort();
const listOf = (value: Json | undefined): readonly Json[] => (value ?? []) as readonly Json[];
const numberOf = (value: Json | undefined): number => value as unknown as number;

const ENVELOPE = ['axle', 'open', 'rackMax', 'rackMin', 'setup', 'side', 'solid', 'touch', 'unreachable'];
const ANSWER = ['by', 'car', 'contract', 'envelope', 'notes', 'rows', 'setups', 'units', 'warnings'];

describe('joints', () => {
  test('answers in the form of the contract', async () => {
    const { status, document } = await jounceJson(['joints', EVERYTHING, '--setups', 'Wet,Dry, 2nd']);
    expect(status).toBe(0);
    expect(keysOf(document)).toEqual(ANSWER);
    expect(document['setups']).toEqual(['Wet', 'Dry, 2nd']);
    const rows = listOf(document['rows']);
    expect(rows.map((row) => `${String(row['point'])} ${String(row['axle'])} ${String(row['side'])}`).sort()).toEqual([
      'ballJoint front left',
      'ballJoint front right',
      'toeKnuckle rear left',
      'toeKnuckle rear right',
    ]);
    for (const row of rows) {
      expect(keysOf(row)).toEqual(['at', 'axle', 'bestBolt', 'by', 'point', 'rated', 'side', 'spare', 'tilt', 'tiltThen', 'why']);
      expect(row['by']).toBe(String(row['point']) === 'ballJoint' ? 'bore' : 'rod');
      expect(row['rated']).toBe(String(row['point']) === 'ballJoint' ? 25 : 18);
      expect(numberOf(row['spare'])).toBe(numberOf(row['rated']) - numberOf(row['tilt']));
      const place = row['at'] as unknown as Json;
      expect(keysOf(place)).toEqual(['rack', 'setup', 'travel']);
      expect(['Wet', 'Dry, 2nd']).toContain(place['setup']);
      expect(listOf(row['bestBolt']).reduce((sum, value) => sum + numberOf(value) ** 2, 0)).toBeCloseTo(1, 12);
      expect(numberOf(row['tiltThen'])).toBeLessThanOrEqual(numberOf(row['tilt']));
    }
    const envelope = listOf(document['envelope']);
    expect(envelope).toHaveLength(8);
    for (const one of envelope) expect(keysOf(one)).toEqual(ENVELOPE);
    expect(JSON.stringify(document['notes'])).toContain('compliance');
  });

  test('a bolt set as told tilts as told', async () => {
    const text = await readFile(EVERYTHING, 'utf8');
    const before = listOf((await jounceJson(['joints', EVERYTHING, '--axle', 'rear'])).document['rows']);
    const bolt = JSON.stringify(before[0]?.['bestBolt']);
    const stdin = text.replace(
      '"toeKnuckle": { "axle": "rear", "bolt": [0, 0, 1]',
      `"toeKnuckle": { "axle": "rear", "bolt": ${bolt}`,
    );
    expect(stdin).not.toBe(text);
    const after = listOf((await jounceJson(['joints', '-', '--axle', 'rear'], { stdin })).document['rows']);
    const same = after.find((row) => row['side'] === before[0]?.['side']);
    // within the hundredth of a degree that is promised
    expect(Math.abs(numberOf(same?.['tilt']) - numberOf(before[0]?.['tiltThen']))).toBeLessThan(0.01);
  });

  test('past what its maker allows is a warning', async () => {
    const text = await readFile(EVERYTHING, 'utf8');
    const stdin = text.replace('"rated": 18', '"rated": 2');
    const { status, document, stdout } = await jounceJson(['joints', '-'], { stdin });
    expect(status).toBe(0);
    const warnings = listOf(document['warnings']).filter(({ code }) => String(code) === 'joint-past-rated');
    expect(warnings.map((one) => one['path'])).toEqual(['joints.toeKnuckle', 'joints.toeKnuckle']);
    // least spare first
    expect(listOf(document['rows'])[0]?.['point']).toBe('toeKnuckle');
    expect(stdout).not.toContain('NaN');
  });

  test('a car without joints has no rows, and that is said', async () => {
    const text = await readFile(EVERYTHING, 'utf8');
    const { joints: _, ...car } = JSON.parse(text) as Record<string, unknown>;
    const { status, document } = await jounceJson(['joints', '-'], { stdin: JSON.stringify(car) });
    expect(status).toBe(0);
    expect(document['rows']).toEqual([]);
    expect(listOf(document['warnings']).map(({ code }) => code)).toContain('no-joints');
  });
});

describe('stroke', () => {
  test('answers in the form of the contract', async () => {
    const { status, document } = await jounceJson(['stroke', EVERYTHING, '--setup', 'Wet']);
    expect(status).toBe(0);
    expect(keysOf(document)).toEqual(ANSWER);
    const rows = listOf(document['rows']);
    expect(rows.map((row) => `${String(row['setup'])} ${String(row['axle'])} ${String(row['side'])}`)).toEqual([
      'Wet front left',
      'Wet front right',
      'Wet rear left',
      'Wet rear right',
    ]);
    for (const row of rows) {
      expect(keysOf(row)).toEqual([
        'axle',
        'barTwist',
        'bindAt',
        'bindLeft',
        'bumpLeft',
        'droopLeft',
        'looseAt',
        'looseLeft',
        'setup',
        'shaft',
        'side',
        'solidLeft',
        'spans',
        'standing',
        'threads',
        'why',
      ]);
      for (const key of ['bumpLeft', 'solidLeft', 'droopLeft', 'looseAt', 'bindAt', 'barTwist', 'shaft'])
        expect(row[key] === null, `${String(row['axle'])} ${key}`).toBe(typeof row['why']?.[key] === 'string');
      for (const thread of listOf(row['threads']))
        expect(keysOf(thread)).toEqual([
          'diameter',
          'ends',
          'engaged',
          'kind',
          'material',
          'name',
          'pitch',
          'spacer',
          'times',
          'turns',
          'verdict',
        ]);
    }
    const [front] = rows;
    expect(keysOf(front?.['shaft'])).toEqual(['allowed', 'angleInner', 'angleOuter', 'at', 'plungeIn', 'plungeOut']);
    expect(keysOf(front?.['spans']?.['brakeHose'])).toEqual(['at', 'greatest', 'least', 'length', 'spare']);
    expect(keysOf(front?.['barTwist'])).toEqual(['at', 'greatest', 'least']);
    expect(JSON.stringify(document['notes'])).toContain('no source');
    const standing = (await jounceJson(['readings', EVERYTHING, '--setup', 'Wet', '--axle', 'front'])).document;
    const left = listOf(standing['rows'])[0]?.['left'];
    for (const key of ['bumpLeft', 'solidLeft', 'droopLeft'])
      expect(numberOf(front?.[key])).toBeCloseTo(numberOf(left?.[key]), 8);
  });

  test('a spacer takes its thickness off the studs', async () => {
    const times = async (...words: string[]): Promise<number> => {
      const { document } = await jounceJson(['stroke', HATCH, '--axle', 'rear', ...words]);
      const studs = listOf(listOf(document['rows'])[0]?.['threads']).find(({ kind }) => String(kind) === 'studs');
      return numberOf(studs?.['engaged']);
    };
    expect((await times('--setup', 'Baseline')) - (await times('--set', 'rear.both.spacer=10'))).toBeCloseTo(10, 9);
  });
});

test('in words: no line over 100 columns, cautions under it', async () => {
  for (const car of [...SAMPLES, EVERYTHING])
    for (const verb of ['joints', 'stroke']) {
      const { status, stdout } = await jounce([verb, car]);
      expect(status).toBe(0);
      expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
      expect(stdout).toContain('compliance and bent parts are not modelled');
      expect(stdout).not.toMatch(/NaN|undefined|\d…/);
    }
});

test('says what is wrong', async () => {
  for (const [words, said] of [
    [['--setups', 'Wet,Drry'], 'no setup'],
    [['--setups', 'Wet', '--setup', 'Wet'], 'two things'],
    [['--axle', 'middle'], 'front'],
  ] as const) {
    const { status, document } = await jounceJson(['joints', EVERYTHING, ...words]);
    expect(status).toBe(2);
    expect(String(document['error']?.['message'])).toContain(said);
  }
});

test('a batch takes setups as a list, and answers as the verb does', async () => {
  const lines = ['joints', 'stroke'].map((ask) =>
    JSON.stringify({ id: ask, car: EVERYTHING, ask, options: { setups: ['Wet', 'Baseline'], axle: 'front' } }),
  );
  const { stdout } = await jounce(['batch'], { stdin: `${lines.join('\n')}\n` });
  const answers = stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Json);
  for (const [i, verb] of ['joints', 'stroke'].entries()) {
    const alone = (await jounceJson([verb, EVERYTHING, '--setups', 'Wet,Baseline', '--axle', 'front'])).document;
    expect(answers[i]?.['answer']?.['rows']).toEqual(alone['rows']);
  }
});
