import type { JointDocument, PartDocument, SpanDocument } from './fitUpDocument';
import type { LoadCaseDocument } from './loadDocument';
import type { MeasurementDocument, SurveyDocument, UncertaintyDocument } from './measuringDocument';
import type { KeptQuestionDocument } from './questionDocument';

/**
 * The car file as it stands in the file: its own unit of length, angles in degrees.
 * This is the document that is edited, undone and saved; `toMechanism` turns it into millimetres and radians.
 */
export type Triple = readonly [number, number, number];
export type AxleName = 'front' | 'rear';
export type SideName = 'left' | 'right';
export type LengthUnit = 'mm' | 'in';

export interface CarDocument {
  readonly $schema?: string;
  readonly format: 'jounce-car';
  readonly version: 1;
  readonly name: string;
  readonly notes?: string;
  readonly revision?: string;
  readonly date?: string;
  /** The setup that is on the car now. */
  readonly onCar?: string;
  readonly units?: { readonly length: LengthUnit };
  readonly body?: BodyDocument;
  readonly masses?: readonly MassDocument[];
  readonly front?: AxleDocument;
  readonly rear?: AxleDocument;
  readonly setups?: Readonly<Record<string, SetupDocument>>;
  readonly limits?: readonly LimitDocument[];
  readonly tolerances?: Readonly<Record<string, ToleranceDocument>>;
  readonly margins?: Readonly<Record<string, number>>;
  readonly parts?: Readonly<Record<string, PartDocument>>;
  readonly joints?: Readonly<Record<string, JointDocument>>;
  readonly spans?: Readonly<Record<string, SpanDocument>>;
  readonly loads?: Readonly<Record<string, LoadCaseDocument>>;
  readonly questions?: Readonly<Record<string, KeptQuestionDocument>>;
  readonly measurements?: readonly MeasurementDocument[];
  readonly uncertainty?: UncertaintyDocument;
  readonly survey?: Readonly<Record<string, SurveyDocument>>;
}

export interface BodyDocument {
  /** kg */
  readonly mass?: number;
  readonly frontShare?: number;
  readonly leftShare?: number;
  readonly centreOfGravityHeight?: number;
  /** kg per corner */
  readonly unsprungFront?: number;
  readonly unsprungRear?: number;
  readonly brakeFrontShare?: number;
  readonly drivenAxle?: 'front' | 'rear' | 'both';
  readonly driveFrontShare?: number;
}

export interface MassDocument {
  readonly name: string;
  readonly mass: number;
  readonly at: Triple;
  readonly included?: boolean;
}

export interface AxleDocument {
  readonly layout: 'strut' | 'multi-link';
  readonly points: Readonly<Record<string, Triple>>;
  readonly rods?: Readonly<Record<string, readonly [string, string]>>;
  readonly trailingArm?: { readonly pivot: string; readonly axis: Triple };
  readonly right?: { readonly points?: Readonly<Record<string, Triple>>; readonly wheel?: Partial<WheelDocument> };
  readonly wheel: WheelDocument;
  readonly steering?: SteeringDocument;
  readonly spring?: SpringDocument;
  readonly damper?: DamperDocument;
  readonly antiRollBar?: AntiRollBarDocument;
  readonly sections?: Readonly<Record<string, SectionDocument>>;
  readonly driveShaft?: DriveShaftDocument;
  readonly brake?: { readonly disc?: { readonly radius: number; readonly thickness: number; readonly at: number } };
  readonly strutTube?: { readonly radius: number; readonly from: number; readonly to: number };
  readonly heightAt?: { readonly point: Triple; readonly name: string };
  readonly travel?: readonly [number, number];
  readonly adjusters?: Readonly<Record<string, AdjusterDocument>>;
  readonly toeAdjuster?: string;
}

export interface WheelDocument {
  /** degrees, + top outboard */
  readonly camber: number;
  /** degrees per wheel, + toe-in */
  readonly toe: number;
  readonly loadedRadius: number;
  readonly tyreRadius?: number;
  readonly tyreWidth?: number;
  readonly rimDiameter?: number;
  readonly rimWidth?: number;
  readonly shoulderRadius?: number;
  readonly rimInside?: readonly (readonly [number, number])[];
  readonly toeDiameter?: number;
  /** N/mm */
  readonly tyreRate?: number;
  readonly growth?: number;
  readonly sideDeflection?: number;
  readonly studs?: {
    readonly diameter: number;
    readonly pitch: number;
    readonly engaged: number;
    readonly material?: 'steel' | 'aluminium';
  };
}

export interface SteeringDocument {
  readonly axis: Triple;
  /** each way from centre, or [negative end, positive end] */
  readonly travel?: number | readonly [number, number];
  /** rack movement per turn of the steering wheel */
  readonly perTurn?: number;
  /** the rod that the rack moves; needed on a multi-link */
  readonly rod?: string;
}

export interface SpringDocument {
  readonly seat?: 'strut';
  readonly upper?: string;
  readonly lower?: string;
  readonly lowerOn?: string;
  /** N/mm */
  readonly rate?: number;
  readonly rates?: readonly number[];
  readonly freeLength?: number;
  readonly installed?: number;
  readonly solidLength?: number;
  readonly helper?: { readonly rate: number; readonly freeLength: number; readonly solidLength: number };
}

