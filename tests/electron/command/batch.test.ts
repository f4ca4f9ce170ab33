import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporaryFolder';
import { carPath, jounce, jounceBatch, jounceJson, readJsonFile, type Json } from './jounce';
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';

const CAR = carPath(22);

describe('batch', () => {
  test('answers each line in order with what the verb prints with --json', async () => {
    const document = await readJsonFile(CAR);
    const { status, answers, stderr } = await jounceBatch([
      { id: 'a', car: CAR, ask: 'readings', options: { axle: 'front', travel: [10, 12], setup: 'Trial' } },
      { id: { b: [1] }, car: document, ask: 'readings', options: { set: { 'front.both.plateAcross': -2 } } },
      { id: null, car: CAR, ask: 'sweep', options: { motion: 'roll', from: -1, to: 1, steps: 3 } },
      { car: CAR, ask: 'check' },
      { id: 5, ask: 'schema' },
    ]);
    expect(status).toBe(0);
    expect(stderr).toBe('');
    expect(answers.map((line) => line['id'])).toEqual(['a', { b: [1] }, null, null, 5]);
    const printed = await Promise.all([
      jounceJson(['readings', CAR, '--axle', 'front', '--travel', '10,12', '--setup', 'Trial']),
      jounceJson(['readings', CAR, '--set', 'front.both.plateAcross=-2']),
      jounceJson(['sweep', CAR, '--motion', 'roll', '--from', '-1', '--to', '1', '--steps', '3']),
      jounceJson(['check', CAR]),
      jounceJson(['schema']),
    ]);
    answers.forEach((line, index) => {
      expect(Object.keys(line)).toEqual(['id', 'answer']);
      expect(line['answer']).toEqual(printed[index]?.document);
    });
  });

  test('what is wrong with a line is its answer, and the next goes on', async () => {
    const { status, answers } = await jounceBatch([
      'nonsense',
      '',
      '   ',
      '[1, 2]',
      { id: 1, car: CAR, ask: 'redings' },
      { id: 2, car: CAR, ask: 'batch' },
      { id: 3, ask: 'readings' },
      { id: 4, car: CAR, ask: 'readings', options: { travl: 3 } },
      { id: 5, car: CAR, ask: 'readings', options: { travel: 900 } },
      { id: 6, car: 'no/such/file.json', ask: 'readings' },
      { id: 7, car: { format: 'jounce-car' }, ask: 'check' },
      { id: 8, car: CAR, ask: 'readings', options: { setup: 'Nobody' } },
      { id: 9, car: '-', ask: 'check' },
      { id: 10, car: CAR, ask: 'check', extra: 1 },
      { id: 11, car: CAR, ask: 'sweep', options: { list: '-' } },
      { id: 12, car: 7, ask: 'check' },
      { id: 13, car: CAR, ask: 'check', options: { json: true } },
      '{"id":14,"car":"x","car":"y","ask":"check"}',
      { id: 15, car: CAR, ask: 'schema' },
      { id: 16, car: CAR, ask: 'check' },
    ]);
    expect(status).toBe(0);
    expect(answers.map((line) => [line['id'], line['error']?.['kind'] ?? null])).toEqual([
      [null, 'usage'],
      [null, 'usage'],
      [1, 'usage'],
      [2, 'usage'],
      [3, 'usage'],
      [4, 'usage'],
      [5, 'unreachable'],
      [6, 'file'],
      [7, 'file'],
      [8, 'setup'],
      [9, 'usage'],
      [10, 'usage'],
      [11, 'usage'],
      [12, 'usage'],
      [13, 'usage'],
      [null, 'usage'],
      [15, 'usage'],
      [16, null],
    ]);
    for (const line of answers.slice(0, -1)) expect(Object.keys(line)).toEqual(['id', 'error']);
    expect(answers[8]?.['error']?.['faults']).toEqual(
      expect.arrayContaining([expect.objectContaining({ line: null, column: null })]),
    );
  });

  test('verbs that write a file are refused and write none', async () => {
    const folder = await temporaryFolder();
    const line = { id: 1, car: CAR, ask: 'sweep', options: { motion: 'bump', from: 0, to: 1, steps: 2, csv: 'out.csv' } };
    const { stdout, status } = await jounce(['batch'], { stdin: JSON.stringify(line), folder });
    expect(status).toBe(0);
    expect((JSON.parse(stdout) as Json)['error']?.['kind']).toBe('usage');
    expect(await readdir(folder)).toEqual([]);
  });

  test('a car with a key twice is refused as in a file, and an id comes back to the letter', async () => {
    const text = JSON.stringify(await readJsonFile(CAR)).replace('"name":', '"name":"x","name":');
    const { stdout } = await jounce(['batch'], { stdin: `{"id":12345678901234567890.10,"ask":"check","car":${text}}` });
    expect(stdout.startsWith('{"id":12345678901234567890.10,"error":')).toBe(true);
    expect((JSON.parse(stdout) as Json)['error']?.['kind']).toBe('file');
  });

  test('the order of the keys of set says nothing: both before either side', async () => {
    const set = { 'front.left.rearBush': 90, 'front.both.rearBush': 30 };
    const turned = Object.fromEntries(Object.entries(set).reverse());
    const car = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
    const line = (options: object): object => ({ car, ask: 'readings', options: { axle: 'front', ...options } });
    const { answers } = await jounceBatch([line({ set }), line({ set: turned })]);
    const rows = answers.map(({ answer }) => answer?.['rows']?.[0]);
    expect(rows[0]).toEqual(rows[1]);
    expect(rows[0]?.['left']?.['caster']).not.toEqual(rows[0]?.['right']?.['caster']);
  });

  test('its own --setup and --set hold for lines without theirs', async () => {
    const { answers } = await jounceBatch(
      [
        { id: 1, car: CAR, ask: 'readings' },
        { id: 2, car: CAR, ask: 'readings', options: { setup: 'Baseline' } },
      ],
      ['--setup', 'Trial'],
    );
    expect(answers.map((line) => line['answer']?.['setup'])).toEqual(['Trial', 'Baseline']);
  });

  test('a line over 16 MiB is an error, CRLF and a byte-order mark are read', async () => {
    const long = `{"id":1,"ask":"schema","x":"${'x'.repeat(16 * 1024 * 1024)}"}`;
    const { answers, status } = await jounceBatch([`\uFEFF{"id":0,"ask":"schema"}\r`, long, { id: 2, ask: 'schema' }]);
    expect(status).toBe(0);
    expect(answers.map((line) => [line['id'], 'error' in line])).toEqual([
      [0, false],
      [null, true],
      [2, false],
    ]);
  });

  test('nothing in, nothing out', async () => {
    expect(await jounceBatch([])).toMatchObject({ status: 0, answers: [] });
  });

  test('memory does not grow with the number of lines', async () => {
    const car = await readJsonFile(CAR);
    const line = (index: number): object => ({
      id: index,
      car: { ...(car as object), name: `Car ${index}` },
      ask: 'readings',
      options: { axle: 'front' },
    });
    const lines = Array.from({ length: 1500 }, (_, index) => line(index));
    const stdin = lines.map((each) => JSON.stringify(each)).join('\n');
    const { status, stdout } = await jounce(['batch'], { stdin, env: { NODE_OPTIONS: '--max-old-space-size=64' } });
    expect(status).toBe(0);
    expect(stdout.trimEnd().split('\n')).toHaveLength(1500);
  });
});
