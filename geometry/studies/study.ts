import { fail, succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';

/**
 * A study cut up so that anybody can work on it: rounds of chunks, each of which knows nothing of the others. What the question
 * is decides the chunks, never who runs them; so the answer is the same to the last bit on any number of workers.
 */
export interface Study<Answer> {
  /** why nothing can be answered; null where it can */
  readonly failure: Failure | null;
  /** @param from - what the round before handed on, plain data; undefined: the first round */
  readonly round: (from?: unknown) => Round<Answer>;
}

/** One round: its chunks can run in any order and anywhere. */
export interface Round<Answer> {
  /** what is being done, in words, for who waits */
  readonly doing: string;
  readonly chunks: number;
  /** a chunk takes longer than a moment: not on a thread that has to listen */
  readonly isLong?: true;
  /** works one chunk out, under 50 ms where it is not long, and answers with plain data */
  readonly run: (chunk: number) => unknown;
  /** puts the parts together, in the order of their chunks */
  readonly merge: (parts: readonly unknown[]) => Outcome<Answer>;
}

/** The answer, or what the next round starts from. */
export type Outcome<Answer> = { readonly answer: Answer } | { readonly next: unknown };

/** A round whose parts have a type: what is sent about is plain data, and comes back as it went. */
export function roundOf<Part, Answer>(round: {
  readonly doing: string;
  readonly chunks: number;
  readonly isLong?: true;
  readonly run: (chunk: number) => Part;
  readonly merge: (parts: readonly Part[]) => Outcome<Answer>;
}): Round<Answer> {
  return round as Round<Answer>;
}

/** The whole study at once, for small ones. */
export function answerStudy<Answer>(study: Study<Answer>): Result<Answer, Failure> {
  if (study.failure !== null) return fail(study.failure);
  for (let round = study.round(); ;) {
    const outcome = round.merge(Array.from({ length: round.chunks }, (_, chunk) => round.run(chunk)));
    if ('answer' in outcome) return succeed(outcome.answer);
    round = study.round(outcome.next);
  }
}

/**
 * Leads a study whose chunks others run.
 * @param run - runs the chunks 0…count − 1 of the round that started `from`, and answers with their parts in order
 */
export async function leadStudy<Answer>(
  study: Study<Answer>,
  run: (round: Round<Answer>, from: unknown) => Promise<readonly unknown[]>,
): Promise<Result<Answer, Failure>> {
  if (study.failure !== null) return fail(study.failure);
  for (let from: unknown = undefined; ;) {
    const round = study.round(from);
    const outcome = round.merge(await run(round, from));
    if ('answer' in outcome) return succeed(outcome.answer);
    from = outcome.next;
  }
}
