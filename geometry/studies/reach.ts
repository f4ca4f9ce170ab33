import type { AxleDocument, AxleName, SetupDocument, SideName } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import type { QuestionDocument } from '../car/measuringDocument';
import { stepScaleOf } from '../adjusters/stepScale';
import type { Failure } from '../corner/failure';
import { readingsOfCar } from '../readings/readings';
import { assembleCar } from '../setup/assembleCar';
import { withSetting } from '../setup/setupEdits';
import { carNumberNames, carNumbers, changesBetween, type Numbers } from './carNumbers';
import { share } from './rangeUsed';
import { latticeSearch, LATTICE_STARTS } from './latticeSearch';
import { combinationAt, numberOf, pastEnd, resolveQuestion, type Question, type Variable } from './question';
import { isMet, Scorer, type KeptOut, type Scored } from './score';
import { TrialMaker, withPointMoved } from './trial';

/** What of the question would help most to let out by a little. */
export interface Help {
  readonly kind: 'range' | 'limit';
  readonly axle: AxleName | null;
  readonly side: 'both' | SideName | null;
  /** an adjuster, a free point or a reading */
  readonly name: string;
  readonly end: 'min' | 'max';
  /** one step of the part, or what the reading is set within */
  readonly by: number;
  /** by how much the score of the best answer falls */
  readonly gain: number;
}

export interface ReachAnswerRow {
  /** of what may be moved only, as in a setup, in the file's unit */
  readonly settings: SetupDocument;
  /** free points where they would be, as in the car file, in its unit */
  readonly points?: Readonly<Partial<Record<AxleName, Pick<AxleDocument, 'points' | 'right'>>>>;
  readonly score: number;
  readonly met: boolean;
  readonly wanted: Scored['wanted'];
  /** by adjuster, 0…1 of the way to the end of its range on that side; null for a bushing */
  readonly rangeUsed: Readonly<Record<string, number | null>>;
  /** of every other reading where the car stands, by dotted name */
  readonly changes: Numbers;
}

export interface ReachAnswer {
  readonly reachable: boolean;
  readonly answers: readonly ReachAnswerRow[];
  readonly helps: Help | null;
  /** combinations scored, or abandoned because their part of the score was too much already */
  readonly tried: number;
  /** every combination was */
  readonly all: boolean;
  /** past all combinations: how many searches there were, and how many ended on the best answer */
  readonly starts?: { readonly of: number; readonly agreed: number };
}

/** Past so many combinations they are searched, not all tried. */
export const MOST_TRIED = 200_000;
/** Combinations of one chunk: under 50 ms. Fixed by the question alone, so that the answer does not hang on who runs it. */
const CHUNK = 400;

/** A study cut into chunks that can run anywhere, in any order. */
export interface ReachPlan {
  readonly mechanism: CarMechanism;
  readonly question: Question;
  readonly isWhole: boolean;
  readonly chunks: readonly ReachChunk[];
}
export type ReachChunk = { readonly from: number; readonly to: number } | { readonly start: number };

interface Candidate {
  readonly number: number;
  readonly scored: Scored;
}

/** What one chunk found: plain data. */
export interface ReachPart {
  readonly best: readonly Candidate[];
  /** the best that a single limit keeps out, by limit */
  readonly keptOut: readonly { readonly candidate: Candidate; readonly by: KeptOut }[];
  readonly tried: number;
}

/**
 * @param question - judged with the car file (`questions`)
 * @param setup - where the search starts from: what may not be moved stays as it is there
 */
export function planReach(mechanism: CarMechanism, question: QuestionDocument, setup: SetupDocument): ReachPlan {
  const resolved = resolveQuestion(mechanism, question, setup);
  const isWhole = resolved.combinations <= MOST_TRIED;
  const chunks: ReachChunk[] = [];
  if (isWhole)
    for (let from = 0; from < resolved.combinations; from += CHUNK)
      chunks.push({ from, to: Math.min(from + CHUNK, resolved.combinations) });
  else for (let start = 0; start < LATTICE_STARTS; start += 1) chunks.push({ start });
  return { mechanism, question: resolved, isWhole, chunks };
}

