import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { temporaryFolder } from '../temporaryFolder';
import { jounce, jounceJson } from './jounce';

const CAR = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
const ARM = ['--of', 'armFront', '--side', 'left', '--setups', 'Baseline', '--bound', '4'];
let folder = '';
const file = (name: string): string => path.join(folder, name);

beforeEach(async () => {
  folder = await temporaryFolder();
});

/** Corners of every triangle of a binary STL, as text that is the same for the same corner. */
const trianglesOf = (bytes: Buffer): string[][] =>
  Array.from({ length: bytes.readUInt32LE(80) }, (_, i) =>
    [0, 1, 2].map((k) => [0, 1, 2].map((n) => bytes.readFloatLE(84 + 50 * i + 12 + 12 * k + 4 * n)).join(' ')),
  );

describe('keep-out', () => {
  test('writes a closed mesh in single precision, and says how far out it is', async () => {
    const { status, document } = await jounceJson(['keep-out', CAR, file('arm.stl'), ...ARM, '--grow', '5']);
    expect(status).toBe(0);
    expect(Object.keys(document).sort()).toEqual(
      [
        ...['axles', 'bound', 'box', 'by', 'car', 'contract', 'envelope', 'file', 'filled', 'gap', 'grow'],
        ...['missing', 'notes', 'of', 'outward', 'setups', 'sides', 'triangles', 'units', 'volume', 'warnings'],
      ].sort(),
    );
    expect(document).toMatchObject({
      of: ['armFront'],
      grow: 5,
      bound: 4,
      filled: false,
      warnings: [],
      sides: ['left'],
      setups: ['Baseline'],
    });
    const [envelope] = document['envelope'] as unknown as { axle: string }[];
    expect((document['envelope'] as unknown as unknown[]).length).toBe(1);
    expect(envelope?.axle).toBe('front');
    const outward = document['outward'] as unknown as { least: number; most: number };
    expect(outward.least).toBeGreaterThanOrEqual(0);
    expect(outward.most).toBeLessThanOrEqual(4);
    const bytes = await readFile(file('arm.stl'));
    const triangles = trianglesOf(bytes);
    expect(bytes.length).toBe(84 + 50 * triangles.length);
    expect(bytes.subarray(0, 5).toString()).not.toBe('solid');
    expect(triangles.length).toBe(document['triangles']);
    const ways = new Set<string>();
    for (const corners of triangles)
      corners.forEach((corner, k) => {
        const way = `${corner} > ${corners[(k + 1) % 3]}`;
        expect(ways.has(way)).toBe(false);
        ways.add(way);
      });
    for (const way of ways) expect(ways.has(way.split(' > ').reverse().join(' > '))).toBe(true);
  });

  test('says in words what it holds, with what the car still has to show', async () => {
    const { status, stdout } = await jounce(['keep-out', CAR, file('arm.stl'), ...ARM]);
    expect(status).toBe(0);
    expect(stdout).toContain('Swept by armFront');
    expect(stdout).toContain('4 mm is');
    expect(stdout).toContain('Prove it on the car');
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  test.each([
    [['x.obj', ...ARM], 'does not end in .stl'],
    [['-', ...ARM], 'name one that ends in .stl'],
    [['x.stl'], '--of is needed'],
    [['x.stl', '--of', 'armfront', '--side', 'left'], 'no part "armfront"'],
    [['x.stl', '--of', 'all-moving,armFront'], 'all-moving stands alone'],
    [['x.stl', ...ARM, '--grow', '-1'], '--grow: -1'],
    [['x.stl', '--of', 'armFront', '--bound', '0.01'], '--bound: 0.01'],
  ])('%j is refused before anything is written', async ([out = '', ...words], message) => {
    const { status, stderr } = await jounce(['keep-out', CAR, out, ...words], { folder });
    expect(status).toBe(2);
    expect(stderr).toContain(message);
    expect(await readdir(folder)).toEqual([]);
  });

  test('says that a tyre is filled right through, where one is swept', async () => {
    const asked = ['--side', 'left', '--setups', 'Baseline', '--bound', '8'];
    const tyre = await jounceJson(['keep-out', CAR, file('tyre.stl'), '--of', 'tyreFront', ...asked]);
    expect((tyre.document['notes'] as unknown as string[])[0]).toMatch(
      /^Filled right through, .* rim with it: tyreFront\. Space in/,
    );
    const said = await jounce(['keep-out', CAR, file('tyre.stl'), '--of', 'tyreFront', ...asked, '--force']);
    expect(said.stdout).toContain('Filled right through');
    const arm = await jounceJson(['keep-out', CAR, file('arm.stl'), ...ARM]);
    expect(String(arm.document['notes'])).not.toContain('Filled');
    const plane = [...asked, '--plane', '0,0,290,0,0,1'];
    const cut = await jounceJson(['template', CAR, file('tyre.dxf'), '--of', 'tyreFront', ...plane]);
    expect((cut.document['notes'] as unknown as string[])[0]).toContain('Filled right through');
    expect(await readFile(file('tyre.dxf'), 'latin1')).toContain('Filled right through');
    expect((await jounce(['template', CAR, file('b.dxf'), '--of', 'tyreFront', ...plane])).stdout).toContain('Filled right');
  }, 120_000);

  test('what is there stays without --force', async () => {
    await writeFile(file('a.stl'), 'mine');
    expect((await jounce(['keep-out', CAR, file('a.stl'), ...ARM])).status).toBe(3);
    expect(await readFile(file('a.stl'), 'utf8')).toBe('mine');
    expect((await jounce(['keep-out', CAR, file('a.stl'), ...ARM, '--force'])).status).toBe(0);
    expect((await readFile(file('a.stl'))).length).toBeGreaterThan(1000);
  });
});
