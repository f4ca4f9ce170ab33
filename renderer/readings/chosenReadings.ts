import { preferredList, type Preferences } from '../state/preferences';
import type { ReadingGroup } from './readingRows';

/** Names under which the choices of the table are kept. */
export const READINGS_HIDDEN = 'readings.hidden';
export const READINGS_ORDER = 'readings.order';
export const READINGS_CLOSED = 'readings.closed';

/** Group names have commas and spaces: they are kept by their letters alone. */
export const groupId = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]+/g, '-');

export const hiddenReadings = (preferences: Preferences): ReadonlySet<string> =>
  new Set(preferredList(preferences, READINGS_HIDDEN, []));
export const closedGroups = (preferences: Preferences): ReadonlySet<string> =>
  new Set(preferredList(preferences, READINGS_CLOSED, []));

/** The groups with every reading in the order chosen; those that were never moved keep their place behind. */
export const orderedGroups = (groups: readonly ReadingGroup[], preferences: Preferences): readonly ReadingGroup[] => {
  const order = preferredList(preferences, READINGS_ORDER, []);
  if (order.length === 0) return groups;
  const placeOf = (id: string): number => {
    const place = order.indexOf(id);
    return place < 0 ? order.length : place;
  };
  return groups.map(({ name, rows }) => ({ name, rows: [...rows].sort((a, b) => placeOf(a.id) - placeOf(b.id)) }));
};

/** The same without the readings that were put away; a group without any is left out. */
export const shownGroups = (groups: readonly ReadingGroup[], preferences: Preferences): readonly ReadingGroup[] => {
  const hidden = hiddenReadings(preferences);
  return orderedGroups(groups, preferences)
    .map(({ name, rows }) => ({ name, rows: rows.filter(({ id }) => !hidden.has(id)) }))
    .filter(({ rows }) => rows.length > 0);
};

/** The order to keep after one reading was moved inside its group. */
export const movedOrder = (
  groups: readonly ReadingGroup[],
  preferences: Preferences,
  id: string,
  by: number,
): readonly string[] =>
  orderedGroups(groups, preferences).flatMap(({ rows }) => {
    const ids = rows.map((row) => row.id);
    const at = ids.indexOf(id);
    const to = Math.min(ids.length - 1, Math.max(0, at + by));
    if (at < 0 || at === to) return ids;
    ids.splice(to, 0, ...ids.splice(at, 1));
    return ids;
  });
