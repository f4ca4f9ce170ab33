import { serializeCar } from '../../../geometry/index';
import { choosePlaceInBrowser, download } from '../../files/browserFiles';
import { saveFailureWords } from '../../files/failureWords';
import type { FileFailure, FileService, FileVersion, HandedName } from '../../files/fileService';
import { clockTime } from '../../files/times';
import { fileNameFor, nameOfPlace, type FilePlace, type PickedFile } from '../../files/places';
import { changeFiles, type BenchState, type BenchStore, type OpenedFile, type SavedCar } from '../benchStore';
import { carTitle } from '../carTitle';
import type { FileNotice, NoticeWay } from '../filesState';
import { namesIn } from '../pointNames';
import { noteRecentHanded, noteRecentPicked } from './recentFiles';

/** What would be written now. */
export const textOfCar = ({ file, history }: Pick<BenchState, 'file' | 'history'>): string | null =>
  file && history ? serializeCar(history.present.document, file.saved.text) : null;

/** Notes that this document stands in the file by now. What was changed since it was read out for saving stays unsaved. */
const noteSaved = (store: BenchStore, saved: SavedCar, place: FilePlace, notice: FileNotice | null = null): void => {
  const { file, files, history } = store.getState();
  if (!file || !history) return;
  const names = namesIn(history, saved.document);
  // a car that was saved is a file of the person's own
  store.setState({
    file: { ...file, saved: { ...saved, here: true, names }, place, sample: null, isNeverSaved: false },
    files: { ...files, notice, toldOf: null },
  });
};

const WAYS: Readonly<Partial<Record<FileFailure['code'], readonly NoticeWay[]>>> = {
  readOnly: ['saveAs', 'saveAgain'],
  full: ['saveAgain', 'saveAs'],
  noFolder: ['saveAs', 'saveAgain'],
  disconnected: ['download'],
  badRequest: ['download'],
};

/** What to say of a file that was changed, or is gone. */
export const changedNotice = (name: string, folder: string | undefined, there: FileVersion | null): FileNotice => {
  const text = saveFailureWords({ code: 'changed', name, ...(folder !== undefined && { folder }), there });
  if (there === null) return { title: 'The file is gone', text: `${text} Nothing is lost.`, ways: ['saveOver', 'saveAs'], there };
  return {
    title: 'The file was changed on the disk',
    text: `${text} It was written at ${clockTime(there.savedAt)}. What you have here is not lost, whatever you choose.`,
    ways: ['saveOver', 'takeTheirs', 'saveAs'],
    there,
  };
};

const tellFailure = (store: BenchStore, failure: FileFailure): false => {
  const { name, folder, there } = failure;
  if (failure.code === 'changed') {
    changeFiles(store, { notice: changedNotice(name ?? 'The file', folder, there ?? null), toldOf: there?.stamp ?? null });
    return false;
  }
  const ways = WAYS[failure.code] ?? ['saveAs', 'saveAgain'];
  const text = `${saveFailureWords(failure)} Nothing is lost: the car is still open as you left it.`;
  // that the folder is gone says that the file is: the look at it says nothing over this
  const told = failure.code === 'noFolder' && { toldOf: 'gone' };
  changeFiles(store, { notice: { title: 'Not saved', text, ways }, ...told });
  return false;
};

/** @param expected - stamp of the version that may be written over; null: only where there is none */
const saveHanded = async (
  store: BenchStore,
  files: FileService,
  handed: HandedName,
  expected: string | null,
): Promise<boolean> => {
  const state = store.getState();
  const [text, document] = [textOfCar(state), state.history?.present.document];
  if (text === null || !document) return false;
  const answer = await files.saveFile({ window: state.files.window, id: handed.id, text, expected });
  if (!answer.ok) {
    return tellFailure(store, { folder: handed.folder, ...answer.failure, name: answer.failure.name ?? handed.name });
  }
  const { version, isReadOnly, others, alike } = answer.value;
  noteSaved(store, { document, text, at: version?.savedAt ?? null }, { kind: 'handed', file: handed, version, isReadOnly });
  changeFiles(store, { others, alike });
  noteRecentHanded(store, handed);
  return true;
};

const codeOfReason = (reason: unknown): FileFailure['code'] => {
  switch (reason instanceof DOMException ? reason.name : '') {
    case 'NotFoundError':
      return 'notFound';
    case 'NotAllowedError':
    case 'NoModificationAllowedError':
      return 'readOnly';
    case 'QuotaExceededError':
      return 'full';
    default:
      return 'unwritable';
  }
};

