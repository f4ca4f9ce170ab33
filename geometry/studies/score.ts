import type { AxleName } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { setWithin } from '../car/tolerances';
import { findReading } from '../readings/catalogue';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import { sweepCar, sweepReadings } from '../readings/readings';
import type { Position } from '../readings/rows';
import { scopeOf } from '../readings/scope';
import type { AssembledCar } from '../setup/assembleCar';
import { judgeLimits, type LimitJudgement } from '../setup/judgeLimits';
import type { Question, Wanted } from './question';
import { TrialMaker } from './trial';

/** How far a combination is from what is wanted. */
export interface Scored {
  /** Σ over the wanted of the mean of (miss ÷ tolerance)² over its places */
  readonly score: number;
  /** in the order of the question: the value with the largest miss, and that miss, in contract units */
  readonly wanted: readonly { readonly worst: number; readonly missBy: number }[];
}

/** A limit that alone keeps a combination from being an answer, and by how much. */
export interface KeptOut {
  readonly limit: LimitJudgement;
  readonly end: 'min' | 'max';
  /** what the reading is set within, in contract units */
  readonly by: number;
}

/** A value of a range is met when it misses by no more than rounding. */
const MET = 1e-9;

/** Readings of some owner at some positions: one call of the engine. */
interface Group {
  readonly axle: AxleName | 'wholeCar';
  readonly positions: readonly Position[];
  readonly keys: readonly string[];
  readonly wanted: readonly {
    readonly index: number;
    readonly wanted: Wanted;
    readonly at: readonly number[];
    readonly from: number | null;
  }[];
}

const missOf = ({ least, greatest }: Wanted, value: number): number =>
  value < least ? least - value : value > greatest ? value - greatest : 0;

/** Whether every reading is as it is wanted. */
export const isMet = (question: Question, { wanted }: Scored): boolean =>
  question.wanted.every(({ isValue, tolerance }, index) => wanted[index].missBy <= (isValue ? tolerance : 0) + MET);

/** Scores combinations of a question, one after the other. */
export class Scorer {
  private readonly trials: TrialMaker;
  private readonly groups: readonly Group[];
  private readonly hasLimits: boolean;

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly question: Question,
  ) {
    this.groups = groupsOf(question);
    this.hasLimits = (mechanism.document.limits ?? []).length > 0;
    const needsBoth = this.groups.some(({ axle, keys }) => axle === 'wholeCar' || scopeOf(keys).transfer);
    this.trials = new TrialMaker(mechanism, question, needsBoth || this.hasCarLimit() ? ['front', 'rear'] : question.axles);
  }

  private hasCarLimit(): boolean {
    return (this.mechanism.document.limits ?? []).some(
      ({ reading }) => reading !== undefined && findReading(reading)?.of === 'car',
    );
  }

  /** The car with these values, toe reset as asked; null where it cannot be there. */
  assemble(values: readonly (number | null)[]): AssembledCar | null {
    const car = this.trials.assemble(values);
    return car.ok ? car.value : null;
  }

  /** What counts of every wanted reading at each of its places, in contract units; null where one has no value. */
  wantedValues(car: AssembledCar): readonly (readonly number[])[] | null {
    const wanted = new Array<readonly number[]>(this.question.wanted.length);
    for (const group of this.groups) {
      const values = valuesOf(car, group);
      if (values === null) return null;
      for (const { index, wanted: one, at, from } of group.wanted) {
        const counted = one.owners.flatMap((owner) => {
          const zero = from === null ? 0 : valueAt(one, values, from, owner);
          return at.map((position) => minus(valueAt(one, values, position, owner), zero));
        });
        const known = counted.filter((value) => value !== null);
        if (known.length < counted.length) return null;
        wanted[index] = known;
      }
    }
    return wanted;
  }

  /**
   * @param bound - a sum past this is given up: the combination is no answer that anybody would see
   * @returns null where it is given up, cannot be reached, or a wanted reading has no value
   */
  score(values: readonly (number | null)[], bound: number): { readonly scored: Scored; readonly car: AssembledCar } | null {
    const car = this.assemble(values);
    if (car === null) return null;
    const scored = this.scoreCar(car, bound);
    return scored === null ? null : { scored, car };
  }

  scoreCar(car: AssembledCar, bound: number): Scored | null {
    const wanted = new Array<Scored['wanted'][number]>(this.question.wanted.length);
    let score = 0;
    for (const group of this.groups) {
      const values = valuesOf(car, group);
      if (values === null) return null;
      for (const { index, wanted: one, at, from } of group.wanted) {
        const result = scoreOf(one, at, from, values);
        if (result === null) return null;
        score += result.share;
        if (score > bound) return null;
        wanted[index] = result;
      }
    }
    return { score, wanted: wanted.map(({ worst, missBy }) => ({ worst, missBy })) };
  }

  /** Limits of the file that this car breaks, of the axles of the question and of the whole car. */
  brokenLimits(car: AssembledCar): readonly LimitJudgement[] {
    if (!this.hasLimits) return [];
    return judgeLimits(car).filter(({ ok, name }) => {
      const [owner] = name.split('.');
      return !ok && (owner === 'wholeCar' || this.question.axles.some((axle) => axle === owner));
    });
  }

  /** A length is limited in the file's unit. */
  private scaleOf(reading: string | undefined): number {
    return reading !== undefined && findReading(reading)?.quantity === 'length' ? this.mechanism.mmPerUnit : 1;
  }

  /** The one limit that alone is in the way, where letting it out by what is set would let the combination in; else null. */
  keptOutBy(broken: readonly LimitJudgement[]): KeptOut | null {
    const [judgement, ...others] = broken;
    if (judgement === undefined || others.some(({ limit }) => limit !== judgement.limit)) return null;
    const { limit, value } = judgement;
    const within = limit.reading === undefined ? undefined : setWithin(this.mechanism.document, limit.reading);
    if (within === undefined || value === null) return null;
    if (broken.some(({ spare }) => spare === null || spare < -within - MET)) return null;
    return {
      limit: judgement,
      end: limit.min !== undefined && value < limit.min * this.scaleOf(limit.reading) ? 'min' : 'max',
      by: within,
    };
  }
}

