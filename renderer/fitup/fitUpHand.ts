import type { FitUpOrder, FitUpProgress, FitUpResult } from '../compute/fitup/fitUpOrder';
import type { FromFitUp, ToFitUp } from './fitUpWorker';

interface Waiting {
  readonly tell: (progress: FitUpProgress) => void;
  readonly take: (result: FitUpResult) => void;
  readonly fail: (failure: Error) => void;
}

/**
 * One thread for one kind of question. A new question calls the last one off: its thread is stopped wherever it is, and another is
 * started in its place.
 */
export class FitUpHand {
  private worker: Worker | null = null;
  private waiting: Waiting | null = null;
  private number = 0;

  constructor(private readonly start: () => Worker = startWorker) {}

  ask<Order extends FitUpOrder>(
    order: Order,
    waiting: {
      readonly tell: (progress: FitUpProgress) => void;
      readonly take: (result: FitUpResult<Order>) => void;
      readonly fail: (failure: Error) => void;
    },
  ): void {
    this.cancel();
    this.number += 1;
    this.waiting = waiting as Waiting;
    this.worker ??= this.begin();
    this.worker.postMessage({ number: this.number, order } satisfies ToFitUp);
  }

  /** Nobody waits any more for what is being answered. */
  cancel(): void {
    if (this.waiting === null) return;
    this.waiting = null;
    this.end();
  }

  private end(): void {
    this.worker?.terminate();
    this.worker = null;
  }

  private begin(): Worker {
    const worker = this.start();
    worker.onmessage = ({ data }: MessageEvent<FromFitUp>) => {
      const { waiting } = this;
      if (waiting === null || data.number !== this.number) return;
      if ('progress' in data) return waiting.tell(data.progress);
      this.waiting = null;
      waiting.take(data.result);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      const { waiting } = this;
      this.waiting = null;
      this.end();
      waiting?.fail(new Error(event.message || 'A thread of fit-up ended.'));
    };
    return worker;
  }
}

const startWorker = (): Worker => new Worker(new URL('./fitUpWorker.ts', import.meta.url), { type: 'module' });
