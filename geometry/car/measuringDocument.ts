import type { AxleName, SideName, Triple } from './document';

type CoordinateAxis = 'x' | 'y' | 'z';

/** One reading of a tape, level or gauge; `value` and `sigma` in the file's unit, degrees for an inclination. */
export type ObservationDocument = { readonly value: number; readonly sigma: number } & (
  | { readonly kind: 'distance'; readonly from: string; readonly to: string }
  | { readonly kind: 'height'; readonly point: string }
  | { readonly kind: 'coordinate'; readonly point: string; readonly axis: CoordinateAxis }
  | { readonly kind: 'difference'; readonly from: string; readonly to: string; readonly axis: CoordinateAxis }
  | { readonly kind: 'inclination'; readonly from: string; readonly to: string; readonly view: 'front' | 'side' }
);

export interface SurveyDocument {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly known?: Readonly<Record<string, Triple>>;
  readonly observations: readonly ObservationDocument[];
}

export interface MeasurementDocument {
  readonly name: string;
  readonly axle: AxleName;
  readonly side?: SideName | 'both';
  readonly setup?: string;
  readonly input: 'travel' | 'rack' | 'roll';
  readonly reading: string;
  /** [input, value] */
  readonly rows: readonly (readonly [number, number])[];
  readonly sigma?: number;
}

/** Standard uncertainties in the file's unit: of a point in every direction, or per coordinate. */
export interface UncertaintyDocument {
  readonly default?: number;
  readonly front?: Readonly<Record<string, number | Triple>>;
  readonly rear?: Readonly<Record<string, number | Triple>>;
}
