import { parseCar, parseCarBytes, setupNames, type Fault } from '../../../geometry/index';
import { failureWords } from '../../files/failureWords';
import type { FileAnswer, FileService, HandedFile, HandedName } from '../../files/fileService';
import { notePicked } from './notePicked';
import { noteRecent, noteRecentHanded, noteRecentPicked } from './recentFiles';
import { otherFile } from '../../files/otherFiles';
import { bytesOf, fileNameFor, nameOfPlace, type FilePlace, type PickedFile } from '../../files/places';
import type { BegunCar } from '../begunCar';
import { change, changeFiles, isUnsaved, openBench, type BenchStore } from '../benchStore';
import type { ReplaceQuestion } from '../filesState';
import { START_VIEWING } from '../viewing';

const STILL = { travel: 0, rollDeg: 0, rack: 0 };

type Read = ReturnType<typeof parseCar>;

/** A car that is to be opened. */
export interface CarSource {
  /** what it is called until it was read: the file's name, or the sample's */
  readonly title: string;
  readonly sample: string | null;
  readonly place: FilePlace;
  /** when the file was written, ms since 1970 */
  readonly savedAt: number | null;
  /** it was made here and is in no file */
  readonly isNeverSaved?: boolean;
  readonly begun?: BegunCar;
}

const refuse = (store: BenchStore, title: string, message: string, faults: readonly Fault[], text: string | null = null): void =>
  store.setState({ refused: { title, message, faults, text } });

const countOf = (faults: readonly Fault[]): string =>
  faults.length === 1 ? 'One fault was found in it.' : `${faults.length} faults were found in it.`;

const refuseFaults = (store: BenchStore, title: string, faults: readonly Fault[], text: string): void =>
  refuse(store, title, countOf(faults), faults, text);

/** Puts a car that was read on the bench, in place of what is there. */
export const putOnBench = (store: BenchStore, source: CarSource, read: Extract<Read, { ok: true }>['value']): void => {
  const { document, warnings, text } = read;
  const { title, sample, place, savedAt, isNeverSaved = false, begun } = source;
  const saved = { document, text, at: savedAt };
  const file = { title: document.name || title, sample, asRead: document, warnings, place, saved, isNeverSaved, begun };
  const axle = document.front ? 'front' : 'rear';
  const held = Object.keys(document[axle]?.adjusters ?? {})[0] ?? null;
  // in one step: a copy's id and the car that it is of are never of two cars
  const fresh = { copy: crypto.randomUUID(), notice: null, question: null, others: 0, alike: 0, toldOf: null };
  const files = { ...store.getState().files, ...fresh };
  // a point, a tape or a question of the view is of the car that it was asked on; the views are the page's
  const viewing = { ...START_VIEWING, layout: store.getState().viewing.layout };
  change(store, { ...openBench(file, setupNames(document)), axle, held, position: STILL, files, viewing, isGiving: false });
};

const sourceOf = (title: string, sample: string | null): CarSource => {
  const place: FilePlace = { kind: 'none', name: fileNameFor(title) };
  return { title, sample, place, savedAt: null };
};

const take = (store: BenchStore, source: CarSource, read: Read, text: string): boolean => {
  if (read.ok) putOnBench(store, source, read.value);
  else refuseFaults(store, source.title, read.failure.faults, text);
  return read.ok;
};

/**
 * Opens the text of a car file in place of what is open, without asking. A file with faults leaves all as it is and says which.
 */
export const openCarText = (store: BenchStore, title: string, sample: string | null, text: string): boolean =>
  take(store, sourceOf(title, sample), parseCar(text), text);

const decoded = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** What is no car at all is told as what it is, and not by the faults that it has as one. */
const refuseBytes = (store: BenchStore, title: string, faults: readonly Fault[], bytes: Uint8Array): void => {
  const other = otherFile(title, bytes);
  if (!other) return refuseFaults(store, title, faults, decoded(bytes));
  const { words, advice, page } = other;
  const refused = { title, message: `“${title}” is ${words}. ${advice}`, faults: [], text: null };
  store.setState({ refused: { ...refused, ...(page && { page }) } });
};

/**
 * Opens a car by its bytes, so that its encoding is judged too. One with faults changes nothing; where what is open has
 * changes that were not saved, the person is asked first.
 */
const offerCar = (store: BenchStore, files: FileService, source: CarSource, bytes: Uint8Array, then?: () => void): void => {
  const read = parseCarBytes(bytes);
  if (!read.ok) return refuseBytes(store, source.title, read.failure.faults, bytes);
  const open = (): void => {
    putOnBench(store, source, read.value);
    if (source.place.kind === 'none') void files.releaseFile({ window: store.getState().files.window });
    then?.();
  };
  askFirst(store, { title: read.value.document.name || source.title, theirs: theirsOf(store, source), open });
};

/** Opens what waits; where what is open has changes that were not saved, the person is asked first. */
export const askFirst = (store: BenchStore, question: ReplaceQuestion): void => {
  if (isUnsaved(store.getState())) changeFiles(store, { question });
  else question.open();
};

