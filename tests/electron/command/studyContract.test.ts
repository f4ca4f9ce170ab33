import { describe, expect, test } from 'vitest';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';
import { temporaryFolder } from '../temporaryFolder';
import { jounceJson, readJsonFile, type Json } from './jounce';

/**
 * The documents of the studies, key by key. Every name stands here as the contract gives it, and none is taken from our code: what
 * is renamed there is missing here.
 */
const CORNER = `camber toe steerAngle caster kingpinInclination mechanicalTrail scrubRadius trailAtWheelCentre scrubAtWheelCentre
  camberGain bumpSteer longitudinalSlopeContact longitudinalSlopeWheelCentre lateralSlopeContact springRatio damperRatio barRatio
  damperTravel camberToBody casterBySwing swingArmLength sideViewSwingArmLength halfTrack wheelbaseChange bodyHeight springTravel
  springForce wheelRate barTwist bumpLeft solidLeft droopLeft jackingPerLateral jackingPerLongitudinal`.split(/\s+/);
const COORDINATES = ['frontViewInstantCentre', 'sideViewInstantCentre', 'wheelCentre', 'contactCentre'];
const BOTH = `rollCentreHeight rollCentreOffset track trackChange totalToe ackermann camberCompensation rollSteer antiDive
  antiLiftBraking antiLiftDrive antiSquat turningCircle steeringRatio springRollStiffness barRollStiffness rollStiffness
  rideFrequency loadTransferGeometric loadTransferElastic loadTransferUnsprung`.split(/\s+/);
const WHOLE_CAR = ['wheelbaseLeft', 'wheelbaseRight', 'rake', 'rollGradient', 'rollAxisInclination', 'rollAxisToCentreOfGravity'];
/** Steered axles only. */
const STEERED = ['ackermann', 'turningCircle', 'steeringRatio', 'steerAngle'];

const HEAD = ['car', 'setup', 'units', 'by', 'contract'];

const CARS = [
  ['a strut in front, five rods behind', 'samples/saltmarsh-hatch.jounce.json', 'Baseline', 'plateAcross', 'rodShim', 'rackEnd'],
  ['rods all round', 'samples/marram-coupe.jounce.json', 'As built', 'trackCam', 'rackShim', 'rackEnd'],
  ['wishbones in front, struts behind', 'samples/chalkboard.jounce.json', 'As drawn', 'upperFront', 'upperRear', 'rackEnd'],
  ['an inch file, one axle', 'tests/fixtures/cars/wishbones.jounce.json', 'As drawn', 'upperShim', 'tieRod', 'tieRodBody'],
] as const;

const keysOf = (value: Json | undefined): readonly string[] => Object.keys(value ?? {});
const expectKeys = (value: Json | undefined, wanted: readonly string[], what: string): void =>
  expect([...keysOf(value)].sort(), what).toEqual([...wanted].sort());
const isNumberOrNull = (value: unknown): boolean => value === null || (typeof value === 'number' && Number.isFinite(value));

const expectHead = (document: Json, car: Json, setup: string): void => {
  expect(document).toMatchObject({ setup, units: { length: 'mm', angle: 'deg' }, contract: 1 });
  expect(String(document['car'])).toBe(String(car['name']));
  expect(String(document['by'])).toMatch(/^jounce \d+\.\d+\.\d+/);
};

/** Dotted names of everything that a change can be of, coordinates and instant centres left out. */
const namesOf = (car: Json): readonly string[] => {
  const axles = ['front', 'rear'].filter((axle) => car[axle] !== undefined);
  return [
    ...axles.flatMap((axle) => [
      ...['left', 'right'].flatMap((side) => CORNER.map((key) => `${axle}.${side}.${key}`)),
      ...BOTH.map((key) => `${axle}.both.${key}`),
    ]),
    ...(axles.length === 2 ? WHOLE_CAR.map((key) => `wholeCar.${key}`) : []),
  ];
};

