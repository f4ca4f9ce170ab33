import type { LimitJudgement } from '../setup/judgeLimits';

/** A limit that a setup breaks. */
export interface BrokenLimit {
  /** the reading, or the adjuster's key */
  readonly of: string;
  readonly kind: 'reading' | 'setting';
  /** how far past it, of the worse wheel: mm and degrees of a reading, the file's unit of a setting; null where it has no value */
  readonly by: number | null;
}

/** Each limit once, with how far past it the worse wheel is. */
export function brokenLimits(judgements: readonly LimitJudgement[]): readonly BrokenLimit[] {
  return [...new Set(judgements.map(({ limit }) => limit))].map((limit) => {
    const spares = judgements.filter((one) => one.limit === limit).map(({ spare }) => spare);
    const known = spares.filter((spare): spare is number => spare !== null);
    return {
      of: limit.reading ?? limit.setting ?? '',
      kind: limit.reading === undefined ? 'setting' : 'reading',
      by: known.length === 0 ? null : -Math.min(...known),
    };
  });
}
