import type { Radians } from '../core/angle';
import type { Vector } from '../core/vector';
import type { AdjusterDocument, AxleName, CarDocument, Seat, SideName, WheelDocument } from './document';

/** The car in millimetres and radians, no adjuster moved. Made from the document by `toMechanism` and nowhere else. */
export interface CarMechanism {
  readonly document: CarDocument;
  /** mm per unit of length of the file */
  readonly mmPerUnit: number;
  readonly body: Body;
  readonly front: AxleMechanism | null;
  readonly rear: AxleMechanism | null;
  /** Mean x of the front wheel centres minus that of the rear ones, no adjuster [mm]; null with one axle. */
  readonly wheelbase: number | null;
}

/** Masses in kg, lengths in mm, shares 0…1; null where the file does not say. */
export interface Body {
  readonly mass: number | null;
  readonly frontShare: number | null;
  readonly leftShare: number;
  readonly centreOfGravityHeight: number | null;
  readonly unsprungFront: number | null;
  readonly unsprungRear: number | null;
  readonly brakeFrontShare: number | null;
  /** share of the drive at the front axle; null where the file does not say what is driven */
  readonly driveFrontShare: number | null;
}

export interface AxleMechanism {
  readonly axle: AxleName;
  readonly layout: 'strut' | 'multi-link';
  readonly left: SideMechanism;
  readonly right: SideMechanism;
  readonly rods: readonly { readonly name: string; readonly inner: string; readonly outer: string }[];
  readonly trailingArm: { readonly pivot: string; readonly axis: Vector } | null;
  readonly steering: Steering | null;
  readonly spring: Spring | null;
  readonly damper: Damper | null;
  readonly bar: Bar | null;
  /** [droop, bump] [mm] of wheel travel from the file; null where it does not say */
  readonly travel: readonly [number, number] | null;
  readonly adjusters: readonly Adjuster[];
  readonly toeAdjuster: Adjuster | null;
}

/** Points and wheel of one side, in the left-hand frame: a right-hand side is stored as its mirror image. */
export interface SideMechanism {
  readonly side: SideName;
  readonly points: Readonly<Record<string, Vector>>;
  readonly wheel: Wheel;
  /** The body point whose height people read, mirrored like the rest. */
  readonly heightAt: Vector | null;
}

export interface Wheel {
  readonly camber: Radians;
  readonly toe: Radians;
  readonly loadedRadius: number;
  readonly tyreRadius: number | null;
  readonly tyreWidth: number | null;
  readonly rimDiameter: number | null;
  readonly rimWidth: number | null;
  /** N/mm */
  readonly tyreRate: number | null;
  readonly document: WheelDocument;
}

export interface Steering {
  /** Unit vector in the car frame; not mirrored. */
  readonly axis: Vector;
  /** [negative end, positive end] [mm]; null where the file does not say */
  readonly travel: readonly [number, number] | null;
  /** mm of rack per turn of the steering wheel */
  readonly perTurn: number | null;
  readonly rod: string;
}

export interface Spring {
  /** null: around the strut */
  readonly points: { readonly upper: string; readonly lower: string; readonly lowerOn: string } | null;
  /** N/mm */
  readonly rate: number | null;
  readonly freeLength: number | null;
  readonly installed: number | null;
  readonly solidLength: number | null;
  readonly helper: { readonly rate: number; readonly freeLength: number; readonly solidLength: number } | null;
}

export interface Damper {
  readonly points: { readonly upper: string; readonly lower: string; readonly lowerOn: string } | null;
  readonly stroke: number | null;
  readonly bumpStopAt: number | null;
  readonly droopStopAt: number | null;
  readonly open: number | null;
  readonly closed: number | null;
}

export interface Bar {
  readonly pivot: Vector;
  readonly axis: Vector;
  readonly armEnd: Vector;
  readonly linkEnd: Vector;
  readonly linkOn: string;
  /** N per mm at one arm end, the other held */
  readonly rate: number | null;
  readonly holes: readonly { readonly name: string; readonly armEnd: Vector; readonly rate: number | null }[];
}

/** An adjuster in mm and radians; `document` keeps the words that belong to it. */
export type Adjuster = {
  readonly name: string;
  readonly document: AdjusterDocument;
} & (
  | {
      readonly kind: 'slide';
      readonly moves: string;
      readonly along: Vector | 'spindle';
      readonly seat: Seat;
      readonly range: readonly [number, number];
    }
  | {
      readonly kind: 'eccentric-bolt';
      readonly moves: string;
      readonly slot: Vector;
      readonly throw: number;
      readonly seat: Seat;
    }
  | {
      readonly kind: 'offset-bushing';
      readonly moves: string;
      readonly axis: Vector;
      readonly twelve: Vector;
      readonly offset: number;
      readonly seat: Seat;
    }
  | {
      readonly kind: 'clamp-eccentric';
      readonly pivot: string;
      readonly bolt: string;
      readonly axis: Vector;
      readonly throw: number;
    }
  | { readonly kind: 'turnbuckle'; readonly rod: string; readonly perTurn: number; readonly range: readonly [number, number] }
  | {
      readonly kind: 'perch';
      readonly perTurn: number;
      readonly range: readonly [number, number];
      readonly moves: 'seat' | 'body';
    }
);
