import { assembleSetup } from '../compute/assembleBench';
import { judgedLimits, type JudgedLimit } from '../compute/limits';
import { useMemo } from 'react';
import { useBench } from '../shell/benchContext';
import { comparedWith, type BenchState } from '../state/benchStore';
import type { LimitPair } from './LimitBars';

const NONE: readonly JudgedLimit[] = [];

/**
 * The limits of the axle, judged where the shown setup stands. None where that is not the setup on the bench, because it cannot be
 * set up: the verdicts of what was there before are not its.
 */
export const limitsOf = ({ history, answer, shown, axle }: BenchState): readonly JudgedLimit[] => {
  if (!history || !shown) return NONE;
  const { document, setup } = history.present;
  if (answer?.ok === false) {
    const car = assembleSetup(document, setup);
    if (!car.ok || car.value !== shown.row.car) return NONE;
  }
  return judgedLimits(document, shown.row.car, axle);
};

export const useLimits = (): readonly JudgedLimit[] => useBench(limitsOf);

/** The same of the compared setup, by the limits of its own car. */
const useComparedLimits = (): readonly JudgedLimit[] => {
  const other = useBench(comparedWith);
  return useBench(({ shown, axle }) =>
    other && shown && shown.compared.ok ? judgedLimits(other.document, shown.compared.value.car, axle) : NONE,
  );
};

const isSameLimit = (a: JudgedLimit, b: JudgedLimit): boolean =>
  a.of === b.of && a.difference === b.difference && a.min === b.min && a.max === b.max;

/** Limits by the reading that they limit. */
export const useLimitsByReading = (): ReadonlyMap<string, readonly LimitPair[]> => {
  const limits = useLimits();
  const compared = useComparedLimits();
  return useMemo(() => {
    const pairs = new Map<string, LimitPair[]>();
    for (const limit of limits)
      if (limit.kind === 'reading') {
        const other = compared.find((one) => isSameLimit(one, limit));
        pairs.set(limit.of, [...(pairs.get(limit.of) ?? []), { limit, compared: other }]);
      }
    return pairs;
  }, [limits, compared]);
};
