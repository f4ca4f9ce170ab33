import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../../geometry/index';
import { moveTo } from '../../../renderer/state/actions/lookAt';
import { chooseSetup } from '../../../renderer/state/actions/editSetup';
import { failureSentences } from '../../../renderer/readings/failureSentences';
import { hasOwnChanges, readingGroups } from '../../../renderer/readings/readingRows';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { openedBench } from '../carUnderTest';

const groupsOf = (store: ReturnType<typeof openedBench>) => {
  const { shown } = store.getState();
  if (!shown) throw new Error('stands');
  return readingGroups(shown, STANDARD_UNITS);
};

describe('the table', () => {
  test('holds every reading of the catalogue once, points by their coordinates', () => {
    const ids = groupsOf(openedBench()).flatMap(({ rows }) => rows.map(({ entry }) => entry.key));
    expect(new Set(ids)).toEqual(new Set(CATALOGUE.map(({ key }) => key)));
    const names = groupsOf(openedBench()).flatMap(({ rows }) => rows.map(({ id }) => id));
    expect(new Set(names).size).toBe(names.length);
  });

  test('says why wherever a value is missing', () => {
    const rows = groupsOf(openedBench()).flatMap(({ rows: inGroup }) => inGroup);
    const missing = rows.filter(({ left, right }) => left === null || right === null);
    expect(missing.length).toBeGreaterThan(3);
    for (const row of missing) expect(row.why, row.id).not.toBe('no value here');
    expect(rows.find(({ id }) => id === 'ackermann')?.why).toBeTruthy();
  });

  test('gives each side a column of differences only where they are not the same', () => {
    const store = openedBench('car-21');
    expect(hasOwnChanges(groupsOf(store))).toBe(false);
    chooseSetup(store, 'Trial');
    expect(hasOwnChanges(groupsOf(store))).toBe(true);
  });

  test('differences in roll are each side’s own', () => {
    const store = openedBench();
    chooseSetup(store, 'Trial');
    moveTo(store, { rollDeg: 1.5 });
    const camber = groupsOf(store)
      .flatMap(({ rows }) => rows)
      .find(({ id }) => id === 'camber');
    expect(camber?.leftChange).not.toBe(camber?.rightChange);
  });
});

test('a failure says what, where, how much and what to do', () => {
  const words = failureSentences(
    { kind: 'unreachable', setup: 'Trial 1', message: 'The tie rod does not reach', missingMm: 2.1, limitedBy: 'tieRod' },
    'rack +58.0 mm',
    (mm) => mm.toFixed(1),
  );
  expect(words.title).toBe('The linkage cannot reach at rack +58.0 mm.');
  expect(words.detail).toContain('2.1 mm are missing');
  expect(words.detail).toContain('limited by tieRod');
});
