import { serializeCar } from '../../../geometry/index';
import type { CopyNote, FileService } from '../../files/fileService';
import { nameOfPlace } from '../../files/places';
import { isUnsaved, type BenchState, type BenchStore } from '../benchStore';
import type { SetupCopies } from '../copiedFrom';
import { stepsMade } from '../stepsMade';
import { takeBackNotKept, tellNotKept } from './tellNotKept';
import { carTitle } from '../carTitle';

/** A copy is on the disk this long after an edit at the latest, with what writing takes on top, ms. */
export const KEEP_AFTER_MS = 400;
/** How soon a copy that could not be kept is tried again, ms. */
export const AGAIN_MS = 2000;
const MOST_STEPS = 200;
/** More of a name no note has. */
const MOST_LETTERS = 300;

const copiesOf = (copies: SetupCopies): SetupCopies =>
  Object.fromEntries(Object.entries(copies).filter((names) => names.every(({ length }) => length <= MOST_LETTERS)));

export interface CopyKeeper {
  /** Keeps a copy now. @returns whether it is kept */
  keepNow(part?: Partial<Pick<CopyNote, 'isParked'>>): Promise<boolean>;
  /** The same on the way out of the page, where nothing is waited for: not for a write before it, nor for what it grew from. */
  keepAtOnce(): void;
  /** Throws away the copy of a car that is no longer open, behind whatever of it is still being written. */
  dropSoon(id: string): void;
  stop(): void;
}

/**
 * Keeps a recovery copy of what is open, soon after every change and as long as it differs from its file; takes the copy away
 * when it does no longer. Writes follow one another, so that an older copy never ends on top.
 */
export const keepCopies = (store: BenchStore, files: FileService): CopyKeeper => {
  let steps: CopyNote['steps'] = [];
  /** copy id and text of the origin that was kept for it, and whether there is a copy of that id */
  let origin: string | null = null;
  let kept: string | null = null;
  /** copies of what says the same as its file again: they can go */
  const finished = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | null = null;
  let queue: Promise<unknown> = Promise.resolve();

  const noteOf = (state: BenchState, part: Partial<CopyNote>): CopyNote | null => {
    const { file, history, files: known } = state;
    if (!file || !history) return null;
    return {
      id: known.copy,
      window: known.window,
      title: (carTitle(state) ?? '').slice(0, 300),
      name: nameOfPlace(file.place).slice(0, 300),
      file: file.place.kind === 'handed' ? file.place.file.id : null,
      sample: file.sample,
      savedAt: (file.saved.grewFrom ?? file.saved).at,
      keptAt: Date.now(),
      setup: history.present.setup.slice(0, 300),
      against: history.present.against.slice(0, 300),
      ...(history.present.copies && { copies: copiesOf(history.present.copies) }),
      steps: steps.map(({ name, at }) => ({ name: name.slice(0, 300), at })),
      isParked: false,
      ...part,
    };
  };

  const write = async (part: Partial<CopyNote>, isLeaving = false): Promise<boolean> => {
    const state = store.getState();
    const note = noteOf(state, part);
    if (!note || !state.file || !state.history) return false;
    const { saved } = state.file;
    const { text: grewFrom } = saved.grewFrom ?? saved;
    // a car that is in no file has grown from none
    if (!state.file.isNeverSaved && origin !== note.id + grewFrom) {
      const asked = files.keepOrigin({ id: note.id, text: grewFrom });
      const first = isLeaving ? null : await asked;
      if (first?.ok === false) return told(first.failure.code);
      origin = note.id + grewFrom;
    }
    const answer = await files.keepCopy({ note, text: serializeCar(state.history.present.document, saved.text) });
    if (!answer.ok) return told(answer.failure.code);
    kept = note.id;
    takeBackNotKept(store);
    return true;
  };

  const told = (code: string): false => {
    tellNotKept(store, code, 'Save the car, or make room', ['saveAs', 'download']);
    return false;
  };

  const schedule = (after: number): void => {
    timer ??= setTimeout(() => {
      timer = null;
      queue = queue.then(settle);
    }, after);
  };

  const settle = async (): Promise<void> => {
    const state = store.getState();
    for (const id of [...finished]) {
      const answer = await files.dropCopy({ id });
      if (answer.ok) finished.delete(id);
      else if (answer.failure.code === 'disconnected') schedule(AGAIN_MS);
      if (id === kept) [kept, origin] = [null, null];
    }
    if (isUnsaved(state) && !(await write({}))) schedule(AGAIN_MS);
  };

  /** What was done, by the names of the undo steps. */
  const noteStep = ({ history: now }: BenchState, { history: then }: BenchState): void => {
    if (!now || !then || now === then) return;
    steps = stepsMade(steps, then, now, Date.now()).slice(-MOST_STEPS);
  };

  /** A copy that is gone on with has its steps behind it, and what it grew from is on the disk. */
  const goOnWith = ({ files: { offer, copy } }: BenchState): void => {
    const gone = offer?.copy.note.id === copy ? offer.copy : null;
    steps = gone?.note.steps ?? [];
    if (gone && gone.origin !== null) origin = copy + gone.origin;
  };

  const stop = store.subscribe((state, before) => {
    const isOther = state.files.copy !== before.files.copy;
    const isSaved = state.file?.saved !== before.file?.saved;
    if (isOther) goOnWith(state);
    else if (isSaved) steps = [];
    else noteStep(state, before);
    if (!isSaved && state.history?.present.document === before.history?.present.document) return;
    const isFinished = !isUnsaved(state);
    const { copy } = state.files;
    if (isFinished && state.files.downloaded === copy) return void keepNow({ isParked: true });
    // Asked for whether or not one was written from here: a recovered copy was there before, and one may be on its way.
    if (isFinished) finished.add(copy);
    else finished.delete(copy);
    schedule(isFinished ? 0 : KEEP_AFTER_MS);
  });

  const stopLost = store.subscribe((state, before) => {
    if (state.files.lostAt === null && before.files.lostAt !== null && isUnsaved(state)) schedule(0);
  });

  const keepNow: CopyKeeper['keepNow'] = (part = {}) => {
    const next = queue.then(() => write(part));
    queue = next.catch(() => undefined);
    return next;
  };

  return {
    keepNow,
    keepAtOnce: () => {
      if (isUnsaved(store.getState())) queue = Promise.all([queue, write({}, true)]).catch(() => undefined);
    },
    dropSoon: (id) => {
      finished.add(id);
      schedule(0);
    },
    stop: () => {
      stop();
      stopLost();
      if (timer) clearTimeout(timer);
    },
  };
};