const expectChanges = (changes: Json | undefined, car: Json, without: readonly string[] = []): void => {
  const names = keysOf(changes);
  const known = new Set(namesOf(car));
  expect(names.filter((name) => !known.has(name))).toEqual([]);
  expect(names.some((name) => COORDINATES.some((key) => name.endsWith(`.${key}`)))).toBe(false);
  const missing = [...known].filter((name) => !names.includes(name) && !without.includes(name));
  // what an axle of that layout, or one that is not steered, cannot have
  expect(missing.filter((name) => !STEERED.some((key) => name.endsWith(`.${key}`)))).toEqual([]);
  for (const change of Object.values(changes ?? {})) expect(isNumberOrNull(change)).toBe(true);
};

describe.each(CARS)('%s', (_, file, setup, one, other, point) => {
  const car = path.join(ROOT, file);

  test('readings, as the rows of every sweep have them', async () => {
    const described = await readJsonFile(car);
    const folder = await temporaryFolder({ 'in.csv': 'travelLeft,travelRight,rack\n0,0,0\n5,-5,2\n900,900,0\n' });
    const { status, document } = await jounceJson(['sweep', car, '--axle', 'front', '--list', 'in.csv'], { folder });
    expect(status).toBe(0);
    expectHead(document, described, setup);
    expectKeys(document, [...HEAD, 'axle', 'motion', 'rows'], 'sweep');
    expect(String(document['motion'])).toBe('list');
    const [standing, , past] = [...(document['rows'] as Json)];
    const row = 'travel travelFromStanding rack roll left right both toeReset limits warnings why input'.split(' ');
    expectKeys(standing, row, 'row');
    expectKeys(standing?.['travel'], ['left', 'right'], 'travel');
    for (const side of ['left', 'right']) expectKeys(standing?.[side], [...CORNER, ...COORDINATES], `${side} of a row`);
    expectKeys(standing?.['both'], BOTH, 'both of a row');
    // no value has its reason
    for (const owner of ['left', 'right', 'both'])
      for (const [key, value] of Object.entries(standing?.[owner] ?? {}))
        if (value === null) expect(String(standing?.['why']?.[`${owner}.${key}`] ?? ''), `${owner}.${key}`).not.toBe('');
    expectKeys(past, ['input', 'error'], 'a row that cannot be reached');
    for (const key of ['kind', 'message']) expect(typeof past?.['error']?.[key]).toBe('string');
    expect(String(past?.['error']?.['kind'])).toBe('unreachable');
  });

  test('influence', async () => {
    const described = await readJsonFile(car);
    const { status, document } = await jounceJson(['influence', car, '--axle', 'front', '--travel', '3']);
    expect(status).toBe(0);
    expectHead(document, described, setup);
    expectKeys(document, [...HEAD, 'at', 'rows', 'alike', 'independent', 'singularValues'], 'influence');
    expect(document['at']).toEqual({ travel: 3, rack: 0, roll: 0 });
    for (const row of document['rows'] as Json) {
      const fit = row['fit'] === undefined ? [] : ['fit'];
      expectKeys(
        row,
        ['axle', 'adjuster', 'side', 'step', 'unit', 'more', 'less', 'curved', 'why', ...fit],
        'a row of influence',
      );
      expect(['left', 'right', 'both']).toContain(String(row['side']));
      for (const key of ['more', 'less'] as const) {
        if (row[key] !== null) expectChanges(row[key], described);
        else if (fit.length === 0) expect(String(row['why']?.[key] ?? '')).not.toBe('');
      }
      for (const mark of (row['fit'] ?? []) as Json) expectKeys(mark, ['clock', 'changes'], 'a fit');
    }
    for (const pair of document['alike'] as Json) {
      expectKeys(pair, ['axle', 'adjusters', 'angle'], 'alike');
      expect(Number(pair['angle'])).toBeLessThanOrEqual(5);
    }
    expect(Number.isInteger(document['independent'])).toBe(true);
    const values = [...(document['singularValues'] as Json)].map(Number);
    expect(values).toEqual([...values].sort((a, b) => b - a));
  });

  test('ways', async () => {
    const described = await readJsonFile(car);
    const { document: now } = await jounceJson(['readings', car, '--axle', 'front']);
    const value = Number(now['rows']?.[0]?.['left']?.['camber']) - 0.2;
    const { status, document } = await jounceJson([
      'ways',
      car,
      `camber=${value}`,
      '--axle',
      'front',
      '--side',
      'both',
      '--pairs',
    ]);
    expect(status).toBe(0);
    expectHead(document, described, setup);
    const why = described['parts'] === undefined ? ['why'] : [];
    expectKeys(document, [...HEAD, ...why, 'wanted', 'from', 'ways'], 'ways');
    if (why.length > 0) expect(document['why']).toEqual({ leastGap: 'the car file gives no parts' });
    expect(document['wanted']).toEqual({ reading: 'camber', axle: 'front', side: 'both', value });
    expectKeys(document['from'], ['left', 'right'], 'from');
    const ways = [...(document['ways'] as Json)];
    expect(ways.length).toBeGreaterThan(0);
    for (const way of ways) {
      expectKeys(
        way,
        ['adjusters', 'settings', 'value', 'missBy', 'reaches', 'continuous', 'rangeUsed', 'changes', 'leastGap', 'leastSpare'],
        'a way',
      );
      expectKeys(way['continuous'], ['settings', 'value'], 'continuous');
      expect(typeof way['leastGap']).toBe(why.length > 0 ? 'object' : 'number');
      if (why.length > 0) expect(way['leastSpare']).toBeNull();
      else expectKeys(way['leastSpare'], ['pair', 'axle', 'side', 'spare', 'verdict'], 'leastSpare');
      expectKeys(way['value'], ['left', 'right'], 'value');
      const names = [...(way['adjusters'] as Json)].map(String);
      expectKeys(way['rangeUsed'], names, 'rangeUsed');
      for (const used of Object.values(way['rangeUsed'] ?? {})) expect(isNumberOrNull(used)).toBe(true);
      expectKeys(way['settings']?.['front']?.['both'], names, 'settings');
      expectChanges(way['changes'], described, ['front.left.camber', 'front.right.camber']);
      expect(keysOf(way['changes'])).not.toContain('front.left.camber');
      expect(typeof way['reaches']).toBe('boolean');
    }
    const reaches = ways.map((way) => way['reaches']);
    expect(reaches).toEqual([...reaches].sort((a, b) => Number(b) - Number(a)));
    // of one wheel the value is a number
    const left = await jounceJson(['ways', car, `camber=${value}`, '--axle', 'front', '--side', 'left']);
    expect(typeof left.document['from']).toBe('number');
    expect(typeof left.document['ways']?.[0]?.['value']).toBe('number');
  });

  test('reach', async () => {
    const described = await readJsonFile(car);
    const question = (value: number, tolerance: number): string =>
      JSON.stringify({
        count: 2,
        wanted: [{ reading: 'camber', axle: 'front', side: 'both', value, tolerance }],
        may: [
          { axle: 'front', adjuster: one },
          { axle: 'front', point, along: [0, 0, 1], range: [-1, 1], step: 1 },
        ],
      });
    const folder = await temporaryFolder({ 'near.json': question(-1.2, 3), 'far.json': question(-9, 0.01) });
    for (const name of ['near.json', 'far.json']) {
      const { status, document } = await jounceJson(['reach', car, name], { folder });
      expect(status, JSON.stringify(document)).toBe(0);
      expectHead(document, described, setup);
      const why = described['parts'] === undefined ? ['why'] : [];
      expectKeys(document, [...HEAD, ...why, 'reachable', 'answers', 'helps', 'tried', 'all'], 'reach');
      expect(document['reachable']).toBe(name === 'near.json');
      expect(document['all']).toBe(true);
      for (const row of document['answers'] as Json) {
        const points = row['points'] === undefined ? [] : ['points'];
        expectKeys(
          row,
          ['settings', 'score', 'met', 'wanted', 'rangeUsed', 'changes', 'leastGap', 'leastSpare', ...points],
          'an answer',
        );
        for (const wanted of row['wanted'] as Json) expectKeys(wanted, ['worst', 'missBy'], 'wanted of an answer');
        expectChanges(row['changes'], described, ['front.left.camber', 'front.right.camber']);
      }
      const { helps } = document as unknown as { readonly helps: Json };
      if (name === 'near.json') expect(helps).toBeNull();
      if (helps !== null) {
        expectKeys(helps, ['kind', 'axle', 'side', 'name', 'end', 'by', 'gain'], 'helps');
        expect(['range', 'limit']).toContain(String(helps['kind']));
        expect(['min', 'max']).toContain(String(helps['end']));
      }
    }
  });

  test('map', async () => {
    const described = await readJsonFile(car);
    const over = ['--x', `front.both.${one}`, '--y', `front.both.${other}`, '--reading', 'front.left.camber'];
    const { status, document } = await jounceJson(['map', car, ...over, '--nx', '4', '--ny', '3']);
    expect(status).toBe(0);
    expectHead(document, described, setup);
    expectKeys(document, [...HEAD, 'reading', 'x', 'y', 'z', 'why', 'steps', 'now'], 'map');
    for (const [axis, count, name] of [
      ['x', 4, one],
      ['y', 3, other],
    ] as const) {
      expectKeys(document[axis], ['name', 'values'], axis);
      expect(String(document[axis]?.['name'])).toBe(`front.both.${name}`);
      expect((document[axis] as unknown as { readonly values: readonly Json[] }).values).toHaveLength(count);
    }
    const rows = document['z'] as unknown as readonly (readonly Json[])[];
    expect(rows.map((row) => row.length)).toEqual([4, 4, 4]);
    rows.forEach((row, y) =>
      row.forEach((value, x) => {
        expect(isNumberOrNull(value)).toBe(true);
        if (value === null) expect(typeof document['why']?.[`${y},${x}`]).toBe('string');
      }),
    );
    expectKeys(document['steps'], ['x', 'y'], 'steps');
    expectKeys(document['now'], ['x', 'y', 'z'], 'now');
  });

  test('sheet, and errors of every study', async () => {
    const folder = await temporaryFolder({ 'empty.json': '{ "wanted": [], "may": [] }' });
    const { status, document } = await jounceJson(['sheet', car, 'out.html', '--date', '2026-01-05'], { folder });
    expect(status).toBe(0);
    expectKeys(
      document,
      ['car', 'setup', 'by', 'contract', 'from', 'axles', 'date', 'file', 'kind', 'paper', 'pages', 'changes', 'warnings'],
      'sheet',
    );
    for (const words of [
      ['influence', car, '--setup', 'Nowhere'],
      ['ways', car, 'cambr=1', '--axle', 'front'],
      ['reach', car, 'empty.json'],
      ['map', car, '--x', 'front.both.nothing', '--y', 'travel', '--reading', 'front.left.camber'],
      ['sweep', car, '--list', 'none.csv'],
      ['sheet', car, 'out.docx'],
    ]) {
      const failed = await jounceJson(words, { folder });
      expect(failed.status, words.join(' ')).toBe(2);
      expectKeys(failed.document, ['error'], words.join(' '));
      const known = new Set(['kind', 'message', 'faults', 'missingMm', 'condition', 'limitedBy']);
      expect(keysOf(failed.document['error']).filter((key) => !known.has(key))).toEqual([]);
      expect(['usage', 'file', 'setup']).toContain(String(failed.document['error']?.['kind']));
      for (const fault of (failed.document['error']?.['faults'] ?? []) as Json)
        expectKeys(fault, ['code', 'path', 'line', 'column', 'found', 'expected', 'hint'], 'a fault');
      expect(failed.stderr.trim()).not.toBe('');
    }
  });
});

test('a mesh that cannot be read leaves the least gap unknown, with the reason, and the question answered', async () => {
  const described = await readJsonFile(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'));
  const parts = { duct: { axle: 'front', on: 'body', shape: { kind: 'mesh', file: 'nowhere.stl' } } };
  const folder = await temporaryFolder({ 'car.json': JSON.stringify({ ...(described as object), parts }) });
  const { status, document } = await jounceJson(['ways', 'car.json', 'camber=-1.5', '--axle', 'front'], { folder });
  expect(status, JSON.stringify(document)).toBe(0);
  expect(document['ways']?.[0]?.['leastGap']).toBeNull();
  expect(document['ways']?.[0]?.['leastSpare']).toBeNull();
  expect(String(document['why']?.['ways[0].leastGap'])).toMatch(/^the part "duct" needs/);
});
