import { useCallback, useEffect, useRef, useState } from 'react';
import type { Failure } from '../../geometry/index';
import type { FitUpAnswers, FitUpOrder, FitUpProgress } from '../compute/fitup/fitUpOrder';
import { useKept } from '../shell/keptState';
import { FitUpHand } from './fitUpHand';

/** What was asked and answered. */
export interface FitUpAnswered<Order extends FitUpOrder> {
  readonly order: Order;
  readonly answer: FitUpAnswers[Order['job']];
  /** [ms] */
  readonly took: number;
}

export type FitUpState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'running'; readonly progress: FitUpProgress; readonly since: number; readonly isSlow: boolean }
  | { readonly kind: 'called off' }
  | { readonly kind: 'failed'; readonly failure: Failure | Error };

const IDLE: FitUpState = { kind: 'idle' };

/** What takes longer says how far it is [ms]. */
const SLOW_MS = 500;
/** How often it is said how far it is [ms]. */
const TELL_MS = 100;

/**
 * An answer of fit-up that follows the car: asked anew whenever the order is another one. What was answered last stays meanwhile, and
 * when one comes back to the page; whether it is of today's order the caller sees by `last.order`.
 * @param key - unlike any other's
 * @param order - the same object while nothing changes; null: nothing to ask
 */
export function useFitUp<Order extends FitUpOrder>(key: string, order: Order | null) {
  const [hand] = useState(() => new FitUpHand());
  const [state, setState] = useState<FitUpState>(IDLE);
  const [last, keep] = useKept<FitUpAnswered<Order> | null>(`fitup.${key}`, () => null);
  const keeping = useRef(keep);
  useEffect(() => {
    keeping.current = keep;
  });
  const known = useRef(last);
  const telling = useRef<ReturnType<typeof setInterval>>(undefined);

  const run = useCallback(() => {
    if (order === null) return;
    const started = performance.now();
    let progress: FitUpProgress = { doing: '', done: 0, of: 0 };
    const tell = () => {
      const since = performance.now() - started;
      setState({ kind: 'running', progress, since, isSlow: since >= SLOW_MS });
    };
    clearInterval(telling.current);
    telling.current = setInterval(tell, TELL_MS);
    tell();
    const finish = (next: FitUpState) => {
      clearInterval(telling.current);
      setState(next);
    };
    hand.ask(order, {
      tell: (now) => (progress = now),
      take: (result) => {
        if (!result.ok) return finish({ kind: 'failed', failure: result.failure });
        const answered: FitUpAnswered<Order> = { order, answer: result.value, took: performance.now() - started };
        known.current = answered;
        keeping.current(answered);
        finish(IDLE);
      },
      fail: (failure) => finish({ kind: 'failed', failure }),
    });
  }, [hand, order]);

  useEffect(() => {
    if (order === null || known.current?.order === order) return;
    run();
    return () => {
      clearInterval(telling.current);
      hand.cancel();
    };
  }, [hand, order, run]);

  const cancel = useCallback(() => {
    clearInterval(telling.current);
    hand.cancel();
    setState({ kind: 'called off' });
  }, [hand]);

  // a question that is being put again has neither a run nor an end of one
  const now = order === null ? IDLE : state;
  return { state: now, last: now.kind === 'failed' ? null : last, cancel, again: run };
}
