import { describe, expect, test } from 'vitest';
import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';
import { binaryStl, boxTriangles } from '../../geometry/fitup/stlFiles';
import { carPath, jounce, jounceJson, type Json } from './jounce';

const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
const keysOf = (value: Json | undefined): string[] => Object.keys(value ?? {}).sort();

const PARTS = {
  tread: { axle: 'front', on: 'wheel', shape: { kind: 'tyre' } },
  duct: { axle: 'front', on: 'body', shape: { kind: 'capsule', from: [240, 480, 250], to: [150, 540, 300], radius: 38 } },
  rearDuct: { axle: 'rear', on: 'body', shape: { kind: 'sphere', at: [-2700, 560, 420], radius: 30 } },
  arch: { axle: 'rear', on: 'knuckle', shape: { kind: 'sphere', at: [-2580, 640, 330], radius: 20 } },
} as const;

/** The sample with parts of its own put in place of what it has. */
async function withParts(parts: object = PARTS): Promise<string> {
  const car = JSON.parse(await readFile(HATCH, 'utf8')) as Record<string, unknown>;
  return JSON.stringify({ ...car, parts });
}

describe('clearance', () => {
  test('answers in the form of the contract, for both axles and both sides', async () => {
    const stdin = await withParts();
    const { status, document } = await jounceJson(['clearance', '-', '--setups', 'Baseline,Wet'], { stdin });
    expect(status).toBe(0);
    expect(keysOf(document)).toEqual([
      'by',
      'car',
      'contract',
      'envelope',
      'missing',
      'notes',
      'rows',
      'setups',
      'units',
      'warnings',
    ]);
    const rows = document['rows'] as Json;
    for (const row of rows) {
      expect(keysOf(row)).toEqual(
        [
          'at',
          'axle',
          'bound',
          'clearance',
          'cuts',
          'needs',
          'pair',
          'points',
          'side',
          'spare',
          'surfaceOnly',
          'verdict',
          'wouldClear',
        ].sort(),
      );
      const { at } = row as unknown as { at: Json };
      expect(keysOf(at)).toEqual(['rack', 'setup', 'travel']);
      expect(['Baseline', 'Wet']).toContain(at['setup']);
      for (const remedy of row['wouldClear'] as Json)
        expect(keysOf(remedy)).toEqual(['adjuster', 'bound', 'by', 'changes', 'clearance', 'from', 'setup', 'stillShort', 'to']);
    }
    const spares = rows.map((row) => row['spare'] as unknown as number);
    expect(spares).toEqual([...spares].sort((a, b) => a - b));
    const corners = rows.map((row) => `${String(row['axle'])} ${String(row['side'])}`);
    for (const corner of ['front left', 'front right', 'rear left', 'rear right']) expect(corners).toContain(corner);
    const envelope = document['envelope'] as Json;
    expect(envelope).toHaveLength(8);
    for (const one of envelope)
      expect(keysOf(one)).toEqual(['axle', 'open', 'rackMax', 'rackMin', 'setup', 'side', 'solid', 'touch', 'unreachable']);
    expect(String(document['notes']?.[0])).toContain('clay or tape');
  }, 60_000);

  test('the gap is that of the points at the worst position, by the poses of `readings`', async () => {
    const stdin = await withParts();
    const words = ['--axle', 'rear', '--side', 'left', '--setups', 'Baseline'];
    const { document } = await jounceJson(['clearance', '-', ...words], { stdin });
    const row = (document['rows'] as Json).find((one) => (one['pair'] as unknown as string[]).join() === 'rearDuct,arch')!;
    const [a, b] = row['points'] as unknown as [number[], number[]];
    const gap = Math.sqrt(a.reduce((sum, value, i) => sum + (value - b[i]) ** 2, 0));
    expect(gap).toBeCloseTo(row['clearance'] as unknown as number, 6);
    // the part on the body stays where the file has it: its point is 30 mm from its middle
    const [x, y, z] = PARTS.rearDuct.shape.at;
    expect(Math.sqrt((a[0] - x) ** 2 + (a[1] - y) ** 2 + (a[2] - z) ** 2)).toBeCloseTo(30, 6);
  });

  test('is the same to the last bit with any number of workers', async () => {
    const stdin = await withParts();
    const words = ['clearance', '-', '--axle', 'rear', '--side', 'right', '--setups', 'Baseline', '--json'];
    const answers = await Promise.all(
      ['1', '2', '7'].map(async (workers) => (await jounce([...words, '--workers', workers], { stdin })).stdout),
    );
    expect(answers[1]).toBe(answers[0]);
    expect(answers[2]).toBe(answers[0]);
  }, 60_000);

  test('through batch as alone', async () => {
    const car = JSON.parse(await withParts()) as object;
    const words = { axle: 'rear', side: 'left', setups: ['Baseline'] };
    const stdin = `${JSON.stringify({ id: 7, car, ask: 'clearance', options: words })}\n`;
    const { stdout } = await jounce(['batch'], { stdin });
    const alone = await jounceJson(['clearance', '-', '--axle', 'rear', '--side', 'left', '--setups', 'Baseline'], {
      stdin: JSON.stringify(car),
    });
    expect((JSON.parse(stdout) as Json)['answer']?.['rows']).toEqual(alone.document['rows']);
  });

  test('the table says the worst, the verdict and the caution in 100 columns', async () => {
    const stdin = await withParts();
    const { stdout, status } = await jounce(['clearance', '-', '--axle', 'front', '--side', 'left', '--setups', 'Baseline'], {
      stdin,
    });
    expect(status).toBe(0);
    expect(stdout).toContain('tread – duct');
    expect(stdout).toContain('Prove it with clay or tape on the car');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  test('of a mesh that is not closed it says so under the row, and warns, with the part', async () => {
    const data = Buffer.from(binaryStl(boxTriangles([700, 500, 700]).slice(9))).toString('base64');
    const shell = { axle: 'front', on: 'body', shape: { kind: 'mesh', data, place: { at: [0, 680, 300] } } };
    const stdin = await withParts({ tread: PARTS.tread, shell });
    const words = ['clearance', '-', '--axle', 'front', '--side', 'left', '--setups', 'Baseline'];
    const { stdout } = await jounce(words, { stdin });
    expect(stdout).toMatch(/tread – shell .* not proved .*\n +surface only: shell is not closed/);
    expect(stdout).toMatch(/warning: The mesh of "shell" is not closed, 3 edges/);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const { document } = await jounceJson(['check', '-'], { stdin });
    expect((document['warnings'] as Json).map(({ code, path: at }) => [code, at])).toEqual([['mesh-open', 'parts.shell']]);
    expect((await jounce(['check', '-'], { stdin })).stdout).toContain('1 warning');
  });

  test('over the ground too, where it is asked for: in the form of the contract, in words, through batch', async () => {
    const stdin = await withParts();
    const words = ['--axle', 'front', '--setups', 'Baseline', '--ground'];
    const { document } = await jounceJson(['clearance', '-', ...words], { stdin });
    expect(keysOf(document)).toContain('ground');
    const { rows, stances } = document['ground'] as unknown as { rows: Json; stances: Json };
    for (const row of rows)
      expect(keysOf(row)).toEqual(['attitude', 'axle', 'height', 'needs', 'part', 'point', 'setup', 'side', 'spare', 'verdict']);
    for (const stance of stances) expect(keysOf(stance)).toEqual(['attitude', 'pitch', 'roll', 'setup', 'unevenBy']);
    expect(stances.map((stance) => String(stance['attitude']))).toEqual(['standing', 'left-flat', 'right-flat', 'solid']);
    expect(rows.map((row) => String(row['part']))).not.toContain('tread');
    const { stdout } = await jounce(['clearance', '-', ...words], { stdin });
    expect(stdout).toContain('both left tyres flat');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const asked = { axle: 'front', setups: ['Baseline'], ground: true };
    const line = JSON.stringify({ id: 1, car: JSON.parse(stdin) as object, ask: 'clearance', options: asked });
    const { stdout: answers } = await jounce(['batch'], { stdin: line });
    expect((JSON.parse(answers) as Json)['answer']?.['ground']).toEqual(document['ground']);
  });

  test.each([
    [['--setups', 'Nobody'], 'Nobody'],
    [['--setups', 'Wet', '--setup', 'Wet'], '--setups'],
    [['--axle', 'middle'], 'axle'],
    [['--side', 'top'], 'side'],
  ])('refuses %j and says why', async (words, expected) => {
    const { status, stderr } = await jounce(['clearance', HATCH, ...words]);
    expect(status).toBe(2);
    expect(stderr).toContain(expected);
  });

  test('a part on what the car does not have is a fault with its place', async () => {
    const stdin = await withParts({
      odd: { axle: 'front', on: 'wishbone', shape: { kind: 'sphere', at: [0, 0, 0], radius: 5 } },
    });
    const { status, stderr } = await jounce(['clearance', '-'], { stdin });
    expect(status).not.toBe(0);
    expect(stderr).toMatch(/line \d+, column \d+, parts\.odd\.on/);
    const flat = await withParts({ odd: { axle: 'front', on: 'body', shape: { kind: 'sphere', at: [0, 0, 0], radius: 0 } } });
    expect((await jounce(['clearance', '-'], { stdin: flat })).stderr).toMatch(/parts\.odd\.shape\.radius/);
  });

  test('a mesh in a file beside the car or in the car itself; one that is no mesh is a fault with its place', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'jounce-mesh-'));
    const stl = binaryStl(boxTriangles([30, 60, 20]));
    await writeFile(path.join(folder, 'liner.stl'), stl);
    const place = { at: [300, 480, 560] };
    const of = async (shape: object): Promise<string> => {
      const car = path.join(folder, 'car.jounce.json');
      const arm = { axle: 'front', on: 'knuckle', shape: { kind: 'sphere', at: [40, 640, 330], radius: 20 } };
      await writeFile(car, await withParts({ liner: { axle: 'front', on: 'body', shape }, arm }));
      return car;
    };
    const words = ['--axle', 'front', '--side', 'right', '--setups', 'Baseline'];
    const shapes = [
      { kind: 'box', centre: place.at, size: [60, 120, 40] },
      { kind: 'mesh', file: 'liner.stl', place },
      { kind: 'mesh', data: Buffer.from(stl).toString('base64'), place },
    ];
    const found: number[] = [];
    for (const shape of shapes) {
      const { document } = await jounceJson(['clearance', await of(shape), ...words]);
      const row = (document['rows'] as Json).find((one) => (one['pair'] as unknown as string[]).join() === 'liner,arm');
      found.push(row?.['clearance'] as unknown as number);
    }
    expect(found[1]).toBeCloseTo(found[0] ?? NaN, 1);
    expect(found[2]).toBe(found[1]);
    const lost = await jounce(['clearance', await of({ kind: 'mesh', file: 'nowhere.stl', place }), ...words]);
    expect(lost.status).not.toBe(0);
    expect(lost.stderr).toContain('parts.liner.shape.file');
    expect(lost.stderr).toContain('nowhere.stl');
    await writeFile(path.join(folder, 'liner.stl'), stl.slice(0, 300));
    const cut = await jounce(['clearance', await of({ kind: 'mesh', file: 'liner.stl', place }), ...words]);
    expect(cut.stderr).toContain('bytes where a binary STL of 12 triangles');
  }, 60_000);

  test('a car without envelope or parts says what to give', async () => {
    const car = JSON.parse(await readFile(carPath(21), 'utf8')) as Record<string, unknown>;
    const { status, stdout, stderr } = await jounce(['clearance', '-'], { stdin: JSON.stringify(car) });
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/no envelope without .*: give /);
  });
});
