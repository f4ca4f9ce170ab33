import type { AdjusterDocument, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { realSettings, stepScaleOf } from '../adjusters/stepScale';
import { setWithin } from '../car/tolerances';
import { succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { readingsOfCar } from '../readings/readings';
import { assembleCar } from '../setup/assembleCar';
import { judgeLimits } from '../setup/judgeLimits';
import { settingOf, withSetting } from '../setup/setupEdits';
import type { MeshLibrary } from '../fitup/shapes/mesh';
import { solveMonotone } from '../solve/solveMonotone';
import { brokenLimits } from './brokenLimits';
import { carNumberNames, carNumbers, changesBetween, weightOf, type CarNumber } from './carNumbers';
import { GapsOfRows } from './gapsOfRows';
import { share } from './rangeUsed';
import { answerStudy, roundOf, type Round, type Study } from './study';
import { withToeReset } from './toeReset';
import type { Wall, Way, Ways, WaysQuestion } from './waysQuestion';
import { nearest, nearestWalled, tidySettings, type Reached, type Tried } from './tried';

/** Neither the file nor the defaults say how near such a reading is set: within this part of what is asked. */
const NO_TOLERANCE = 1e-9;

/** A root between two marks misses by no more than this part of what is asked. */
const ROOT = 1e-6;

/** What is nearer than this is the same. */
const ROUNDING = 1e-9;

interface Adjustable {
  readonly name: string;
  readonly adjuster: AdjusterDocument;
  /** where the part can stand, ascending; null is a concentric bushing */
  readonly settings: readonly (number | null)[];
  readonly now: number | null;
}

/**
 * Every adjuster of an axle that can bring one reading to a value by itself, and every pair where asked, each with what else
 * it changes. Limits of the file are walls. A clock that meets the value twice is two ways.
 * @returns the failure of the setup itself where it cannot be put together or read; no ways where the value is there already
 */
export const ways = (mechanism: CarMechanism, question: WaysQuestion): Result<Ways, Failure> =>
  answerStudy(waysStudy(mechanism, question));

/** One chunk an adjuster, then one a pair. */
export function waysStudy(mechanism: CarMechanism, question: WaysQuestion, library: MeshLibrary | null = null): Study<Ways> {
  const search = new WaysSearch(mechanism, question);
  const gaps = new GapsOfRows(mechanism, { files: question.meshes, library }, [question.axle]);
  const now = search.start();
  if (!now.ok) return { failure: now.failure, round: () => nothingToDo({ left: NaN, right: NaN }) };
  if (now.value.missBy <= search.within) return { failure: null, round: () => nothingToDo(now.value.value) };
  return {
    failure: null,
    round: (handed) => {
      if (handed !== undefined) {
        const { from, ways: rows, ...rest } = handed as Ways;
        const carOf = (row: number) => ({ mechanism, setup: search.setupOf(rows[row]) });
        return gaps.round('ways', rows, carOf, (found, why) => ({ from, ways: found, ...(why && { why }), ...rest }));
      }
      return roundOf<readonly Found[], Ways>({
        doing: 'trying every part',
        chunks: search.attempts.length,
        run: (chunk) => search.run(search.attempts[chunk], now.value),
        merge: (parts) => {
          const { ways: rows, ...rest } = search.merge(parts, now.value);
          const answer: Ways = { from: now.value.value, ways: rows, ...rest };
          if (rows.length === 0) return { answer };
          return gaps.none === null ? { next: answer } : { answer: { ...answer, why: { leastGap: gaps.none } } };
        },
      });
    },
  };
}

const nothingToDo = (from: Reached): Round<Ways> =>
  roundOf<never, Ways>({ doing: '', chunks: 0, run: () => [] as never, merge: () => ({ answer: { from, ways: [] } }) });

/** What a chunk found: the nearest on real steps, and between them. */
interface Found {
  readonly real: Tried | null;
  readonly exact: Tried | null;
  /** what reaches and breaks a limit, where that is asked for */
  readonly walled: Tried | null;
}

class WaysSearch {
  /** every adjuster alone, then every pair, by index */
  readonly attempts: readonly (readonly Adjustable[])[];
  readonly within: number;
  private readonly names: readonly CarNumber[];
  private readonly setup: SetupDocument;
  private readonly owners: readonly ('left' | 'right' | 'both')[];

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly question: WaysQuestion,
  ) {
    const { document } = mechanism;
    const { entry, side, axle } = question;
    this.owners = entry.of === 'axle' ? ['both'] : side === 'both' ? ['left', 'right'] : [side];
    this.within = question.tolerance ?? setWithin(document, entry.key) ?? NO_TOLERANCE * Math.max(1, Math.abs(question.value));
    this.names = carNumberNames(document);
    this.setup = withToeReset(document, question.setup, [axle], question.toeReset);
    const parts = this.adjustables();
    const pairs = question.pairs ? parts.flatMap((one, index) => parts.slice(index + 1).map((other) => [one, other])) : [];
    this.attempts = [...parts.map((part) => [part]), ...pairs];
  }

  start(): Result<Tried, Failure> {
    const car = assembleCar(this.mechanism, this.setup);
    if (!car.ok) return car;
    const row = readingsOfCar(car.value, this.question.at)[this.question.axle];
    if (row !== null && !row.ok) return row;
    const tried = this.try(this.setup);
    if (tried !== null) return succeed(tried);
    const key = this.owners
      .map((owner) => `${owner}.${this.question.entry.key}`)
      .find((name) => row?.value.why[name] !== undefined);
    const reset = car.value[this.question.axle]?.toeReset;
    const none =
      reset?.inRange === false ? `the toe that is asked for leaves the range of ${reset.adjuster}` : 'it has no value here';
    const why = key === undefined ? none : row?.value.why[key];
    return { ok: false, failure: { kind: 'unreachable', message: `${this.question.entry.name} cannot be set: ${why}` } };
  }

  /** The car in a setup; null where it cannot be there, a toe reset leaves its range, or the reading has no value. */
  private try(setup: SetupDocument): Tried | null {
    const { question, owners } = this;
    const car = assembleCar(this.mechanism, setup);
    if (!car.ok || car.value[question.axle]?.toeReset?.inRange === false) return null;
    const rows = readingsOfCar(car.value, question.at);
    const numbers = carNumbers(this.names, rows);
    const values = owners.map((owner) => numbers[`${question.axle}.${owner}.${question.entry.key}`]);
    if (values.some((value) => typeof value !== 'number')) return null;
    const [first, second = first] = values as number[];
    const misses = (values as number[]).map((value) => value - question.value);
    const broken = judgeLimits(car.value).filter(
      ({ ok, name }) => !ok && (name.startsWith(question.axle) || name.startsWith('wholeCar')),
    );
    return {
      setup,
      value: owners.length === 2 ? { left: first, right: second } : first,
      signed: misses.reduce((sum, miss) => sum + miss, 0) / misses.length,
      missBy: Math.max(...misses.map(Math.abs)),
      numbers,
      isLegal: broken.length === 0,
      broken: question.withWalls === true ? brokenLimits(broken) : [],
    };
  }

  run([one, other]: readonly Adjustable[], now: Tried): readonly Found[] {
    if (other === undefined) return this.alone(one, this.setup);
    const pair = this.pairOf(one, other, now);
    return pair === null ? [] : [pair];
  }

  /** The ways that reach, or come nearer by more than what counts as reached: than now, and a pair than either alone. */
  merge(parts: readonly (readonly Found[])[], now: Tried): Pick<Ways, 'ways' | 'walls'> {
    const found: { readonly way: Way; readonly weight: number }[] = [];
    const walls: { readonly wall: Wall; readonly weight: number }[] = [];
    const alone = new Map<Adjustable, number>();
    parts.forEach((part, index) => {
      const adjusters = this.attempts[index];
      const isReached = part.some(({ real }) => real !== null && real.missBy <= this.within);
      const walled = isReached ? undefined : part.find((one) => one.walled !== null)?.walled;
      if (walled) {
        const wall = { ...this.wayOf(adjusters, now, walled, walled), broken: walled.broken };
        walls.push({ wall, weight: weightOf(this.mechanism.document, this.others(), wall.changes) });
      }
      for (const { real, exact } of part) {
        if (real === null) continue;
        const misses = adjusters.length > 1 ? adjusters.map((one) => alone.get(one) ?? now.missBy) : [now.missBy];
        if (real.missBy > this.within && !(Math.min(...misses) - real.missBy > this.within)) continue;
        const [first] = adjusters;
        if (adjusters.length === 1) alone.set(first, Math.min(real.missBy, alone.get(first) ?? Infinity));
        const way = this.wayOf(adjusters, now, real, exact ?? real);
        found.push({ way, weight: weightOf(this.mechanism.document, this.others(), way.changes) });
      }
    });
    const sorted = found.sort((a, b) => Number(b.way.reaches) - Number(a.way.reaches) || a.weight - b.weight);
    return {
      ways: sorted.map(({ way }) => way),
      ...(this.question.withWalls === true ? { walls: walls.sort((a, b) => a.weight - b.weight).map(({ wall }) => wall) } : {}),
    };
  }

  private adjustables(): readonly Adjustable[] {
    const { axle, side, withLocked } = this.question;
    const described = this.mechanism.document[axle];
    return Object.entries(described?.adjusters ?? {}).flatMap(([name, adjuster]) => {
      if (adjuster.locked !== undefined && !withLocked) return [];
      // the toe reset turns it
      if (described?.toeAdjuster === name && this.setup[axle]?.setToe !== undefined) return [];
      const real = realSettings(stepScaleOf(adjuster));
      const now = settingOf(this.setup, axle, name, side === 'right' ? 'right' : 'left');
      const isConcentric = adjuster.kind === 'offset-bushing' && now === null;
      return [{ name, adjuster, settings: isConcentric ? [null, ...real] : real, now }];
    });
  }

  private at(setup: SetupDocument, { name }: Adjustable, setting: number | null): SetupDocument {
    return withSetting(setup, this.question.axle, name, this.question.side, setting);
  }

  /** Every stretch between two marks of one adjuster in which the value is passed: the better of its marks, and the root between them. */
  private alone(part: Adjustable, setup: SetupDocument): readonly Found[] {
    const { isRound } = stepScaleOf(part.adjuster);
    const marks = part.settings.filter((setting): setting is number => setting !== null);
    const tried = marks.map((setting) => this.try(this.at(setup, part, setting)));
    const walled = this.question.withWalls === true ? nearestWalled(tried, this.within) : null;
    const found: Found[] = [];
    const stretches = isRound ? marks.length : marks.length - 1;
    for (let i = 0; i < stretches; i += 1) {
      const j = (i + 1) % marks.length;
      const [a, b] = [tried[i], tried[j]];
      if (a === null || b === null || a.signed > 0 === b.signed > 0) continue;
      const until = j === 0 ? (marks[0] ?? 0) + stepScaleOf(part.adjuster).max : (marks[j] ?? 0);
      const exact = this.rootBetween(setup, part, marks[i] ?? 0, until);
      if (exact !== null) found.push({ real: nearest([a, b]), exact, walled });
    }
    // a mark that stands between two stretches is one way, not two
    const distinct = found.filter(({ real }, index) => found.findIndex((other) => other.real === real) === index);
    return distinct.length > 0 ? distinct : [{ real: nearest(tried), exact: null, walled }];
  }

  private rootBetween(setup: SetupDocument, part: Adjustable, from: number, to: number): Tried | null {
    let last: Tried | null = null;
    const { isRound, max } = stepScaleOf(part.adjuster);
    const miss = (setting: number): number | null => {
      last = this.try(this.at(setup, part, isRound ? setting % max : setting));
      return last?.signed ?? null;
    };
    const root = solveMonotone(miss, from, (to - from) / 2, [from, to], 1e-10);
    if (root === null) return null;
    miss(root);
    const there = last as Tried | null;
    // a reading that passes a pole changes its sign there without ever being what is wanted
    return there !== null && Math.abs(there.signed) <= ROOT * Math.max(1, Math.abs(this.question.value)) ? there : null;
  }

  /**
   * Two adjusters together: for each mark of the one the marks of the other next to the value, and of all of them the one that
   * reaches with the least change of everything else.
   */
  private pairOf(one: Adjustable, other: Adjustable, now: Tried): Found | null {
    let best: { real: Tried; setting: number; weight: number; reaches: boolean } | null = null;
    let walled: { real: Tried; weight: number } | null = null;
    for (const setting of one.settings) {
      if (setting === null || setting === (one.now ?? 0)) continue;
      const setup = this.at(this.setup, one, setting);
      for (const real of this.crossings(other, setup)) {
        const reaches = real.missBy <= this.within;
        if (!real.isLegal && !(reaches && this.question.withWalls === true)) continue;
        const weight = weightOf(this.mechanism.document, this.others(), changesBetween(now.numbers, real.numbers));
        if (!real.isLegal) {
          if (walled === null || weight < walled.weight) walled = { real, weight };
          continue;
        }
        const isBetter =
          best === null || (reaches !== best.reaches ? reaches : reaches ? weight < best.weight : real.missBy < best.real.missBy);
        if (isBetter) best = { real, setting, weight, reaches };
      }
    }
    const wall = walled !== null && !this.isDoneByHalf(one, other, walled.real, now) ? walled.real : null;
    if (best === null || this.isDoneByHalf(one, other, best.real, now))
      return wall === null ? null : { real: null, exact: null, walled: wall };
    const { real, setting } = best;
    // between the marks of the one, with the other on its mark
    const otherSetting = this.settingIn(real.setup, other);
    const exact = [
      ...this.alone(other, this.at(this.setup, one, setting)),
      ...this.alone(one, this.at(this.setup, other, otherSetting)),
    ].find((way) => way.exact !== null)?.exact;
    return { real, exact: exact ?? null, walled: wall };
  }

  private settingIn(setup: SetupDocument, { name }: Adjustable): number | null {
    const { axle, side } = this.question;
    return settingOf(setup, axle, name, side === 'right' ? 'right' : 'left');
  }

  /** Whether one of a pair, where it stands there, does as much by itself: as near, inside the limits, changing no more of all else. */
  private isDoneByHalf(one: Adjustable, other: Adjustable, pair: Tried, now: Tried): boolean {
    const weight = (tried: Tried): number =>
      weightOf(this.mechanism.document, this.others(), changesBetween(now.numbers, tried.numbers));
    const most = weight(pair) * (1 + ROUNDING) + ROUNDING;
    return [one, other].some((part) => {
      const half = this.try(this.at(this.setup, part, this.settingIn(pair.setup, part)));
      if (half === null || (pair.isLegal && !half.isLegal)) return false;
      return half.missBy <= Math.max(this.within, pair.missBy + ROUNDING) && weight(half) <= most;
    });
  }

  /** Marks of a part on both sides of where the value is passed, found by halving; all of them where its law goes round. */
  private crossings(part: Adjustable, setup: SetupDocument): readonly Tried[] {
    const marks = part.settings.filter((setting): setting is number => setting !== null && setting !== (part.now ?? 0));
    const tryAt = (index: number): Tried | null => this.try(this.at(setup, part, marks[index] ?? 0));
    if (stepScaleOf(part.adjuster).isRound) return marks.map((_, index) => tryAt(index)).filter((tried) => tried !== null);
    let [low, high] = [0, marks.length - 1];
    let [a, b] = [tryAt(low), tryAt(high)];
    if (a === null || b === null) return marks.map((_, index) => tryAt(index)).filter((tried) => tried !== null);
    if (a.signed > 0 === b.signed > 0) return [a, b];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      const tried = tryAt(middle);
      if (tried === null) break;
      if (tried.signed > 0 === a.signed > 0) [low, a] = [middle, tried];
      else [high, b] = [middle, tried];
    }
    return [a, b];
  }

  /** The setup that a way ends in. */
  setupOf({ adjusters, settings }: Way): SetupDocument {
    const { axle, side } = this.question;
    const from = side === 'right' ? 'right' : 'left';
    return adjusters.reduce(
      (setup, name) => withSetting(setup, axle, name, side, settingOf(settings, axle, name, from)),
      this.setup,
    );
  }

  /** The readings that were not asked for. */
  private others(): readonly CarNumber[] {
    const asked = this.owners.map((owner) => `${this.question.axle}.${owner}.${this.question.entry.key}`);
    return this.names.filter(({ name }) => !asked.includes(name));
  }

  private wayOf(adjusters: readonly Adjustable[], now: Tried, real: Tried, exact: Tried): Way {
    const { axle, side } = this.question;
    const setToe = this.question.toeReset === undefined ? undefined : this.setup[axle]?.setToe;
    const toe: SetupDocument = setToe === undefined ? {} : { [axle]: { setToe } };
    const settingsOf = (setup: SetupDocument): SetupDocument =>
      adjusters.reduce(
        (made, { name }) =>
          withSetting(made, axle, name, side, settingOf(setup, axle, name, side === 'right' ? 'right' : 'left')),
        toe,
      );
    const rangeUsed = Object.fromEntries(
      adjusters.map(({ name, adjuster }) => {
        const { min, max, isRound } = stepScaleOf(adjuster);
        const setting = settingOf(real.setup, axle, name, side === 'right' ? 'right' : 'left') ?? 0;
        return [name, isRound ? null : share(setting, min, max)];
      }),
    );
    const changes = changesBetween(now.numbers, real.numbers);
    const others = new Set(this.others().map(({ name }) => name));
    return {
      adjusters: adjusters.map(({ name }) => name),
      settings: settingsOf(real.setup),
      value: real.value,
      missBy: real.missBy,
      reaches: real.missBy <= this.within * (1 + 1e-9),
      continuous: { settings: tidySettings(settingsOf(exact.setup)), value: exact.value },
      rangeUsed,
      changes: Object.fromEntries(Object.entries(changes).filter(([name]) => others.has(name))),
      leastGap: null,
    };
  }
}
