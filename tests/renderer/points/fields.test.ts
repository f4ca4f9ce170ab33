import { describe, expect, test } from 'vitest';
import { carFileSchema, type CarDocument } from '../../../geometry/index';
import { buildFieldTree, ELSEWHERE, type Field } from '../../../renderer/points/fields/fieldTree';
import { fieldWords } from '../../../renderer/points/fields/fieldWords';
import { faultOf, judgeEdit } from '../../../renderer/points/fields/judgeEdit';
import { timesFile } from '../../../renderer/points/fields/fieldScale';
import { scaleAt } from '../../../renderer/points/fields/scaleAt';
import type { FormHost } from '../../../renderer/points/fields/formHost';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import type { LeafInput } from '../../../renderer/points/fields/fieldTree';
import { choicesAt, emptyWords } from '../../../renderer/points/fields/choicesAt';
import { noteAt } from '../../../renderer/points/fields/noteAt';
import { leafText, parseLeaf } from '../../../renderer/points/fields/leafText';
import type { ShownUnits } from '../../../renderer/units/unitChoice';
import { valueAt, withKeyRenamed, withValue, type FieldPath } from '../../../renderer/points/fields/pathValue';
import { carDocument } from '../carUnderTest';

interface Schema {
  readonly [key: string]: unknown;
}

/** Every path of the published form, without the help of the tree that is tested: objects, names, lists and kinds. */
const pathsOf = (root: Schema): string[] => {
  const defs = root['$defs'] as Readonly<Record<string, Schema>>;
  const deref = (schema: Schema): Schema =>
    typeof schema['$ref'] === 'string' ? (defs[schema['$ref'].split('/').at(-1) ?? ''] ?? {}) : schema;
  const walk = (given: Schema, path: readonly string[]): string[] => {
    const schema = deref(given);
    const { properties, additionalProperties, oneOf, items } = schema;
    if (Array.isArray(oneOf))
      return (oneOf as Schema[]).map(deref).flatMap((kind) => {
        const name = String(deref((kind['properties'] as Record<string, Schema>)['kind'] ?? {})['const']);
        return walk(kind, [...path, `<${name}>`]);
      });
    if (properties)
      return Object.entries(properties as Record<string, Schema>).flatMap(([key, value]) => walk(value, [...path, key]));
    if (typeof additionalProperties === 'object') return walk(additionalProperties as Schema, [...path, '*']);
    if (schema['type'] === 'array' && typeof items === 'object' && items !== null && deref(items as Schema)['properties'])
      return walk(items as Schema, [...path, '[]']);
    return [path.join('.')];
  };
  return walk(root, []).map((path) => path.replace(/^(front|rear)\./, 'axle.'));
};

/** Every value that the forms edit, with its words. */
const leavesOf = (fields: readonly Field[], path: readonly string[]): (readonly [string, Field])[] =>
  fields.flatMap((field): (readonly [string, Field])[] => {
    const here = field.key === '' ? path : [...path, field.key];
    switch (field.kind) {
      case 'leaf':
        return [[here.join('.'), field]];
      case 'group':
        return leavesOf(field.fields, here);
      case 'named':
        return leavesOf([field.item], [...here, '*']);
      case 'list':
        return leavesOf([field.item], [...here, '[]']);
      case 'kinds':
        return field.kinds.flatMap((kind) => leavesOf(kind.fields, [...here, `<${kind.name}>`]));
    }
  });

const AS_IT_IS = timesFile(1);

const tree = buildFieldTree();
const leaves = new Map([...leavesOf(tree.car, []), ...leavesOf(tree.axle, ['axle']), ...leavesOf(tree.fitUp, [])]);

