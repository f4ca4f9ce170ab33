import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { readingsOf } from '../../../geometry/index';
import { temporaryFolder } from '../temporaryFolder';
import { carPath, jounce, jounceJson, readJsonFile, type Json } from './jounce';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';

const ROW_KEYS = [
  'travel',
  'travelFromStanding',
  'rack',
  'roll',
  'left',
  'right',
  'both',
  'toeReset',
  'limits',
  'warnings',
  'why',
];
const keysOf = (value: Json | undefined): string[] => Object.keys(value ?? {}).sort();
const sorted = (...keys: string[]): string[] => [...keys].sort();

/** Every key of the catalogue is there: a finite number, the coordinates of a point, or null with its reason. */
function expectReadings(row: Json, side: 'left' | 'right' | 'both'): void {
  const entries = readingsOf(side === 'both' ? 'axle' : 'corner');
  expect(keysOf(row[side])).toEqual(entries.map((entry) => entry.key).sort());
  for (const { key, components } of entries) {
    const value = row[side]?.[key];
    if (value === null) expect(row['why']?.[`${side}.${key}`], `${side}.${key}`).toEqual(expect.any(String));
    else if (components) expect(value, key).toEqual(components.map(() => expect.any(Number)));
    else expect(value, key).toEqual(expect.any(Number));
    if (value !== null) expect(row['why']?.[`${side}.${key}`], `${side}.${key}`).toBeUndefined();
  }
}

