import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { assembleCar, parseCar, readingsOfCar, setupNames, toMechanism, type CarDocument } from '../../../geometry/index';
import { judgeEdit } from '../../../renderer/points/fields/judgeEdit';
import {
  faultOfSpelling,
  mendedName,
  partAt,
  renamePart,
  whyNameStays,
  type PartName,
} from '../../../renderer/points/renaming/renamePart';

const SAMPLES = path.resolve(import.meta.dirname, '../../../samples');
const GOLDEN = path.resolve(import.meta.dirname, '../../golden/cars');
const carAt = (folder: string, name: string): CarDocument => {
  const read = parseCar(readFileSync(path.join(folder, `${name}.jounce.json`), 'utf8'));
  if (!read.ok) throw new Error(`${name} has faults`);
  return read.value.document;
};

/** Every reading of every setup, standing and moved: numbers to the last bit, without the name of the toe adjuster. */
const readingsOf = (document: CarDocument): unknown =>
  setupNames(document).map((setup) => {
    const car = assembleCar(toMechanism(document), document.setups?.[setup] ?? {});
    if (!car.ok) throw new Error(car.failure.message);
    return [{}, { travel: 25, rack: 8 }, { travel: -20, roll: 0.02 }].map((position) =>
      JSON.stringify(readingsOfCar(car.value, position), (key, value: unknown) => (key === 'adjuster' ? undefined : value)),
    );
  });

/** How often a name stands in the file as a whole word. */
const mentions = (value: unknown, name: string): number => JSON.stringify(value).split(`"${name}"`).length - 1;

/** Names that the file uses for other things too: rods of a strut, a reading, ends of a spring. */
const WORDS = ['tieRod', 'armFront', 'armRear', 'toe', 'upper', 'lower'];

const partsOf = (document: CarDocument): readonly PartName[] =>
  (['front', 'rear'] as const).flatMap((axle) => {
    const of = document[axle];
    const named = (part: PartName['part'], names: readonly string[]) => names.map((name) => ({ part, axle, name }));
    return [
      ...named('point', Object.keys(of?.points ?? {})),
      ...named('rod', Object.keys(of?.rods ?? {})),
      ...named('adjuster', Object.keys(of?.adjusters ?? {})),
      ...named(
        'hole',
        (of?.antiRollBar?.holes ?? []).map(({ name }) => name),
      ),
    ];
  });

/** The sample with something of every other kind that calls points, rods and adjusters by their names. */
const withEverything = (): CarDocument => {
  const car = carAt(SAMPLES, 'saltmarsh-hatch');
  const { rear } = car;
  const [rod = '', ends] = Object.entries(rear?.rods ?? {})[0] ?? [];
  const [inner = '', outer = ''] = ends ?? [];
  const [adjuster = ''] = Object.keys(rear?.adjusters ?? {});
  if (!rear) throw new Error('The sample lost its rear axle');
  return {
    ...car,
    rear: {
      ...rear,
      right: {
        points: {
          [inner]: [rear.points[inner]?.[0] ?? 0, -(rear.points[inner]?.[1] ?? 0) - 1, 0].map((v, i) =>
            i === 2 ? (rear.points[inner]?.[2] ?? 0) : v,
          ) as unknown as [number, number, number],
        },
      },
    },
    parts: {
      sleeve: { axle: 'rear', on: rod, shape: { kind: 'sphere', at: [-2600, 500, 300], radius: 10 }, touches: ['knuckle', rod] },
    },
    joints: { [inner]: { axle: 'rear', bolt: [1, 0, 0], boltOn: 'body', rod, rated: 20 } },
    spans: { hose: { axle: 'rear', from: inner, fromOn: 'body', to: outer, toOn: rod, length: 300 } },
    uncertainty: { default: 1, rear: { [inner]: 0.5, [outer]: [1, 1, 2] } },
    survey: {
      'rear left': {
        axle: 'rear',
        side: 'left',
        known: { [inner]: [0, 300, 0], datumA: [0, 0, 0] },
        observations: [
          { kind: 'distance', from: inner, to: outer, value: 300, sigma: 1 },
          { kind: 'height', point: outer, value: 180, sigma: 1 },
        ],
      },
    },
    questions: {
      'where is it': {
        ask: 'map',
        axle: 'rear',
        reading: 'camber',
        x: { adjuster },
        y: { motion: 'bump' },
      },
      camber: {
        wanted: [{ reading: 'camber', axle: 'rear', value: -2, tolerance: 0.1 }],
        may: [
          { axle: 'rear', adjuster },
          { axle: 'rear', point: outer, along: [0, 0, 1], range: [-5, 5], step: 1 },
        ],
      },
    },
  };
};