describe('the forms have every field of the car file', () => {
  const published = [...new Set(pathsOf(carFileSchema()))];
  const isElsewhere = (path: string): boolean =>
    Object.keys(ELSEWHERE).some((key) => path === key || path.startsWith(`${key}.`)) || /\.<[a-z-]+>\.kind$/.test(path);

  test('each is in a form, or has a reason why it is edited elsewhere', () => {
    expect(published.length).toBeGreaterThan(180);
    expect(published.filter((path) => !leaves.has(path) && !isElsewhere(path))).toEqual([]);
  });

  test('each has a label of its own; nothing is left of a field that the file no longer has', () => {
    for (const [path, { words }] of leaves) expect(words.label, path).not.toBe('');
    for (const path of leaves.keys()) expect(published).toContain(path);
    for (const key of Object.keys(ELSEWHERE))
      expect(
        published.some((path) => path === key || path.startsWith(`${key}.`)),
        key,
      ).toBe(true);
    expect(fieldWords(['axle', 'nothing'])).toBeNull();
  });

  test('parts, lists and kinds have a heading', () => {
    const check = (fields: readonly Field[]): void => {
      for (const field of fields) {
        expect(field.words.label, field.key).not.toBe('');
        if (field.kind === 'group') check(field.fields);
        if (field.kind === 'named' || field.kind === 'list') check([field.item]);
        if (field.kind === 'kinds') field.kinds.forEach((kind) => check(kind.fields));
      }
    };
    check([...tree.car, ...tree.axle, ...tree.fitUp]);
    expect(tree.axle.find(({ key }) => key === 'adjusters')).toMatchObject({ item: { kinds: { length: 6 } } });
  });
});

