import type { SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { assembleCar } from '../setup/assembleCar';
import { withAxleValue } from '../setup/setupEdits';
import { EXACT_TO, openAfterReset, RESET_OPEN } from './equalScores';
import { NearnessOf } from './nearness';
import { valuesAt, type Question } from './question';
import { Scorer } from './score';
import { TrialMaker } from './trial';

/** What is seen of a question before its combinations are tried: plain data. */
export interface SeenParts {
  /** by variable: it changes nothing of what is wanted, nor where a toe reset ends */
  readonly idle: readonly boolean[];
  /** by what is wanted: how far it may differ because a toe reset ends anywhere in its tolerance, in contract units */
  readonly open: readonly number[];
}

/** Values of a variable that are looked at, its ends among them. */
const LOOKED_AT = 9;
/** A wanted reading that changes by less, in contract units or of itself where it is large, has not changed. */
const SAME_READING = 1e-8;
/** Nor has a part that a toe reset turns by less, in the file's unit. */
const SAME_SETTING = 1e-6;
/** What a reset holds is moved by so much to see what hangs on it [degrees, file's unit]. */
const MOVED = { setToe: 0.01, rideHeight: 0.01 };
/** What hangs on toe is not the same at every combination. */
const MARGIN = 5;

/** What a car is seen by. */
interface Seen {
  readonly wanted: readonly number[];
  /** where toe adjusters stand after their reset */
  readonly reset: readonly number[];
}

/** Looks at single parts of a question, from a few combinations spread over it. */
export class PartsLook {
  private readonly scorer: Scorer;
  private readonly bases: readonly (readonly number[])[];

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly question: Question,
  ) {
    const { variables } = question;
    const { home } = new NearnessOf(mechanism, question, []);
    this.scorer = new Scorer(mechanism, question);
    this.bases = [home, variables.map(() => 0), variables.map(({ values }) => values.length - 1)];
  }

  /** Whether this variable changes nothing of what is wanted, nor where a toe reset ends. */
  isIdle(at: number): boolean {
    const { length } = this.question.variables[at].values;
    const looked = Math.min(length, LOOKED_AT);
    const indexes = Array.from({ length: looked }, (_, i) => Math.round((i * (length - 1)) / Math.max(1, looked - 1)));
    let wasSeen = false;
    for (const base of this.bases) {
      let first: Seen | null | undefined;
      for (const index of indexes) {
        const seen = this.seenAt(base.map((other, i) => (i === at ? index : other)));
        if (first === undefined) first = seen;
        else if (!isSame(first, seen)) return false;
      }
      if (first) wasSeen = true;
    }
    return wasSeen;
  }

  private seenAt(indexes: readonly number[]): Seen | null {
    const car = this.scorer.assemble(valuesAt(this.question, indexes));
    const wanted = car === null ? null : this.scorer.wantedValues(car);
    if (car === null || wanted === null) return null;
    const reset = this.question.axles.flatMap((axle) => {
      const toe = car[axle]?.toeReset;
      return toe ? [toe.left, toe.right] : [];
    });
    return { wanted: wanted.flat(), reset };
  }

  /** @see SeenParts.open */
  open(): readonly number[] {
    const { question, mechanism } = this;
    const resets = question.axles.filter((axle) => question.setup[axle]?.setToe !== undefined);
    const open = Math.max(0, ...resets.map((axle) => openAfterReset(mechanism.document, question.setup, axle)));
    const hanging = question.wanted.map(() => 0);
    if (open === 0) return hanging;
    const trials = new TrialMaker(mechanism, question);
    for (const base of this.bases) {
      const { mechanism: laid, setup } = trials.make(valuesAt(question, base));
      const read = (changed: SetupDocument): readonly (readonly number[])[] | null => {
        const car = assembleCar(laid, changed);
        return car.ok ? this.scorer.wantedValues(car.value) : null;
      };
      const now = read(setup);
      if (now === null) continue;
      const sums = question.wanted.map(() => 0);
      const add = (then: ReturnType<typeof read>, perMove: number): void => {
        now.forEach((values, index) => {
          sums[index] += then === null ? Infinity : largestChange(values, then[index]) * perMove;
        });
      };
      for (const axle of resets) {
        const { setToe = 0, rideHeight } = setup[axle] ?? {};
        add(read(withAxleValue(setup, axle, 'setToe', setToe + MOVED.setToe)), RESET_OPEN.toeDeg / MOVED.setToe);
        if (rideHeight === undefined) continue;
        const perMove = RESET_OPEN.heightMm / (MOVED.rideHeight * mechanism.mmPerUnit);
        add(read(withAxleValue(setup, axle, 'rideHeight', rideHeight + MOVED.rideHeight)), perMove);
      }
      sums.forEach((sum, index) => {
        hanging[index] = Math.max(hanging[index], sum);
      });
    }
    return question.wanted.map(({ entry, from }, index) => {
      // a change is the difference of two readings
      const most = (from === null ? 1 : 2) * EXACT_TO[entry.quantity];
      return open * Math.min(most, MARGIN * hanging[index]);
    });
  }
}

function isSame(a: Seen | null, b: Seen | null): boolean {
  if (a === null || b === null) return a === b;
  return (
    a.wanted.every((value, index) => Math.abs(value - b.wanted[index]) <= SAME_READING * Math.max(1, Math.abs(value))) &&
    a.reset.length === b.reset.length &&
    a.reset.every((setting, index) => Math.abs(setting - b.reset[index]) <= SAME_SETTING)
  );
}

const largestChange = (now: readonly number[], then: readonly number[]): number =>
  Math.max(...now.map((value, place) => Math.abs(then[place] - value)));