/** The better score first; of equals the earlier combination. */
export function inOrder(a: Candidate, b: Candidate): number {
  const least = Math.min(a.scored.score, b.scored.score);
  const isEqual = Math.abs(a.scored.score - b.scored.score) <= 1e-9 * least;
  return isEqual ? a.number - b.number : a.scored.score - b.scored.score;
}

function keepBest(best: Candidate[], candidate: Candidate, count: number): void {
  best.push(candidate);
  best.sort(inOrder);
  if (best.length > count) best.pop();
}

/** Scores single combinations, and remembers the best and what limits kept out. */
class Search {
  readonly best: Candidate[] = [];
  private readonly keptOut = new Map<object, { candidate: Candidate; by: KeptOut }>();
  tried = 0;

  constructor(
    private readonly scorer: Scorer,
    private readonly question: Question,
    private readonly count: number,
  ) {}

  /** @returns the score, or Infinity where this is no answer */
  try(number: number, values: readonly (number | null)[], bound: number): number {
    this.tried += 1;
    const made = this.scorer.score(values, bound);
    if (made === null) return Infinity;
    const candidate = { number, scored: made.scored };
    const broken = this.scorer.brokenLimits(made.car);
    if (broken.length === 0) {
      if (!this.best.some((known) => known.number === number)) keepBest(this.best, candidate, this.count);
      return made.scored.score;
    }
    const by = this.scorer.keptOutBy(broken);
    if (by !== null) {
      const known = this.keptOut.get(by.limit.limit);
      if (known === undefined || inOrder(candidate, known.candidate) < 0) this.keptOut.set(by.limit.limit, { candidate, by });
    }
    return Infinity;
  }

  /** Past this sum a combination is not among the answers. */
  get bound(): number {
    return this.best.length < this.count ? Infinity : this.best[this.best.length - 1].scored.score;
  }

  part(): ReachPart {
    return { best: this.best, keptOut: [...this.keptOut.values()], tried: this.tried };
  }
}

const valuesAt = (question: Question, indexes: readonly number[]): (number | null)[] =>
  question.variables.map(({ values }, i) => values[indexes[i]] ?? null);

/** Runs one chunk by itself: nothing of another one is known to it. */
export function runReach({ mechanism, question }: ReachPlan, chunk: ReachChunk): ReachPart {
  const search = new Search(new Scorer(mechanism, question), question, question.count);
  if ('start' in chunk) {
    latticeSearch(question, chunk.start, (indexes, bound) =>
      search.try(numberOf(question, indexes), valuesAt(question, indexes), bound),
    );
    return search.part();
  }
  for (let number = chunk.from; number < chunk.to; number += 1)
    search.try(number, valuesAt(question, combinationAt(question, number)), search.bound);
  return search.part();
}

/** The parts of a plan in the order of its chunks, as one answer. */
export function mergeReach(plan: ReachPlan, parts: readonly ReachPart[]): ReachAnswer {
  const { question, isWhole } = plan;
  const best: Candidate[] = [];
  for (const part of parts)
    for (const candidate of part.best)
      if (!best.some(({ number }) => number === candidate.number)) keepBest(best, candidate, question.count);
  const first = best.at(0);
  const reachable = first !== undefined && isMet(question, first.scored);
  const tried = isWhole ? question.combinations : parts.reduce((sum, part) => sum + part.tried, 0);
  const answers = best.map((candidate) => answerOf(plan, candidate));
  const helps = reachable ? null : helpOf(plan, first, parts);
  const agreed = parts.filter((part) => part.best[0]?.number === first?.number).length;
  return { reachable, answers, helps, tried, all: isWhole, ...(isWhole ? {} : { starts: { of: parts.length, agreed } }) };
}

/** The whole study at once, for small questions. */
export function reach(mechanism: CarMechanism, question: QuestionDocument, setup: SetupDocument): ReachAnswer {
  const plan = planReach(mechanism, question, setup);
  return mergeReach(
    plan,
    plan.chunks.map((chunk) => runReach(plan, chunk)),
  );
}

