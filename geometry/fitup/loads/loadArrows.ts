import type { AxleName, SideName } from '../../car/document';
import { length, scale, subtract, unit, type Vector } from '../../core/vector';
import type { CaseLoads, LinkLoad } from './linkLoads';

/** Which arrows: what the links put on the body, on the knuckle, or how each is pulled or pushed along its own line. */
export type ArrowView = 'body' | 'knuckle' | 'links';

/** One force as an arrow, in the car's frame. */
export interface LoadArrow {
  readonly axle: AxleName;
  readonly side: SideName;
  /** the row that it is of; null: it is given, by the ground or a shaft */
  readonly link: string | null;
  /** the point that it acts at */
  readonly point: string | null;
  /** where it acts [mm] */
  readonly at: Vector;
  /** [N] */
  readonly force: Vector;
  /** whether its link is pulled or pushed; null: given, or of a link with no one line */
  readonly sense: 'pull' | 'push' | null;
}

/** Forces of a case as arrows: those that are given on every view, and those of the links as it asks. A force of 0 is no arrow. */
export function loadArrows({ rows, carried }: CaseLoads, view: ArrowView): readonly LoadArrow[] {
  const given = carried.flatMap(({ axle, side, given: forces }) =>
    forces.map(({ at, force }): LoadArrow => ({ axle, side, link: null, point: null, at, force, sense: null })),
  );
  const links = rows.flatMap((row) => (view === 'links' ? alongLink(row) : onPart(row, view)));
  return [...given, ...links].filter(({ force }) => length(force) > 0);
}

function onPart(row: LinkLoad, part: 'body' | 'knuckle'): LoadArrow[] {
  // a joint says again what its links have said
  if (row.kind === 'joint') return [];
  return row.ends.filter(({ on }) => on === part).map(({ point, at, force }) => arrowOf(row, point, at, force));
}

/** At both ends, away from the link where it is pulled and towards it where it is pushed. */
function alongLink(row: LinkLoad): LoadArrow[] {
  const { axial, ends } = row;
  if (axial === null || ends.length !== 2) return [];
  const [first, second] = ends;
  const gap = subtract(second.at, first.at);
  // the stand-in for a spring has both ends in one place
  if (length(gap) === 0) return [];
  const pull = scale(unit(gap), axial);
  return [arrowOf(row, first.point, first.at, scale(pull, -1)), arrowOf(row, second.point, second.at, pull)];
}

const arrowOf = ({ axle, side, link, axial }: LinkLoad, point: string, at: Vector, force: Vector): LoadArrow => ({
  axle,
  side,
  link,
  point,
  at,
  force,
  sense: axial === null ? null : axial < 0 ? 'push' : 'pull',
});
