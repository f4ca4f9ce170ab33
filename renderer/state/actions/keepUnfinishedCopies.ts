import type { CopyNote, FileService } from '../../files/fileService';
import { fileNameFor } from '../../files/places';
import type { UnfinishedCar } from '../begunCar';
import { changeFiles, isUnsaved, type BenchStore } from '../benchStore';
import { unfinishedText } from '../unfinishedText';
import { AGAIN_MS, KEEP_AFTER_MS, type CopyKeeper } from './keepCopies';
import { listCopies } from './replaceCar';
import { takeBackNotKept, tellNotKept } from './tellNotKept';

export interface UnfinishedKeeper {
  /** Keeps a copy now of the points that are being given, where there are any. */
  keepNow(): void;
  stop(): void;
}

/** How a copy is called on the list of kept copies, where those of cars stand too. */
const titleOf = ({ choice }: UnfinishedCar): string => `${choice.name.trim() || 'New car'}, unfinished`.slice(0, 300);

/**
 * Keeps a recovery copy of a new car whose points are being given, soon after every change: they are in no file and on no bench,
 * and `keepCopies` knows nothing of them. It goes when they are given up, or when the car that was made of them has a copy of its
 * own. Writes follow one another.
 */
export const keepUnfinishedCopies = (store: BenchStore, files: FileService, cars: CopyKeeper): UnfinishedKeeper => {
  /** what waits to be written, by the id of its copy; null: that copy is to go */
  const waiting = new Map<string, { readonly car: UnfinishedCar; readonly isParked: boolean } | null>();
  let timer: ReturnType<typeof setTimeout> | null = null;
  let queue: Promise<unknown> = Promise.resolve();

  const noteOf = (id: string, car: UnfinishedCar, isParked: boolean): CopyNote => ({
    id,
    window: store.getState().files.window,
    title: titleOf(car),
    name: fileNameFor(car.choice.name),
    file: null,
    sample: null,
    savedAt: null,
    keptAt: Date.now(),
    setup: '',
    against: '',
    steps: [],
    isParked,
  });

  /** @returns whether nothing of it is left to do */
  const settleOne = async (id: string): Promise<boolean> => {
    const wanted = waiting.get(id);
    if (wanted === undefined) return true;
    if (wanted === null) {
      // the car that was made of them has a copy first: between the two there is no moment without one
      if (isUnsaved(store.getState()) && !(await cars.keepNow())) return false;
      const answer = await files.dropCopy({ id });
      return answer.ok || answer.failure.code !== 'disconnected';
    }
    const { car, isParked } = wanted;
    const answer = await files.keepCopy({ note: noteOf(id, car, isParked), text: unfinishedText(car) });
    if (answer.ok) takeBackNotKept(store);
    else tellNotKept(store, answer.failure.code, 'Give the points that are missing and save the car, or make room', []);
    if (answer.ok && isParked) await listCopies(store, files);
    return answer.ok;
  };

  const settle = async (): Promise<void> => {
    for (const [id, wanted] of [...waiting]) {
      const isDone = await settleOne(id);
      // what came in the meantime is still to be done
      if (isDone && waiting.get(id) === wanted) waiting.delete(id);
    }
    if (waiting.size > 0) schedule(AGAIN_MS);
  };

  const run = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    queue = queue.then(settle);
  };
  const schedule = (after: number): void => {
    timer ??= setTimeout(run, after);
  };

  const stop = store.subscribe((state, before) => {
    const { unfinished, files: known } = state;
    const { unfinished: was, files: knew } = before;
    if (known.lostAt === null && knew.lostAt !== null && waiting.size > 0) run();
    if (known.unfinishedCopy !== knew.unfinishedCopy) {
      // points of another car were taken up in their place: these wait on the list
      if (was) waiting.set(knew.unfinishedCopy, { car: was, isParked: true });
      if (unfinished) waiting.set(known.unfinishedCopy, { car: unfinished, isParked: false });
      return was || unfinished ? run() : undefined;
    }
    if (unfinished === was) return;
    if (unfinished) {
      waiting.set(known.unfinishedCopy, { car: unfinished, isParked: false });
      return schedule(KEEP_AFTER_MS);
    }
    waiting.set(known.unfinishedCopy, null);
    run();
    // the next ones have a copy of their own
    changeFiles(store, { unfinishedCopy: crypto.randomUUID() });
  });

  return {
    keepNow: () => {
      if (waiting.size > 0) run();
    },
    stop: () => {
      stop();
      if (timer !== null) clearTimeout(timer);
    },
  };
};