function answerOf({ mechanism, question }: ReachPlan, { number, scored }: Candidate): ReachAnswerRow {
  const values = valuesAt(question, combinationAt(question, number));
  let settings: SetupDocument = {};
  const rangeUsed: Record<string, number | null> = {};
  question.variables.forEach((variable, index) => {
    const value = values[index];
    const used = rangeUsedOf(mechanism, variable, value);
    const name = usedName(question, variable);
    const before = rangeUsed[name];
    rangeUsed[name] = used === null ? null : Math.max(used, before ?? 0);
    if (variable.kind === 'adjuster') settings = withSetting(settings, variable.axle, variable.name, variable.side, value);
  });
  const points = pointsOf(mechanism, question, values);
  const met = isMet(question, scored);
  return {
    settings,
    ...(points === null ? {} : { points }),
    score: scored.score,
    met,
    wanted: scored.wanted,
    rangeUsed,
    changes: changesOf(mechanism, question, values),
  };
}

/** The adjuster's name, with its axle before it where both axles have one of that name in the question. */
function usedName({ variables }: Question, { axle, name }: Variable): string {
  return variables.some((other) => other.name === name && other.axle !== axle) ? `${axle}.${name}` : name;
}

function rangeUsedOf({ document }: CarMechanism, variable: Variable, value: number | null): number | null {
  if (variable.kind === 'point') return share(value ?? 0, variable.values[0] ?? 0, variable.values.at(-1) ?? 0);
  const adjuster = document[variable.axle]?.adjusters?.[variable.name];
  if (adjuster === undefined || adjuster.kind === 'offset-bushing') return null;
  const { min, max } = stepScaleOf(adjuster);
  return share(value ?? 0, min, max);
}

function pointsOf(
  mechanism: CarMechanism,
  question: Question,
  values: readonly (number | null)[],
): ReachAnswerRow['points'] | null {
  let { document } = mechanism;
  const moved: Partial<Record<AxleName, Pick<AxleDocument, 'points' | 'right'>>> = {};
  question.variables.forEach((variable, index) => {
    if (variable.kind !== 'point') return;
    const { axle, name } = variable;
    document = withPointMoved(document, mechanism.mmPerUnit, variable, values[index] ?? 0);
    const described = document[axle];
    if (described === undefined) return;
    const right = described.right?.points?.[name];
    moved[axle] = {
      points: { ...moved[axle]?.points, [name]: described.points[name] },
      ...(right === undefined ? {} : { right: { points: { ...moved[axle]?.right?.points, [name]: right } } }),
    };
  });
  return Object.keys(moved).length === 0 ? null : moved;
}

/** What else changes where the car stands, of every reading that was not asked for. */
function changesOf(mechanism: CarMechanism, question: Question, values: readonly (number | null)[]): Numbers {
  const asked = new Set(
    question.wanted.flatMap(({ axle, owners, entry }) =>
      owners.map((owner) => (axle === 'wholeCar' ? `wholeCar.${entry.key}` : `${axle}.${owner}.${entry.key}`)),
    ),
  );
  const names = carNumberNames(mechanism.document).filter(({ name }) => !asked.has(name));
  const trial = new TrialMaker(mechanism, question).make(values);
  const [now, then] = [assembleCar(mechanism, question.setup), assembleCar(trial.mechanism, trial.setup)];
  if (!now.ok || !then.ok) return {};
  return changesBetween(carNumbers(names, readingsOfCar(now.value)), carNumbers(names, readingsOfCar(then.value)));
}

/** The one range or limit that helps most when it is let out, re-solved with it. */
function helpOf(plan: ReachPlan, best: Candidate | undefined, parts: readonly ReachPart[]): Help | null {
  const score = best?.scored.score ?? Infinity;
  const helps = [...limitHelps(parts, score), ...(best === undefined ? [] : rangeHelps(plan, best))].filter(
    ({ gain }) => gain > 0,
  );
  return helps.sort((a, b) => b.gain - a.gain)[0] ?? null;
}

