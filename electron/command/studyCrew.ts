import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import {
  handOut,
  leadStudy,
  openStudy,
  shareOut,
  type CarMechanism,
  type FromWorker,
  type Hand,
  type StudyAnswers,
  type StudyOrder,
} from '../../geometry/index';
import type { Call, Tell } from './answer';
import type { LoadedCar } from './carSource';
import { CommandError, errorOfFailure, usageError } from './commandError';
import type { Options } from './options';

/** What is left is given to other threads when it would take longer than this: they need a tenth of a second to start. */
const WORTH_STARTING_MS = 150;

const WORKER = fileURLToPath(new URL('./studyWorker.js', import.meta.url));

/** Works out the studies of a call, on threads of its own where that is sooner. */
export class StudyCrew {
  private readonly hands: Hand[] = [];

  /**
   * @param workers - threads at most; as many as the machine has cores where undefined
   * @throws CommandError where the setup cannot be put together
   */
  async answer<Order extends StudyOrder>(
    order: Order,
    mechanism: CarMechanism,
    workers: number | undefined,
    tell: Tell,
  ): Promise<StudyAnswers[Order['study']]> {
    const hasWorker = existsSync(WORKER);
    const most = hasWorker ? (workers ?? availableParallelism()) : 1;
    let number = -1;
    let hands: readonly Hand[] = [];
    const led = await leadStudy(openStudy(order, mechanism), async (round, from) => {
      number += 1;
      const parts = new Array<unknown>(round.chunks);
      const started = performance.now();
      let done = 0;
      while (done < round.chunks) {
        const left = ((performance.now() - started) / Math.max(1, done)) * (round.chunks - done);
        // this thread has to hear Ctrl-C: what takes longer than a moment runs on another, even where one is all there may be
        if (hasWorker && (round.isLong === true || (done > 0 && left > WORTH_STARTING_MS))) break;
        parts[done] = round.run(done);
        done += 1;
        await tell(done, round.chunks);
      }
      if (done === round.chunks) return parts;
      if (hands.length === 0) {
        hands = this.called(Math.min(most, round.chunks - done));
        handOut(hands, order);
      }
      const rest = Array.from({ length: round.chunks - done }, (_, index) => done + index);
      await shareOut(hands, { round: number, from }, rest, parts, (more) => void tell(done + more, round.chunks));
      return parts;
    });
    if (!led.ok) throw new CommandError(errorOfFailure(led.failure));
    return led.value;
  }

  private called(count: number): readonly Hand[] {
    while (this.hands.length < count) this.hands.push(startHand());
    return this.hands.slice(0, count);
  }

  end(): void {
    for (const hand of this.hands.splice(0)) hand.stop();
  }
}

/** How a call has its studies worked out. */
export function studyWith(crew: StudyCrew, car: LoadedCar | null, { workers }: Options, tell: Tell): Call['study'] {
  return (order) => {
    if (car === null) throw usageError('a car is needed');
    return crew.answer(order, car.mechanism, workers, tell);
  };
}

function startHand(): Hand {
  const worker = new Worker(WORKER);
  return {
    post: (message) => worker.postMessage(message),
    listen: (onPart, onFailure) => {
      worker.removeAllListeners();
      worker.on('message', (answer: FromWorker) => onPart(answer));
      worker.on('error', onFailure);
    },
    stop: () => void worker.terminate(),
  };
}