describe('readings --json', () => {
  test.each([21, 22, 23, 24])('car %i: both axles and the whole car', async (number) => {
    const { status, document, stderr } = await jounceJson(['readings', carPath(number)]);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(keysOf(document)).toEqual(sorted('by', 'contract', 'car', 'setup', 'units', 'front', 'rear', 'wholeCar'));
    expect(document['by']).toMatch(/^jounce \d+\.\d+\.\d+/);
    expect(document['contract']).toBe(1);
    expect(document['car']).toBe(`Check car ${number}`);
    expect(document['setup']).toBe('Baseline');
    expect(document['units']).toEqual({ length: 'mm', angle: 'deg' });
    for (const axle of ['front', 'rear']) {
      expect(keysOf(document[axle])).toEqual(['axle', 'rows']);
      expect(document[axle]?.['axle']).toBe(axle);
      const rows = document[axle]?.['rows'] as readonly Json[];
      expect(rows).toHaveLength(1);
      const [row] = rows;
      if (!row) throw new Error('no row');
      expect(keysOf(row)).toEqual(sorted(...ROW_KEYS));
      for (const side of ['left', 'right', 'both'] as const) expectReadings(row, side);
      expect(row['limits']).toEqual([]);
      expect(row['toeReset']).toBeNull();
    }
    const whole = document['wholeCar'];
    expect(keysOf(whole)).toEqual(sorted(...readingsOf('car').map((entry) => entry.key), 'why'));
    for (const { key } of readingsOf('car')) if (whole?.[key] === null) expect(JSON.stringify(whole['why'])).toContain(key);
  });

  test('one axle: rows at the top, its name beside them', async () => {
    const { document } = await jounceJson(['readings', carPath(22), '--axle', 'rear']);
    expect(keysOf(document)).toEqual(sorted('by', 'contract', 'car', 'setup', 'axle', 'units', 'rows'));
    expect(document['axle']).toBe('rear');
  });

  test('a missing axle is null, and asking for it is a usage fault', async () => {
    const { rear: _rear, setups: _setups, ...car } = (await readJsonFile(carPath(22))) as unknown as Record<string, unknown>;
    const folder = await temporaryFolder({ 'front.jounce.json': JSON.stringify(car) });
    const { status, document } = await jounceJson(['readings', 'front.jounce.json'], { folder });
    expect(status).toBe(0);
    expect(document['rear']).toBeNull();
    expect(document['setup']).toBe('Baseline');
    const refused = await jounceJson(['readings', 'front.jounce.json', '--axle', 'rear'], { folder });
    expect(refused.status).toBe(2);
    expect(refused.document['error']?.['kind']).toBe('usage');
  });

  test('travel counts from where the car stands, and the answer gives both', async () => {
    const { document } = await jounceJson([
      'readings',
      carPath(23),
      '--setup',
      'Trial',
      '--axle',
      'front',
      '--travel',
      '10,12',
      '--rack',
      '5',
    ]);
    const row = document['rows']?.[0];
    // a difference of two travels: the last bit is rounding's
    expect(row?.['travelFromStanding']).toEqual({ left: expect.closeTo(10, 9), right: expect.closeTo(12, 9) });
    expect(row?.['rack']).toBe(5);
    const standing = await jounceJson(['readings', carPath(23), '--setup', 'Trial', '--axle', 'front']);
    const from = standing.document['rows']?.[0]?.['travel'] as unknown as { left: number; right: number };
    expect(from.left).toBeGreaterThan(5);
    expect((row?.['travel'] as unknown as { left: number }).left).toBeCloseTo(from.left + 10, 9);
    const toeReset = row?.['toeReset'];
    expect(keysOf(toeReset)).toEqual(['adjuster', 'inRange', 'left', 'right']);
    expect(toeReset?.['adjuster']).toBe('tieRod');
  });

  test('with roll a pair of equal travels is heave, an unequal one a usage fault', async () => {
    const pair = await jounceJson(['readings', carPath(22), '--travel', '10,10', '--roll', '1.5', '--axle', 'front']);
    const heave = await jounceJson(['readings', carPath(22), '--travel', '10', '--roll', '1.5', '--axle', 'front']);
    expect(pair.document).toEqual(heave.document);
    expect(pair.document['rows']?.[0]?.['roll']).toBeCloseTo(1.5, 12);
    const unequal = await jounceJson(['readings', carPath(22), '--travel', '10,11', '--roll', '1.5']);
    expect(unequal.status).toBe(2);
    expect(unequal.document['error']?.['kind']).toBe('usage');
  });

  test('rack moves steered axles only', async () => {
    const { document } = await jounceJson(['readings', carPath(22), '--rack', '20']);
    const straight = await jounceJson(['readings', carPath(22)]);
    expect(document['rear']?.['rows']?.[0]?.['left']).toEqual(straight.document['rear']?.['rows']?.[0]?.['left']);
    expect(document['front']?.['rows']?.[0]?.['left']?.['steerAngle']).not.toBe(
      straight.document['front']?.['rows']?.[0]?.['left']?.['steerAngle'],
    );
    expect(document['front']?.['rows']?.[0]?.['both']?.['ackermann']).toEqual(expect.any(Number));
  });

  test('against another setup: its readings, and this less that', async () => {
    const { document } = await jounceJson([
      'readings',
      carPath(22),
      '--setup',
      'Trial',
      '--against',
      'Baseline',
      '--travel',
      '15',
    ]);
    const baseline = await jounceJson(['readings', carPath(22), '--travel', '15']);
    for (const axle of ['front', 'rear']) {
      const row = document[axle]?.['rows']?.[0];
      const against = row?.['against'];
      expect(keysOf(against)).toEqual(sorted('setup', 'left', 'right', 'both', 'difference', 'why'));
      expect(against?.['setup']).toBe('Baseline');
      expect(keysOf(against?.['difference'])).toEqual(['both', 'left', 'right']);
      for (const side of ['left', 'right', 'both']) {
        expect(against?.[side]).toEqual(baseline.document[axle]?.['rows']?.[0]?.[side]);
        for (const [key, value] of Object.entries(row?.[side] ?? {})) {
          const other = against?.[side]?.[key];
          const difference = against?.['difference']?.[side]?.[key];
          if (value === null || other === null) expect(difference, key).toBeNull();
          else if (typeof value === 'number') expect(difference, key).toBe((value as number) - (other as unknown as number));
          else expect(difference, key).toHaveLength((value as readonly number[]).length);
        }
      }
    }
    expect(document['wholeCar']?.['against']?.['setup']).toBe('Baseline');
  });

  test('--set answers as a setup with those settings does', async () => {
    const car = (await readJsonFile(carPath(21))) as unknown as { setups: Record<string, object> };
    car.setups['Changed'] = {
      front: { both: { rearBush: 90, plateAcross: -2 }, left: { plateAcross: 1 }, setToe: 0.05 },
      rear: { rideHeight: -10 },
    };
    const folder = await temporaryFolder({ 'car.json': JSON.stringify(car) });
    const set = [
      'front.both.rearBush=3h',
      'front.both.plateAcross=-2',
      'front.left.plateAcross=1',
      'front.setToe=0.05',
      'rear.rideHeight=-10',
    ];
    const changed = await jounceJson(['readings', 'car.json', ...set.flatMap((text) => ['--set', text])], { folder });
    const kept = await jounceJson(['readings', 'car.json', '--setup', 'Changed'], { folder });
    expect(changed.document['front']).toEqual(kept.document['front']);
    expect(changed.document['rear']).toEqual(kept.document['rear']);
    const trial = await jounceJson([
      'readings',
      carPath(21),
      '--setup',
      'Trial',
      '--axle',
      'rear',
      '--set',
      'rear.both.trailBush=none',
      '--set',
      'rear.both.camberBolt=none',
      '--set',
      'rear.both.upperRod=0',
      '--set',
      'rear.setToe=none',
    ]);
    const baseline = await jounceJson(['readings', carPath(21), '--axle', 'rear']);
    expect(trial.document['rows']).toEqual(baseline.document['rows']);
  });

  test('limits are judged where the car stands, and those of the other axle are left out', async () => {
    const car = (await readJsonFile(carPath(22))) as unknown as Record<string, unknown>;
    car['limits'] = [
      { reading: 'camber', axle: 'front', side: 'each', min: -4, max: 5, why: 'a rule', source: '5.2' },
      { reading: 'track', axle: 'rear', max: 10, why: 'a rule', source: '5.3' },
    ];
    const folder = await temporaryFolder({ 'car.json': JSON.stringify(car) });
    const { status, document } = await jounceJson(['readings', 'car.json', '--travel', '40'], { folder });
    expect(status).toBe(0);
    const front = document['front']?.['rows']?.[0]?.['limits'] as readonly Json[];
    expect(front.map((limit) => limit['ok'])).toEqual([true, true]);
    for (const limit of front) expect(keysOf(limit)).toEqual(['name', 'ok', 'spare', 'value']);
    const standing = await jounceJson(['readings', 'car.json', '--axle', 'front'], { folder });
    expect(front[0]?.['value']).toBe(standing.document['rows']?.[0]?.['left']?.['camber']);
    const rear = document['rear']?.['rows']?.[0]?.['limits'] as readonly Json[];
    expect(rear.map((limit) => limit['ok'])).toEqual([false]);
  });

  test('the car may come on standard input, with a byte-order mark too', async () => {
    const text = JSON.stringify(await readJsonFile(carPath(22)));
    const piped = await jounceJson(['readings', '-'], { stdin: `\uFEFF${text}` });
    const read = await jounceJson(['readings', carPath(22)]);
    expect(piped.document).toEqual(read.document);
  });

  test('a position that cannot be reached answers nothing: status 1, how much is missing', async () => {
    const { status, document, stderr } = await jounceJson(['readings', carPath(22), '--axle', 'front', '--travel', '900']);
    expect(status).toBe(1);
    expect(keysOf(document)).toEqual(['error']);
    expect(document['error']?.['kind']).toBe('unreachable');
    expect(document['error']?.['message']).toEqual(expect.any(String));
    expect(stderr).toContain('jounce:');
  });
});

