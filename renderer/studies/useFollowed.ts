import { useCallback, useEffect, useRef, useState } from 'react';
import type { StudyOrder } from '../../geometry/index';
import { useStudy, type Answered } from './useStudy';

/**
 * A study that is quick enough to follow the car: asked anew whenever the order is another one. What was answered last stays
 * while the next is worked out.
 * @param order - the same object while nothing changes; null: there is nothing to ask
 * @param onAnswered - told of every answer
 */
export const useFollowed = <Order extends StudyOrder>(order: Order | null, onAnswered?: (answered: Answered<Order>) => void) => {
  const { state, ask, cancel } = useStudy<Order>();
  const [last, setLast] = useState<Answered<Order> | null>(null);
  const listener = useRef(onAnswered);
  useEffect(() => {
    listener.current = onAnswered;
  });
  const again = useCallback(() => {
    if (order === null) return;
    ask(order, (answered) => {
      setLast(answered);
      listener.current?.(answered);
    });
  }, [order, ask]);
  useEffect(again, [again]);
  return { state, last: state.kind === 'failed' ? null : last, cancel, again };
};
