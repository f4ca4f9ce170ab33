import type { AxleName, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import type { QuestionDocument } from '../car/questionDocument';
import { scopeOf } from '../readings/scope';
import { assembleCar } from '../setup/assembleCar';
import { GapsOfRows, type GapsAsked, type WhyNoGap } from './gapsOfRows';
import { latticeSearch, LATTICE_STARTS } from './latticeSearch';
import { combinationAt, numberOf, resolveQuestion, valuesAt, valuesOf, type Question } from './question';
import { Ranking, type Candidate } from './ranking';
import { answerOf, type ReachAnswerRow } from './reachAnswers';
import {
  bestPast,
  limitHelps,
  mostHelp,
  neighboursOf,
  pastRange,
  rangeEnds,
  rangeHelp,
  type Help,
  type Helped,
  type RangeEnd,
} from './reachHelp';
import { Search, type KeptCandidate, type ReachPart } from './reachSearch';
import { isMet, type Scored } from './score';
import { PartsLook, type SeenParts } from './seenParts';
import { answerStudy, roundOf, type Round, type Study } from './study';
import { TrialMaker } from './trial';
import { turnedByReset } from './turnedByReset';
import { whyNothing, type WhyNothing } from './whyNothing';
import type { Result } from '../core/result';
import type { Failure } from '../corner/failure';

export interface ReachAnswer {
  readonly reachable: boolean;
  readonly answers: readonly ReachAnswerRow[];
  readonly helps: Help | null;
  /** what the wanted readings would then be, in the order of the question; only beside `helps` */
  readonly helped?: Scored['wanted'];
  /**
   * where there is no answer: by dotted name why a wanted reading has no value in the setup itself; where there is one: why
   * there is no least gap
   */
  readonly why?: WhyNothing | WhyNoGap;
  /** combinations scored, or abandoned because their part of the score was too much already */
  readonly tried: number;
  /** every combination was */
  readonly all: boolean;
  /** past all combinations: how many searches there were, and how many ended on the best answer */
  readonly starts?: { readonly of: number; readonly agreed: number };
}

/** Past so many combinations they are searched, not all tried. */
export const MOST_TRIED = 200_000;
/** Combinations of one chunk at most; of costly ones fewer. */
const CHUNK = 400;
/** What putting a combination together and each of its positions cost, about [ms], and what a chunk may on a slow machine. */
const COST = { car: 0.06, row: 0.02, wholeRow: 0.2, chunk: 25, pilot: 0.3 };
/** A question of so many positions and combinations is worth a few short searches first: a good answer lets bad ones be given up early. */
const PILOT = { positions: 2, combinations: 2000, starts: 4 };

/** A part of the combinations past one end; `from` null: those near the best answer, where there are too many. */
interface HelpChunk {
  readonly end: RangeEnd;
  readonly longer: Question;
  readonly from: number | null;
}

/** What a round hands on to the next: plain data. */
type From =
  | { readonly kind: 'seen'; readonly seen: SeenParts }
  | { readonly kind: 'tries'; readonly seen: SeenParts; readonly most: number }
  | {
      readonly kind: 'helps';
      readonly seen: SeenParts;
      readonly best: readonly Candidate[];
      readonly keptOut: readonly KeptCandidate[];
      readonly summary: Summary;
    }
  /** `numbers`: the combinations of the answers */
  | { readonly kind: 'gaps'; readonly seen: SeenParts; readonly answer: ReachAnswer; readonly numbers: readonly number[] };

type Summary = Pick<ReachAnswer, 'tried' | 'all' | 'starts'>;

/**
 * The settings that come nearest to everything wanted at once, on the steps that the parts have.
 * @param question - judged with the car file (`questions`)
 * @param setup - where the search starts from: what may not be moved stays as it is there
 * @returns the failure of the setup itself where it cannot be put together
 */
export const reach = (mechanism: CarMechanism, question: QuestionDocument, setup: SetupDocument): Result<ReachAnswer, Failure> =>
  answerStudy(reachStudy(mechanism, question, setup));

/** @param mostTried - past so many combinations they are searched */
export function reachStudy(
  mechanism: CarMechanism,
  asked: QuestionDocument,
  setup: SetupDocument,
  mostTried = MOST_TRIED,
  gaps: GapsAsked = { library: null },
): Study<ReachAnswer> {
  const question = resolveQuestion(mechanism, asked, setup);
  const started = assembleCar(mechanism, question.setup);
  const study = new ReachRounds(mechanism, question, mostTried, new GapsOfRows(mechanism, gaps, axlesOf(question)));
  const idle = question.variables
    .map(({ kind, axle, name }) => (kind === 'point' ? null : turnedByReset(mechanism.document, question.setup, axle, name)))
    .find((reason) => reason !== null);
  const failure: Failure | null = started.ok ? null : started.failure;
  return {
    failure: idle === undefined ? failure : { kind: 'setup', message: idle },
    round: (from) => (from === undefined ? study.first() : study.after(from as From)),
  };
}

/** About what one combination costs [ms]: readings of the whole car and load transfer need every row of both axles. */
function costOf({ positions, wanted }: Question): number {
  const isWhole = wanted.some(({ axle, entry }) => axle === 'wholeCar' || scopeOf([entry.key]).transfer);
  return COST.car + positions.length * (isWhole ? COST.wholeRow : COST.row);
}

class ReachRounds {
  private readonly cost: number;
  /** combinations of a chunk: by the question alone */
  private readonly chunk: number;

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly question: Question,
    private readonly mostTried: number,
    private readonly gaps: GapsOfRows,
  ) {
    this.cost = costOf(question);
    this.chunk = Math.max(1, Math.min(CHUNK, Math.floor(COST.chunk / this.cost)));
  }

  /** What each part changes, one chunk a part; and one for what a toe reset leaves open. */
  first(): Round<ReachAnswer> {
    const { mechanism, question } = this;
    const count = question.variables.length;
    return roundOf<boolean | readonly number[], ReachAnswer>({
      doing: 'looking at what each part changes',
      chunks: count + 1,
      run: (chunk) => {
        const look = new PartsLook(mechanism, question);
        return chunk < count ? look.isIdle(chunk) : look.open();
      },
      merge: (parts) => {
        const seen: SeenParts = { idle: parts.slice(0, count) as boolean[], open: parts[count] as readonly number[] };
        return { next: { kind: 'seen', seen } satisfies From };
      },
    });
  }

  /** The least gap of each answer. */
  private gapsOf({ answer, numbers }: From & { kind: 'gaps' }): Round<ReachAnswer> {
    const { mechanism, question } = this;
    const trials = new TrialMaker(mechanism, question);
    return this.gaps.round(
      'answers',
      answer.answers,
      (row) => trials.make(valuesOf(question, numbers[row])),
      (answers, why) => ({ ...answer, answers, ...(why && { why }) }),
    );
  }

  after(from: From): Round<ReachAnswer> {
    if (from.kind === 'gaps') return this.gapsOf(from);
    const tried = new SeenRounds(this.mechanism, this.question, this.mostTried, this.cost, this.chunk, this.gaps, from.seen);
    if (from.kind === 'seen') return tried.first();
    return from.kind === 'tries' ? tried.tries(from.most) : tried.helps(from);
  }
}

