import { useCallback, useEffect, useRef, useState } from 'react';
import type { StudyOrder } from '../../geometry/index';
import { isSameDocument } from '../state/sameDocument';
import { isStale } from './answers/isStale';
import { useKept } from '../shell/keptState';
import { useStudy, type Answered } from './useStudy';

/** Whether two orders ask the same of a car that says the same. */
const isSameOrder = (a: StudyOrder, b: StudyOrder): boolean =>
  a.study === b.study && isSameDocument(a.question, b.question) && !isStale(a.document, b.document, '');

/**
 * A study that is quick enough to follow the car: asked anew whenever the order is another one. What was answered last stays
 * while the next is worked out.
 * @param key - keeps the last answer under this name for when one comes back to the panel, for what takes long; null: asked anew
 * @param order - the same object while nothing changes; null: there is nothing to ask
 * @param onAnswered - told of every answer
 */
export const useFollowed = <Order extends StudyOrder>(
  key: string | null,
  order: Order | null,
  onAnswered?: (answered: Answered<Order>) => void,
) => {
  const { state, ask, cancel } = useStudy<Order>();
  const [kept, keep] = useKept<Answered<Order> | null>(`${key ?? ''}.followed`, () => null);
  const [last, setLast] = useState(() => (key !== null && kept && order && isSameOrder(kept.order, order) ? kept : null));
  // an answer that was there when one came back to the panel is not asked for again
  const known = useRef(last);
  const listener = useRef<(answered: Answered<Order>) => void>(undefined);
  useEffect(() => {
    listener.current = (answered) => {
      if (key !== null) keep(answered);
      onAnswered?.(answered);
    };
  });
  const again = useCallback(() => {
    if (order === null) return;
    ask(order, (answered) => {
      setLast(answered);
      listener.current?.(answered);
    });
  }, [order, ask]);
  useEffect(() => {
    if (known.current && order && isSameOrder(known.current.order, order)) return;
    known.current = null;
    again();
  }, [again, order]);
  return { state, last: state.kind === 'failed' ? null : last, cancel, again };
};
