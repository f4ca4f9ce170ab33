import type { StudyOrder } from './order';
import type { FromWorker, ToWorker } from './worker';

/** A worker as a crew sees it: a thread of Node's or of a browser's. */
export interface Hand {
  readonly post: (message: ToWorker) => void;
  /** from now on these are told of parts, and of what ended the worker */
  readonly listen: (onPart: (answer: FromWorker) => void, onFailure: (failure: Error) => void) => void;
  /** ends it at once, whatever it is doing */
  readonly stop: () => void;
}

/** Chunks that wait at a hand, so that none idles while its answer is on the way. */
const IN_HAND = 2;

/** Tells every hand which study it will work on. */
export const handOut = (hands: readonly Hand[], order: StudyOrder): void => hands.forEach((hand) => hand.post({ order }));

/**
 * Has the chunks of one round worked out by the hands, each as fast as it can.
 * @param parts - filled in, by chunk
 * @param tell - called with the parts that are done
 */
export function shareOut(
  hands: readonly Hand[],
  { round, from }: { readonly round: number; readonly from: unknown },
  chunks: readonly number[],
  parts: unknown[],
  tell: (done: number) => void,
): Promise<void> {
  return new Promise((resolve, reject) => {
    if (chunks.length === 0) return resolve();
    let next = 0;
    let done = 0;
    const give = (hand: Hand): void => {
      const chunk = chunks.at(next);
      if (chunk === undefined) return;
      next += 1;
      hand.post({ round, from, chunk });
    };
    for (const hand of hands)
      hand.listen(({ chunk, part }) => {
        parts[chunk] = part;
        done += 1;
        tell(done);
        give(hand);
        if (done === chunks.length) resolve();
      }, reject);
    for (let i = 0; i < IN_HAND; i += 1) hands.forEach(give);
  });
}