export interface DamperDocument {
  readonly upper?: string;
  readonly lower?: string;
  readonly lowerOn?: string;
  readonly stroke?: number;
  readonly bumpStopAt?: number;
  readonly droopStopAt?: number;
  readonly open?: number;
  readonly closed?: number;
}

export interface AntiRollBarDocument {
  readonly pivot: Triple;
  readonly axis?: Triple;
  readonly armEnd: Triple;
  readonly linkEnd: Triple;
  readonly linkOn: string;
  /** N at each arm end per mm of one arm end, the other held */
  readonly rate?: number;
  readonly holes?: readonly { readonly name: string; readonly armEnd: Triple; readonly rate?: number }[];
}

export interface SectionDocument {
  readonly diameter: number;
  readonly wall?: number;
  readonly modulus?: number;
  readonly yield?: number;
}

export interface DriveShaftDocument {
  readonly inner: Triple;
  readonly outer: Triple;
  readonly innerAxis?: Triple;
  readonly plunge?: readonly [number, number];
  readonly maxAngleInner?: number;
  readonly maxAngleOuter?: number;
}

export type Seat = 'body' | 'arm' | 'knuckle';
export type SeenFrom = 'above' | 'below' | 'front' | 'rear' | 'inboard' | 'outboard';

interface AdjusterCommon {
  readonly label?: string;
  readonly notes?: string;
  readonly torque?: string;
  /** why the rules forbid it */
  readonly locked?: string;
  readonly draw?: {
    readonly bore?: number;
    readonly outer?: number;
    readonly slot?: number;
    readonly washer?: number;
    readonly studPitch?: number;
  };
}

export interface SlideDocument extends AdjusterCommon {
  readonly kind: 'slide';
  readonly moves: string;
  readonly along: Triple | 'spindle';
  readonly seat?: Seat;
  readonly range: readonly [number, number];
  readonly step: number;
  readonly shims?: readonly number[];
}
export interface EccentricBoltDocument extends AdjusterCommon {
  readonly kind: 'eccentric-bolt';
  readonly moves: string;
  readonly slot: Triple;
  readonly throw: number;
  readonly seat?: Seat;
  readonly mark: number;
  readonly seenFrom?: SeenFrom;
}
export interface OffsetBushingDocument extends AdjusterCommon {
  readonly kind: 'offset-bushing';
  readonly moves: string;
  readonly axis: Triple;
  readonly twelve: Triple;
  readonly offset: number;
  readonly seat?: Seat;
  readonly index: number;
  readonly seenFrom?: SeenFrom;
}
export interface ClampEccentricDocument extends AdjusterCommon {
  readonly kind: 'clamp-eccentric';
  readonly pivot: string;
  readonly bolt: string;
  readonly axis: Triple;
  readonly throw: number;
  readonly mark: number;
  readonly seenFrom?: SeenFrom;
}
export interface TurnbuckleDocument extends AdjusterCommon {
  readonly kind: 'turnbuckle';
  /** a rod's name, or "barLink" */
  readonly rod: string;
  readonly perTurn: number;
  readonly range: readonly [number, number];
  readonly step: number;
  readonly flats?: number;
  readonly thread?: {
    readonly diameter: number;
    readonly pitch: number;
    readonly engaged: number;
    readonly ends?: 1 | 2;
    readonly material?: 'steel' | 'aluminium';
  };
}
export interface PerchDocument extends AdjusterCommon {
  readonly kind: 'perch';
  readonly perTurn: number;
  readonly range: readonly [number, number];
  readonly step: number;
  readonly moves?: 'seat' | 'body';
}
export type AdjusterDocument =
  SlideDocument | EccentricBoltDocument | OffsetBushingDocument | ClampEccentricDocument | TurnbuckleDocument | PerchDocument;
export type AdjusterKind = AdjusterDocument['kind'];

/** Settings of one side: adjuster name -> its number; null or absent is zero (a concentric bushing). */
export type SideSettings = Readonly<Record<string, number | null>>;

export interface SetupAxleDocument {
  readonly both?: SideSettings;
  readonly left?: SideSettings;
  readonly right?: SideSettings;
  /** degrees per wheel */
  readonly setToe?: number;
  /** height of the body over the ground at this axle against design, + up */
  readonly rideHeight?: number;
  readonly springRate?: number;
  readonly barHole?: string | { readonly left: string; readonly right: string };
  readonly barRate?: number;
  readonly wheel?: Partial<WheelDocument>;
}

export interface SetupDocument {
  readonly notes?: string;
  readonly front?: SetupAxleDocument;
  readonly rear?: SetupAxleDocument;
  readonly record?: readonly {
    readonly label: string;
    readonly unit?: string;
    readonly values: Readonly<Record<string, number | string>>;
  }[];
}

export interface LimitDocument {
  readonly reading?: string;
  readonly setting?: string;
  readonly axle?: AxleName;
  readonly side?: 'each' | 'left' | 'right' | 'both';
  /** left minus right */
  readonly difference?: boolean;
  readonly min?: number;
  readonly max?: number;
  readonly why?: string;
  readonly source?: string;
}

export interface ToleranceDocument {
  readonly set?: number;
  readonly matters?: number;
}
