import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  AXIS_WORDS,
  bringFailureWords,
  bringPoints,
  DEFAULT_BRING,
  designPoints,
  frameOf,
  parseCar,
  placedPoints,
  pointsCsv,
  readPoints,
  serializeCar,
  takePoints,
  toMechanism,
  type AxisWord,
  type BringOptions,
  type Brought,
  type CarDocument,
  type FrameAxes,
  type Vector,
} from '../../../geometry/index';
import { turnAbout } from '../../../geometry/core/rotation';
import { add, subtract, unit } from '../../../geometry/core/vector';

const carOf = (name: string): CarDocument => {
  const read = parseCar(readFileSync(path.resolve(import.meta.dirname, `../../golden/cars/${name}.jounce.json`), 'utf8'));
  if (!read.ok) throw new Error(name);
  return read.value.document;
};
const CAR = carOf('car-21');
const FRONT: BringOptions = { ...DEFAULT_BRING, axle: 'front' };

const bring = (text: string, options: Partial<BringOptions> = {}, car = CAR): Brought => {
  const brought = bringPoints(car, readPoints(text).rows, { ...FRONT, ...options });
  if (!brought.ok) throw new Error(bringFailureWords(brought.failure));
  return brought.value;
};
const wordsOf = (text: string, options: Partial<BringOptions>): string => {
  const brought = bringPoints(CAR, readPoints(text).rows, { ...FRONT, ...options });
  return brought.ok ? '' : bringFailureWords(brought.failure);
};
/** The left-hand points of the car as a list, each passed through a change of frame. */
const listOf = (change: (p: Vector) => Vector): string =>
  Object.entries(designPoints(CAR, 'front', 'left'))
    .map(([name, p]) => [name, ...change(p)].join(';'))
    .join('\n');

describe('axes', () => {
  const right: FrameAxes[] = [];
  const left: FrameAxes[] = [];
  for (const x of AXIS_WORDS)
    for (const y of AXIS_WORDS)
      for (const z of AXIS_WORDS) {
        const frame = frameOf([x, y, z]);
        if (frame.ok) (frame.value.handed === 'right' ? right : left).push([x, y, z]);
      }

  test('of all 216 sets 48 are complete, half of them left-handed', () => {
    expect([right.length, left.length]).toEqual([24, 24]);
  });

  test('from every one of them the car comes back exactly', () => {
    const along: Record<AxisWord, (p: Vector) => number> = {
      forward: (p) => p[0],
      back: (p) => -p[0],
      left: (p) => p[1],
      right: (p) => -p[1],
      up: (p) => p[2],
      down: (p) => -p[2],
    };
    for (const axes of [...right, ...left]) {
      const { points } = bring(
        listOf((p) => axes.map((word) => along[word](p)) as unknown as Vector),
        { axes },
      );
      expect(points.map(({ shift }) => shift)).toEqual(points.map(() => 0));
    }
  });

  test('two axes on one line are refused by name', () => {
    expect(
      wordsOf(
        listOf((p) => p),
        { axes: ['forward', 'up', 'back'] },
      ),
    ).toContain('x and z axes run along the same line');
  });
});

describe('names', () => {
  test('case, blanks, underscores and hyphens do not matter; what is near is suggested; by hand goes before', () => {
    const text = 'Arm Front,1,2,3\nARM_REAR,1,2,4\nball-joint,1,2,5\ntieRod_out,1,2,6\nmirror,1,2,7';
    const { rows } = bring(text);
    expect(rows.map(({ point, suggestion, state }) => [point, suggestion, state])).toEqual([
      ['armFront', null, 'taken'],
      ['armRear', null, 'taken'],
      ['ballJoint', null, 'taken'],
      [null, 'tieRodEnd', 'unknown'],
      [null, null, 'unknown'],
    ]);
    const byHand = bring(text, { names: { tieRod_out: 'tieRodEnd', mirror: null } });
    expect(byHand.rows.map(({ state }) => state)).toEqual(['taken', 'taken', 'taken', 'taken', 'leftOut']);
    expect(byHand.points.map(({ point }) => point)).toContain('tieRodEnd');
  });

  test('the same point twice is refused with both lines', () => {
    expect(wordsOf('armFront,1,2,3\narm_front,1,2,3', {})).toContain('lines 1 and 2');
    const twice = bringPoints(CAR, readPoints('armFront,1,2,3\narm_front,4,5,6').rows, FRONT);
    expect(!twice.ok && twice.failure.kind === 'twice' && twice.failure.rows.map(({ at }) => at)).toEqual([
      [1, 2, 3],
      [4, 5, 6],
    ]);
  });
});

