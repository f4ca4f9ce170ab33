import { preferredList, type Preferences } from '../state/preferences';
import type { ReadingGroup } from './readingRows';

/** Names under which the choices of the table are kept. */
export const READINGS_HIDDEN = 'readings.hidden';
export const READINGS_ORDER = 'readings.order';
export const READINGS_GROUPS = 'readings.groups';
export const READINGS_CLOSED = 'readings.closed';

/** Group names have commas and spaces: they are kept by their letters alone. */
export const groupId = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]+/g, '-');

export const hiddenReadings = (preferences: Preferences): ReadonlySet<string> =>
  new Set(preferredList(preferences, READINGS_HIDDEN, []));
export const closedGroups = (preferences: Preferences): ReadonlySet<string> =>
  new Set(preferredList(preferences, READINGS_CLOSED, []));

/** Things in an order that was kept; those that were never moved keep their place behind. */
const inOrder = <Thing>(things: readonly Thing[], order: readonly string[], idOf: (thing: Thing) => string): readonly Thing[] => {
  if (order.length === 0) return things;
  const placeOf = (thing: Thing): number => {
    const place = order.indexOf(idOf(thing));
    return place < 0 ? order.length : place;
  };
  return [...things].sort((a, b) => placeOf(a) - placeOf(b));
};

/** The groups and every reading in them in the order chosen. */
export const orderedGroups = (groups: readonly ReadingGroup[], preferences: Preferences): readonly ReadingGroup[] => {
  const order = preferredList(preferences, READINGS_ORDER, []);
  const ordered = inOrder(groups, preferredList(preferences, READINGS_GROUPS, []), ({ name }) => groupId(name));
  return order.length === 0 ? ordered : ordered.map(({ name, rows }) => ({ name, rows: inOrder(rows, order, ({ id }) => id) }));
};

/** The same without the readings that were put away; a group without any is left out. */
export const shownGroups = (groups: readonly ReadingGroup[], preferences: Preferences): readonly ReadingGroup[] => {
  const hidden = hiddenReadings(preferences);
  return orderedGroups(groups, preferences)
    .map(({ name, rows }) => ({ name, rows: rows.filter(({ id }) => !hidden.has(id)) }))
    .filter(({ rows }) => rows.length > 0);
};

const moved = (ids: readonly string[], id: string, by: number): readonly string[] => {
  const at = ids.indexOf(id);
  const to = Math.min(ids.length - 1, Math.max(0, at + by));
  if (at < 0 || at === to) return ids;
  const rest = ids.filter((one) => one !== id);
  return [...rest.slice(0, to), id, ...rest.slice(to)];
};

/** The order to keep after one reading was moved inside its group. */
export const movedOrder = (
  groups: readonly ReadingGroup[],
  preferences: Preferences,
  id: string,
  by: number,
): readonly string[] =>
  orderedGroups(groups, preferences).flatMap(({ rows }) =>
    moved(
      rows.map((row) => row.id),
      id,
      by,
    ),
  );

/** The order of groups to keep after one was moved. @param id - of the group, as `groupId` makes it */
export const movedGroups = (
  groups: readonly ReadingGroup[],
  preferences: Preferences,
  id: string,
  by: number,
): readonly string[] =>
  moved(
    orderedGroups(groups, preferences).map(({ name }) => groupId(name)),
    id,
    by,
  );
