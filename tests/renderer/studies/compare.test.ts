import { expect, test } from 'vitest';
import { compare, toMechanism } from '../../../geometry/index';
import { againstGroups } from '../../../renderer/setups/againstChoices';
import { comparedWith } from '../../../renderer/state/benchStore';
import { chooseAgainst, turnAdjuster } from '../../../renderer/state/actions/editSetup';
import { setupNamed } from '../../../renderer/state/settings';
import { beginCompare, comparePosition, othersOf } from '../../../renderer/studies/compare/compareForm';
import {
  compareGroups,
  comparePlainTable,
  effectOf,
  isDifferent,
  pairText,
} from '../../../renderer/studies/compare/compareTable';
import { settingsCompared } from '../../../renderer/studies/compare/settingRows';
import { RIDE_HEIGHT } from '../../../renderer/studies/question/place';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { sampleNamed } from '../../samples/samples';
import { openedBench } from '../carUnderTest';

const hatch = sampleNamed('saltmarsh-hatch').document;
const setups = ['Trial 3', 'Baseline', 'Wet'].map((setup) => ({ document: hatch, setup, name: setup }));
const comparison = compare(
  setups.map(({ document, setup }) => ({ mechanism: toMechanism(document), setup: setupNamed(document, setup) })),
  {},
);

test('this less that, for each other setup, with its share of what matters', () => {
  const groups = compareGroups(comparison, 'front', hatch, STANDARD_UNITS);
  const camber = groups.flatMap(({ rows }) => rows).find(({ entry }) => entry.key === 'camber');
  if (!camber) throw new Error('camber is a row');
  for (const { values, differences } of camber.others)
    expect(differences.left).toBeCloseTo((camber.own.left ?? NaN) - (values.left ?? NaN), 12);
  expect(effectOf(camber.column, 0.2).share).toBeCloseTo(2, 12);
  expect(isDifferent(camber)).toBe(true);
  expect(pairText({ left: -1.204, right: -1.196 }, camber.shown)).toBe('−1.20');
  expect(pairText({ left: -1.2, right: -1.3 }, camber.shown)).toBe('L −1.20 R −1.30');
  expect(pairText({ left: null, right: undefined }, camber.shown)).toBe('–');
  const track = groups.flatMap(({ rows }) => rows).find(({ entry }) => entry.key === 'track');
  expect(track?.own.right).toBeUndefined();
});

test('the table that is kept has a line a wheel, and both differences', () => {
  const groups = compareGroups(comparison, 'rear', hatch, STANDARD_UNITS);
  const { heads, rows } = comparePlainTable(groups, 'Trial 3', ['Baseline', 'Wet']);
  expect(heads).toEqual(['reading', 'unit', 'of', 'Trial 3', 'Baseline', 'Trial 3 less Baseline', 'Wet', 'Trial 3 less Wet']);
  expect(rows.filter(([name]) => name === 'Camber').map((row) => row[2])).toEqual(['left', 'right']);
  for (const row of rows) expect(row).toHaveLength(heads.length);
});

test('what differs in the settings, what stands alike, and what is no part', () => {
  const { rows, alike, sentences } = settingsCompared(setups, STANDARD_UNITS);
  const plate = rows.find(({ name }) => name === 'plateAcross');
  expect(plate?.stands.map((stand) => stand?.words)).toEqual(['6 mm inboard', 'at zero', '3 mm outboard']);
  expect(alike).toContain('Front arm bolt');
  expect(sentences.some(({ against, sentence }) => against === 'Baseline' && sentence.startsWith('Front toe:'))).toBe(true);
  expect(sentences.some(({ sentence }) => sentence.startsWith('Front top plate'))).toBe(false);
});

test('what the bench is held against comes first; a choice that is gone is left out', () => {
  const store = openedBench('car-23');
  turnAdjuster(store, Object.keys(store.getState().history?.present.document.front?.adjusters ?? {})[0] ?? '', 'part', 'both', 1);
  const bench = store.getState().history?.present;
  if (!bench) throw new Error('a car is open');
  const saved = store.getState().file?.saved.document ?? null;
  const choicesNow = () => againstGroups(bench, saved).flatMap(({ choices }) => choices);
  const asOnBench = comparedWith(store.getState());
  const [first] = othersOf({ others: null }, choicesNow(), bench, saved, asOnBench);
  expect(first?.setup).toBe(asOnBench?.setup);
  expect(othersOf({ others: ['own:gone'] }, choicesNow(), bench, saved, asOnBench)).toEqual([]);
  const asSaved = choicesNow().find(({ value }) => value.startsWith('saved:'));
  const [old] = othersOf({ others: [asSaved?.value ?? ''] }, choicesNow(), bench, saved, asOnBench);
  expect(old?.document).toBe(saved);
  chooseAgainst(store, 'Base', { kind: 'file', title: 'Hatch', document: hatch });
  const withFile = store.getState().history?.present;
  if (!withFile) throw new Error('a car is open');
  const ofFile = againstGroups(withFile, saved)
    .flatMap(({ choices }) => choices)
    .find(({ value }) => value.startsWith('file:'));
  expect(othersOf({ others: [ofFile?.value ?? ''] }, ofFile ? [ofFile] : [], withFile, saved, null)[0]?.document).toBe(hatch);
});

test('a place that cannot be read compares nothing', () => {
  expect(comparePosition(RIDE_HEIGHT, hatch, 'front')).toEqual({ travel: 0, rack: 0, roll: 0 });
  const { place } = beginCompare();
  expect(comparePosition({ ...place, rack: { value: null, typed: 'x' } }, hatch, 'front')).toBeNull();
  expect(comparePosition({ ...place, rack: { value: 9, typed: null } }, hatch, 'rear')).toMatchObject({ rack: 0 });
});
