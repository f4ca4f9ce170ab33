import { useCallback, useEffect, useRef, useState } from 'react';
import type { Failure, StudyAnswers, StudyOrder } from '../../geometry/index';
import { useKept } from '../shell/keptState';
import { StudyCancelled, StudyPool, type StudyProgress } from './studyPool';

/** What was asked and answered. */
export interface Answered<Order extends StudyOrder> {
  readonly kind: 'answered';
  readonly order: Order;
  readonly answer: StudyAnswers[Order['study']];
  /** [ms] from asking to the answer */
  readonly took: number;
}

/** Where a study stands. */
export type StudyState<Order extends StudyOrder> =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'running';
      readonly order: Order;
      readonly progress: StudyProgress;
      /** [ms] since it was asked */
      readonly since: number;
      readonly isSlow: boolean;
    }
  | Answered<Order>
  | { readonly kind: 'failed'; readonly order: Order; readonly failure: Failure | Error };

/** What takes longer says how far it is, and can be called off [ms]. */
const SLOW_MS = 500;
/** How often it is said how far a study is [ms]: oftener nobody reads it, and the hand on the page waits. */
const TELL_MS = 80;

/** One pool for all studies of the window; its threads start with the first question. */
let pool: StudyPool | null = null;
const thePool = (): StudyPool => (pool ??= new StudyPool());

/** Asks studies of one kind off the thread that draws. */
export function useStudy<Order extends StudyOrder>(): {
  readonly state: StudyState<Order>;
  /** @param onAnswered - told of the answer, where it comes */
  readonly ask: (order: Order, onAnswered?: (answered: Answered<Order>) => void) => void;
  readonly cancel: () => void;
} {
  const [state, setState] = useState<StudyState<Order>>({ kind: 'none' });
  const running = useRef<Order | null>(null);

  const ask = useCallback((order: Order, onAnswered?: (answered: Answered<Order>) => void): void => {
    running.current = order;
    const started = performance.now();
    const isCurrent = (): boolean => running.current === order;
    let progress: StudyProgress = { doing: '', done: 0, of: 0 };
    const tell = (): void => {
      const since = performance.now() - started;
      if (isCurrent()) setState({ kind: 'running', order, progress, since, isSlow: since >= SLOW_MS });
    };
    tell();
    const telling = setInterval(tell, TELL_MS);
    const finish = (next: StudyState<Order>): void => {
      clearInterval(telling);
      if (!isCurrent()) return;
      running.current = null;
      setState(next);
      if (next.kind === 'answered') onAnswered?.(next);
    };
    thePool()
      .answer(order, (now) => (progress = now))
      .then(
        (result) =>
          finish(
            result.ok
              ? { kind: 'answered', order, answer: result.value, took: performance.now() - started }
              : { kind: 'failed', order, failure: result.failure },
          ),
        (thrown: unknown) => {
          if (thrown instanceof StudyCancelled) finish({ kind: 'none' });
          else finish({ kind: 'failed', order, failure: thrown instanceof Error ? thrown : new Error(String(thrown)) });
        },
      );
  }, []);

  const cancel = useCallback((): void => {
    if (running.current !== null) thePool().cancel();
  }, []);
  // a page that is left takes its question back
  useEffect(() => cancel, [cancel]);

  return { state, ask, cancel };
}

/**
 * The same for a panel that shows its last answer again when one comes back to it, and while the next is worked out.
 * @param key - unlike any other study's
 */
export function useKeptStudy<Order extends StudyOrder>(key: string) {
  const { state, ask, cancel } = useStudy<Order>();
  const [last, keep] = useKept<Answered<Order> | null>(key, () => null);
  const [wasLeft, tellLeft] = useKept(`${key}.left`, () => false);
  const leave = useRef<() => void>(undefined);
  useEffect(() => {
    leave.current = () => {
      if (state.kind === 'running') tellLeft(true);
    };
  });
  useEffect(() => () => leave.current?.(), []);
  return {
    state,
    last,
    /** the last question was called off because its panel was left */
    wasLeft: wasLeft && state.kind === 'none',
    ask: (order: Order, onAnswered?: (answered: Answered<Order>) => void): void => {
      tellLeft(false);
      ask(order, (answered) => {
        keep(answered);
        onAnswered?.(answered);
      });
    },
    cancel,
  };
}
