import { describe, expect, test } from 'vitest';
import { unreachedTable } from '../../../renderer/lengths/lengthTables';
import { inFieldWords } from '../../../renderer/readings/fieldWords';
import { lastReachedWords } from '../../../renderer/readings/positionWords';
import { limitsOf } from '../../../renderer/readings/useLimits';
import { editCar } from '../../../renderer/state/actions/editCar';
import { CATALOGUE } from '../../../geometry/index';
import { moveTo } from '../../../renderer/state/actions/lookAt';
import { chooseSetup } from '../../../renderer/state/actions/editSetup';
import { failureSentences } from '../../../renderer/readings/failureSentences';
import { hasOwnChanges, readingGroups } from '../../../renderer/readings/readingRows';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { carDocument, openedBench } from '../carUnderTest';

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
  const asked = { position: 'rack +58.0 mm', isSet: true, mm: (mm: number) => mm.toFixed(1), inWords: (text: string) => text };
  const failure = {
    kind: 'unreachable',
    setup: 'Trial 1',
    message: 'The tie rod does not reach',
    missingMm: 2.1,
    limitedBy: 'tieRod',
  };
  const words = failureSentences({ ...failure, kind: 'unreachable' }, asked);
  expect(words.title).toBe('The linkage cannot reach at rack +58.0 mm.');
  expect(words.detail).toContain('2.1 mm are missing');
  expect(words.detail).toContain('limited by tieRod');
  const unset = failureSentences({ ...failure, kind: 'unreachable' }, { ...asked, isSet: false });
  expect(unset.title).toBe('Trial 1 cannot be set up on this car.');
  expect(unset.detail).not.toContain('travel');
});

test('what the engine says of keys is said in the words of the field', () => {
  const document = carDocument('car-23');
  const [key = ''] = Object.keys(document.front?.points ?? {}).filter((one) => /[A-Z]/.test(one));
  expect(inFieldWords(`No setting of tieRod moves ${key}.`, document)).toMatch(
    /^No setting of [^A-Z]*tie rod[^.]* moves [a-z ]+\.$/i,
  );
  expect(inFieldWords(`limited by ${key}`, document)).not.toContain(key);
});

describe('a car that cannot be set up any more', () => {
  const limited = () => {
    const store = openedBench();
    editCar(store, 'Limit', (document) => ({ ...document, limits: [{ reading: 'camber', axle: 'front', min: -5, max: 5 }] }));
    expect(limitsOf(store.getState())).toHaveLength(1);
    return store;
  };
  const broken = () => {
    const store = limited();
    moveTo(store, { travel: 10 });
    editCar(store, 'Move', (document) => {
      const { front } = document;
      return front ? { ...document, front: { ...front, points: { ...front.points, ballJoint: [0, 5000, 0] } } } : document;
    });
    moveTo(store, { travel: -20 });
    return store.getState();
  };

  test('its numbers are said to be of the last position that could be reached', () => {
    const { answer, shown } = broken();
    expect(answer?.ok).toBe(false);
    if (!shown) throw new Error('nothing is shown');
    expect(lastReachedWords(shown.position, STANDARD_UNITS)).toBe('last that could be reached: bump +10.0 mm');
  });

  test('no verdict of what was there before is shown as its own; out of travel alone they stay', () => {
    expect(limitsOf(broken())).toEqual([]);
    const store = limited();
    moveTo(store, { travel: 500 });
    expect(store.getState().answer?.ok).toBe(false);
    expect(limitsOf(store.getState())).not.toEqual([]);
  });

  test('its table has no number, and says why in every row', () => {
    const table = unreachedTable(
      {
        heads: ['reading', 'left', 'why missing'],
        rows: [
          ['Toe', 31.47, ''],
          ['Rake', null, 'no car'],
        ],
      },
      'Cannot be.',
    );
    expect(table.rows).toEqual([
      ['Toe', null, 'Cannot be.'],
      ['Rake', null, 'Cannot be.'],
    ]);
    expect(unreachedTable({ heads: ['part', 'left'], rows: [['Arm', 3]] }, 'Cannot be.')).toEqual({
      heads: ['part', 'left', 'why missing'],
      rows: [['Arm', null, 'Cannot be.']],
    });
  });
});
