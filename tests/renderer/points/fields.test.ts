import { describe, expect, test } from 'vitest';
import { carFileSchema } from '../../../geometry/index';
import { buildFieldTree, ELSEWHERE, type Field } from '../../../renderer/points/fields/fieldTree';
import { fieldWords } from '../../../renderer/points/fields/fieldWords';
import { faultOf, judgeEdit } from '../../../renderer/points/fields/judgeEdit';
import { leafText, parseLeaf } from '../../../renderer/points/fields/leafText';
import { valueAt, withKeyRenamed, withValue } from '../../../renderer/points/fields/pathValue';
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
          const read = parseLeaf(field.input, leafText(field.input, value, scale), '', scale);
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
    expect(parseLeaf({ kind: 'numbers', count: 3 }, '0, 0,5 -1', '', 1)).toEqual({ ok: true, value: [0, 0.5, -1] });
    expect(parseLeaf({ kind: 'free' }, 'spindle', '', 1)).toEqual({ ok: true, value: 'spindle' });
    expect(parseLeaf({ kind: 'free' }, '-60, 70', 'mm', 1)).toEqual({ ok: true, value: [-60, 70] });
    expect(parseLeaf({ kind: 'number' }, '1 in', 'mm', 1)).toEqual({ ok: true, value: 25.4 });
    const range = parseLeaf({ kind: 'numbers', count: 2 }, '-8 mm, 0.5 in', 'in', 25.4);
    expect(range).toEqual({ ok: true, value: [Number((-8 / 25.4 / 25.4).toFixed(9)), Number((0.5 / 25.4).toFixed(9))] });
    expect(parseLeaf({ kind: 'numbers', count: 2 }, '−8mm; 8 mm', 'mm', 1)).toEqual({ ok: true, value: [-8, 8] });
    expect(parseLeaf({ kind: 'number' }, '  ', 'mm', 1)).toEqual({ ok: true, value: undefined });
    expect(parseLeaf({ kind: 'numbers', count: 2 }, '4', 'mm', 1)).toMatchObject({ ok: false });
    expect(parseLeaf({ kind: 'number' }, 'ten', '', 1)).toMatchObject({ ok: false });
    expect(parseLeaf({ kind: 'nameList' }, 'disc, archLiner', '', 1)).toEqual({ ok: true, value: ['disc', 'archLiner'] });
    const axes = [[0.94, 0, 0.342], [-0.342, 0, 0.94]]; // prettier-ignore
    const asDirections = { kind: 'directions', count: 2 } as const;
    expect(parseLeaf(asDirections, leafText(asDirections, axes, 1), '', 1)).toEqual({ ok: true, value: axes });
    expect(parseLeaf(asDirections, '1, 0, 0', '', 1)).toMatchObject({ ok: false });
    expect(parseLeaf({ kind: 'pairList' }, '-80, 190; 40', 'mm', 1)).toMatchObject({ ok: false });
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
    expect(faultOf(judgeEdit(withValue(car, ['front', 'points', 'armRear'], undefined)), ['front', 'toeAdjuster'])).toContain(
      'front.points.armRear',
    );
    expect(faultOf([], path)).toBeNull();
  });
});