function limitHelps(parts: readonly ReachPart[], score: number): Help[] {
  const perLimit = new Map<object, ReachPart['keptOut'][number]>();
  for (const part of parts)
    for (const kept of part.keptOut) {
      const known = perLimit.get(kept.by.limit.limit);
      if (known === undefined || inOrder(kept.candidate, known.candidate) < 0) perLimit.set(kept.by.limit.limit, kept);
    }
  return [...perLimit.values()].map(({ candidate, by: { limit, end, by } }) => {
    const [owner, side] = limit.name.split('.');
    return {
      kind: 'limit',
      axle: owner === 'front' || owner === 'rear' ? owner : null,
      side: side === 'left' || side === 'right' || side === 'both' ? side : null,
      name: limit.limit.reading ?? limit.limit.setting ?? limit.name,
      end,
      by,
      gain: score - candidate.scored.score,
    };
  });
}

/** For every adjuster that stands at an end: the same question with one step more there. */
function rangeHelps({ mechanism, question }: ReachPlan, best: Candidate): Help[] {
  const indexes = combinationAt(question, best.number);
  return question.variables.flatMap((variable, at) => {
    const step = stepOf(mechanism, variable);
    if (step === null) return [];
    const ends = (['min', 'max'] as const).filter((end) => indexes[at] === (end === 'min' ? 0 : variable.values.length - 1));
    return ends.map((end) => {
      const values = [pastEnd(variable.values as readonly number[], step, end)];
      const variables = question.variables.map((other, index) => (index === at ? { ...variable, values } : other) as Variable);
      const combinations = question.combinations / variable.values.length;
      const longer: Question = { ...question, variables, combinations, count: 1 };
      const search = new Search(new Scorer(mechanism, longer), longer, 1);
      const near = combinations <= MOST_TRIED ? everyCombination(longer) : neighboursOf(longer, indexes, at);
      for (const tried of near)
        search.try(numberOf(longer, tried), valuesAt(longer, tried), Math.min(search.bound, best.scored.score));
      const reached = search.best[0]?.scored.score ?? Infinity;
      return {
        kind: 'range',
        axle: variable.axle,
        side: variable.side,
        name: variable.name,
        end,
        by: step,
        gain: best.scored.score - reached,
      } as const;
    });
  });
}

function* everyCombination(question: Question): Generator<readonly number[]> {
  for (let number = 0; number < question.combinations; number += 1) yield combinationAt(question, number);
}

/** A question too large to try whole: the other adjusters up to two steps around where they stand. */
function* neighboursOf({ variables }: Question, indexes: readonly number[], fixed: number): Generator<readonly number[]> {
  const from = indexes.map((index, i) => (i === fixed ? 0 : index));
  yield from;
  for (let i = 0; i < variables.length; i += 1)
    for (const di of i === fixed ? [] : [-2, -1, 1, 2])
      for (let j = i; j < variables.length; j += 1)
        for (const dj of j === i || j === fixed ? [0] : [-2, -1, 0, 1, 2]) {
          const tried = from.map((index, k) => index + (k === i ? di : 0) + (k === j && j !== i ? dj : 0));
          if (tried.every((index, k) => index >= 0 && index < variables[k].values.length)) yield tried;
        }
}

/** One step of what has an end that could be further out: a clock goes round, and a cam past 90° comes back. */
function stepOf({ document }: CarMechanism, variable: Variable): number | null {
  if (variable.kind === 'point') return variable.values.length > 1 ? variable.values[1] - variable.values[0] : null;
  const adjuster = document[variable.axle]?.adjusters?.[variable.name];
  if (adjuster === undefined) return null;
  return adjuster.kind === 'slide' || adjuster.kind === 'turnbuckle' || adjuster.kind === 'perch' ? adjuster.step : null;
}

/** The failure of the setup that a question starts from; null where it stands. */
export function startFailure(mechanism: CarMechanism, { question }: ReachPlan): Failure | null {
  const started = assembleCar(mechanism, question.setup);
  return started.ok ? null : started.failure;
}
