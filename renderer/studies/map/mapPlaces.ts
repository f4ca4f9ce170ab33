import type { CarDocument, MapAxis } from '../../../geometry/index';
import type { Compared } from '../../state/compared';
import { settingOf, setupNamed } from '../../state/settings';
import type { ShownUnits } from '../../units/unitChoice';
import type { MapPoint } from './contourLines';
import { shownAxis, type ShownAxis } from './mapAxis';
import type { MapOrder } from './mapForm';
import type { MapStep } from './mapSteps';

/** A side of the map: what it is, and the values at its ends in the file's unit. */
export interface MapSide {
  readonly shown: ShownAxis;
  readonly range: readonly [number, number];
}

/** A setting that stands on the map. */
export interface MapMark {
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

export const sideOf = (axis: MapAxis, values: readonly number[], document: CarDocument, units: ShownUnits): MapSide => ({
  shown: shownAxis(axis, document, units),
  range: [values[0] ?? 0, values.at(-1) ?? 0],
});

/** Where a setup stands along an axis; null where it has no number there: a bushing that is not fitted, or another car's part. */
const standingAt = (
  axis: MapAxis,
  { document, setup }: Pick<Compared, 'document' | 'setup'>,
  at: MapOrder['question']['at'],
): number | null => {
  if (axis.kind !== 'adjuster') return at[axis.kind];
  const adjuster = document[axis.axle]?.adjusters?.[axis.name];
  if (!adjuster) return null;
  const value = settingOf(setupNamed(document, setup), axis.axle, axis.name, axis.side === 'right' ? 'right' : 'left');
  return value ?? (adjuster.kind === 'offset-bushing' ? null : 0);
};

/** Where a setup stands on a map; null where it has no place there. */
export const markOf = (order: MapOrder, of: Pick<Compared, 'document' | 'setup' | 'name'> | null): MapMark | null => {
  if (!of) return null;
  const { x, y, at } = order.question;
  const [across, up] = [standingAt(x, of, at), standingAt(y, of, at)];
  return across === null || up === null ? null : { name: of.name, x: across, y: up };
};

export const keyOf = ({ column, row }: MapStep): string => `${column},${row}`;

const clampTo = (index: number, steps: readonly MapStep[], of: 'column' | 'row'): number =>
  Math.max(0, Math.min(index, Math.max(...steps.map((step) => step[of]))));

export interface Sides {
  readonly x: MapSide;
  readonly y: MapSide;
}

export const shareIn = (value: number, [from, to]: MapSide['range']): number =>
  to === from ? 0.5 : (value - from) / (to - from);

/** The step nearest to a place; along a motion that is held, only across counts. */
export const nearestStep = (steps: readonly MapStep[], [px, py]: MapPoint, { x, y }: Sides): MapStep | null => {
  const isHeld = steps.every(({ row }) => row === 0);
  let best: MapStep | null = null;
  let least = Infinity;
  for (const step of steps) {
    const distance = Math.hypot(shareIn(step.x, x.range) - px, isHeld ? 0 : shareIn(step.y, y.range) - py);
    if (distance < least) [best, least] = [step, distance];
  }
  return best;
};
/** The step nearest to where a setup stands; the first where it stands nowhere. */
export const nearestTo = (steps: readonly MapStep[], mark: MapMark | null, sides: Sides): MapStep | null =>
  mark ? nearestStep(steps, [shareIn(mark.x, sides.x.range), shareIn(mark.y, sides.y.range)], sides) : (steps[0] ?? null);

/** The step so many columns and rows on, no further than the last. */
export const stepAlong = (steps: readonly MapStep[], from: MapStep, columns: number, rows: number): MapStep | undefined =>
  steps.find(
    ({ column, row }) =>
      column === clampTo(from.column + columns, steps, 'column') && row === clampTo(from.row + rows, steps, 'row'),
  );
