import { createStore, type StoreApi } from 'zustand/vanilla';
import type { AxleName, CarDocument, Fault, Warning } from '../../geometry/index';
import { answerBench, type BenchAnswer, type BenchQuestion } from '../compute/answerBench';
import { memoLast } from '../compute/memoLast';
import type { FilePlace } from '../files/places';
import type { BegunCar, UnfinishedCar } from './begunCar';
import { comparedOf, type AgainstCar, type Compared } from './compared';
import type { SetupCopies } from './copiedFrom';
import { startFiles, type FilesState } from './filesState';
import { startHistory, type History } from './history';
import type { PointNames } from './pointNames';
import type { Preferences } from './preferences';
import { isSameDocument } from './sameDocument';
import { START_VIEWING, type Viewing, type ViewName } from './viewing';

export type { ViewName };

export type Theme = 'light' | 'dark' | 'system';
export type PageName = 'bench' | 'points' | 'studies' | 'fitup' | 'sheet';

export type StudyName = 'sweep' | 'compare' | 'influence' | 'ways' | 'reach' | 'map' | 'gauges';

/** Wheel travel from standing [mm], roll [degrees], rack travel [mm]: what the motion rules hold. */
export interface BenchPosition {
  readonly travel: number;
  readonly rollDeg: number;
  readonly rack: number;
}

/** What an undo step brings back: the car and which of its setups was on the bench. */
export interface Bench {
  readonly document: CarDocument;
  readonly setup: string;
  /** the compared setup, of the car that `againstCar` says */
  readonly against: string;
  readonly againstCar: AgainstCar;
  /** points that were given other names since the car was opened */
  readonly names?: PointNames;
  /** setups that were begun here, each with the one that it was begun as a copy of */
  readonly copies?: SetupCopies;
}

export interface OpenedFile {
  readonly title: string;
  /** the sample's name, null for a file of the person's own */
  readonly sample: string | null;
  /** the document as it was read; its setups are never edited in place */
  readonly asRead: CarDocument;
  readonly warnings: readonly Warning[];
  /** where saving writes to */
  readonly place: FilePlace;
  readonly saved: SavedCar;
  /** it was made here and is in no file yet: unsaved, even where nothing was changed since */
  readonly isNeverSaved?: boolean;
  /** how it was begun, where that was in this window */
  readonly begun?: BegunCar | undefined;
}

/** A version of a file that a kept copy has grown from. */
export interface GrownFrom {
  readonly text: string;
  /** when it was written, ms since 1970; null: unknown */
  readonly at: number | null;
}

/** A car as it was last read or saved. */
export interface SavedCar {
  readonly document: CarDocument;
  /** the text of the file, from which the next one keeps whatever did not change */
  readonly text: string;
  /** when the file was written, ms since 1970; null: unknown, or no file */
  readonly at: number | null;
  /** the version that was last saved or opened here, where somebody else has written the file since: what a kept copy grew from */
  readonly grewFrom?: GrownFrom;
  /** it was written from this window: said beside its name while nothing is changed */
  readonly here?: true;
  /** points that had other names then than when it was opened */
  readonly names?: PointNames;
}

/** A file that could not be opened: what was tried and every fault that was found. */
export interface RefusedFile {
  readonly title: string;
  readonly message: string;
  readonly faults: readonly Fault[];
  /** what stands in the file, mends included; null where it could not be read */
  readonly text: string | null;
  /** it is no car, and there is a page that takes such files */
  readonly page?: PageName;
  /** nothing was open: a sample is, in its place */
  readonly isAtStart?: true;
  /** the text is no longer the file's: something of it was mended here */
  readonly isMended?: true;
}

