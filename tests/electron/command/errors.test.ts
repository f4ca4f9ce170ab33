import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporaryFolder';
import { carPath, jounceJson, type Json } from './jounce';

const CAR = carPath(21);
const USAGE: readonly (readonly string[])[] = [
  [],
  ['chek', CAR],
  ['readings'],
  ['readings', CAR, CAR],
  ['readings', CAR, '--travl', '3'],
  ['readings', CAR, '--travel', 'x'],
  ['readings', CAR, '--travel', '1,2,3'],
  ['readings', CAR, '--roll', '1', '--travel', '1,2'],
  ['readings', CAR, '--roll', '89'],
  ['readings', CAR, '--axle', 'middle'],
  ['readings', CAR, '--set', 'front.both.rearBusch=90'],
  ['readings', CAR, '--set', 'front.both.plateAcross=soft'],
  ['readings', CAR, '--set', 'front.both.plateAcross=3h'],
  ['readings', CAR, '--set', 'plateAcross'],
  ['sweep', CAR],
  ['sweep', CAR, '--motion', 'bump', '--from', '0', '--to', '1'],
  ['sweep', CAR, '--motion', 'twist', '--from', '0', '--to', '1', '--steps', '3'],
  ['sweep', CAR, '--motion', 'bump', '--from', '0', '--to', '1', '--steps', '0'],
  ['sweep', CAR, '--motion', 'bump', '--from', '0', '--to', '1', '--steps', '3', '--travel', '5'],
  ['sweep', CAR, '--motion', 'roll', '--from', '0', '--to', '1', '--steps', '3', '--roll', '5'],
  ['sweep', CAR, '--motion', 'steer', '--from', '0', '--to', '1', '--steps', '3', '--rack', '5'],
  ['sweep', CAR, '--motion', 'bump', '--from', '0', '--to', '1', '--steps', '3', '--force'],
  ['schema', CAR],
  ['batch', CAR],
  ['help', 'cambre'],
];

const expectFault = (fault: Json): void => {
  expect(Object.keys(fault).sort()).toEqual(['code', 'column', 'expected', 'found', 'hint', 'line', 'path']);
  expect(fault['code']).toMatch(/^[a-z][a-z0-9-]*$/);
  for (const key of ['path', 'found', 'expected', 'hint']) expect(['string', 'object']).toContain(typeof fault[key]);
  for (const key of ['line', 'column']) expect(fault[key] === null || Number.isInteger(fault[key])).toBe(true);
};

describe('a command that is wrong', () => {
  test.each(USAGE.map((words) => [words.join(' ').replace(CAR, 'CAR'), words] as const))('jounce %s', async (_, words) => {
    const { status, document, stderr } = await jounceJson(words);
    expect(status).toBe(2);
    expect(Object.keys(document)).toEqual(['error']);
    expect(document['error']?.['kind']).toBe('usage');
    expect(stderr).toContain(document['error']?.['message'] as unknown as string);
  });
});

describe('a setup that is wrong', () => {
  test('one that the car has not: kind setup, with those it has', async () => {
    for (const flag of ['--setup', '--against']) {
      const { status, document } = await jounceJson(['readings', CAR, flag, 'Trail']);
      expect(status).toBe(2);
      expect(document['error']?.['kind']).toBe('setup');
      const [fault] = document['error']?.['faults'] as readonly Json[];
      if (!fault) throw new Error('no fault');
      expectFault(fault);
      expect(fault['expected']).toContain('"Trial"');
    }
  });

  test('a setting outside its range: kind setup, with the range', async () => {
    const { status, document } = await jounceJson(['readings', CAR, '--set', 'front.both.plateAcross=99']);
    expect(status).toBe(2);
    expect(document['error']?.['kind']).toBe('setup');
    const faults = document['error']?.['faults'] as readonly Json[];
    faults.forEach(expectFault);
    expect(faults[0]?.['path']).toContain('plateAcross');
  });
});

describe('a file that is wrong', () => {
  test('is refused with every fault and its place', async () => {
    const folder = await temporaryFolder({
      'a.json': '{\n  "format": "jounce-car",\n  "version": 1,\n  "name": 7,\n  "fornt": {}\n}\n',
      'b.json': 'not json',
      'c.json': '',
    });
    for (const name of ['a.json', 'b.json', 'c.json']) {
      for (const verb of ['check', 'readings']) {
        const { status, document, stderr } = await jounceJson([verb, name], { folder });
        expect(status).toBe(2);
        expect(Object.keys(document)).toEqual(['error']);
        expect(document['error']?.['kind']).toBe('file');
        const faults = document['error']?.['faults'] as readonly Json[];
        expect(faults.length).toBeGreaterThan(0);
        faults.forEach(expectFault);
        expect(stderr).toContain(name);
      }
    }
    const { document } = await jounceJson(['check', 'a.json'], { folder });
    const faults = document['error']?.['faults'] as readonly Json[];
    expect(faults.map((fault) => fault['path'])).toEqual(expect.arrayContaining(['name', 'fornt']));
    expect(faults.find((fault) => fault['path'] === 'name')?.['line']).toBe(4);
  });

  test('that is not there, or a folder, or empty input', async () => {
    const folder = await temporaryFolder();
    for (const words of [
      ['check', 'nothing.json'],
      ['check', folder],
      ['readings', '-'],
    ]) {
      const { status, document } = await jounceJson(words, { folder });
      expect(status).toBe(2);
      expect(document['error']?.['kind']).toBe('file');
      (document['error']?.['faults'] as readonly Json[]).forEach(expectFault);
    }
  });
});