describe('what stands in a field', () => {
  const written = (fields: readonly Field[], holder: unknown, factor: number): number =>
    fields.reduce((count, field) => {
      const value = field.key === '' ? holder : valueAt(holder, [field.key]);
      if (value === undefined) return count;
      switch (field.kind) {
        case 'leaf': {
          const scale = field.words.unit === 'length' ? factor : 1;
          const read = parseLeaf(field.input, leafText(field.input, value, timesFile(scale)), '', timesFile(scale));
          expect(JSON.parse(JSON.stringify(read)), field.key).toEqual(JSON.parse(JSON.stringify({ ok: true, value })));
          return count + 1;
        }
        case 'group':
          return count + written(field.fields, value, factor);
        case 'named':
        case 'list':
          return count + Object.values(value as object).reduce((sum: number, one) => sum + written([field.item], one, factor), 0);
        case 'kinds': {
          const kind = field.kinds.find(({ name }) => name === (value as { kind: string }).kind);
          return count + written(kind?.fields ?? [], value, factor);
        }
      }
    }, 0);

  test.each(['car-21', 'car-22', 'car-23', 'car-24'])('%s: every value comes back from its text, in mm and in inches', (name) => {
    const car = carDocument(name);
    for (const factor of [1, 25.4]) {
      const count = written(tree.car, car, factor) + written(tree.axle, car.front, factor) + written(tree.axle, car.rear, factor);
      expect(count).toBeGreaterThan(20);
    }
  });

  test('what is typed: decimal commas, several numbers, words, nothing; what is none says so', () => {
    expect(parseLeaf({ kind: 'numbers', count: 3 }, '0, 0,5 -1', '', AS_IT_IS)).toEqual({ ok: true, value: [0, 0.5, -1] });
    expect(parseLeaf({ kind: 'free' }, 'spindle', '', AS_IT_IS)).toEqual({ ok: true, value: 'spindle' });
    expect(parseLeaf({ kind: 'free' }, '-60, 70', 'mm', AS_IT_IS)).toEqual({ ok: true, value: [-60, 70] });
    expect(parseLeaf({ kind: 'number' }, '1 in', 'mm', AS_IT_IS)).toEqual({ ok: true, value: 25.4 });
    const range = parseLeaf({ kind: 'numbers', count: 2 }, '-8 mm, 0.5 in', 'in', timesFile(25.4));
    expect(range).toEqual({ ok: true, value: [Number((-8 / 25.4 / 25.4).toFixed(9)), Number((0.5 / 25.4).toFixed(9))] });
    expect(parseLeaf({ kind: 'numbers', count: 2 }, '−8mm; 8 mm', 'mm', AS_IT_IS)).toEqual({ ok: true, value: [-8, 8] });
    expect(parseLeaf({ kind: 'number' }, '  ', 'mm', AS_IT_IS)).toEqual({ ok: true, value: undefined });
    expect(parseLeaf({ kind: 'numbers', count: 2 }, '4', 'mm', AS_IT_IS)).toMatchObject({ ok: false });
    // as the bench writes ranges, and as people do
    for (const text of ['−5 … 5', '-5..5', '-5 to 5 mm', '−5…5'])
      expect(parseLeaf({ kind: 'numbers', count: 2 }, text, 'mm', AS_IT_IS), text).toEqual({ ok: true, value: [-5, 5] });
    expect(parseLeaf({ kind: 'number' }, 'ten', '', AS_IT_IS)).toMatchObject({ ok: false });
    expect(parseLeaf({ kind: 'nameList' }, 'disc, archLiner', '', AS_IT_IS)).toEqual({ ok: true, value: ['disc', 'archLiner'] });
    const axes = [[0.94, 0, 0.342], [-0.342, 0, 0.94]]; // prettier-ignore
    const asDirections = { kind: 'directions', count: 2 } as const;
    expect(parseLeaf(asDirections, leafText(asDirections, axes, AS_IT_IS), '', AS_IT_IS)).toEqual({ ok: true, value: axes });
    expect(parseLeaf(asDirections, '1, 0, 0', '', AS_IT_IS)).toMatchObject({ ok: false });
    expect(parseLeaf({ kind: 'pairList' }, '-80, 190; 40', 'mm', AS_IT_IS)).toMatchObject({ ok: false });
  });

  test('brackets as the help writes them, and commas without a blank where they cannot be decimal marks', () => {
    const value = (kind: LeafInput, text: string) => parseLeaf(kind, text, 'mm', AS_IT_IS);
    const two = { kind: 'numbers', count: 2 } as const;
    const three = { kind: 'numbers', count: 3 } as const;
    expect(value({ kind: 'free' }, '[-2.5, 2.6]')).toEqual({ ok: true, value: [-2.5, 2.6] });
    expect(value(two, '[-60, 70]')).toEqual({ ok: true, value: [-60, 70] });
    expect(value(two, '-2.5,2.6')).toEqual({ ok: true, value: [-2.5, 2.6] });
    expect(value(two, '-3,-1')).toEqual({ ok: true, value: [-3, -1] });
    expect(value(three, '0,1,0')).toEqual({ ok: true, value: [0, 1, 0] });
    expect(value({ kind: 'free' }, '0,1,0')).toEqual({ ok: true, value: [0, 1, 0] });
    expect(value({ kind: 'pairList' }, '[-80, 190], [40, 205]')).toEqual({ ok: true, value: [[-80, 190], [40, 205]] }); // prettier-ignore
    // these may be decimal commas
    expect(value(two, '3,5')).toMatchObject({ ok: false });
    expect(value({ kind: 'free' }, '3,5')).toEqual({ ok: true, value: 3.5 });
    expect(value({ kind: 'numberList' }, '0,5,1,0')).toMatchObject({ ok: false });
  });

  test('rates and masses in other units; a unit or a text that is none is refused with those that are taken', () => {
    const typed = (text: string, unit: string) => parseLeaf({ kind: 'number' }, text, unit, AS_IT_IS);
    expect(typed('1200 lb/in', 'N/mm')).toEqual({
      ok: true,
      value: expect.closeTo((1200 * 4.4482216152605) / 25.4, 6) as number,
    });
    expect(typed('210 N/mm', 'lb/in')).toEqual({ ok: true, value: expect.closeTo((210 * 25.4) / 4.4482216152605, 6) as number });
    expect(typed('100 lb', 'kg')).toEqual({ ok: true, value: 45.359237 });
    expect(typed('55 %', 'share')).toEqual({ ok: true, value: 0.55 });
    expect(typed('3 ft', 'mm')).toEqual({ ok: false, fault: '“ft” is not a unit of this field: mm or in.' });
    expect(typed('abc', 'mm')).toMatchObject({ fault: expect.stringContaining('“abc” is not a number') as string });
  });
});

