import type { Triple } from '../../geometry/index';
import type { ViewName } from '../state/viewing';
import { formatNumber } from '../units/format';
import type { GroundFrame } from './groundFrame';
import type { OverlayScale } from './overlayTypes';

/** Lines stand at least so far apart that each has room for its number [px]. */
const NEAREST = 44;
/** More lines than this are those of a view that is not laid out yet. */
const MOST = 60;

/** The next of 1, 2, 5, 10, 20 … that is not less. */
const roundStep = (least: number): number => {
  const power = Math.pow(10, Math.floor(Math.log10(least)));
  return ([1, 2, 5].find((times) => times * power >= least * (1 - 1e-9)) ?? 10) * power;
};

/** The car's axes across and up a view that is square to the car, and the one that it looks along. */
const axesOf = (view: ViewName): readonly [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2] =>
  view === 'top' ? [1, 0, 2] : view === 'side' ? [0, 2, 1] : [1, 2, 0];

export interface PlanSeen {
  readonly view: ViewName;
  readonly frame: Pick<GroundFrame, 'toGround'>;
  /** corners of the view, in the car's frame [mm] */
  readonly corners: readonly Triple[];
  readonly mmPerPixel: number;
  /** of the unit that lengths are read in */
  readonly mmPerUnit: number;
}

/** Lines of whole coordinates of the car over all of a view that is square to it, each with its number at the edge. */
export const planGrid = ({ view, frame, corners, mmPerPixel, mmPerUnit }: PlanSeen): readonly OverlayScale[] => {
  const [across, up, depth] = axesOf(view);
  const [first] = corners;
  const least = (NEAREST * mmPerPixel) / mmPerUnit;
  if (!first || !(least > 0) || !Number.isFinite(least)) return [];
  const step = roundStep(least);
  const decimals = step >= 1 ? 0 : Math.ceil(-Math.log10(step) - 1e-9);
  const ends = (axis: 0 | 1 | 2): readonly [number, number] => {
    const values = corners.map((corner) => corner[axis]);
    return [Math.min(...values), Math.max(...values)];
  };
  const at = (a: number, b: number) => {
    const place: [number, number, number] = [0, 0, 0];
    [place[across], place[up], place[depth]] = [a, b, first[depth]];
    return frame.toGround(place);
  };
  const [[a0, a1], [b0, b1]] = [ends(across), ends(up)];
  const marks = (low: number, high: number): readonly number[] => {
    const [from, to] = [Math.ceil(low / mmPerUnit / step), Math.floor(high / mmPerUnit / step)];
    return Array.from({ length: Math.min(MOST, Math.max(0, to - from + 1)) }, (_, index) => (from + index) * step);
  };
  const scale = (mark: number, edge: OverlayScale['edge'], points: OverlayScale['points']): OverlayScale => ({
    kind: 'scale',
    className: 'gridline',
    edge,
    text: formatNumber(mark, decimals),
    points,
  });
  return [
    ...marks(a0, a1).map((mark) => scale(mark, 'bottom', [at(mark * mmPerUnit, b0), at(mark * mmPerUnit, b1)])),
    ...marks(b0, b1).map((mark) => scale(mark, 'left', [at(a0, mark * mmPerUnit), at(a1, mark * mmPerUnit)])),
  ];
};