function groupsOf(question: Question): readonly Group[] {
  const axles: (AxleName | 'wholeCar')[] = ['front', 'rear', 'wholeCar'];
  return axles.flatMap((axle) => {
    const own = question.wanted.map((wanted, index) => ({ wanted, index })).filter(({ wanted }) => wanted.axle === axle);
    if (own.length === 0) return [];
    const used = [...new Set(own.flatMap(({ wanted }) => [...wanted.at, ...(wanted.from === null ? [] : [wanted.from])]))].sort(
      (a, b) => a - b,
    );
    return [
      {
        axle,
        positions: used.map((index) => question.positions[index]),
        keys: own.map(({ wanted }) => wanted.entry.key),
        wanted: own.map(({ wanted, index }) => ({
          index,
          wanted,
          at: wanted.at.map((position) => used.indexOf(position)),
          from: wanted.from === null ? null : used.indexOf(wanted.from),
        })),
      },
    ];
  });
}

/** By owner and position; null where a position cannot be reached. */
type OwnersAt = readonly Readonly<Record<string, object>>[];

function valuesOf(car: AssembledCar, { axle, positions, keys }: Group): OwnersAt | null {
  if (axle === 'wholeCar') return sweepCar(car, positions).map(({ wholeCar }) => ({ wholeCar }));
  const rows = sweepReadings(car, axle, positions, keys, false);
  const owners: Readonly<Record<string, object>>[] = [];
  for (const row of rows) {
    if (!row.ok) return null;
    owners.push(row.value as unknown as Readonly<Record<string, object>>);
  }
  return owners;
}

interface Share {
  readonly share: number;
  readonly worst: number;
  readonly missBy: number;
}

function valueAt({ entry }: Wanted, values: OwnersAt, position: number, owner: string): number | null {
  const value = (values[position][owner] as Readonly<Record<string, ReadingValue>>)[entry.key] ?? null;
  const converted = valueInContractUnits(value, entry.quantity);
  return typeof converted === 'number' ? converted : null;
}

const minus = (value: number | null, zero: number | null): number | null =>
  value === null || zero === null ? null : value - zero;

function scoreOf(wanted: Wanted, at: readonly number[], from: number | null, values: OwnersAt): Share | null {
  const { owners, tolerance } = wanted;
  let sum = 0;
  let worst = NaN;
  let missBy = -1;
  for (const owner of owners) {
    const zero = from === null ? 0 : valueAt(wanted, values, from, owner);
    if (zero === null) return null;
    for (const position of at) {
      const value = valueAt(wanted, values, position, owner);
      if (value === null) return null;
      const counted = value - zero;
      const miss = missOf(wanted, counted);
      sum += (miss / tolerance) * (miss / tolerance);
      if (miss > missBy) [worst, missBy] = [counted, miss];
    }
  }
  return { share: sum / (owners.length * at.length), worst, missBy };
}
