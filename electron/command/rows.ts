import {
  differenceOfReadings,
  inContractUnits,
  readingsInContractUnits,
  type AxleName,
  type AxleRow,
  type CarReadings,
  type Failure,
  type LimitJudgement,
  type ReadingValue,
  type Result,
  type Warning,
} from '../../geometry/index';
import { errorOfFailure, type ErrorDocument } from './commandError';

type Readings = Readonly<Record<string, ReadingValue>>;

export interface LimitDocumentRow {
  readonly name: string;
  readonly value: number | null;
  readonly spare: number | null;
  readonly ok: boolean;
}

/** The same position in another setup, and this setup less that one. */
export type AgainstRow =
  | {
      readonly setup: string;
      readonly left: Readings;
      readonly right: Readings;
      readonly both: Readings;
      readonly difference: { readonly left: Readings; readonly right: Readings; readonly both: Readings };
      readonly why: Readonly<Record<string, string>>;
    }
  | { readonly setup: string; readonly error: ErrorDocument };

/** A row of readings as the contract has it: lengths in mm, angles in degrees. */
export interface ReadingsRow {
  readonly input?: number;
  readonly travel: { readonly left: number; readonly right: number };
  readonly travelFromStanding: { readonly left: number; readonly right: number };
  readonly rack: number;
  readonly roll: number;
  readonly left: Readings;
  readonly right: Readings;
  readonly both: Readings;
  readonly toeReset: AxleRow['toeReset'];
  readonly limits: readonly LimitDocumentRow[];
  readonly warnings: readonly Warning[];
  readonly why: Readonly<Record<string, string>>;
  readonly against?: AgainstRow;
}

/** A position that cannot be reached. */
export interface FailedRow {
  readonly input?: number;
  readonly error: ErrorDocument;
}

export type Row = ReadingsRow | FailedRow;

export const isFailed = (row: Row): row is FailedRow => 'error' in row;

const withoutNegativeZero = (value: number): number => (value === 0 ? 0 : value);
const sidesOf = ({ left, right }: { readonly left: number; readonly right: number }) => ({
  left: withoutNegativeZero(left),
  right: withoutNegativeZero(right),
});

export interface RowExtras {
  /** what was swept, in its unit; left out where nothing was */
  readonly input: number | undefined;
  readonly limits: readonly LimitDocumentRow[];
  readonly against?: { readonly setup: string; readonly result: Result<AxleRow, Failure> };
}

/** One answer of the engine as a row of the contract. */
export function rowOf(result: Result<AxleRow, Failure>, extras: RowExtras): Row {
  const input = extras.input === undefined ? {} : { input: extras.input };
  if (!result.ok) return { ...input, error: errorOfFailure(result.failure) };
  const row = inContractUnits(result.value);
  return {
    ...input,
    travel: sidesOf(row.travel),
    travelFromStanding: sidesOf(row.travelFromStanding),
    rack: withoutNegativeZero(row.rack),
    roll: row.roll,
    left: row.left,
    right: row.right,
    both: row.both,
    toeReset: row.toeReset,
    limits: extras.limits,
    warnings: row.warnings,
    why: row.why,
    ...(extras.against ? { against: againstOf(row, extras.against) } : {}),
  };
}

function againstOf(
  row: { readonly left: Readings; readonly right: Readings; readonly both: Readings },
  against: { readonly setup: string; readonly result: Result<AxleRow, Failure> },
): AgainstRow {
  const { setup, result } = against;
  if (!result.ok) return { setup, error: errorOfFailure(result.failure) };
  const { left, right, both, why } = inContractUnits(result.value);
  const difference = {
    left: differenceOfReadings(row.left, left),
    right: differenceOfReadings(row.right, right),
    both: differenceOfReadings(row.both, both),
  };
  return { setup, left, right, both, difference, why };
}

/** The limits that concern an axle: its own, and those of the whole car. */
export const limitsOf = (limits: readonly LimitJudgement[], axle: AxleName): readonly LimitDocumentRow[] =>
  limits
    .filter((limit) => !limit.name.startsWith(axle === 'front' ? 'rear.' : 'front.'))
    .map(({ name, value, spare, ok }) => ({ name, value, spare, ok }));

/** The readings of the whole car, with the reasons of those that have no value. */
export interface WholeCarAnswer {
  readonly [reading: string]: unknown;
  readonly why: Readonly<Record<string, string>>;
}

export const wholeCarOf = ({ wholeCar, why }: Pick<CarReadings, 'wholeCar' | 'why'>): WholeCarAnswer => ({
  ...readingsInContractUnits(wholeCar, 'car'),
  why,
});

export function differenceOfWholeCar(these: WholeCarAnswer, those: WholeCarAnswer): Readings {
  const readings = ({ why: _why, ...values }: WholeCarAnswer): Readings => values as Readings;
  return differenceOfReadings(readings(these), readings(those));
}