describe('units, sides and other axles', () => {
  test('inches, centimetres and metres', () => {
    for (const [given, unitName] of [
      [10, 'in'],
      [25.4, 'cm'],
      [0.254, 'm'],
    ] as const)
      expect(bring(`armFront,${given},0,0`, { unit: unitName }).points[0]?.at[0]).toBeCloseTo(254, 9);
  });

  test('both sides by column, by name, or by the sign of y: kept, or averaged', () => {
    const text = 'side,name,x,y,z\nright,armFront,10,-300,200\n,armFront,12,302,201\n';
    const kept = bring(text, { side: 'both' });
    expect(kept.points.map(({ side, at }) => [side, ...at])).toEqual([
      ['left', 12, 302, 201],
      ['right', 10, -300, 200],
    ]);
    expect(bring('armFrontLeft,12,302,201\nR_armFront,10,-300,200', { side: 'both' }).points).toHaveLength(2);
    const [mean] = bring(text, { side: 'both', sides: 'average' }).points;
    expect(mean).toMatchObject({ side: 'left', at: [11, 301, 200.5], lines: [3, 2] });
    expect(mean?.spread).toBeCloseTo(1.5, 12);
    const alone = bring('armFront,12,302,201', { side: 'both', sides: 'average' });
    expect(alone.warnings.map(({ code }) => code)).toEqual(['one-side-only']);
  });

  test('a right-hand list becomes the right side, or mirrored the left', () => {
    expect(bring('armFront,10,-300,200', { side: 'right' }).points[0]).toMatchObject({ side: 'right', at: [10, -300, 200] });
    expect(bring('armFront,10,-300,200', { side: 'right', sides: 'mirror' }).points[0]).toMatchObject({
      side: 'left',
      at: [10, 300, 200],
    });
    const posed = 'name,x [mm],y [mm],z [mm],design x [mm],design y [mm],design z [mm]\narmFront,10,300,200,10,300,190';
    expect(bring(posed).warnings).toMatchObject([{ code: 'list-is-posed', path: null }]);
    expect(bring(posed).warnings[0]?.message).toContain('1 row of the list is not at design');
    expect(bring('armFront,10,300,200', { side: 'right' }).warnings[0]).toMatchObject({ code: 'other-side', path: 'armFront' });
    const [several, ...more] = bring('armFront,10,300,200\narmRear,-290,300,200', { side: 'right' }).warnings;
    expect(more).toEqual([]);
    expect(several?.message).toMatch(
      /^armFront \(line 1\), armRear \(line 2\) lie on the left .* was the list measured on the left/,
    );
    expect(() => bring('armFront,1,2,3', { side: 'both', sides: 'mirror' })).toThrow(RangeError);
    expect(() => bring('armFront,1,2,3', { sides: 'average' })).toThrow(RangeError);
  });

  test('rows of the other axle and side, where the list says so, stay out', () => {
    const { rows } = bring(
      'axle,side,name,x,y,z\nrear,left,armFront,1,2,3\nfront,right,armFront,1,2,3\nfront,left,armFront,1,2,3',
    );
    expect(rows.map(({ state }) => state)).toEqual(['leftOut', 'leftOut', 'taken']);
    expect(() => bring('armFront,1,2,3', { axle: 'rear' }, { ...CAR, rear: undefined })).toThrow(RangeError);
  });
});

