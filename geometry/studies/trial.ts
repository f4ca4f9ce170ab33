import type { AxleDocument, AxleName, CarDocument, SetupDocument, Triple } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { toMechanism } from '../car/toMechanism';
import { mirror, type Vector } from '../core/vector';
import { fail, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { assembleCar, type AssembledCar } from '../setup/assembleCar';
import { withSetting, type Sides } from '../setup/setupEdits';
import type { Question, Variable } from './question';

/** A car and a setup with the variables of a question at some of their values. */
export interface Trial {
  readonly mechanism: CarMechanism;
  readonly setup: SetupDocument;
}

const AXLES = ['front', 'rear'] as const;
const SIDES = ['both', 'left', 'right'] as const;

const isPoint = (variable: Variable): variable is Extract<Variable, { kind: 'point' }> => variable.kind === 'point';

/**
 * Lays values on the car: adjusters on the setup, free points on the drawing itself. The last mechanism with moved points is
 * kept: points change slowest where they are named first.
 */
export class TrialMaker {
  private near: AssembledCar | null = null;
  /** the setup as it is where nothing varies; the sides' own numbers give way to those of both */
  private readonly bare: SetupDocument;
  /** what is written into it, by axle and side */
  private readonly laid: readonly {
    readonly axle: AxleName;
    readonly side: Sides;
    readonly variables: readonly { readonly name: string; readonly index: number }[];
  }[];
  private kept: { readonly key: string; readonly mechanism: CarMechanism } | null = null;
  private readonly points: readonly { readonly variable: Extract<Variable, { kind: 'point' }>; readonly index: number }[];

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly question: Question,
    /** the axles that the question looks at */
    private readonly only: readonly AxleName[] = ['front', 'rear'],
  ) {
    this.points = question.variables.flatMap((variable, index) => (isPoint(variable) ? [{ variable, index }] : []));
    const adjusters = question.variables.flatMap((variable, index) => (isPoint(variable) ? [] : [{ ...variable, index }]));
    this.bare = adjusters.reduce((setup, { axle, name, side }) => withSetting(setup, axle, name, side, null), question.setup);
    this.laid = AXLES.flatMap((axle) =>
      SIDES.flatMap((side) => {
        const variables = adjusters.filter((one) => one.axle === axle && one.side === side);
        return variables.length === 0 ? [] : [{ axle, side, variables }];
      }),
    );
  }

  /** @param values - one of each variable, in the file's unit for adjusters, mm for points */
  make(values: readonly (number | null)[]): Trial {
    return { mechanism: this.mechanismAt(values), setup: this.setupAt(values) };
  }

  /** The setup without the numbers that vary, and with these ones: written at once, for it is done for every combination. */
  private setupAt(values: readonly (number | null)[]): SetupDocument {
    const setup: { -readonly [Key in keyof SetupDocument]: SetupDocument[Key] } = { ...this.bare };
    for (const { axle, side, variables } of this.laid) {
      const entries: Record<string, number | null> = { ...this.bare[axle]?.[side] };
      for (const { name, index } of variables) entries[name] = values[index];
      setup[axle] = { ...setup[axle], [side]: entries };
    }
    return setup;
  }

  /** The car put together, or why that cannot be: a toe reset that leaves its adjuster's range is no answer either. */
  assemble(values: readonly (number | null)[]): Result<AssembledCar, Failure> {
    const { mechanism, setup } = this.make(values);
    const first = assembleCar(mechanism, setup, this.only, this.near);
    if (!first.ok) return first;
    // the first of a search is followed from itself, so that its toe reset ends where those of its neighbours do
    const car = this.near === null ? assembleCar(mechanism, setup, this.only, first.value) : first;
    if (!car.ok) return car;
    this.near = car.value;
    for (const axle of [car.value.front, car.value.rear]) {
      if (axle?.toeReset?.inRange === false && this.question.axles.includes(axle.axle))
        return fail({ kind: 'unreachable', message: `the toe reset leaves the range of ${axle.toeReset.adjuster}` });
    }
    return car;
  }

  private mechanismAt(values: readonly (number | null)[]): CarMechanism {
    if (this.points.length === 0) return this.mechanism;
    const key = this.points.map(({ index }) => values[index]).join();
    if (this.kept?.key !== key) {
      let { document } = this.mechanism;
      for (const { variable, index } of this.points)
        document = withPointMoved(document, this.mechanism.mmPerUnit, variable, values[index] ?? 0);
      this.kept = { key, mechanism: toMechanism(document) };
    }
    return this.kept.mechanism;
  }
}

const added = (point: Triple, by: Vector): Triple => [point[0] + by[0], point[1] + by[1], point[2] + by[2]];

/** The car with a point of its drawing moved along a direction, mirrored on the right. @param byMm - how far */
export function withPointMoved(
  document: CarDocument,
  mmPerUnit: number,
  { axle, name, side, along }: Extract<Variable, { kind: 'point' }>,
  byMm: number,
): CarDocument {
  const described = document[axle];
  if (described === undefined || byMm === 0) return document;
  const size = byMm / mmPerUnit;
  const by: Vector = [along[0] * size, along[1] * size, along[2] * size];
  const left = described.points[name];
  const right = described.right?.points?.[name] ?? mirror([left[0], left[1], left[2]]);
  const isMirrored = described.right?.points?.[name] === undefined;
  const made: AxleDocument = {
    ...described,
    points: side === 'right' ? described.points : { ...described.points, [name]: added(left, by) },
    ...(side === 'both' && isMirrored
      ? {}
      : {
          right: {
            ...described.right,
            points: { ...described.right?.points, [name]: side === 'left' ? right : added(right, mirror(by)) },
          },
        }),
  };
  return { ...document, [axle]: made };
}
