import {
  handOut,
  leadStudy,
  openStudy,
  shareOut,
  type Failure,
  type FromWorker,
  type Hand,
  type Result,
  type StudyAnswers,
  type StudyOrder,
} from '../../geometry/index';

/** How far a study has come: chunks of the round that runs, and what it does. */
export interface StudyProgress {
  readonly doing: string;
  readonly done: number;
  readonly of: number;
}

/** Of a study that was called off; nobody waits for its answer. */
export class StudyCancelled extends Error {
  constructor() {
    super('The study was called off.');
    this.name = 'StudyCancelled';
  }
}

/** The threads on which studies are worked out, off the one that draws. One study at a time: a new one calls the last off. */
export class StudyPool {
  private hands: readonly Hand[] = [];
  private callOff: (() => void) | null = null;

  constructor(
    private readonly startHand: () => Hand = startWorker,
    private readonly count: number = Math.min(8, Math.max(1, navigator.hardwareConcurrency)),
  ) {}

  /** @throws StudyCancelled once `cancel` was called, or another study was begun */
  async answer<Order extends StudyOrder>(
    order: Order,
    tell: (progress: StudyProgress) => void,
  ): Promise<Result<StudyAnswers[Order['study']], Failure>> {
    this.cancel();
    const cancelled = new Promise<never>((_, reject) => (this.callOff = () => reject(new StudyCancelled())));
    const { callOff } = this;
    try {
      return await Promise.race([cancelled, this.lead(order, tell)]);
    } catch (thrown) {
      // what ended a worker ends the rest: the next study starts with fresh ones
      if (this.callOff === callOff) this.dismiss();
      throw thrown;
    } finally {
      if (this.callOff === callOff) this.callOff = null;
    }
  }

  /** Ends what runs at once: its threads are stopped wherever they are. */
  cancel(): void {
    const { callOff } = this;
    if (callOff === null) return;
    this.dismiss();
    this.callOff = null;
    callOff();
  }

  private dismiss(): void {
    for (const hand of this.hands) hand.stop();
    this.hands = [];
  }

  private async lead<Order extends StudyOrder>(
    order: Order,
    tell: (progress: StudyProgress) => void,
  ): Promise<Result<StudyAnswers[Order['study']], Failure>> {
    if (this.hands.length === 0) this.hands = Array.from({ length: this.count }, this.startHand);
    const { hands } = this;
    handOut(hands, order);
    let number = -1;
    return leadStudy(openStudy(order), async ({ doing, chunks: of }, from) => {
      number += 1;
      const parts = new Array<unknown>(of);
      tell({ doing, done: 0, of });
      const chunks = Array.from({ length: of }, (_, chunk) => chunk);
      await shareOut(hands, { round: number, from }, chunks, parts, (done) => tell({ doing, done, of }));
      return parts;
    });
  }
}

function startWorker(): Hand {
  const worker = new Worker(new URL('./studyWorker.ts', import.meta.url), { type: 'module' });
  return {
    post: (message) => worker.postMessage(message),
    listen: (onPart, onFailure) => {
      worker.onmessage = ({ data }: MessageEvent<FromWorker>) => onPart(data);
      worker.onerror = (event) => onFailure(new Error(event.message || 'A thread of the study ended.'));
    },
    stop: () => worker.terminate(),
  };
}
