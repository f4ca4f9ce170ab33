import { useMemo } from 'react';
import { assembleSetup } from '../compute/assembleBench';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { formatNumber } from '../units/format';
import { failureSentences } from './failureSentences';
import { inFieldWords } from './fieldWords';
import { movedWords } from './positionWords';

/** Why the position or setting asked for has no answer, in the words of the field; null where it has one. */
export const useFailureWords = (): { readonly title: string; readonly detail: string } | null => {
  const units = useUnits();
  const failure = useBench((state) => (state.answer && !state.answer.ok ? state.answer.failure : null));
  const position = useBench((state) => state.position);
  const document = useBench((state) => state.trial ?? state.history?.present.document ?? null);
  return useMemo(() => {
    if (!failure || !document) return null;
    return failureSentences(failure, {
      position: movedWords(position, units),
      isSet: assembleSetup(document, failure.setup).ok,
      mm: (length) => formatNumber(length, length < 1 ? 2 : 1),
      inWords: (message) => inFieldWords(message, document),
    });
  }, [failure, document, position, units]);
};
