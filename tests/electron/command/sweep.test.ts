import { readFile, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { CONTRACT_UNITS, numberNamesOf, readingsOf } from '../../../geometry/index';
import { ROOT } from '../../../electron/building/products.mjs';
import { temporaryFolder } from '../temporaryFolder';
import { carPath, jounce, jounceJson, type Json } from './jounce';

const rowsOf = (document: Json | undefined): readonly Json[] => document?.['rows'] as readonly Json[];
const bump = (from: number, to: number, steps: number): string[] => [
  '--motion',
  'bump',
  '--from',
  String(from),
  '--to',
  String(to),
  '--steps',
  String(steps),
];
const NAMES = (['left', 'right', 'both'] as const).flatMap((side) =>
  readingsOf(side === 'both' ? 'axle' : 'corner').flatMap((entry) =>
    numberNamesOf(entry).map((name) => `${side}.${name} [${CONTRACT_UNITS[entry.quantity]}]`),
  ),
);

const WHOLE_CAR = readingsOf('car').map(({ key, quantity }) => `wholeCar.${key} [${CONTRACT_UNITS[quantity]}]`);

describe('sweep --json', () => {
  test('one axle: motion, and a row per input', async () => {
    const { status, document } = await jounceJson(['sweep', carPath(22), '--axle', 'front', ...bump(-40, 40, 5), '--rack', '10']);
    expect(status).toBe(0);
    expect(Object.keys(document).sort()).toEqual(['axle', 'by', 'car', 'contract', 'motion', 'rows', 'setup', 'units']);
    expect(document['motion']).toBe('bump');
    expect(rowsOf(document).map((row) => row['input'])).toEqual([-40, -20, 0, 20, 40]);
    const single = await jounceJson(['readings', carPath(22), '--axle', 'front', '--travel', '20', '--rack', '10']);
    const { input, ...row } = rowsOf(document)[3] as unknown as Record<string, unknown>;
    const [other] = rowsOf(single.document);
    expect(input).toBe(20);
    expect(Object.keys(row).sort()).toEqual(Object.keys(other ?? {}).sort());
    expect(row['left']).toMatchObject({ camber: expect.closeTo(other?.['left']?.['camber'] as unknown as number, 9) });
  });

  test('both axles, and the whole car at every position', async () => {
    const { document } = await jounceJson([
      'sweep',
      carPath(22),
      '--motion',
      'roll',
      '--from',
      '-2',
      '--to',
      '2',
      '--steps',
      '3',
      '--travel',
      '5',
    ]);
    expect(Object.keys(document).sort()).toEqual([
      'by',
      'car',
      'contract',
      'front',
      'motion',
      'rear',
      'setup',
      'units',
      'wholeCar',
    ]);
    for (const axle of ['front', 'rear']) {
      expect(rowsOf(document[axle]).map((row) => row['input'])).toEqual([-2, 0, 2]);
      expect(rowsOf(document[axle])[0]?.['roll']).toBeCloseTo(-2, 12);
    }
    expect(rowsOf(document['wholeCar']).map((row) => row['input'])).toEqual([-2, 0, 2]);
  });

  test('positions out of reach stay as rows with their reason; when none is reached the status is 1', async () => {
    const some = await jounceJson(['sweep', carPath(22), '--axle', 'front', ...bump(0, 900, 3)]);
    expect(some.status).toBe(0);
    expect(rowsOf(some.document)[2]).toEqual({
      input: 900,
      error: expect.objectContaining({ kind: 'unreachable', message: expect.any(String) }),
    });
    const none = await jounceJson(['sweep', carPath(22), '--axle', 'front', ...bump(800, 900, 3)]);
    expect(none.status).toBe(1);
    expect(Object.keys(none.document)).toEqual(['error']);
  });

  test('against another setup in every row', async () => {
    const { document } = await jounceJson(['sweep', carPath(22), '--axle', 'rear', ...bump(-10, 10, 3), '--against', 'Trial']);
    for (const row of rowsOf(document)) expect(row['against']?.['setup']).toBe('Trial');
  });

  test('a list of positions, numbered from 1', async () => {
    const folder = await temporaryFolder({ 'lap.csv': 'travelLeft,travelRight,rack,roll\r\n-10,5,3,0\r\n5,5,0,1\r\n' });
    const { status, document } = await jounceJson(['sweep', carPath(22), '--axle', 'front', '--list', 'lap.csv'], { folder });
    expect(status).toBe(0);
    expect(document['motion']).toBe('list');
    expect(rowsOf(document).map((row) => [row['input'], row['rack']])).toEqual([
      [1, 3],
      [2, 0],
    ]);
    expect(rowsOf(document)[0]?.['travelFromStanding']).toEqual({ left: -10, right: 5 });
    await writeFile(path.join(folder, 'bad.csv'), 'travelLeft,travelRight,rack,roll\n-10,5,3,1\n');
    const refused = await jounceJson(['sweep', carPath(22), '--list', 'bad.csv'], { folder });
    expect(refused.status).toBe(2);
    expect(refused.document['error']?.['kind']).toBe('file');
  });

  test('a long one is still one document', async () => {
    const { status, document } = await jounceJson(['sweep', carPath(22), '--axle', 'front', ...bump(-20, 20, 401)]);
    expect(status).toBe(0);
    expect(rowsOf(document)).toHaveLength(401);
  });
});

describe('sweep --csv', () => {
  test('has the header of the contract, CRLF, no byte-order mark, full precision, and the error last', async () => {
    const folder = await temporaryFolder();
    const words = ['sweep', carPath(22), '--axle', 'front', ...bump(0, 900, 3), '--csv', 'out.csv'];
    const { status, document } = await jounceJson(words, { folder });
    expect(status).toBe(0);
    const text = await readFile(path.join(folder, 'out.csv'), 'utf8');
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const lines = text.split('\r\n');
    expect(lines).toHaveLength(5);
    expect(lines[0]).toBe(['input [mm]', ...NAMES, 'error'].join(','));
    expect(lines[0]).toContain('left.camber [deg]');
    expect(lines[0]).toContain('left.wheelCentre.x [mm]');
    expect(lines[0]).toContain('both.track [mm]');
    const cells = lines[1]?.split(',') ?? [];
    expect(cells).toHaveLength(NAMES.length + 2);
    const [row] = rowsOf(document);
    expect(Number(cells[1 + NAMES.indexOf('left.camber [deg]')])).toBe(row?.['left']?.['camber']);
    expect(cells[1 + NAMES.indexOf('both.ackermann [%]')]).toBe('');
    expect(cells.at(-1)).toBe('');
    expect(lines[3]).toMatch(/^900,,+("[^"]+"|[^,]+)$/);
  });

  test('without --axle the columns begin with the axle', async () => {
    const folder = await temporaryFolder();
    const { status, stdout } = await jounce(
      ['sweep', carPath(22), '--motion', 'roll', '--from', '-1', '--to', '1', '--steps', '3', '--csv', 'out.csv'],
      { folder },
    );
    expect(status).toBe(0);
    expect(stdout).toContain('out.csv');
    const [header, ...rows] = (await readFile(path.join(folder, 'out.csv'), 'utf8')).trimEnd().split('\r\n');
    expect(header).toBe(
      [
        'input [deg]',
        ...NAMES.map((name) => `front.${name}`),
        ...NAMES.map((name) => `rear.${name}`),
        ...WHOLE_CAR,
        'error',
      ].join(','),
    );
    expect(rows).toHaveLength(3);
    const words = ['sweep', carPath(22), '--motion', 'roll', '--from', '-1', '--to', '1', '--steps', '3'];
    const { document } = await jounceJson(words);
    const cells = rows[2]?.split(',').slice(1 + 2 * NAMES.length, -1) ?? [];
    for (const [index, { key }] of readingsOf('car').entries()) {
      const value = rowsOf(document['wholeCar'])[2]?.[key] as number | null | undefined;
      expect(cells[index], key).toBe(value === null ? '' : String(value));
    }
  });

  test('- is standard output, to the letter what a file would hold', async () => {
    const folder = await temporaryFolder();
    const words = ['sweep', carPath(22), ...bump(0, 10, 2), '--csv'];
    const printed = await jounce([...words, '-'], { folder });
    expect(printed.status).toBe(0);
    expect(await readdir(folder)).toEqual([]);
    await jounce([...words, 'out.csv'], { folder });
    expect(printed.stdout).toBe(await readFile(path.join(folder, 'out.csv'), 'utf8'));
    for (const other of ['--json', '--force']) {
      const refused = await jounce([...words, '-', other], { folder });
      expect([other, refused.status]).toEqual([other, 2]);
    }
  });

  test('holds one setup: --against with it is refused before anything is written', async () => {
    const folder = await temporaryFolder();
    const words = ['sweep', carPath(22), ...bump(0, 10, 2), '--against', 'Trial', '--csv', 'out.csv'];
    const { status, stderr } = await jounce(words, { folder });
    expect([status, await readdir(folder)]).toEqual([2, []]);
    expect(stderr).toContain('--json');
  });

  test('replaces an existing file only with --force, and leaves nothing beside it', async () => {
    const folder = await temporaryFolder({ 'out.csv': 'mine' });
    const words = ['sweep', carPath(22), '--axle', 'front', ...bump(0, 10, 3), '--csv', 'out.csv'];
    const refused = await jounceJson(words, { folder });
    expect(refused.status).toBe(3);
    expect(refused.document['error']?.['kind']).toBe('system');
    expect(await readFile(path.join(folder, 'out.csv'), 'utf8')).toBe('mine');
    expect((await jounceJson([...words, '--force'], { folder })).status).toBe(0);
    expect(await readFile(path.join(folder, 'out.csv'), 'utf8')).toMatch(/^input/);
    expect(await readdir(folder)).toEqual(['out.csv']);
  });

  test('that cannot be written is a failure of the system', async () => {
    const folder = await temporaryFolder();
    const { status, document } = await jounceJson(
      ['sweep', carPath(22), ...bump(0, 10, 3), '--csv', path.join('no', 'folder', 'out.csv')],
      { folder },
    );
    expect(status).toBe(3);
    expect(document['error']?.['kind']).toBe('system');
  });
});

describe('sweep in words', () => {
  test('fits 100 columns, a position out of reach with its reason', async () => {
    const { stdout } = await jounce(['sweep', carPath(23), ...bump(-60, 900, 5), '--against', 'Trial']);
    const lines = stdout.split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
    expect(stdout).toContain('camber L');
    expect(stdout).toContain('camber R');
    expect(stdout).toContain('Baseline less Trial');
    expect(lines[0]).toBe('Check car 23, setup Baseline, against Trial');
  });

  test('a position out of reach says first what is missing', async () => {
    const { stdout } = await jounce(['sweep', carPath(23), '--axle', 'front', ...bump(0, 900, 2)]);
    expect(stdout).toMatch(/^ +900 {2}[0-9.]+ mm short: Left wheel/m);
  });

  test('a list shows the positions that its rows ask for', async () => {
    const stdin = 'travelLeft,travelRight,rack\n10,-5,3\n';
    const { stdout } = await jounce(['sweep', carPath(22), '--list', '-'], { stdin });
    expect(stdout).toMatch(/^ +row +travel L +travel R +rack +roll$/m);
    expect(stdout).toMatch(/^ +1 +10 +−5 +3 +0$/m);
  });

  test('counts positions and not wheels, and speaks of a rack that moves nothing', async () => {
    const car = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
    const far = await jounce(['sweep', car, '--axle', 'front', ...bump(-150, -140, 2)]);
    expect(far.stdout).toMatch(/warning: .*−1[45]\d/);
    expect(far.stdout).not.toContain('of 2 positions');
    const steer = ['--motion', 'steer', '--from', '1', '--to', '5', '--steps', '2'];
    const { document } = await jounceJson(['sweep', car, '--axle', 'rear', ...steer]);
    for (const row of rowsOf(document)) expect(JSON.stringify(row['warnings'])).toContain('axle-not-steered');
  });

  test('says what the rows warn of once, with the number of positions', async () => {
    const car = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
    const { stdout } = await jounce([
      'sweep',
      car,
      '--axle',
      'front',
      '--motion',
      'steer',
      '--from',
      '60',
      '--to',
      '80',
      '--steps',
      '3',
    ]);
    expect(stdout).toContain('warning at 1 of 3 positions, first: The rack at 80 mm is past the end of its travel, 70 mm.');
  });
});
