import type { AxleName, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import type { Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { inContractUnits, readingsInContractUnits, type ReadingValues } from '../readings/contractUnits';
import { sweepCar } from '../readings/readings';
import type { PerSide, Position } from '../readings/rows';
import { assembleCar } from '../setup/assembleCar';
import type { CsvReadings } from './sweepCsv';
import { answerStudy, roundOf, type Study } from './study';

export interface SweepQuestion {
  readonly setup: SetupDocument;
  /** whose rows are wanted */
  readonly axles: readonly AxleName[];
  /** in any order; angles in radians */
  readonly positions: readonly Position[];
}

/** One axle at one position, in contract units; a position that cannot be reached is a row with its reason. */
export type SweptRow =
  | (CsvReadings & {
      /** from design, and from where the car stands [mm] */
      readonly travel: PerSide<number>;
      readonly travelFromStanding: PerSide<number>;
      readonly rack: number;
      /** [degrees] */
      readonly roll: number;
      /** "left.caster" -> why there is no value */
      readonly why: Readonly<Record<string, string>>;
    })
  | { readonly error: Failure };

export interface Sweep {
  readonly axles: readonly { readonly axle: AxleName; readonly rows: readonly SweptRow[] }[];
  /** readings that need both axles, one a position; their values are null where either is missing */
  readonly wholeCar: readonly { readonly values: ReadingValues; readonly why: Readonly<Record<string, string>> }[];
}

/** Positions that one chunk works out. */
const POSITIONS = 250;

/**
 * All readings over a list of positions.
 * @returns the failure of the setup itself where it cannot be put together
 */
export const sweep = (mechanism: CarMechanism, question: SweepQuestion): Result<Sweep, Failure> =>
  answerStudy(sweepStudy(mechanism, question));

export function sweepStudy(mechanism: CarMechanism, { setup, axles, positions }: SweepQuestion): Study<Sweep> {
  const car = assembleCar(mechanism, setup);
  return {
    failure: car.ok ? null : car.failure,
    round: () =>
      roundOf<Sweep, Sweep>({
        doing: 'moving the car',
        chunks: Math.ceil(positions.length / POSITIONS),
        run: (chunk) => {
          if (!car.ok) throw new Error(car.failure.message);
          const rows = sweepCar(car.value, positions.slice(chunk * POSITIONS, (chunk + 1) * POSITIONS));
          return {
            axles: axles.map((axle) => ({ axle, rows: rows.map((row) => rowOf(row[axle])) })),
            wholeCar: rows.map(({ wholeCar, why }) => ({ values: readingsInContractUnits(wholeCar, 'car'), why })),
          };
        },
        merge: (parts) => ({
          answer: {
            axles: axles.map((axle, index) => ({ axle, rows: parts.flatMap((part) => part.axles[index].rows) })),
            wholeCar: parts.flatMap((part) => part.wholeCar),
          },
        }),
      }),
  };
}

function rowOf(result: ReturnType<typeof sweepCar>[number]['front']): SweptRow {
  if (result === null) return { error: { kind: 'unreachable', message: 'this car has no such axle' } };
  if (!result.ok) return { error: result.failure };
  const { travel, travelFromStanding, rack, roll, left, right, both, why } = inContractUnits(result.value);
  return { travel, travelFromStanding, rack, roll, left, right, both, why };
}
