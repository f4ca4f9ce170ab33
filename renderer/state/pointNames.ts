import type { AxleName } from '../../geometry/index';
import type { Bench } from './benchStore';
import type { History } from './history';

/** Points that have another name than when the car was opened: the name now, and the one then. */
export type PointNames = Readonly<Partial<Record<AxleName, Readonly<Record<string, string>>>>>;

/** The names after one more point was called otherwise. */
export const pointCalled = (names: PointNames, axle: AxleName, from: string, to: string): PointNames => {
  const { [from]: first = from, ...others } = names[axle] ?? {};
  return { ...names, [axle]: to === first ? others : { ...others, [to]: first } };
};

/** What a point was called when the car was opened; null for one that was made since, under a name that another has given up. */
const firstNameOf = (names: PointNames, axle: AxleName, point: string): string | null => {
  const known = names[axle] ?? {};
  if (known[point] !== undefined) return known[point];
  return Object.values(known).includes(point) ? null : point;
};

/** The names in a document that the history holds; none that is otherwise for any other. */
export const namesIn = (history: History<Bench>, document: Bench['document']): PointNames => {
  const steps = [...history.past, ...history.future].map(({ value }) => value);
  return [history.present, ...steps].find((bench) => bench.document === document)?.names ?? {};
};

/**
 * What a point of the bench is called in the car as saved: both go back to the name at opening.
 * @param names - of the points on the bench
 * @param saved - of the points in the car as saved
 * @returns null where it cannot be in that car
 */
export const savedNameOf = (names: PointNames, saved: PointNames, axle: AxleName, point: string): string | null => {
  const first = firstNameOf(names, axle, point);
  if (first === null) return null;
  const then = saved[axle] ?? {};
  const renamed = Object.keys(then).find((name) => then[name] === first);
  return renamed ?? (then[first] === undefined ? first : null);
};
