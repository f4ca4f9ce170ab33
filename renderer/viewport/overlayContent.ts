import type { AxleDocument, AxleName, PlacedAxle, PlacedCorner, SideName, Triple } from '../../geometry/index';
import type { JointFan } from '../fitup/joints/jointFan';
import type { AimRange, OverlayName, PointRef, Scope, ViewName } from '../state/viewing';
import type { GroundFrame } from './groundFrame';
import { along, direction, type Point } from './points';

/** What is written at one wheel. */
export interface WheelWords {
  readonly trail: string | null;
  readonly scrub: string | null;
  /** two lines over the wheel in the axle's view: travel, camber and toe */
  readonly over: readonly [string, string] | null;
}

/** One axle that is shown. */
export interface AxleContent {
  readonly name: AxleName;
  readonly axle: AxleDocument;
  readonly placed: PlacedAxle;
  readonly frame: GroundFrame;
  /** the compared setup at the same position; null where it is the same or has no answer */
  readonly compared: { readonly placed: PlacedAxle; readonly frame: GroundFrame } | null;
  /** wheels whose solid is hidden because they are seen flat on */
  readonly outlines: Readonly<Record<SideName, boolean>>;
  /** [mm] */
  readonly wheelRadius: number;
  readonly tyreWidth: number;
  readonly words: Readonly<Record<SideName, WheelWords>>;
}

/** A wheel at the ends of its travel and lock, in the car's frame. */
export interface Envelope {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly corners: readonly PlacedCorner[];
}

/** A joint as it stands, in the car's frame, with what is said of it. */
export interface JointTilt {
  readonly axle: AxleName;
  readonly fan: JointFan;
  readonly words: string;
}

/** Everything that one view draws over the solids. */
export interface OverlayContent {
  readonly view: ViewName;
  readonly scope: Scope;
  readonly sides: readonly SideName[];
  readonly overlays: readonly OverlayName[];
  /** the one on the bench first */
  readonly axles: readonly AxleContent[];
  /** the links as lines instead of solids: views side by side, on another page */
  readonly schematic: boolean;
  /** "roll 1.50°, left side up"; null without roll */
  readonly roll: string | null;
  /** name and place of the adjuster in hand */
  readonly held: { readonly label: string; readonly point: string | null } | null;
  readonly chosen: { readonly ref: PointRef; readonly path: readonly Point[] } | null;
  readonly hovered: PointRef | null;
  readonly tape: readonly [PointRef, PointRef] | null;
  /** a length in the chosen unit, with the unit. @param decimals - in mm */
  readonly lengthWords: (mm: number, decimals: number) => string;
  /** the unit that lengths are read in */
  readonly lengthUnit: 'mm' | 'in';
  /** where the eye stands, in the ground's frame; far off along its line of sight where that is parallel */
  readonly eye: Point;
  /** arms to drag the chosen point by [mm]; null while it may not be moved */
  readonly handles: number | null;
  /** a direction that another page wants aimed: from a point, ring at `reach` mm; negative: behind the point */
  readonly aim: { readonly from: PointRef; readonly direction: Triple; readonly reach: number } | null;
  /** the range of an adjuster that is being made, with the length of the axes beside it [mm] */
  readonly range: (AimRange & { readonly reach: number }) | null;
  readonly envelopes: readonly Envelope[];
  readonly tilts: readonly JointTilt[];
}

/** Where a named point is now, in the ground's frame; null where what is shown has no such point. */
export const placeOf = ({ axles }: Pick<OverlayContent, 'axles'>, { axle, side, point }: PointRef): Point | null => {
  const content = axles.find(({ name }) => name === axle);
  const at = content?.placed[side].points[point];
  return content && at ? content.frame.toGround(at) : null;
};

/** A direction of the car as the ground's frame has it. */
export const turnedToGround = ({ rows }: GroundFrame, [x, y, z]: Triple): Point => [
  rows[0][0] * x + rows[0][1] * y + rows[0][2] * z,
  rows[1][0] * x + rows[1][1] * y + rows[1][2] * z,
  rows[2][0] * x + rows[2][1] * y + rows[2][2] * z,
];

/** Where the ring of a direction is, in the ground's frame; null where nothing is aimed. @param share - of its reach */
export const aimedEnd = (content: Pick<OverlayContent, 'aim' | 'axles'>, share = 1): Point | null => {
  const { aim, axles } = content;
  const from = aim && placeOf(content, aim.from);
  const frame = axles.find(({ name }) => name === aim?.from.axle)?.frame;
  if (!aim || !from || !frame) return null;
  return along(from, turnedToGround(frame, direction([0, 0, 0], aim.direction)), aim.reach * share);
};