/** The axles that a question looks at or turns parts of. */
function axlesOf({ variables, wanted }: Question): readonly AxleName[] {
  const isOfCar = wanted.some(({ axle }) => axle === 'wholeCar');
  return (['front', 'rear'] as const).filter(
    (one) => isOfCar || variables.some(({ axle }) => axle === one) || wanted.some(({ axle }) => axle === one),
  );
}

/** The rounds of a question once it is known what its parts change. */
class SeenRounds {
  private readonly ranking: Ranking;

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly question: Question,
    private readonly mostTried: number,
    private readonly cost: number,
    private readonly chunk: number,
    private readonly gaps: GapsOfRows,
    private readonly seen: SeenParts,
  ) {
    this.ranking = new Ranking(mechanism, question, seen);
  }

  first(): Round<ReachAnswer> {
    const { combinations, positions } = this.question;
    if (combinations > this.mostTried) return this.searches();
    const isWorthIt = combinations >= PILOT.combinations && positions.length >= PILOT.positions;
    return isWorthIt ? this.pilot() : this.tries(Infinity);
  }

  private search(most = Infinity): Search {
    return new Search(this.mechanism, this.question, this.seen, most);
  }

  private searchFrom(search: Search, start: number, isShort: boolean): ReachPart {
    latticeSearch(
      this.question,
      start,
      (indexes, bound) => search.try(numberOf(this.question, indexes), valuesAt(this.question, indexes), bound),
      isShort,
      { indexes: this.ranking.home, idle: this.seen.idle, isEqual: (one, other) => this.ranking.isEqual(one, other) },
    );
    return search.part();
  }

  /** A few short searches: what they find bounds the score of the answers that will be seen. */
  private pilot(): Round<ReachAnswer> {
    return roundOf<ReachPart, ReachAnswer>({
      doing: 'looking for a good start',
      chunks: PILOT.starts,
      ...(this.cost > COST.pilot ? { isLong: true } : {}),
      run: (start) => this.searchFrom(this.search(), start, true),
      merge: (parts) => {
        const best = this.bestOf(parts);
        const last = best.length < this.ranking.count ? undefined : best.at(-1);
        return { next: { kind: 'tries', seen: this.seen, most: last?.scored.score ?? Infinity } satisfies From };
      },
    });
  }

  /** Every combination, but for those whose part of the score is past `most` already. */
  tries(most: number): Round<ReachAnswer> {
    const { question, chunk: size } = this;
    return roundOf<ReachPart, ReachAnswer>({
      doing: 'trying every combination',
      chunks: Math.ceil(question.combinations / size),
      run: (chunk) => {
        const search = this.search(most);
        const until = Math.min((chunk + 1) * size, question.combinations);
        for (let number = chunk * size; number < until; number += 1) search.try(number, valuesOf(question, number), search.bound);
        return search.part();
      },
      merge: (parts) => this.conclude(parts, { tried: question.combinations, all: true }),
    });
  }

  private searches(): Round<ReachAnswer> {
    return roundOf<ReachPart, ReachAnswer>({
      doing: 'searching from many starts',
      isLong: true,
      chunks: LATTICE_STARTS,
      run: (start) => this.searchFrom(this.search(), start, false),
      merge: (parts) => {
        const [first] = this.bestOf(parts);
        const agreed = parts.filter((part) => part.best.at(0)?.core === first?.core).length;
        const tried = parts.reduce((sum, part) => sum + part.tried, 0);
        return this.conclude(parts, { tried, all: false, starts: { of: parts.length, agreed } });
      },
    });
  }

  private bestOf(parts: readonly ReachPart[]): readonly Candidate[] {
    const best: Candidate[] = [];
    for (const part of parts) for (const candidate of part.best) this.ranking.keep(best, candidate);
    return best;
  }

  private conclude(parts: readonly ReachPart[], summary: Summary): ReturnType<Round<ReachAnswer>['merge']> {
    const best = this.bestOf(parts);
    const keptOut = parts.flatMap((part) => part.keptOut);
    const first = best.at(0);
    if (first !== undefined && isMet(this.question, first.scored)) return this.answered(best, summary, null);
    return { next: { kind: 'helps', seen: this.seen, best, keptOut, summary } satisfies From };
  }

  /**
   * For every end of a range the same question with one step more there, whether the best answer stands at it or not: on steps
   * something nearer may come with it in between.
   */
  helps({ best, keptOut, summary }: From & { kind: 'helps' }): Round<ReachAnswer> {
    const { mechanism, question, seen, chunk: size } = this;
    const first = best.at(0);
    const score = first?.scored.score ?? Infinity;
    const ends = rangeEnds(mechanism, question);
    const chunks = ends.flatMap((end): readonly HelpChunk[] => {
      const longer = pastRange(question, end);
      if (longer.combinations > this.mostTried) return first === undefined ? [] : [{ end, longer, from: null }];
      return Array.from({ length: Math.ceil(longer.combinations / size) }, (_, index) => ({ end, longer, from: index * size }));
    });
    return roundOf<Scored | null, ReachAnswer>({
      doing: 'looking for what would help',
      chunks: chunks.length,
      run: (chunk) => {
        const { end, longer, from } = chunks[chunk];
        const tried =
          from === null && first !== undefined
            ? neighboursOf(longer, combinationAt(question, first.number), end.at)
            : combinationsFrom(longer, from ?? 0, size);
        return bestPast(mechanism, longer, tried, seen, score);
      },
      merge: (parts) => {
        const helps = [
          ...limitHelps(keptOut, score, this.ranking.order),
          ...ends.flatMap((end) =>
            rangeHelp(question, end, score, bestOf(parts.filter((_, index) => chunks[index].end === end))),
          ),
        ];
        return this.answered(best, summary, mostHelp(helps, first === undefined ? 0 : this.ranking.width(score)));
      },
    });
  }

  /** The answer, or the round that measures its gaps. */
  private answered(best: readonly Candidate[], summary: Summary, most: Helped | null): ReturnType<Round<ReachAnswer>['merge']> {
    const answer = this.answer(best, summary, most);
    if (best.length === 0) return { answer };
    const { none } = this.gaps;
    if (none !== null) return { answer: { ...answer, why: { leastGap: none } } };
    return { next: { kind: 'gaps', seen: this.seen, answer, numbers: best.map(({ number }) => number) } satisfies From };
  }

  private answer(best: readonly Candidate[], { tried, all, starts }: Summary, most: Helped | null): ReachAnswer {
    const first = best.at(0);
    return {
      reachable: first !== undefined && isMet(this.question, first.scored),
      answers: best.map((candidate) => answerOf(this.mechanism, this.question, candidate)),
      helps: most === null ? null : most.help,
      tried,
      all,
      ...(most === null ? {} : { helped: most.wanted }),
      ...(first === undefined ? { why: whyNothing(this.mechanism, this.question) } : {}),
      ...(starts === undefined ? {} : { starts }),
    };
  }
}

/** The best of these; null where there is none. */
const bestOf = (scored: readonly (Scored | null)[]): Scored | null =>
  scored.reduce((best, one) => (one !== null && (best === null || one.score < best.score) ? one : best), null);

function* combinationsFrom(question: Question, from: number, count: number): Generator<readonly number[]> {
  const until = Math.min(from + count, question.combinations);
  for (let number = from; number < until; number += 1) yield combinationAt(question, number);
}
