import type { AxleName, SideName } from '../../geometry/index';
import type { Bench, BenchState } from '../state/benchStore';
import { savedNameOf } from '../state/pointNames';
import { mmPerFileUnit } from '../units/fileLength';
import { pointLines, type PointLine } from './pointRows';

/**
 * How far from where it was saved a pickup point is taken without a word [mm]. Another hole, a spacer or a bracket made anew moves
 * one by some tens, a subframe put elsewhere by a hundred or so; farther it is mostly a slipped decimal, a sign or a wrong unit.
 */
const FAR_MM = 200;

/** The same from the typical points that a new car begins with: a car is unlike them by a few hundred, not by a metre [mm]. */
const FAR_FROM_TYPICAL_MM = 1000;

type Opened = Pick<BenchState, 'history' | 'file'>;

/** How far a point goes without a word, and from where: the car as saved, or the typical points of one that never was. */
export const farLimit = ({ file }: Pick<Opened, 'file'>): { readonly mm: number; readonly from: string } =>
  file?.isNeverSaved && file.begun && file.begun.documents.length > 0
    ? { mm: FAR_FROM_TYPICAL_MM, from: 'the typical point' }
    : { mm: FAR_MM, from: 'where it was saved' };

/** The points of an axle's side beside the car as saved, by the name that each had there. */
export const linesBesideSaved = (
  { history, file }: Opened,
  axle: AxleName,
  side: SideName,
  bench: Bench | undefined = history?.present,
): readonly PointLine[] => {
  const [now, saved] = [bench?.document[axle], file?.saved];
  if (!bench || !now) return [];
  return pointLines(now, side, saved?.document[axle], (point) => savedNameOf(bench.names ?? {}, saved?.names ?? {}, axle, point));
};

/** A point that went farther than a pickup point goes. */
export interface FarPoint {
  readonly line: PointLine;
  /** from where it was saved [mm] */
  readonly distance: number;
}

/** The points of a side that went farther than a pickup point goes; none while a drag is still going on. */
export const farPoints = (opened: Opened, axle: AxleName, side: SideName, bench?: Bench): readonly FarPoint[] => {
  const { history } = opened;
  if (!history || history.mark) return [];
  const { mm } = farLimit(opened);
  const per = mmPerFileUnit((bench ?? history.present).document);
  return linesBesideSaved(opened, axle, side, bench)
    .map((line) => ({ line, distance: (line.moved ?? 0) * per }))
    .filter(({ distance }) => distance > mm);
};

/** The name of the last step, where it is the one that took these points so far; null where something was done since. */
export const stepThatMoved = (opened: Opened, axle: AxleName, side: SideName): string | null => {
  const last = opened.history?.past.at(-1);
  if (!last) return null;
  const before = farPoints(opened, axle, side, last.value).length;
  return farPoints(opened, axle, side).length > before ? last.name : null;
};
