import { at, entriesOf, isThere, type Place } from '../place';
import { AXLES, type AxleView } from './axleView';
import type { Report } from './report';

/** Load cases: accelerations or forces, of axles that there are. */
export function judgeLoads(car: Place, views: readonly AxleView[], report: Report): void {
  for (const [, entry] of entriesOf(at(car, 'loads'))) {
    const given = AXLES.filter((axle) => isThere(at(entry, axle)));
    const hasG = isThere(at(entry, 'g'));
    if (hasG === given.length > 0) {
      report({
        code: 'load-case-subject',
        path: entry.path,
        found: hasG ? 'both accelerations and forces' : 'neither',
        expected: 'either "g" [lateral, longitudinal] or forces of "front" or "rear"',
        hint: null,
      });
    }
    for (const view of views) {
      if (isThere(view.place) || !given.includes(view.axle)) continue;
      report({
        code: 'missing-axle',
        path: at(entry, view.axle).path,
        on: 'key',
        found: `"${view.axle}"`,
        expected: `an axle that the file has; it has no ${view.axle} axle`,
        hint: null,
      });
    }
  }
}