describe('datum', () => {
  const design = designPoints(CAR, 'front', 'left');
  const references = (...names: string[]) => names.map((name) => ({ name, at: design[name] as Vector }));

  test('a list from any place comes to the car by named points, within 1e-9', () => {
    const number = fc.double({ min: -3000, max: 3000, noNaN: true });
    const shift = fc.tuple(number, number, number);
    fc.assert(
      fc.property(
        shift,
        shift.filter((v) => v.some((n) => Math.abs(n) > 1)),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (by, axis, angle) => {
          const text = listOf((p) => turnAbout(subtract(p, by), unit(axis), angle));
          const { points, datum } = bring(text, { datum: references('armFront', 'armRear', 'strutTop', 'ballJoint') });
          points.forEach(({ shift: moved }) => expect(moved).toBeLessThan(1e-9));
          expect(datum?.points.map(({ name }) => name)).toEqual(['armFront', 'armRear', 'strutTop', 'ballJoint']);
          expect(datum?.rms).toBeLessThan(1e-9);
        },
      ),
      { seed: 3, numRuns: 100 },
    );
  });

  test('what it misses by is said; so is a plane, a wrong unit, a mirrored frame, a name that is not there', () => {
    const three = references('armFront', 'armRear', 'strutTop');
    const inPlane = (datum: BringOptions['datum'], more = '') => bring(`${listOf((p) => p)}${more}`, { datum });
    // three always do: that is no news, and the answer has it all the same
    expect(inPlane(three)).toMatchObject({ warnings: [], datum: { planar: true } });
    const [a, b] = three.map(({ at }) => at);
    if (!a || !b) throw new Error('there are three');
    const middle = add(a, b).map((v) => v / 2) as unknown as Vector;
    const four = inPlane([...three, { name: 'middle', at: middle }], `\nmiddle;${middle.join(';')}`);
    expect(four.warnings.map(({ code }) => code)).toEqual(['datum-planar']);
    expect(four.warnings[0]?.message).toContain('lie in one plane');
    const all = references('armFront', 'armRear', 'strutTop', 'wheelCentre');
    expect(
      bring(
        listOf((p) => p.map((v) => v / 25.4) as unknown as Vector),
        { datum: all },
      ).warnings.map(({ code }) => code),
    ).toContain('datum-size');
    const off = bring(
      listOf((p) => (p[2] === design['strutTop']?.[2] ? add(p, [3, 0, 0]) : p)),
      { datum: all },
    );
    expect(off.datum?.points.find(({ name }) => name === 'strutTop')?.miss).toBeGreaterThan(0.05);
    expect(
      wordsOf(
        listOf(([x, y, z]) => [x, -y, z]),
        { datum: all },
      ),
    ).toContain('mirror image');
    expect(
      wordsOf(
        listOf((p) => p),
        { datum: [...all, { name: 'strutTp', at: [0, 0, 0] }] },
      ),
    ).toContain('did you mean `strutTop`');
    expect(
      wordsOf(
        listOf((p) => p),
        { datum: all.slice(0, 2) },
      ),
    ).toContain('2 reference points are too few');
    const line = [0, 1, 2].map((i) => ({ name: ['armFront', 'armRear', 'strutTop'][i] as string, at: [i, i, i] as const }));
    expect(
      wordsOf(
        listOf((p) => p),
        { datum: line },
      ),
    ).toContain('on one line');
  });

  test('a list with names of its own moves by rows named by hand, by rows told for a reference, and on both sides', () => {
    const own = (p: Vector) => add(turnAbout(p, [0, 0, 1], 0.4), [2000, 3000, 50]);
    const left = listOf(own)
      .split('\n')
      .map((row) => `L ${row.split(';').slice(1).join(' ')};${row.split(';').slice(1).join(';')}`);
    const names = Object.fromEntries(Object.keys(design).map((name, k) => [left[k]?.split(';')[0] as string, name]));
    const wanted = references('armFront', 'armRear', 'strutTop', 'wheelCentre');
    const byHand = bring(left.join('\n'), { names, datum: wanted });
    expect(byHand.points).toHaveLength(Object.keys(design).length);
    byHand.points.forEach(({ shift }) => expect(shift).toBeLessThan(1e-9));

    const rowOf = (name: string) => Object.entries(names).find(([, point]) => point === name)?.[0] as string;
    const told = bring(left.join('\n'), { datum: wanted.map((one) => ({ ...one, row: rowOf(one.name) })) });
    expect(told.rows.filter(({ state }) => state === 'reference')).toHaveLength(4);
    expect(told.datum?.rms).toBeLessThan(1e-9);
    expect(wordsOf(left.join('\n'), { datum: wanted })).toContain('no reference point armFront');

    // both sides far to the left of the list's own middle: a reference of the left is the row farther left
    const both = Object.entries(design).flatMap(([name, [x, y, z]], k) =>
      [y, -y].map((side, s) => [`p${k}${'ab'[s]}`, name, ...add([x, side, z], [0, 9000, 0])] as const),
    );
    const { points } = bring(both.map(([row, , ...at]) => [row, ...at].join(';')).join('\n'), {
      side: 'both',
      names: Object.fromEntries(both.map(([row, name]) => [row, name])),
      datum: wanted,
    });
    points.filter(({ side }) => side === 'left').forEach(({ shift }) => expect(shift).toBeLessThan(1e-9));
    expect(points.filter(({ side }) => side === 'right')).toHaveLength(both.length / 2);
  });

  test('a plain shift is in the unit and axes of the list; a datum takes it away', () => {
    const options = { unit: 'in', axes: ['back', 'right', 'up'], shift: [10, 0, -4] } as const;
    expect(bring('armFront;0;-10;8', options).points[0]?.at.map((v) => Number(v.toFixed(9)))).toEqual([-254, 254, 101.6]);
    const moved = bring(
      listOf((p) => p),
      { shift: [100, 20, -3], datum: references('armFront', 'armRear', 'strutTop', 'wheelCentre') },
    );
    moved.points.forEach(({ shift }) => expect(shift).toBeLessThan(1e-9));
  });

  test('a reference point that is no point of the car only moves the list', () => {
    const text = `${listOf((p) => add(p, [5, 0, 0]))}\nsill;5;0;0`;
    const { rows, points } = bring(text, {
      datum: [{ name: 'sill', at: [0, 0, 0] }, ...references('armFront', 'strutTop', 'wheelCentre')],
    });
    expect(rows.at(-1)).toMatchObject({ state: 'reference', point: null });
    expect(points.every(({ shift }) => shift !== null && shift < 1e-9)).toBe(true);
  });
});

