import { describe, expect, test } from 'vitest';
import {
  closedGroups,
  groupId,
  movedGroups,
  movedOrder,
  orderedGroups,
  shownGroups,
} from '../../../renderer/readings/chosenReadings';
import { dropPlace, movedBy } from '../../../renderer/readings/dropPlace';
import { readingGroups } from '../../../renderer/readings/readingRows';
import { readingTable } from '../../../renderer/readings/readingTable';
import { chooseAgainst } from '../../../renderer/state/actions/editSetup';

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

  test('groups change places, and keep their readings in the order chosen', () => {
    const [first, second] = groups;
    if (!first || !second) throw new Error('there are groups');
    const order = movedGroups(groups, {}, groupId(second.name), -1);
    const moved = shownGroups(groups, { 'readings.groups': order.join(',') });
    expect(moved.map(({ name }) => name)).toEqual([second.name, first.name, ...groups.slice(2).map(({ name }) => name)]);
    expect(moved.flatMap(({ rows }) => rows)).toHaveLength(groups.flatMap(({ rows }) => rows).length);
    expect(movedGroups(groups, {}, groupId(first.name), -1)).toEqual(groups.map(({ name }) => groupId(name)));
    // one that is new since the order was kept comes behind, where it was
    expect(orderedGroups(groups, { 'readings.groups': groupId(second.name) }).map(({ name }) => name)).toEqual([
      second.name,
      first.name,
      ...groups.slice(2).map(({ name }) => name),
    ]);
  });

  test('groups stay folded, whatever is in their name', () => {
    const store = openedBench();
    prefer(store, 'readings.closed', [groupId('Wheel, steering & ground')]);
    expect(closedGroups(store.getState().preferences).has('wheel-steering-ground')).toBe(true);
  });
});

describe('what is dragged in a list', () => {
  // two columns: a, b, c and d, e
  const boxOf = (column: number, row: number) => ({
    left: 100 * column,
    right: 100 * column + 90,
    top: 20 * row,
    bottom: 20 * row + 18,
  });
  const boxes = [boxOf(0, 0), boxOf(0, 1), boxOf(0, 2), boxOf(1, 0), boxOf(1, 1)];

  test('is dropped before what it stands over the upper half of, else behind it', () => {
    expect(dropPlace(boxes, 40, 3)).toBe(0);
    expect(dropPlace(boxes, 40, 16)).toBe(1);
    expect(dropPlace(boxes, 40, 500)).toBe(3);
    expect(dropPlace(boxes, 150, -50)).toBe(3);
    expect(dropPlace(boxes, 400, 39)).toBe(5);
    expect(dropPlace([], 1, 1)).toBe(0);
  });

  test('stays where it is on both sides of itself, and otherwise moves by as many places as it passes', () => {
    expect([0, 1, 2, 3, 4].map((place) => movedBy(1, place))).toEqual([-1, 0, 0, 1, 2]);
    const ids = idsOf(groups)[0] ?? [];
    const id = ids[0] ?? '';
    const dropped = movedOrder(groups, {}, id, movedBy(0, 3));
    expect(dropped.slice(0, 3)).toEqual([ids[1], ids[2], id]);
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