export interface BenchState {
  readonly samples: readonly string[];
  /** recent files, kept copies and what there is to say about the open file */
  readonly files: FilesState;
  readonly file: OpenedFile | null;
  readonly refused: RefusedFile | null;
  readonly history: History<Bench> | null;
  readonly page: PageName;
  /** the study that its page shows */
  readonly study: StudyName;
  readonly axle: AxleName;
  readonly position: BenchPosition;
  /** a ride is played: the position is one of many */
  readonly isPlaying: boolean;
  /** the adjuster under the hand, by its key; null when none is held */
  readonly held: string | null;
  readonly view: ViewName;
  /** what is shown in the view, and what is drawn over it */
  readonly viewing: Viewing;
  readonly theme: Theme;
  readonly preferences: Preferences;
  /** a unit of length was chosen since a car was begun here last: it is that one's unit too */
  readonly isLengthChosen: boolean;
  /**
   * The car on the bench as it would be with a part that is being made: what is answered and shown instead of it, against it.
   * Never undone and never saved; any other change of the bench ends it.
   */
  readonly trial: CarDocument | null;
  /** a new car whose points are still being given, beside the one on the bench */
  readonly unfinished: UnfinishedCar | null;
  /** the page of points shows that one, and not the car on the bench */
  readonly isGiving: boolean;
  /** the answer to what is asked now; a failure says why there is none */
  readonly answer: BenchAnswer | null;
  /** the last answer that closed, for this car and axle: what the view keeps showing */
  readonly shown: Extract<BenchAnswer, { ok: true }>['value'] | null;
}

export type BenchStore = StoreApi<BenchState>;

const START: Omit<BenchState, 'files'> = {
  samples: [],
  file: null,
  refused: null,
  history: null,
  page: 'bench',
  study: 'ways',
  axle: 'front',
  position: { travel: 0, rollDeg: 0, rack: 0 },
  isPlaying: false,
  held: null,
  view: 'corner',
  viewing: START_VIEWING,
  theme: 'system',
  preferences: {},
  isLengthChosen: false,
  trial: null,
  unfinished: null,
  isGiving: false,
  answer: null,
  shown: null,
};

export const createBenchStore = (): BenchStore => createStore<BenchState>(() => ({ ...START, files: startFiles() }));

/** What the setup on the bench is held against; null where there is nothing, or no car. The same object while nothing changes. */
export const comparedWith = (state: Pick<BenchState, 'history' | 'file'>): Compared | null =>
  state.history && keptCompared(state.history.present, state.file?.saved.document ?? null);
const keptCompared = memoLast(comparedOf);

const questionOf = (state: BenchState): BenchQuestion | null => {
  if (!state.history) return null;
  const { document, setup } = state.history.present;
  const { axle, position, trial } = state;
  if (trial) return { document: trial, setup, compared: { document, setup, name: 'without it' }, axle, position };
  return { document, setup, compared: comparedWith(state), axle: state.axle, position: state.position };
};

/**
 * Changes the state and answers the bench's question anew, so that numbers and picture are never of two states.
 * The last good answer stays while the car and the axle stay.
 */
export const change = (store: BenchStore, part: Partial<BenchState>): void => {
  const before = store.getState();
  const ends = part.history !== undefined || part.file !== undefined || part.axle !== undefined;
  const next = { ...before, ...(ends && before.trial ? { trial: null } : {}), ...part };
  const question = questionOf(next);
  if (!question) {
    store.setState({ ...part, trial: null, answer: null, shown: null });
    return;
  }
  const answer = answerBench(question);
  const sameCar = before.file === next.file && before.axle === next.axle;
  const shown = answer.ok ? answer.value : sameCar ? before.shown : null;
  store.setState({ ...part, trial: next.trial, answer, shown });
};

/** The bench of a state that has a car; null before one is open. */
export const benchOf = (state: BenchState): Bench | null => state.history?.present ?? null;

/**
 * Whether what is open says something else than its file, or is in none. A change that was undone, or made back by hand, is
 * none.
 */
export const isUnsaved = ({ file, history }: Pick<BenchState, 'file' | 'history'>): boolean =>
  file !== null &&
  history !== null &&
  (file.isNeverSaved === true || !isSameDocument(history.present.document, file.saved.document));

/** Whether a dialog about files waits for an answer. */
export const isAsking = ({ refused, files: { offer, question } }: Pick<BenchState, 'refused' | 'files'>): boolean =>
  refused !== null || offer !== null || question !== null;

/** Changes a part of what is known of files. */
export const changeFiles = (store: BenchStore, part: Partial<FilesState>): void =>
  store.setState({ files: { ...store.getState().files, ...part } });

export const openBench = (file: OpenedFile, setups: readonly string[]): Pick<BenchState, 'file' | 'refused' | 'history'> => {
  const first = setups[0] ?? '';
  const setup = file.asRead.onCar && setups.includes(file.asRead.onCar) ? file.asRead.onCar : first;
  return {
    file,
    refused: null,
    history: startHistory<Bench>({ document: file.asRead, setup, against: first, againstCar: { kind: 'own' } }),
  };
};
