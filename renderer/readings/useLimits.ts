import { judgedLimits, type JudgedLimit } from '../compute/limits';
import { useMemo } from 'react';
import { useBench } from '../shell/benchContext';
import type { LimitPair } from './LimitBars';

const NONE: readonly JudgedLimit[] = [];

/** The limits of the axle, judged where the shown setup stands. */
export const useLimits = (): readonly JudgedLimit[] =>
  useBench(({ history, shown, axle }) => (history && shown ? judgedLimits(history.present.document, shown.row.car, axle) : NONE));

/** The same of the compared setup. */
const useComparedLimits = (): readonly JudgedLimit[] =>
  useBench(({ history, shown, axle }) =>
    history && shown && shown.compared.ok ? judgedLimits(history.present.document, shown.compared.value.car, axle) : NONE,
  );

/** Limits by the reading that they limit. */
export const useLimitsByReading = (): ReadonlyMap<string, readonly LimitPair[]> => {
  const limits = useLimits();
  const compared = useComparedLimits();
  return useMemo(() => {
    const pairs = new Map<string, LimitPair[]>();
    limits.forEach((limit, index) => {
      if (limit.kind === 'reading') pairs.set(limit.of, [...(pairs.get(limit.of) ?? []), { limit, compared: compared[index] }]);
    });
    return pairs;
  }, [limits, compared]);
};
