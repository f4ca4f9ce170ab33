import type { SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { stepScaleOf } from '../adjusters/stepScale';
import { succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { readingsOfCar } from '../readings/readings';
import { assembleCar } from '../setup/assembleCar';
import { settingOf, withSetting } from '../setup/setupEdits';
import type { MeshLibrary } from '../fitup/shapes/mesh';
import { changesBetween, weightOf } from './carNumbers';
import { GapsOfRows, NO_GAP } from './gapsOfRows';
import { share } from './rangeUsed';
import { answerStudy, roundOf, type Round, type Study } from './study';
import { rootBetween } from './waysMarks';
import { pairOf } from './waysPairs';
import type { Wall, Way, Ways, WaysQuestion } from './waysQuestion';
import { WaysTries, type Adjustable } from './waysTries';
import { nearest, nearestWalled, tidySettings, type Found, type Reached, type Tried } from './tried';

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

class WaysSearch {
  /** every adjuster alone, then every pair, by index */
  readonly attempts: readonly (readonly Adjustable[])[];
  readonly within: number;
  private readonly tries: WaysTries;

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly question: WaysQuestion,
  ) {
    this.tries = new WaysTries(mechanism, question);
    this.within = this.tries.within;
    const parts = this.tries.adjustables();
    const pairs = question.pairs ? parts.flatMap((one, index) => parts.slice(index + 1).map((other) => [one, other])) : [];
    this.attempts = [...parts.map((part) => [part]), ...pairs];
  }

  start(): Result<Tried, Failure> {
    const { setup, owners } = this.tries;
    const car = assembleCar(this.mechanism, setup);
    if (!car.ok) return car;
    const row = readingsOfCar(car.value, this.question.at)[this.question.axle];
    if (row !== null && !row.ok) return row;
    const tried = this.tries.try(setup);
    if (tried !== null) return succeed(tried);
    const key = owners.map((owner) => `${owner}.${this.question.entry.key}`).find((name) => row?.value.why[name] !== undefined);
    const reset = car.value[this.question.axle]?.toeReset;
    const none =
      reset?.inRange === false ? `the toe that is asked for leaves the range of ${reset.adjuster}` : 'it has no value here';
    const why = key === undefined ? none : row?.value.why[key];
    return { ok: false, failure: { kind: 'unreachable', message: `${this.question.entry.name} cannot be set: ${why}` } };
  }

  run([one, other]: readonly Adjustable[], now: Tried): readonly Found[] {
    if (other === undefined) return this.alone(one);
    const pair = pairOf(this.tries, one, other, now);
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
        walls.push({ wall, weight: weightOf(this.mechanism.document, this.tries.others, wall.changes) });
      }
      for (const { real, exact } of part) {
        if (real === null) continue;
        const [first] = adjusters;
        const misses = adjusters.length > 1 ? adjusters.map((one) => alone.get(one) ?? now.missBy) : [now.missBy];
        if (adjusters.length === 1) alone.set(first, Math.min(real.missBy, alone.get(first) ?? now.missBy));
        if (real.missBy > this.within && !(Math.min(...misses) - real.missBy > this.within)) continue;
        const way = this.wayOf(adjusters, now, real, exact ?? real);
        found.push({ way, weight: weightOf(this.mechanism.document, this.tries.others, way.changes) });
      }
    });
    const sorted = found.sort((a, b) => Number(b.way.reaches) - Number(a.way.reaches) || a.weight - b.weight);
    return {
      ways: sorted.map(({ way }) => way),
      ...(this.question.withWalls === true ? { walls: walls.sort((a, b) => a.weight - b.weight).map(({ wall }) => wall) } : {}),
    };
  }

  /** Every stretch between two marks of one adjuster in which the value is passed: the better of its marks, and the root between them. */
  private alone(part: Adjustable): readonly Found[] {
    const { tries } = this;
    const { isRound, max } = stepScaleOf(part.adjuster);
    const marks = part.settings.filter((setting): setting is number => setting !== null);
    const tried = marks.map((setting) => tries.try(tries.at(tries.setup, part, setting)));
    const walled = this.question.withWalls === true ? nearestWalled(tried, this.within) : null;
    const found: Found[] = [];
    const stretches = isRound ? marks.length : marks.length - 1;
    for (let i = 0; i < stretches; i += 1) {
      const j = (i + 1) % marks.length;
      const [a, b] = [tried[i], tried[j]];
      if (a === null || b === null || a.signed > 0 === b.signed > 0) continue;
      const until = j === 0 ? (marks[0] ?? 0) + max : (marks[j] ?? 0);
      const exact = rootBetween(tries, tries.setup, part, marks[i] ?? 0, until);
      const real = nearest([a, b]);
      if (exact !== null && real !== null) found.push({ real, exact, walled });
    }
    // a mark that stands between two stretches is one way, not two
    const distinct = found.filter(({ real }, index) => found.findIndex((other) => other.real === real) === index);
    // where both marks beside the value break a limit, another may still come nearer
    return distinct.length > 0 ? distinct : [{ real: nearest(tried), exact: null, walled }];
  }

  /** The setup that a way ends in. */
  setupOf({ adjusters, settings }: Way): SetupDocument {
    const { axle, side } = this.question;
    const from = side === 'right' ? 'right' : 'left';
    return adjusters.reduce(
      (setup, name) => withSetting(setup, axle, name, side, settingOf(settings, axle, name, from)),
      this.tries.setup,
    );
  }

  private wayOf(adjusters: readonly Adjustable[], now: Tried, real: Tried, exact: Tried): Way {
    const { axle, side } = this.question;
    const setToe = this.question.toeReset === undefined ? undefined : this.tries.setup[axle]?.setToe;
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
    const others = new Set(this.tries.others.map(({ name }) => name));
    return {
      adjusters: adjusters.map(({ name }) => name),
      settings: settingsOf(real.setup),
      value: real.value,
      missBy: real.missBy,
      reaches: real.missBy <= this.within,
      continuous: { settings: tidySettings(settingsOf(exact.setup)), value: exact.value },
      rangeUsed,
      changes: Object.fromEntries(Object.entries(changes).filter(([name]) => others.has(name))),
      ...NO_GAP,
    };
  }
}
