import type { AxleName, SideName } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { numberOf, pastEnd, valuesAt, type Question, type Variable } from './question';
import type { CandidateOrder } from './ranking';
import { Search, type KeptCandidate } from './reachSearch';
import type { Scored } from './score';
import type { SeenParts } from './seenParts';

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

/** What would help, and what the wanted readings and the score would then be. */
export interface Helped {
  readonly help: Help;
  readonly score: number;
  readonly wanted: Scored['wanted'];
}

/** The one that helps most; null where none does. @param least - a gain up to this is none: scores so near are equal */
export const mostHelp = (helps: readonly Helped[], least: number): Helped | null =>
  helps.filter(({ help }) => help.gain > least).sort((a, b) => a.score - b.score)[0] ?? null;

/** What letting out a limit would gain. @param score - of the best answer; Infinity where there is none */
export function limitHelps(keptOut: readonly KeptCandidate[], score: number, order: CandidateOrder): Helped[] {
  const perLimit = new Map<string, KeptCandidate>();
  for (const kept of keptOut) {
    const key = JSON.stringify(kept.by.limit.limit);
    const known = perLimit.get(key);
    if (known === undefined || order(kept.candidate, known.candidate) < 0) perLimit.set(key, kept);
  }
  return [...perLimit.values()].map(({ candidate, by: { limit, end, by } }) => {
    const [owner, side] = limit.name.split('.');
    const help: Help = {
      kind: 'limit',
      axle: owner === 'front' || owner === 'rear' ? owner : null,
      side: side === 'left' || side === 'right' || side === 'both' ? side : null,
      name: limit.limit.reading ?? limit.limit.setting ?? limit.name,
      end,
      by,
      gain: score - candidate.scored.score,
    };
    return { help, score: candidate.scored.score, wanted: candidate.scored.wanted };
  });
}

/** One end of a range that could be further out. */
export interface RangeEnd {
  readonly at: number;
  readonly end: 'min' | 'max';
  readonly step: number;
}

export function rangeEnds(mechanism: CarMechanism, { variables }: Question): readonly RangeEnd[] {
  return variables.flatMap((variable, at) => {
    const step = stepOf(mechanism, variable);
    return step === null ? [] : (['min', 'max'] as const).map((end) => ({ at, end, step }));
  });
}

/** The same question with one more step at this end, and nothing else there. */
export function pastRange(question: Question, { at, end, step }: RangeEnd): Question {
  const values = [pastEnd(question.variables[at].values as readonly number[], step, end)];
  const variables = question.variables.map((other, index) => (index === at ? { ...other, values } : other) as Variable);
  return { ...question, variables, combinations: question.combinations / question.variables[at].values.length, count: 1 };
}

/** The best past an end among these combinations; null where none is an answer as good as `most`. */
export function bestPast(
  mechanism: CarMechanism,
  longer: Question,
  tried: Iterable<readonly number[]>,
  seen: SeenParts,
  most: number,
): Scored | null {
  const search = new Search(mechanism, longer, seen, most);
  for (const indexes of tried) search.try(numberOf(longer, indexes), valuesAt(longer, indexes), search.bound);
  return search.best.at(0)?.scored ?? null;
}

/** @param score - of the best answer; Infinity where there is none @param past - the best past the end of a range; null: none so good */
export function rangeHelp({ variables }: Question, { at, end, step }: RangeEnd, score: number, past: Scored | null): Helped[] {
  if (past === null) return [];
  const { axle, side, name } = variables[at];
  const help: Help = { kind: 'range', axle, side, name, end, by: step, gain: score - past.score };
  return [{ help, score: past.score, wanted: past.wanted }];
}

/** A question too large to try whole: the other adjusters up to two steps around where they stand. */
export function* neighboursOf({ variables }: Question, indexes: readonly number[], fixed: number): Generator<readonly number[]> {
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
