import { useCallback, useEffect, useRef, useState } from 'react';
import type { Failure, StudyAnswers, StudyOrder } from '../../geometry/index';
import { StudyCancelled, StudyPool, type StudyProgress } from './studyPool';

/** Where a study stands. What was answered last stays while the next runs. */
export type StudyState<Order extends StudyOrder> =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly order: Order; readonly progress: StudyProgress; readonly isSlow: boolean }
  | {
      readonly kind: 'answered';
      readonly order: Order;
      readonly answer: StudyAnswers[Order['study']];
      /** [ms] from asking to the answer */
      readonly took: number;
    }
  | { readonly kind: 'failed'; readonly order: Order; readonly failure: Failure | Error };

/** What takes longer says how far it is, and can be called off [ms]. */
const SLOW_MS = 500;

/** One pool for all studies of the window; its threads start with the first question. */
let pool: StudyPool | null = null;
const thePool = (): StudyPool => (pool ??= new StudyPool());

/** Asks studies of one kind off the thread that draws. */
export function useStudy<Order extends StudyOrder>(): {
  readonly state: StudyState<Order>;
  readonly ask: (order: Order) => void;
  readonly cancel: () => void;
} {
  const [state, setState] = useState<StudyState<Order>>({ kind: 'none' });
  const running = useRef<Order | null>(null);

  const ask = useCallback((order: Order): void => {
    running.current = order;
    const started = performance.now();
    const isCurrent = (): boolean => running.current === order;
    const tell = (progress: StudyProgress): void => {
      if (isCurrent()) setState({ kind: 'running', order, progress, isSlow: performance.now() - started > SLOW_MS });
    };
    tell({ doing: '', done: 0, of: 0 });
    const finish = (next: StudyState<Order>): void => {
      if (!isCurrent()) return;
      running.current = null;
      setState(next);
    };
    thePool()
      .answer(order, tell)
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