describe('limits and tolerances are in the unit of what they are of', () => {
  const hostOf = (document: CarDocument, mm: number): FormHost => ({
    read: (path) => valueAt(document, path),
    write: () => null,
    rename: () => null,
    faultAt: () => null,
    isOfCar: true,
    mm,
    document,
    axle: null,
    drag: () => undefined,
  });
  const pounds = { ...STANDARD_UNITS, length: 'in', force: 'pound' } as const;
  const car = {
    ...carDocument('car-21'),
    limits: [
      { reading: 'wheelRate', axle: 'front' },
      { reading: 'track', axle: 'front' },
      { reading: 'toe', axle: 'front' },
    ],
    tolerances: { track: {}, toe: {} },
  } as CarDocument;
  const at = (document: CarDocument, mm: number, units: ShownUnits, path: FieldPath) => {
    const scale = scaleAt(hostOf(document, mm), path, '', units);
    return { unit: scale.unit, shown: scale.toShown(10), back: scale.fromShown(scale.toShown(10)) };
  };

  test('a rate in lb/in, a length from the file’s unit to the chosen one, an angle in degrees', () => {
    expect(at(car, 1, pounds, ['limits', 0, 'min'])).toMatchObject({
      unit: 'lb/in',
      shown: expect.closeTo(254 / 4.4482216152605, 9) as number,
    });
    expect(at(car, 25.4, STANDARD_UNITS, ['limits', 1, 'max'])).toMatchObject({ unit: 'mm', shown: 254 });
    expect(at(car, 25.4, pounds, ['limits', 1, 'max'])).toMatchObject({ unit: 'in', shown: expect.closeTo(10, 12) as number });
    expect(at(car, 25.4, STANDARD_UNITS, ['tolerances', 'track', 'set'])).toMatchObject({ unit: 'mm', shown: 254 });
    expect(at(car, 1, { ...STANDARD_UNITS, angle: 'minutes' }, ['limits', 2, 'min'])).toMatchObject({ unit: '°', shown: 10 });
  });

  test('toe across the rim of the axle that it is of, and back; of both axles it stays an angle', () => {
    const wheel = { ...car.front!.wheel, toeDiameter: 400 };
    const measured = { ...car, front: { ...car.front!, wheel } } as CarDocument;
    const rim = { ...STANDARD_UNITS, toe: 'rim', toeDiameter: 999 } as const;
    const limit = at(measured, 1, rim, ['limits', 2, 'min']);
    expect(limit).toMatchObject({ unit: 'mm', shown: expect.closeTo(400 * Math.sin((10 * Math.PI) / 180), 9) as number });
    expect(limit.back).toBeCloseTo(10, 9);
    expect(at(measured, 1, rim, ['tolerances', 'toe', 'set'])).toMatchObject({ unit: '°', shown: 10 });
  });
});

describe('what is said beside a field', () => {
  const car = carDocument('car-21');
  const hostOf = (adjuster: object): FormHost => {
    const document = { ...car, front: { ...car.front, adjusters: { plate: adjuster } } } as unknown as CarDocument;
    return {
      read: (path) => valueAt(document, path),
      write: () => null,
      rename: () => null,
      faultAt: () => null,
      isOfCar: false,
      mm: 1,
      document,
      axle: 'front',
      drag: () => undefined,
    };
  };
  const at = (key: string): FieldPath => ['front', 'adjusters', 'plate', key];

  test('a step that does not fit in its range, and a range that begins with its greatest', () => {
    const note = (range: readonly number[], step: number, key: string) =>
      noteAt(hostOf({ range, step }), at(key), STANDARD_UNITS);
    expect(note([-0.4, 0.4], 1, 'step')).toContain('no position but zero');
    expect(note([-0.4, 0.4], 0.4, 'step')).toBeNull();
    expect(note([-2, 0.4], 1, 'step')).toBeNull();
    expect(note([0.4, -0.4], 1, 'range')).toBe('The least comes first.');
    expect(note([-0.4, 0.4], 1, 'range')).toBeNull();
  });

  test('what a seat that is left out means: the body for a point on it, the knuckle for one on the knuckle', () => {
    const [inner, outer] = car.front!.layout === 'strut' ? ['armRear', 'ballJoint'] : (Object.values(car.front!.rods!)[0] ?? []);
    expect(emptyWords(hostOf({ moves: inner }), at('seat'))).toBe('– (body)');
    expect(emptyWords(hostOf({ moves: outer }), at('seat'))).toBe('– (knuckle)');
    expect(emptyWords(hostOf({}), at('seat'))).toBe('–');
    expect(emptyWords(hostOf({ moves: inner }), at('seenFrom'))).toBe('–');
  });
});