/** Whether a car is the open file's own, in a version that somebody else wrote. */
const theirsOf = (store: BenchStore, { place, savedAt }: CarSource): ReplaceQuestion['theirs'] => {
  const { file } = store.getState();
  const theirs = { name: nameOfPlace(place), savedAt };
  if (place.kind === 'handed' && file?.place.kind === 'handed')
    return place.file.id === file.place.file.id && place.version?.stamp !== file.place.version?.stamp ? theirs : undefined;
  if (place.kind === 'picked' && file?.place.kind === 'picked')
    return place.handle === file.place.handle && savedAt !== file.saved.at ? theirs : undefined;
  return undefined;
};

const tell = (store: BenchStore, title: string, answer: Extract<FileAnswer<never>, { ok: false }>): void =>
  refuse(store, title, failureWords({ ...answer.failure, name: answer.failure.name ?? title }), []);

/** Opens one of the samples that came with the program. */
export const openSample = async (store: BenchStore, files: FileService, name: string): Promise<void> => {
  const answer = await files.readSample(name);
  if (!answer.ok) return tell(store, name, answer);
  offerCar(store, files, sourceOf(name, name), new TextEncoder().encode(answer.value.text));
};

const sourceOfHanded = ({ id, name, folder, version, isReadOnly }: HandedFile): CarSource => {
  const place: FilePlace = { kind: 'handed', file: { id, name, folder }, version, isReadOnly };
  return { title: name, sample: null, place, savedAt: version.savedAt };
};

/** Opens a file that the shell handed out. */
export const openHanded = async (store: BenchStore, files: FileService, { id, name }: HandedName): Promise<void> => {
  const { window } = store.getState().files;
  const answer = await files.openFile({ window, id });
  if (!answer.ok) return tell(store, name, answer);
  const { others, alike, base64 } = answer.value;
  offerCar(store, files, sourceOfHanded(answer.value), bytesOf(base64), () => {
    changeFiles(store, { others, alike });
    noteRecentHanded(store, { id, name, folder: answer.value.folder });
  });
};

/** Opens a file that the browser holds a handle on: saving will write the same file. */
export const openPicked = async (store: BenchStore, files: FileService, handle: PickedFile): Promise<void> => {
  const { name } = handle;
  try {
    const file = await handle.getFile();
    const bytes = new Uint8Array(await file.arrayBuffer());
    const source = { title: name, sample: null, place: { kind: 'picked', name, handle } as const, savedAt: file.lastModified };
    offerCar(store, files, source, bytes, () => {
      void noteRecentPicked(store, files, handle);
      void notePicked(store, files, handle);
    });
  } catch {
    tell(store, name, { ok: false, failure: { code: 'unreadable', name } });
  }
};

/** Opens a file that the browser gives to be read only: saving will ask where to. */
export const openGiven = async (store: BenchStore, files: FileService, given: File): Promise<void> => {
  const { name, lastModified } = given;
  try {
    const bytes = new Uint8Array(await given.arrayBuffer());
    const source = { title: name, sample: null, place: { kind: 'none', name } as const, savedAt: lastModified };
    offerCar(store, files, source, bytes, () => void noteRecent(store, files, name));
  } catch {
    tell(store, name, { ok: false, failure: { code: 'unreadable', name } });
  }
};

/** Reads the open file anew, in place of what is open: somebody else's version is taken. */
export const takeTheirs = async (store: BenchStore, files: FileService): Promise<void> => {
  const { file, files: known } = store.getState();
  if (!file || file.place.kind === 'none') return;
  const name = nameOfPlace(file.place);
  const open = async (): Promise<void> => {
    if (file.place.kind === 'picked') return openPicked(store, files, file.place.handle);
    if (file.place.kind === 'handed') return openHanded(store, files, { id: file.place.file.id, name, folder: '' });
  };
  changeFiles(store, { ...known, notice: null });
  await open();
};

/** The sample that shows most: every kind of adjuster, both layouts, four setups. */
const FIRST_SAMPLE = 'saltmarsh-hatch';

/** First start: one of the samples open. */
export const openFirstSample = async (store: BenchStore, files: FileService): Promise<void> => {
  const { samples } = store.getState();
  const first = samples.find((name) => name === FIRST_SAMPLE) ?? samples[0];
  if (first !== undefined) await openSample(store, files, first);
  else refuse(store, 'Samples', 'No sample came with this copy of the program. Open a car file of your own.', []);
};

/** The list of samples, for the menus. */
export const listSamples = async (store: BenchStore, files: FileService): Promise<void> => {
  const answer = await files.listSamples();
  if (answer.ok) store.setState({ samples: answer.value.map(({ name }) => name) });
  else tell(store, 'The list of sample cars', answer);
};

/** Puts away the message about a file that was refused. */
export const dismissRefused = (store: BenchStore): void => store.setState({ refused: null });
