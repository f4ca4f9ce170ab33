import type { AxleName, SideName, Triple } from './document';

/**
 * Questions asked of the car, as the file keeps them. `ask` says of which study; without it, of `reach`. Lengths are mm in
 * every file, angles degrees. Those without a `setup` of their own are asked of the setup that is chosen.
 */
export type KeptQuestionDocument =
  | QuestionDocument
  | WaysQuestionDocument
  | InfluenceQuestionDocument
  | MapQuestionDocument
  | SweepQuestionDocument
  | CompareQuestionDocument
  | GaugesQuestionDocument;

/** The study that a kept question is of. */
export type AskedStudy = NonNullable<KeptQuestionDocument['ask']>;

export type MotionName = 'bump' | 'roll' | 'steer';

/** Travel from where the car stands [mm, + bump], rack [mm], roll [degrees]; what is left out is 0. */
export interface AtDocument {
  readonly travel?: number;
  readonly rack?: number;
  readonly roll?: number;
}

/** Positions from one end of a motion to the other, both included. */
export interface OverDocument {
  readonly motion: MotionName;
  readonly from: number;
  readonly to: number;
  readonly steps: number;
}

export interface WaysQuestionDocument {
  readonly ask: 'ways';
  readonly setup?: string;
  readonly setToe?: boolean | number;
  readonly locked?: boolean;
  readonly axle: AxleName;
  readonly side?: SideName | 'both';
  readonly at?: AtDocument;
  readonly reading: string;
  readonly value: number;
  readonly tolerance?: number;
  /** two parts at a time too; false: each by itself only */
  readonly pairs?: boolean;
}

export interface InfluenceQuestionDocument {
  readonly ask: 'influence';
  readonly setToe?: boolean | number;
  readonly locked?: boolean;
  readonly axle: AxleName;
  readonly side?: SideName | 'both';
  readonly at?: AtDocument;
  /** columns */
  readonly readings?: readonly string[];
}

export interface MapQuestionDocument {
  readonly ask: 'map';
  readonly setToe?: boolean | number;
  readonly axle: AxleName;
  /** the wheels on which parts are turned */
  readonly side?: SideName | 'both';
  readonly at?: AtDocument;
  readonly x: { readonly adjuster: string };
  readonly y: { readonly adjuster: string } | { readonly motion: MotionName };
  readonly reading: string;
  /** whose reading, where it is one of a corner */
  readonly wheel?: SideName;
  /** what is marked */
  readonly value?: number;
  readonly tolerance?: number;
  /** a second reading, and on which side of a threshold it is to be */
  readonly where?: { readonly reading: string; readonly range?: readonly [number | null, number | null] };
}

/** Over one motion, or at positions of heave, roll and rack together. */
export interface SweepQuestionDocument {
  readonly ask: 'sweep';
  /** left out: both axles and the whole car */
  readonly axle?: AxleName;
  /** where what is not swept is held */
  readonly at?: AtDocument;
  readonly over?: OverDocument;
  readonly positions?: readonly AtDocument[];
  readonly readings?: readonly string[];
}

export interface CompareQuestionDocument {
  readonly ask: 'compare';
  readonly axle: AxleName;
  /** setups of this file; left out: what the bench compares with */
  readonly against?: readonly string[];
  readonly at?: AtDocument;
  /** of the curves */
  readonly motion?: MotionName;
  readonly readings?: readonly string[];
  /** readings that do not differ too */
  readonly alike?: boolean;
}

type PerWheel = Readonly<Partial<Record<'frontLeft' | 'frontRight' | 'rearLeft' | 'rearRight', number>>>;

export interface GaugesQuestionDocument {
  readonly ask: 'gauges';
  readonly axle: AxleName;
  readonly gauge: 'bumpSteer' | 'swing' | 'rim' | 'strings' | 'camber' | 'floor';
  /** bump that is jacked to, and every how much */
  readonly from?: number;
  readonly to?: number;
  readonly by?: number;
  /** of the two dials */
  readonly spacing?: number;
  readonly dials?: 'mm' | 'thou';
  /** degrees */
  readonly swing?: number;
  readonly diameter?: number;
  readonly offset?: number;
  readonly lip?: number;
  /** heights of the pads that the wheels stand on, and the cambers read there */
  readonly pads?: PerWheel;
  readonly cambers?: PerWheel;
}

/** A question of `reach`, which needs no `ask`. */
export interface QuestionDocument {
  readonly ask?: 'reach';
  readonly setup?: string;
  readonly setToe?: boolean | number;
  readonly locked?: boolean;
  readonly count?: number;
  readonly seed?: number;
  readonly wanted: readonly WantedDocument[];
  readonly may: readonly MayDocument[];
}

export interface WantedDocument {
  readonly reading: string;
  readonly axle?: AxleName;
  readonly side?: SideName | 'both';
  readonly at?: { readonly travel?: number | readonly [number, number]; readonly rack?: number; readonly roll?: number };
  readonly over?: {
    readonly motion: 'bump' | 'roll' | 'steer';
    readonly from: number;
    readonly to: number;
    readonly steps: number;
  };
  /** measured from the value at zero input of the same motion */
  readonly change?: boolean;
  readonly value?: number;
  /** either end null: open */
  readonly range?: readonly [number | null, number | null];
  readonly tolerance: number;
}

export type MayDocument =
  | { readonly axle: AxleName; readonly adjuster: string; readonly sides?: 'together' | 'apart' }
  | {
      readonly axle: AxleName;
      readonly point: string;
      readonly along: Triple;
      readonly range: readonly [number, number];
      readonly step: number;
      readonly sides?: 'together' | 'apart';
    };