describe('readings in words', () => {
  test('fit 100 columns, with both sides, a true minus, no colour in a pipe, and what is left out', async () => {
    const { status, stdout } = await jounce(['readings', carPath(23), '--setup', 'Trial', '--against', 'Baseline']);
    expect(status).toBe(0);
    const lines = stdout.split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
    expect(stdout).not.toContain('\u001b');
    expect(stdout).toMatch(/Camber +−?\d+\.\d\d +−?\d+\.\d\d +[+−]?\d+\.\d\d +[+−]?\d+\.\d\d {2}deg/);
    expect(stdout).toContain('−');
    expect(stdout.replaceAll('\n', ' ')).toContain('no compliance');
    expect(stdout.replaceAll('\n', ' ')).toContain('same wheel-centre height');
  });

  test('say what is answered: the changes of this call, and the setup that it is compared with', async () => {
    const car = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
    const words = ['readings', car, '--axle', 'front', '--set', 'front.both.rearBush=3h', '--set', 'front.setToe=none'];
    const { stdout } = await jounce([...words, '--against', 'Wet']);
    const head = 'Saltmarsh hatch, setup Baseline with front.both.rearBush=3h, front.setToe=none, against Wet';
    expect(stdout.split('\n')[0]).toBe(head);
  });

  test('an error is on standard error alone', async () => {
    const { status, stdout, stderr } = await jounce(['readings', path.join('no', 'such', 'car.json')]);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('no such file');
  });
});

test('a limit is told in mm and degrees with the unit, in a car file in inches too; that of a setting in the file’s own', async () => {
  const car = JSON.parse(await readFile(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'), 'utf8')) as object;
  const limits = [
    { reading: 'track', axle: 'front', max: 1500 },
    { reading: 'camber', axle: 'front', side: 'each', min: -3.5 },
    { setting: 'plateAcross', axle: 'front', min: -8 },
  ];
  const { stdout } = await jounce(['readings', '-', '--axle', 'front'], { stdin: JSON.stringify({ ...car, limits }) });
  expect(stdout).toMatch(/limit front\.both\.track: BROKEN, [\d.]+ mm, over by [\d.]+ mm/);
  expect(stdout).toMatch(/limit front\.left\.camber: kept, −[\d.]+ deg, spare [\d.]+ deg/);
  expect(stdout).toMatch(/limit front\.left\.plateAcross: kept, \S+, spare [\d.]+\n/);
});