describe('edits', () => {
  const car = carDocument('car-21');

  test('a value is put in its place and all else is shared; undefined takes it away', () => {
    const changed = withValue(car, ['front', 'wheel', 'camber'], -2);
    expect(changed.front?.wheel.camber).toBe(-2);
    expect(changed.front?.points).toBe(car.front?.points);
    expect(Object.keys(withValue(car, ['front', 'points', 'armRear'], undefined).front?.points ?? {})).not.toContain('armRear');
    expect(withValue({ limits: [1, 2, 3] }, ['limits', 1], undefined)).toEqual({ limits: [1, 3] });
    expect(withValue<unknown>({}, ['masses', 0], { name: 'driver' })).toEqual({ masses: [{ name: 'driver' }] });
    expect(Object.keys(withKeyRenamed({ a: 1, b: 2 }, 'a', 'c'))).toEqual(['c', 'b']);
  });

  test('an edit is judged by the rules of the file, and its fault is said where it was made', () => {
    expect(judgeEdit(car)).toEqual([]);
    const path = ['front', 'wheel', 'loadedRadius'];
    const faults = judgeEdit(withValue(car, path, -3));
    expect(faultOf(faults, path)).toBe('Found -3, expected a number greater than 0.');
    expect(faultOf(faults, path, '-3 mm')).toBe('Found “-3 mm”, expected a number greater than 0.');
    const camber = ['front', 'wheel', 'camber'];
    expect(faultOf(judgeEdit(withValue(car, camber, undefined)), camber, '')).toBe('This is needed: a number from -45 to 45.');
    const reversed = judgeEdit({ ...car, limits: [{ reading: 'camber', axle: 'front', min: 2, max: 1 }] });
    expect(faultOf(reversed, ['limits', 0, 'min'], '2°')).toBe('Found “2°”, expected no more than “Most” (1).');
    expect(faultOf(judgeEdit(withValue(car, ['front', 'points', 'armRear'], undefined)), ['front', 'toeAdjuster'])).toContain(
      'front.points.armRear',
    );
    expect(faultOf([], path)).toBeNull();
  });
});

describe('what carries a part is chosen', () => {
  const host = (axle: 'front' | 'rear' | null, value: unknown): FormHost => ({
    document: carDocument('car-23'),
    axle,
    isOfCar: true,
    mm: 1,
    read: (path) => valueAt(value, path),
    write: () => null,
    rename: () => null,
    faultAt: () => null,
    drag: () => undefined,
  });
  const namesAt = (path: FieldPath, value: unknown = {}, axle: 'front' | 'rear' | null = null) =>
    choicesAt(host(axle, value), path)?.flatMap(({ options }) => options.map((option) => option.value)) ?? [];

  test('from what the rules of the file take there, every one of it', () => {
    const car = carDocument('car-23');
    const shape = { kind: 'sphere', at: [0, 500, 300], radius: 5 };
    for (const axle of ['front', 'rear'] as const) {
      const on = namesAt(['parts', 'tried', 'on'], { parts: { tried: { axle } } });
      expect(on).toContain('body');
      expect(on).toContain('wheel');
      for (const name of on) expect(judgeEdit(withValue(car, ['parts', 'tried'], { axle, on: name, shape })), name).toEqual([]);
      const ends = namesAt(['spans', 'tried', 'toOn'], { spans: { tried: { axle } } });
      const hose = { axle, from: [0, 300, 300], fromOn: 'body', to: [0, 600, 300], length: 900 };
      for (const name of ends) expect(judgeEdit(withValue(car, ['spans', 'tried'], { ...hose, toOn: name })), name).toEqual([]);
      expect(ends).not.toContain('wheel');
    }
    expect(namesAt(['front', 'antiRollBar', 'linkOn'], {}, 'front')).toContain('strut');
    expect(namesAt(['rear', 'damper', 'lowerOn'], {}, 'rear')).toContain('trailingArm');
  });

  test('by the words of people; a name that is not there any more stays to be seen', () => {
    const [still] = choicesAt(host(null, {}), ['parts', 'tried', 'on']) ?? [];
    expect(still?.options[0]).toEqual({ value: 'body', label: 'Body' });
    expect(namesAt(['parts', 'tried', 'on'], { parts: { tried: { on: 'oldLink' } } })).toContain('oldLink');
    expect(choicesAt(host(null, {}), ['parts', 'tried', 'margin'])).toBeNull();
  });

  test('a message never offers a word that it refuses', () => {
    const shape = { kind: 'sphere', at: [0, 500, 300], radius: 5 };
    const path: FieldPath = ['parts', 'tried', 'on'];
    const faults = judgeEdit(withValue(carDocument('car-23'), path.slice(0, -1), { axle: 'front', on: 'Body', shape }));
    const said = faultOf(faults, path) ?? '';
    expect(said).toMatch(/did you mean “body”/);
    expect(said.slice(said.indexOf('expected'))).not.toContain('“Body”');
  });
});
