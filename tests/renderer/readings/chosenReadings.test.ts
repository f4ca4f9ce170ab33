import { describe, expect, test } from 'vitest';
import { closedGroups, groupId, movedOrder, shownGroups } from '../../../renderer/readings/chosenReadings';
import { readingGroups } from '../../../renderer/readings/readingRows';
import { readingTable } from '../../../renderer/readings/readingTable';
import { withNumbers } from '../../../renderer/readings/withNumbers';
import { chooseAgainst } from '../../../renderer/state/actions/editSetup';
import { chooseAxle, moveTo } from '../../../renderer/state/actions/lookAt';
import { prefer } from '../../../renderer/state/actions/prefer';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { openedBench } from '../carUnderTest';

const shownOf = (store: ReturnType<typeof openedBench>) => {
  const { shown } = store.getState();
  if (!shown) throw new Error('it stands');
  return shown;
};
const groups = readingGroups(shownOf(openedBench()), STANDARD_UNITS);
const idsOf = (list: typeof groups) => list.map(({ rows }) => rows.map(({ id }) => id));

describe('the readings shown', () => {
  test('all in the order of the catalogue, until some are put away or moved', () => {
    expect(shownGroups(groups, {})).toEqual(groups);
    const first = groups[0]?.rows ?? [];
    const preferences = { 'readings.hidden': [first[0]?.id, ...(groups[1]?.rows.map(({ id }) => id) ?? [])].join(',') };
    const shown = shownGroups(groups, preferences);
    expect(shown).toHaveLength(groups.length - 1);
    expect(shown[0]?.rows[0]?.id).toBe(first[1]?.id);
  });

  test('a reading is moved inside its group and stays there', () => {
    const id = groups[0]?.rows[2]?.id ?? '';
    const order = movedOrder(groups, {}, id, -1);
    const moved = shownGroups(groups, { 'readings.order': order.join(',') });
    expect(idsOf(moved)[0]?.indexOf(id)).toBe(1);
    expect(idsOf(moved).slice(1)).toEqual(idsOf(groups).slice(1));
    expect(movedOrder(groups, {}, idsOf(groups)[0]?.[0] ?? '', -1)).toEqual(idsOf(groups).flat());
  });

  test('groups stay folded, whatever is in their name', () => {
    const store = openedBench();
    prefer(store, 'readings.closed', [groupId('Wheel, steering & ground')]);
    expect(closedGroups(store.getState().preferences).has('wheel-steering-ground')).toBe(true);
  });
});

test('the table that is copied has full numbers, differences and reasons', () => {
  const store = openedBench();
  chooseAgainst(store, 'Trial');
  const shown = shownOf(store);
  const table = readingTable(shown, groups, new Map(), STANDARD_UNITS);
  const camber = table.rows.find(([name]) => name === 'Camber');
  expect(table.heads).toContain('left less Trial');
  expect(camber?.slice(2, 6)).toEqual([
    shown.row.left['camber'],
    shown.row.right['camber'],
    shown.difference.left['camber'],
    shown.difference.right['camber'],
  ]);
  for (const row of table.rows) expect(row).toHaveLength(table.heads.length);
});

describe('a formula with this car’s numbers', () => {
  const DECIMALS: Readonly<Record<string, number>> = {
    camber: 3,
    camberToBody: 3,
    caster: 3,
    kingpinInclination: 3,
    mechanicalTrail: 2,
    scrubRadius: 2,
    totalToe: 3,
    track: 2,
  };
  test.each([
    ['front', { travel: 17, rollDeg: 0, rack: 0 }],
    ['front', { travel: -12, rollDeg: 1.3, rack: 15 }],
    ['rear', { travel: 20, rollDeg: -1, rack: 0 }],
  ] as const)('comes to the reading itself: %s at %o', (axle, position) => {
    const store = openedBench();
    chooseAxle(store, axle);
    moveTo(store, position);
    const { row } = shownOf(store);
    for (const [key, decimals] of Object.entries(DECIMALS)) {
      const value = row.left[key] ?? row.both[key] ?? null;
      const words = withNumbers(key, row);
      if (typeof value !== 'number') continue;
      if (words === null) expect(axle, key).toBe('rear');
      else expect(words.replaceAll('−', '-').replaceAll(',', ''), key).toContain(`= ${value.toFixed(decimals)}`);
    }
    expect(withNumbers('wheelRate', row)).toBeNull();
  });
});
