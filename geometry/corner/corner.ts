import type { SideName } from '../car/document';
import type { Vector } from '../core/vector';
import type { Motion } from './motion';

/**
 * A rigid rod between a point on the body and a point on the knuckle.
 * All coordinates of a corner are those of the left-hand frame [mm]; a right-hand corner is stored as its mirror image.
 */
export interface Rod {
  readonly name: string;
  /** Inner centre on the body, rack centred. */
  readonly inner: Vector;
  /** Outer centre on the knuckle, where it is at design. */
  readonly outer: Vector;
  /** Centre to centre [mm], adjusters included. */
  readonly length: number;
  /** Movement of the inner centre per mm of rack; zero where the rack does not move it. */
  readonly rack: Vector;
}

/** The strut: its axis is fixed to the knuckle and slides and turns through `top`, which is on the body. */
export interface StrutGuide {
  readonly top: Vector;
  /** A point of the strut's axis, carried by the knuckle (coordinates at design). */
  readonly foot: Vector;
  /** Unit vector along the axis, from foot towards top, carried by the knuckle. */
  readonly axis: Vector;
}

/** Front pivot of a trailing arm that is fast to the knuckle: held across its bolt, free along it. */
export interface ArmPivot {
  /** Where the bolt is on the body. */
  readonly onBody: Vector;
  /** The arm's centre, carried by the knuckle (coordinates at design). */
  readonly onArm: Vector;
  /** Unit vector along the bolt, fixed in the body. */
  readonly axis: Vector;
  /** Two unit vectors square to the bolt and to each other. */
  readonly across: readonly [Vector, Vector];
}

/** The links that hold one knuckle: five constraints, one motion left. */
export interface Linkage {
  readonly layout: 'strut' | 'multi-link';
  readonly rods: readonly Rod[];
  readonly guide: StrutGuide | null;
  readonly pivot: ArmPivot | null;
  /** Wheel centre at design with spacers: its height is the zero of travel [mm]. */
  readonly wheelCentre: Vector;
}

/** One corner, assembled: what the solver needs and what the readings need of the wheel. */
export interface Corner {
  readonly side: SideName;
  readonly linkage: Linkage;
  /** Unit vector along the spindle at design, outboard. */
  readonly spindle: Vector;
  /** [mm] */
  readonly loadedRadius: number;
  /** Index of the rod whose length steers the wheel (rack, or the toe adjuster of an unsteered axle); −1: none known. */
  readonly steerRod: number;
  readonly isSteered: boolean;
  /** Outer points shared by two pairs of rods (lower and upper ball joint of a double wishbone); null otherwise. */
  readonly sharedJoints: readonly [Vector, Vector] | null;
  /** Constants of the solver: `strutKernel.ts` or `multiLinkKernel.ts`. */
  readonly kernel: Float64Array;
  /** The motion record at travel 0, rack 0: where every cold solve starts. */
  readonly home: Motion;
}
