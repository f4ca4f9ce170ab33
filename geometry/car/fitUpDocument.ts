import type { AxleName, SideName, Triple } from './document';

/** A solid of a part, at the design position, left side, in the file's unit. */
export type ShapeDocument =
  | { readonly kind: 'sphere'; readonly at: Triple; readonly radius: number }
  | { readonly kind: 'capsule' | 'cylinder'; readonly from: Triple; readonly to: Triple; readonly radius: number }
  | {
      readonly kind: 'box';
      readonly centre: Triple;
      readonly size: Triple;
      /** first two axes; the third is their cross product */
      readonly axes?: readonly [Triple, Triple];
    }
  /** made from the wheel's numbers */
  | { readonly kind: 'tyre' | 'rim' }
  | {
      readonly kind: 'mesh';
      /** relative to the car file */
      readonly file?: string;
      /** binary STL in base64 */
      readonly data?: string;
      readonly scale?: number;
      readonly place?: { readonly at?: Triple; readonly axes?: readonly [Triple, Triple] };
    };

export interface PartDocument {
  /** needed where the carrier is on an axle and the car has two */
  readonly axle?: AxleName;
  readonly side?: SideName;
  /** true: this side only; otherwise mirrored to the other */
  readonly only?: boolean;
  /** carrier */
  readonly on: string;
  readonly shape: ShapeDocument;
  /** picks the margin */
  readonly kind?: string;
  readonly margin?: number;
  readonly touches?: readonly string[];
  /** how a part on a rod that could turn about its own line is kept from turning; without it all of its swept ring counts */
  readonly held?: string;
}

/** A joint, by the name of its point. */
export interface JointDocument {
  readonly axle?: AxleName;
  readonly bolt: Triple;
  readonly boltOn: string;
  readonly bore?: Triple;
  readonly boreOn?: string;
  /** the rod that is free to turn about itself, where there is no bore */
  readonly rod?: string;
  /** degrees, the maker's figure */
  readonly rated: number;
}

export interface SpanDocument {
  readonly axle?: AxleName;
  readonly side?: SideName;
  readonly from: Triple | string;
  readonly fromOn: string;
  readonly to: Triple | string;
  readonly toOn: string;
  readonly length: number;
}
