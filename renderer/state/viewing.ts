import type { AxleName, SideName, Triple } from '../../geometry/index';
import { memoLast } from '../compute/memoLast';
import { preferredList, preferredOf, type Preferences } from './preferences';

/** Where the eye stands. `front` is from behind for the rear axle and whenever both sides are shown. */
export type ViewName = 'corner' | 'front' | 'side' | 'top' | 'wheel' | 'axis';

/** What is shown: one corner of the axle on the bench, both, or both axles. */
export type Scope = 'left' | 'right' | 'axle' | 'car';

export type Projection = 'perspective' | 'parallel';

/** What can be drawn over the solids. */
export type OverlayName =
  'ghost' | 'steeringAxis' | 'instantCentres' | 'rollCentre' | 'path' | 'pointNames' | 'envelope' | 'jointTilt';

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

/** Where an adjuster that is being made can put its point: places on a line through it. */
export interface AimRange {
  readonly from: PointRef;
  /** car coordinates, any length */
  readonly direction: Triple;
  /** from where the point is now, ascending; the first and the last are the ends [mm] */
  readonly marks: readonly number[];
  /** where the point is at design, on the same line [mm] */
  readonly design: number;
}

/** What is picked and laid out in the view: remembered while the window is open, never undone and never saved in the file. */
export interface Viewing {
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
  /** the range of an adjuster that is being made */
  readonly range: AimRange | null;
  /** two points with a tape between them, drawn in the view */
  readonly tape: readonly [PointRef, PointRef] | null;
}

export const START_VIEWING: Viewing = {
  chosen: null,
  mayMove: false,
  layout: [],
  pick: null,
  range: null,
  tape: null,
};

/** Whether views square to the car lie side by side: they are moved and zoomed, and never turned. */
export const isPlan = ({ layout }: { readonly layout: readonly ViewName[] }): boolean => layout.length > 1;

/** Names under which it is kept from one start to the next how the car is looked at. */
export const VIEW_PREFERENCES = { scope: 'view.shown', overlays: 'view.over', parallel: 'view.parallel' } as const;

const SCOPES: readonly [Scope, ...Scope[]] = ['left', 'right', 'axle', 'car'];
const VIEWS: readonly ViewName[] = ['corner', 'front', 'side', 'top', 'wheel', 'axis'];
const OVERLAYS: readonly OverlayName[] = [
  'ghost',
  'steeringAxis',
  'instantCentres',
  'rollCentre',
  'path',
  'pointNames',
  'envelope',
  'jointTilt',
];
const USUAL_OVERLAYS: readonly OverlayName[] = ['ghost', 'steeringAxis', 'rollCentre'];
/** Views that are drawn parallel unless somebody asks otherwise: those that lengths are read from. */
const USUALLY_PARALLEL: readonly ViewName[] = ['front', 'side', 'top', 'axis'];

/** Of a kept list the words that this window knows, in its own order. */
const known = <Word extends string>(words: readonly Word[], kept: readonly string[]): readonly Word[] =>
  words.filter((word) => kept.includes(word));

/** Which wheels are shown. */
export const scopeOf = (preferences: Preferences): Scope => preferredOf(preferences, VIEW_PREFERENCES.scope, SCOPES);

/** What is drawn over the solids; the same list while the preferences are the same. */
export const overlaysOf = memoLast((preferences: Preferences) =>
  known(OVERLAYS, preferredList(preferences, VIEW_PREFERENCES.overlays, USUAL_OVERLAYS)),
);

/** Views that are drawn parallel. */
export const parallelViews = memoLast((preferences: Preferences) =>
  known(VIEWS, preferredList(preferences, VIEW_PREFERENCES.parallel, USUALLY_PARALLEL)),
);

export const projectionOf = (preferences: Preferences, view: ViewName): Projection =>
  parallelViews(preferences).includes(view) ? 'parallel' : 'perspective';
