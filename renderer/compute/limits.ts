import {
  findReading,
  judgeLimits,
  type AssembledCar,
  type AxleName,
  type CarDocument,
  type LimitJudgement,
} from '../../geometry/index';
import { mmPerFileUnit } from '../units/fileLength';
import { mattersOf } from './matters';
import { memoLast } from './memoLast';

/** How a value stands to its limit. Always shown by a shape and a word beside its colour. */
export type Verdict = 'within' | 'close' | 'broken';

/** One limit of the file held against a standing setup, both sides of it together. Lengths in mm, angles in degrees. */
export interface JudgedLimit {
  /** the reading, or the adjuster's key */
  readonly of: string;
  readonly name: string;
  readonly kind: 'reading' | 'setting';
  /** it limits left less right, not each side */
  readonly difference: boolean;
  readonly verdict: Verdict;
  /** to the nearer end, of the worse side; null where there is no value */
  readonly spare: number | null;
  readonly min: number | null;
  readonly max: number | null;
  readonly values: { readonly left: number | null; readonly right: number | null };
  readonly why: string | null;
}

/** The last part of a range that is worth watching. */
const CLOSE = 0.15;

/** What counts as close to a limit with one end: what matters of that reading. */
const closeTo = (document: CarDocument, of: string, min: number | null, max: number | null): number =>
  min !== null && max !== null ? CLOSE * (max - min) : (mattersOf(document, of) ?? 0);

const valueAt = (judgements: readonly LimitJudgement[], side: 'left' | 'right'): number | null => {
  const other = side === 'left' ? 'right' : 'left';
  return judgements.find(({ name }) => name.split('.')[1] !== other)?.value ?? null;
};

const judge = (document: CarDocument, judgements: readonly LimitJudgement[]): JudgedLimit | null => {
  const limit = judgements[0]?.limit;
  const of = limit?.reading ?? limit?.setting;
  if (!limit || of === undefined) return null;
  const entry = limit.reading === undefined ? undefined : findReading(limit.reading);
  const factor = entry?.quantity === 'length' ? mmPerFileUnit(document) : 1;
  const [min, max] = [limit.min === undefined ? null : limit.min * factor, limit.max === undefined ? null : limit.max * factor];
  const spares = judgements.map(({ spare }) => spare).filter((spare) => spare !== null);
  const spare = spares.length === 0 ? null : Math.min(...spares);
  const broken = judgements.some(({ ok }) => !ok);
  const close = spare !== null && spare < closeTo(document, of, min, max);
  return {
    of,
    name: entry?.name ?? of,
    kind: limit.reading === undefined ? 'setting' : 'reading',
    difference: limit.difference === true,
    verdict: broken ? 'broken' : close ? 'close' : 'within',
    spare,
    min,
    max,
    values: { left: valueAt(judgements, 'left'), right: limit.difference === true ? null : valueAt(judgements, 'right') },
    why: [limit.why, limit.source].filter((part) => part !== undefined).join(' ') || null,
  };
};

/** The limits that concern an axle, and those of the whole car, as the setup stands. */
export const judgedLimits = memoLast((document: CarDocument, car: AssembledCar, axle: AxleName): readonly JudgedLimit[] => {
  const other = axle === 'front' ? 'rear.' : 'front.';
  const mine = judgeLimits(car).filter(({ name }) => !name.startsWith(other));
  const limits = [...new Set(mine.map(({ limit }) => limit))];
  return limits.flatMap(
    (limit) =>
      judge(
        document,
        mine.filter((one) => one.limit === limit),
      ) ?? [],
  );
});
