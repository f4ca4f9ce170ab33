import { expect, test } from 'vitest';
import { buildFieldTree, type Field } from '../../../renderer/points/fields/fieldTree';
import type { FormHost } from '../../../renderer/points/fields/formHost';
import { valueAt, type FieldPath } from '../../../renderer/points/fields/pathValue';
import { untakenIn, untakenWords } from '../../../renderer/points/fields/untaken';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { carDocument } from '../carUnderTest';

const { fitUp, axle } = buildFieldTree();
const units = { ...STANDARD_UNITS, toeDiameter: null };

const itemOf = (fields: readonly Field[], key: string): Field => {
  const found = fields.find((field) => field.key === key);
  if (found?.kind !== 'named') throw new Error(`${key} is not a list of named parts`);
  return found.item;
};

/** A part that is being made: what it has, and what is kept of its fields. */
const hostOf = (place: FieldPath, value: unknown, kept: Readonly<Record<string, unknown>>): FormHost => ({
  document: carDocument('car-23'),
  axle: null,
  isOfCar: false,
  mm: 1,
  read: (at) => valueAt(value, at.slice(place.length)),
  write: () => null,
  rename: () => null,
  faultAt: () => null,
  drag: () => undefined,
  inside: { read: (what, at) => kept[[what, ...at.slice(place.length)].join('.')] ?? null, write: () => undefined },
});

const PLACE = ['parts', 'ball'];
const SPHERE = { on: 'body', shape: { kind: 'sphere', at: [330, 480, 330], radius: 5 } };
const of = (value: unknown, kept: Readonly<Record<string, unknown>>, place: FieldPath = PLACE, field = itemOf(fitUp, 'parts')) =>
  untakenIn(hostOf(place, value, kept), field, place, units);

test('what stands in a field and is no value of the part is told in the order of the fields, a part inside it too', () => {
  expect(of(SPHERE, {})).toEqual([]);
  expect(of(SPHERE, { 'typed.shape.radius': { text: '7O', over: '5' } })).toEqual([{ kind: 'text', label: 'Radius' }]);
  const all = {
    'typed.margin': { text: '1O', over: '' },
    'typed.shape.radius': { text: '7O', over: '5' },
    'typed.shape.at': { text: '330, NaN, 330', over: '330, 480, 330' },
  };
  expect(of(SPHERE, all).map(({ label }) => label)).toEqual(['Middle', 'Radius', 'Margin of its own']);
  const spans = itemOf(fitUp, 'spans');
  const hose = { from: [0, 0, 0], fromOn: 'body', to: [0, 0, 1], toOn: 'knuckle', length: 900 };
  expect(of(hose, { 'typed.length': { text: '3OO', over: '900' } }, ['spans', 'hose'], spans)).toHaveLength(1);
  const rod = { kind: 'turnbuckle', rod: 'tieRod' };
  const thread = { 'draft.thread': { name: '', value: { pitch: 1.25 } } };
  const adjusters = itemOf(axle, 'adjusters');
  expect(of(rod, thread, ['front', 'adjusters', 'rod'], adjusters)).toEqual([{ kind: 'part', label: 'Thread' }]);
  const empty = { 'draft.thread': { name: '', value: {} } };
  expect(of(rod, empty, ['front', 'adjusters', 'rod'], adjusters)).toEqual([]);
});

test('a text over another value, or of a field that the kind no longer has, keeps nobody', () => {
  const kept = { 'typed.shape.radius': { text: '7O', over: '5' } };
  expect(of({ on: 'body', shape: { kind: 'sphere', at: [0, 0, 0], radius: 6 } }, kept)).toEqual([]);
  expect(of({ on: 'body', shape: { kind: 'box', centre: [0, 0, 0], size: [1, 1, 1] } }, kept)).toEqual([]);
});

test('the words name the fields', () => {
  expect(untakenWords([])).toBeNull();
  expect(untakenWords([{ kind: 'text', label: 'Radius' }])).toMatch(/^Not made: .*Radius/);
  const both = untakenWords([
    { kind: 'text', label: 'Middle' },
    { kind: 'text', label: 'Radius' },
    { kind: 'part', label: 'Thread' },
  ]);
  expect(both).toMatch(/Middle and Radius.*Thread/);
});
