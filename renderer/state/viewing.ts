import type { AxleName, SideName, Triple } from '../../geometry/index';

/** Where the eye stands. `front` is from behind for the rear axle and whenever both sides are shown. */
export type ViewName = 'corner' | 'front' | 'side' | 'top' | 'wheel' | 'axis';

/** What is shown: one corner of the axle on the bench, both, or both axles. */
export type Scope = 'left' | 'right' | 'axle' | 'car';

export type Projection = 'perspective' | 'parallel';

/** What can be drawn over the solids. */
export type OverlayName = 'ghost' | 'steeringAxis' | 'instantCentres' | 'rollCentre' | 'path' | 'pointNames' | 'envelope';

/** A named point of the car file on one side of one axle. */
export interface PointRef {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly point: string;
}

/**
 * What another page wants picked in the view. While it is set, a click on a joint, or a drag of the ring at the end of
 * the direction line, goes to it instead of to the view's own choice. The page takes it away by setting null.
 */
export type Pick =
  | {
      readonly kind: 'point';
      /** said over the view: "Pick the point that the slide moves" */
      readonly say: string;
      readonly onPicked: (point: PointRef) => void;
    }
  | {
      readonly kind: 'direction';
      readonly say: string;
      readonly from: PointRef;
      /** car coordinates, any length; right-hand directions have their own y */
      readonly direction: Triple;
      /** a unit vector while the ring is dragged; `begin` and `end` bracket the drag, so that it can be one undo step */
      readonly onAimed: (direction: Triple, phase: 'begin' | 'move' | 'end') => void;
    };

/** How the car is looked at: remembered while the window is open, never undone and never saved in the file. */
export interface Viewing {
  readonly scope: Scope;
  /** where a view is not drawn as it is by itself */
  readonly projection: Readonly<Partial<Record<ViewName, Projection>>>;
  readonly overlays: readonly OverlayName[];
  /** the point whose path over bump is drawn, and which the card in the view tells about */
  readonly chosen: PointRef | null;
  /** the person said that this pickup point itself may be moved, though no adjuster does */
  readonly mayMove: boolean;
  /**
   * The views side by side in the one canvas: none is the view that the bench chose, with solids; two are drawn as
   * lines, each square to the car. A page sets it when it opens and empties it when it closes.
   */
  readonly layout: readonly ViewName[];
  readonly pick: Pick | null;
  /** two points with a tape between them, drawn in the view */
  readonly tape: readonly [PointRef, PointRef] | null;
}

export const START_VIEWING: Viewing = {
  scope: 'left',
  projection: {},
  overlays: ['ghost', 'steeringAxis', 'rollCentre'],
  chosen: null,
  mayMove: false,
  layout: [],
  pick: null,
  tape: null,
};

/** Views that are drawn parallel unless somebody asks otherwise: those that lengths are read from. */
const PARALLEL: readonly ViewName[] = ['front', 'side', 'top', 'axis'];

export const projectionOf = ({ projection }: Viewing, view: ViewName): Projection =>
  projection[view] ?? (PARALLEL.includes(view) ? 'parallel' : 'perspective');