/** @param expected - the text that may be written over; null: whatever is there */
const savePicked = async (
  store: BenchStore,
  files: FileService,
  handle: PickedFile,
  expected: string | null,
): Promise<boolean> => {
  const state = store.getState();
  const [text, document] = [textOfCar(state), state.history?.present.document];
  if (text === null || !document) return false;
  const { name } = handle;
  try {
    if (expected !== null) {
      const now = await handle.getFile();
      if (!isSameText(await now.text(), expected)) {
        const there = { stamp: '', savedAt: now.lastModified };
        return tellFailure(store, { code: 'changed', name, there });
      }
    }
    // the browser writes beside the file and puts it in its place when it is closed
    const writing = await handle.createWritable();
    await writing.write(text);
    await writing.close();
    const at = await handle.getFile().then(
      ({ lastModified }) => lastModified,
      () => Date.now(),
    );
    noteSaved(store, { document, text, at }, { kind: 'picked', name, handle });
    void noteRecentPicked(store, files, handle);
    return true;
  } catch (reason) {
    return tellFailure(store, { code: codeOfReason(reason), name });
  }
};

/** Whether a file holds this text; a byte-order mark is not a part of it. */
export const isSameText = (file: string, text: string): boolean => file === text || file === `\uFEFF${text}`;

/** Why a car is downloaded. `noPlace`: the browser has no other way to save; `copy`: it cannot be saved to its file now. */
export type DownloadReason = 'noPlace' | 'copy';

const DOWNLOAD_WORDS: Readonly<Record<DownloadReason, string>> = {
  noPlace: 'This browser cannot write a file in place: every save is a new download.',
  copy: 'It holds everything up to now. The file itself was not written, and the car counts as unsaved.',
};

/** Hands the car to the browser's downloads. Whether they kept it is not told to the page, so the recovery copy stays. */
export const downloadCar = (store: BenchStore, reason: DownloadReason): void => {
  const { file, ...state } = store.getState();
  const text = textOfCar({ file, ...state });
  if (!file || text === null) return;
  const name = fileNameFor(nameOfPlace(file.place));
  download(name, text);
  const said = `“${name}” went to the browser’s downloads. ${DOWNLOAD_WORDS[reason]}`;
  changeFiles(store, { notice: { title: 'Downloaded', text: said, ways: [], news: 'good' } });
};

/** Saves the car to the file that it came from, and asks for a place where it has none. @returns whether it was saved */
export const saveCar = async (store: BenchStore, files: FileService): Promise<boolean> => {
  const { file } = store.getState();
  if (!file) return false;
  switch (file.place.kind) {
    case 'handed':
      return saveHanded(store, files, file.place.file, file.place.version?.stamp ?? null);
    case 'picked':
      return savePicked(store, files, file.place.handle, file.saved.text);
    case 'none':
      return saveCarAs(store, files);
  }
};

/** A car of no file that was not told another name yet is offered the one that it has now. */
const suggestedName = (state: BenchState, { place, sample, title }: OpenedFile): string => {
  const isNamedForCar = place.kind === 'none' && (sample !== null || place.name === fileNameFor(title));
  return fileNameFor(isNamedForCar ? (carTitle(state) ?? title) : nameOfPlace(place));
};

/** Saves the car to a place that the person chooses. @returns whether it was saved */
export const saveCarAs = async (store: BenchStore, files: FileService): Promise<boolean> => {
  const state = store.getState();
  const { file } = state;
  if (!file) return false;
  const name = suggestedName(state, file);
  if (files.shell === 'desktop') {
    const answer = await files.choosePlace({ window: state.files.window, name });
    if (!answer.ok) return tellFailure(store, { ...answer.failure, name: answer.failure.name ?? name });
    return answer.value !== null && saveHanded(store, files, answer.value, answer.value.version?.stamp ?? null);
  }
  const handle = await choosePlaceInBrowser(name);
  if (handle === 'cancelled') return false;
  if (handle !== 'none') return savePicked(store, files, handle, null);
  const [text, document] = [textOfCar(state), state.history?.present.document];
  if (text === null || !document) return false;
  downloadCar(store, 'noPlace');
  const { notice, copy } = store.getState().files;
  changeFiles(store, { downloaded: copy });
  noteSaved(store, { document, text, at: Date.now() }, { kind: 'none', name }, notice);
  return true;
};

/** Writes over the version that the person was told of, and over no later one. */
export const saveOver = async (store: BenchStore, files: FileService): Promise<boolean> => {
  const { file, files: known } = store.getState();
  if (!file) return false;
  const there = known.notice?.there ?? null;
  if (file.place.kind === 'handed') return saveHanded(store, files, file.place.file, there?.stamp ?? null);
  if (file.place.kind === 'picked') return savePicked(store, files, file.place.handle, null);
  return saveCarAs(store, files);
};

/** Puts the message about the file away. */
export const dismissNotice = (store: BenchStore): void => changeFiles(store, { notice: null });