describe('taking', () => {
  test('a car whose own points are taken is the car, to the byte', () => {
    for (const name of ['car-21', 'car-22', 'car-23', 'car-24']) {
      const car = carOf(name);
      for (const axle of ['front', 'rear'] as const) {
        if (!car[axle]) continue;
        const list = Object.entries(designPoints(car, axle, 'left'))
          .map(([point, p]) => [point, ...p].join(','))
          .join('\n');
        const { points } = bring(list, { axle }, car);
        expect(serializeCar(takePoints(car, { axle, sides: 'each' }, points))).toBe(serializeCar(car));
      }
    }
  });

  test("right-hand points become the side's own; mirrored, its own go", () => {
    const options = { axle: 'front', sides: 'each' } as const;
    const own = takePoints(CAR, options, bring('armFront,10,-300,200', { side: 'right' }).points);
    expect(own.front?.right?.points).toEqual({ ...CAR.front?.right?.points, armFront: [10, -300, 200] });
    expect(own.front?.points).toEqual(CAR.front?.points);
    const again = takePoints(
      own,
      { axle: 'front', sides: 'mirror' },
      bring('armFront,10,-300,200', { side: 'right', sides: 'mirror' }, own).points,
    );
    expect(Object.keys(again.front?.right?.points ?? {})).not.toContain('armFront');
    expect(again.front?.points['armFront']).toEqual([10, 300, 200]);
  });

  test('in a file of inches they are inches', () => {
    const inches: CarDocument = { ...CAR, units: { length: 'in' } };
    const { points } = bring('armFront,25.4,254,0', {}, inches);
    expect(takePoints(inches, { axle: 'front', sides: 'each' }, points).front?.points['armFront']).toEqual([1, 10, 0]);
  });
});

test('out and in again: every point of every side at a position, to the last bit', () => {
  const car = assembleCar(toMechanism(CAR), { front: { both: {} } });
  if (!car.ok) throw new Error('assembled');
  const placed = placedPoints(car.value, 'front', { travel: { left: 20, right: -10 }, rack: 5 });
  if (!placed.ok) throw new Error(placed.failure.message);
  const still = placedPoints(car.value, 'front', {});
  expect(still.ok && still.value.every(({ change }) => change.every((c) => Math.abs(c) < 1e-9))).toBe(true);
  const rows = readPoints(pointsCsv(placed.value)).rows;
  expect(rows.map(({ name, side, read }) => ({ name, side, at: read }))).toEqual(
    placed.value.map(({ name, side, at }) => ({ name, side, at: at.map((v) => (v === 0 ? 0 : v)) })),
  );
  const unreachable = placedPoints(car.value, 'front', { travel: 900 });
  expect(unreachable.ok).toBe(false);
});
