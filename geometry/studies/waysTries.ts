import { realSettings, stepScaleOf } from '../adjusters/stepScale';
import type { AdjusterDocument, AxleName, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { mattersOf, setWithin } from '../car/tolerances';
import { scopeOf } from '../readings/scope';
import { readingsOfCar, sweepReadings, type SomeReadings } from '../readings/readings';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import { assembleCar } from '../setup/assembleCar';
import { judgeLimits } from '../setup/judgeLimits';
import { settingOf, withSetting } from '../setup/setupEdits';
import { brokenLimits } from './brokenLimits';
import { carNumberNames, carNumbers, changesBetween, weightOf, type CarNumber, type Numbers } from './carNumbers';
import { withToeReset } from './toeReset';
import type { Tried } from './tried';
import type { WaysQuestion } from './waysQuestion';

/** Neither the file nor the defaults say how near such a reading is set: within this part of what is asked. */
const NO_TOLERANCE = 1e-9;

/** A part that may be turned, with its marks. */
export interface Adjustable {
  readonly name: string;
  readonly adjuster: AdjusterDocument;
  /** where the part can stand, ascending; null is a concentric bushing */
  readonly settings: readonly (number | null)[];
  /** whether the part is left where the setup has it, on every wheel that is asked of */
  readonly isStill: (setting: number | null) => boolean;
}

/** The asked reading alone in some setup. */
export interface Look {
  /** mean of value − wanted over the wheels [mm or degrees] */
  readonly signed: number;
  /** the worse wheel's, ≥ 0 [mm or degrees] */
  readonly missBy: number;
}

/** The car of a question with parts turned, looked at as cheaply as what is asked of it allows. */
export class WaysTries {
  /** how near counts as reached [mm or degrees] */
  readonly within: number;
  /** with the toe that is set after every move */
  readonly setup: SetupDocument;
  readonly owners: readonly ('left' | 'right' | 'both')[];
  /** the readings that were not asked for */
  readonly others: readonly CarNumber[];
  private readonly names: readonly CarNumber[];
  /** others of the axle itself that weigh, and need nothing of the other axle */
  private readonly weighed: readonly CarNumber[];
  private readonly weighedKeys: readonly string[];
  private readonly axles: readonly AxleName[];

  constructor(
    readonly mechanism: CarMechanism,
    readonly question: WaysQuestion,
  ) {
    const { document } = mechanism;
    const { entry, side, axle } = question;
    this.owners = entry.of === 'axle' ? ['both'] : side === 'both' ? ['left', 'right'] : [side];
    const within = question.tolerance ?? setWithin(document, entry.key) ?? NO_TOLERANCE * Math.max(1, Math.abs(question.value));
    this.within = within * (1 + 1e-9);
    this.names = carNumberNames(document);
    const asked = this.owners.map((owner) => `${axle}.${owner}.${entry.key}`);
    this.others = this.names.filter(({ name }) => !asked.includes(name));
    this.weighed = this.others.filter(
      (one) => one.axle === axle && mattersOf(document, one.entry.key) !== undefined && !scopeOf([one.entry.key], false).transfer,
    );
    this.weighedKeys = [...new Set(this.weighed.map((one) => one.entry.key))];
    this.setup = withToeReset(document, question.setup, [axle], question.toeReset);
    this.axles = scopeOf([entry.key], false).transfer ? ['front', 'rear'] : [axle];
  }

  /** The parts of the axle that may be turned, in the order of the file. */
  adjustables(): readonly Adjustable[] {
    const { axle, side, withLocked } = this.question;
    const described = this.mechanism.document[axle];
    const sides = side === 'both' ? (['left', 'right'] as const) : [side];
    return Object.entries(described?.adjusters ?? {}).flatMap(([name, adjuster]) => {
      if (adjuster.locked !== undefined && !withLocked) return [];
      // the toe reset turns it
      if (described?.toeAdjuster === name && this.setup[axle]?.setToe !== undefined) return [];
      const real = realSettings(stepScaleOf(adjuster));
      const now = sides.map((one) => settingOf(this.setup, axle, name, one));
      // a bushing that is not there stands at no clock; of any other part nothing set is zero
      const isBushing = adjuster.kind === 'offset-bushing';
      const isStill = (setting: number | null): boolean =>
        now.every((own) => (isBushing ? own === setting : (own ?? 0) === (setting ?? 0)));
      return [{ name, adjuster, settings: isBushing && now[0] === null ? [null, ...real] : real, isStill }];
    });
  }

  at(setup: SetupDocument, { name }: Pick<Adjustable, 'name'>, setting: number | null): SetupDocument {
    return withSetting(setup, this.question.axle, name, this.question.side, setting);
  }

  settingIn(setup: SetupDocument, { name }: Pick<Adjustable, 'name'>): number | null {
    const { axle, side } = this.question;
    return settingOf(setup, axle, name, side === 'right' ? 'right' : 'left');
  }

  /** The asked reading; null where the car cannot be there, a toe reset leaves its range, or the reading has no value. */
  look(setup: SetupDocument): Look | null {
    const { axle, entry } = this.question;
    const row = this.rowOf(setup, this.axles, [entry.key]);
    return row === null ? null : this.lookOf(this.owners.map((owner) => numberOf(row, { axle, owner, entry })));
  }

  private lookOf(values: readonly (number | null)[]): Look | null {
    let [sum, missBy] = [0, 0];
    for (const value of values) {
      if (value === null) return null;
      const miss = value - this.question.value;
      sum += miss;
      missBy = Math.max(missBy, Math.abs(miss));
    }
    return { signed: sum / values.length, missBy };
  }

  /** What changes of the axle's own readings weigh: no more than the whole weight. @param now - the numbers of the setup itself */
  leastWeight(setup: SetupDocument, now: Numbers): number {
    const row = this.rowOf(setup, [this.question.axle], this.weighedKeys);
    if (row === null) return Infinity;
    const numbers = Object.fromEntries(this.weighed.map((one) => [one.name, numberOf(row, one)]));
    return weightOf(this.mechanism.document, this.weighed, changesBetween(now, numbers));
  }

  private rowOf(setup: SetupDocument, axles: readonly AxleName[], keys: readonly string[]): SomeReadings | null {
    const { axle, at } = this.question;
    const car = assembleCar(this.mechanism, setup, axles);
    if (!car.ok || car.value[axle]?.toeReset?.inRange === false) return null;
    const [row] = sweepReadings(car.value, axle, [at], keys, false);
    return row.ok ? row.value : null;
  }

  /** Σ (change ÷ what matters)² over every reading that was not asked for. */
  weight(now: Tried, tried: Tried): number {
    return weightOf(this.mechanism.document, this.others, changesBetween(now.numbers, tried.numbers));
  }

  /** All of the car in a setup; null as `look`. */
  try(setup: SetupDocument): Tried | null {
    const { axle, at, entry, withWalls } = this.question;
    const car = assembleCar(this.mechanism, setup);
    if (!car.ok || car.value[axle]?.toeReset?.inRange === false) return null;
    const numbers = carNumbers(this.names, readingsOfCar(car.value, at));
    const values = this.owners.map((owner) => numbers[`${axle}.${owner}.${entry.key}`] ?? null);
    const looked = this.lookOf(values);
    if (looked === null) return null;
    const [first, second = first] = values as number[];
    const broken = judgeLimits(car.value).filter(({ ok, name }) => !ok && (name.startsWith(axle) || name.startsWith('wholeCar')));
    return {
      setup,
      value: this.owners.length === 2 ? { left: first, right: second } : first,
      ...looked,
      numbers,
      isLegal: broken.length === 0,
      broken: withWalls === true ? brokenLimits(broken) : [],
    };
  }
}

function numberOf(row: SomeReadings, { owner, entry }: Pick<CarNumber, 'axle' | 'owner' | 'entry'>): number | null {
  const of = (row as unknown as Readonly<Record<string, Readonly<Record<string, ReadingValue>>>>)[owner];
  const value = valueInContractUnits(of?.[entry.key] ?? null, entry.quantity);
  return typeof value === 'number' ? value : null;
}
