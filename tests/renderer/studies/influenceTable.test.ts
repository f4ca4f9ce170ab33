import { expect, test } from 'vitest';
import {
  findReading,
  influence,
  mattersOf,
  toMechanism,
  withSetting,
  type CarDocument,
  type Influence,
} from '../../../geometry/index';
import {
  beginInfluence,
  influenceFault,
  influenceOrder,
  type InfluenceForm,
} from '../../../renderer/studies/influence/influenceForm';
import {
  dotRadius,
  influenceMatrix,
  influencePlainTable,
  matrixColumns,
} from '../../../renderer/studies/influence/influenceTable';
import { fieldOf } from '../../../renderer/studies/question/fieldValue';
import { setupNamed } from '../../../renderer/state/settings';
import { shownReading } from '../../../renderer/units/shownQuantity';
import { STANDARD_UNITS, type ShownUnits } from '../../../renderer/units/unitChoice';
import { sampleNamed } from '../../samples/samples';

const readingOf = (key: string) => {
  const entry = findReading(key);
  if (!entry) throw new Error(key);
  return entry;
};

const hatch = sampleNamed('saltmarsh-hatch').document;

const asked = (form: InfluenceForm, document: CarDocument = hatch, axle: 'front' | 'rear' = 'front'): Influence => {
  const order = influenceOrder(form, document, 'Baseline', axle);
  if (!order) throw new Error('the form has a fault');
  const made = influence(toMechanism(document), order.question);
  if (!made.ok) throw new Error(made.failure.message);
  return made.value;
};

test('a cell is the change by one step up, its dot the step in tolerances, its sign plain', () => {
  const answer = asked(beginInfluence());
  const columns = matrixColumns(hatch, ['camber', 'rollCentreHeight'], STANDARD_UNITS);
  const rows = influenceMatrix(hatch, answer, columns, STANDARD_UNITS);
  const plate = rows.find(({ name }) => name === 'plateAcross');
  const more = answer.rows.find(({ adjuster }) => adjuster === 'plateAcross')?.more?.['front.left.camber'] ?? NaN;
  const [camber, centre] = plate?.cells ?? [];
  expect(camber?.change).toBe(more);
  expect(camber?.text).toBe(`${more > 0 ? '+' : '−'}${Math.abs(more).toFixed(3)}`);
  expect(camber?.share).toBeCloseTo(more / (mattersOf(hatch, 'camber') ?? NaN), 12);
  expect(centre?.side).toBeNull();
  expect(plate?.step).toMatch(/^1 mm (in|out)board$/);
  expect(dotRadius(0.5) ** 2 * 2).toBeCloseTo(dotRadius(1) ** 2, 9);
});

test('one decimal more than the reading has, but no more of inches, which are finer by themselves', () => {
  const digits = (units: ShownUnits) =>
    matrixColumns(hatch, ['camber', 'mechanicalTrail', 'bumpSteer'], units).map(
      ({ shown }) => shown.format(0.123456).split('.')[1]?.length,
    );
  const own = matrixColumns(hatch, ['camber', 'mechanicalTrail'], STANDARD_UNITS).map(({ entry }) => entry.decimals);
  expect(digits(STANDARD_UNITS).slice(0, 2)).toEqual(own.map((decimals) => decimals + 1));
  const inches = { ...STANDARD_UNITS, length: 'in' } as const;
  const trail = readingOf('mechanicalTrail');
  expect(digits(inches)[1]).toBe(shownReading(trail, inches).format(0.123456).split('.')[1]?.length);
});

test('a bushing that is not fitted: every mark, and the best of them for each reading', () => {
  const named = Object.entries(hatch.front?.adjusters ?? {}).find(([, { kind }]) => kind === 'offset-bushing')?.[0];
  if (named === undefined) throw new Error('the sample has a bushing');
  const bare = withSetting(setupNamed(hatch, 'Baseline'), 'front', named, 'both', null);
  const document = { ...hatch, setups: { ...hatch.setups, Baseline: bare } };
  const columns = matrixColumns(document, ['caster', 'camber'], STANDARD_UNITS);
  const row = influenceMatrix(document, asked({ ...beginInfluence(), withLocked: true }, document), columns, STANDARD_UNITS).find(
    ({ name }) => name === named,
  );
  const casters = row?.marks.flatMap(({ cells }) => cells[0]?.change ?? []) ?? [];
  expect(casters.length).toBeGreaterThan(5);
  expect(Math.abs(row?.cells[0]?.change ?? NaN)).toBe(Math.max(...casters.map(Math.abs)));
  expect(row?.cells[0]?.at).toMatch(/^hole at/);
});

test('at the end of a range the other way is shown, and what the toe reset turns says so', () => {
  const [, max] = (hatch.front?.adjusters?.['plateAcross'] as { readonly range: readonly [number, number] }).range;
  const full = withSetting(setupNamed(hatch, 'Baseline'), 'front', 'plateAcross', 'both', max);
  const document = { ...hatch, setups: { ...hatch.setups, Baseline: full } };
  const answer = asked({ ...beginInfluence(), withLocked: true }, document);
  const columns = matrixColumns(document, ['camber'], STANDARD_UNITS);
  const rows = influenceMatrix(document, answer, columns, STANDARD_UNITS);
  const end = answer.rows.find(({ adjuster }) => adjuster === 'plateAcross');
  expect(end?.more).toBeNull();
  expect(rows.find(({ name }) => name === 'plateAcross')?.cells[0]?.change).toBe(end?.less?.['front.left.camber']);
  const toe = rows.find(({ name }) => name === hatch.front?.toeAdjuster);
  expect(toe?.why).toBe('the toe reset turns it');
});

test('one wheel alone needs no letter; the table that is kept has both ways', () => {
  const answer = asked({ ...beginInfluence(), side: 'right' });
  const columns = matrixColumns(hatch, ['camber', 'track'], STANDARD_UNITS);
  const rows = influenceMatrix(hatch, answer, columns, STANDARD_UNITS);
  expect(rows.find(({ name }) => name === 'plateAcross')?.cells[0]?.side).toBeNull();
  const { heads, rows: kept } = influencePlainTable(hatch, answer, columns);
  expect(heads).toContain('Camber [°]');
  expect(kept.filter(([label]) => label === hatch.front?.adjusters?.['plateAcross']?.label).map((row) => row[4])).toEqual([
    'more',
    'less',
  ]);
  for (const row of kept) expect(row).toHaveLength(heads.length);
});

test('a place or toe that cannot be read is a fault, and nothing is asked', () => {
  const form = beginInfluence();
  const wrong = { ...form, place: { ...form.place, travel: { value: null, typed: 'ten' } } };
  expect(influenceFault(wrong)).toContain('bump');
  expect(influenceOrder(wrong, hatch, 'Baseline', 'front')).toBeNull();
  expect(influenceFault({ ...form, toe: { kind: 'value', value: fieldOf(40) } })).toContain('20°');
});