const CARS: readonly (readonly [string, () => CarDocument])[] = [
  ['saltmarsh-hatch', () => carAt(SAMPLES, 'saltmarsh-hatch')],
  ['marram-coupe', () => carAt(SAMPLES, 'marram-coupe')],
  ['car-23', () => carAt(GOLDEN, 'car-23')],
  ['a car that names its parts everywhere', withEverything],
];

describe.each(CARS)('renaming in %s', (_name, open) => {
  const car = open();
  const before = readingsOf(car);
  test('the car is sound', () => expect(judgeEdit(car)).toEqual([]));

  test('every point, rod, adjuster and hole: readings stay, the old name is gone, and back again is the same file', () => {
    const parts = partsOf(car).filter((part) => whyNameStays(car, part) === null);
    expect(parts.length).toBeGreaterThan(3);
    for (const part of parts) {
      const renamed = renamePart(car, part, 'somethingElse');
      if (!renamed.ok) throw new Error(`${part.axle} ${part.part} ${part.name}: ${renamed.fault}`);
      expect(judgeEdit(renamed.document), part.name).toEqual([]);
      expect(renamed.document).not.toEqual(car);
      expect(mentions(renamed.document, 'somethingElse'), part.name).toBeGreaterThan(0);
      // what else has the name, on the other axle or as another kind of part, keeps it
      expect(mentions(renamed.document, part.name) + mentions(renamed.document, 'somethingElse')).toBe(mentions(car, part.name));
      const others = partsOf(car).filter(({ name }) => name === part.name).length;
      if (others === 1 && !WORDS.includes(part.name)) expect(mentions(renamed.document, part.name), part.name).toBe(0);
      const back = renamePart(renamed.document, { ...part, name: 'somethingElse' }, part.name);
      if (!back.ok) throw new Error(back.fault);
      expect(JSON.stringify(back.document)).toBe(JSON.stringify(car));
    }
  });

  test('all at once: no reading changes in its last bit', () => {
    const parts = partsOf(car).filter((part) => whyNameStays(car, part) === null);
    const renamed = parts.reduce((now, part, index) => {
      const next = renamePart(now, part, `renamed${index}`);
      if (!next.ok) throw new Error(next.fault);
      return next.document;
    }, car);
    expect(readingsOf(renamed)).toEqual(before);
  });
});

describe('a name that cannot be had', () => {
  const car = withEverything();
  const [rodA = '', rodB = ''] = Object.keys(car.rear?.rods ?? {});
  const rod: PartName = { part: 'rod', axle: 'rear', name: rodA };
  const faultOf = (part: PartName, to: string): string => {
    const renamed = renamePart(car, part, to);
    return renamed.ok ? 'taken' : renamed.fault;
  };
  const point: PartName = { part: 'point', axle: 'rear', name: car.rear?.rods?.[rodA]?.[0] ?? '' };
  test.each([
    [rod, rodB, `The rear axle has a rod ${rodB} already: choose another name.`],
    [rod, '2nd', '“2nd” cannot be a name in the file: begin with a letter'],
    [rod, '', `${rodA} needs a name`],
    [rod, 'knuckle', 'knuckle is the file’s own word for a part of the car: choose another name.'],
    [point, 'datumA', 'The survey “rear left” calls another point datumA: choose another name.'],
    [{ part: 'point', axle: 'rear', name: 'wheelCentre' }, 'hub', 'wheelCentre keeps its name'],
    [{ part: 'point', axle: 'front', name: 'armFront' }, 'armA', 'a strut knows its points by their names'],
    [
      { part: 'adjuster', axle: 'front', name: Object.keys(car.front?.adjusters ?? {})[0] ?? '' },
      'setToe',
      'setToe cannot be its name here.',
    ],
  ] as const)('%o as “%s”', (part, to, words) => expect(faultOf(part, to)).toContain(words));
});

test('which keys of the file are names that other places use', () => {
  expect(partAt(['rear', 'rods', 'toe'])).toEqual({ part: 'rod', axle: 'rear', name: 'toe' });
  expect(partAt(['front', 'adjusters', 'topPlate'])).toEqual({ part: 'adjuster', axle: 'front', name: 'topPlate' });
  expect(partAt(['front', 'sections', 'tieRod'])).toBeNull();
  expect(partAt(['margins', 'default'])).toBeNull();
});

test('a name that cannot be is said with what it may be, and the nearest one that can', () => {
  expect(faultOfSpelling('tieRod_2')).toBeNull();
  for (const name of ['tie rod', '2nd', 'Spür', '', 'a'.repeat(61)])
    expect(faultOfSpelling(name)).toContain('begin with a letter');
  expect(['tie rod', '2nd rod, left', 'Spür', 'rod (rear)', '12', 'a'.repeat(70)].map(mendedName)).toEqual([
    'tieRod',
    'ndRodLeft',
    'Spur',
    'rodRear',
    null,
    'a'.repeat(60),
  ]);
});
