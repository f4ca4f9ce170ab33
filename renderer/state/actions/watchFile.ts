import type { FileService } from '../../files/fileService';
import { changeFiles, isUnsaved, type BenchStore } from '../benchStore';
import { notePicked } from './notePicked';
import { changedNotice, isSameText } from './saveCar';

/** How often the open file is looked at while the window is in sight, ms. */
const LOOK_MS = 5000;

/** Looks whether somebody else changed the open file, and whether another window has it open. Says a change once. */
export const lookAtFile = async (store: BenchStore, files: FileService): Promise<void> => {
  const { file, files: known } = store.getState();
  if (!file) return;
  const { place } = file;
  if (place.kind === 'picked') {
    await notePicked(store, files, place.handle);
    return lookAtPicked(store);
  }
  if (place.kind !== 'handed') return;
  const answer = await files.lookAtFile({ window: known.window, id: place.file.id });
  const now = store.getState();
  if (!answer.ok || now.file?.place !== place) return;
  const { version, others, alike } = answer.value;
  if (others !== now.files.others || alike !== now.files.alike) changeFiles(store, { others, alike });
  const stamp = version?.stamp ?? null;
  const told = stamp ?? 'gone';
  if (stamp === (place.version?.stamp ?? null) || told === now.files.toldOf) return;
  changeFiles(store, { notice: changedNotice(place.file.name, place.file.folder, version), toldOf: told });
};

const lookAtPicked = async (store: BenchStore): Promise<void> => {
  const { file } = store.getState();
  if (file?.place.kind !== 'picked') return;
  const { handle } = file.place;
  const there = await handle.getFile().catch(() => null);
  const told = there ? String(there.lastModified) : 'gone';
  if (told === store.getState().files.toldOf || there?.lastModified === file.saved.at) return;
  const isSame = there !== null && isSameText(await there.text().catch(() => file.saved.text), file.saved.text);
  if (isSame || store.getState().file !== file) return;
  const version = there && { stamp: '', savedAt: there.lastModified };
  changeFiles(store, { notice: changedNotice(handle.name, undefined, version), toldOf: told });
};

/** Looks at the open file while the window is in sight, and whenever it comes to the front; asks before unsaved work is left. */
export const watchFile = (store: BenchStore, files: FileService): void => {
  const look = (): void => void (document.visibilityState === 'visible' && lookAtFile(store, files));
  window.addEventListener('focus', look);
  document.addEventListener('visibilitychange', look);
  setInterval(look, LOOK_MS);
  window.addEventListener('beforeunload', (event) => {
    if (isUnsaved(store.getState()) || store.getState().unfinished) event.preventDefault();
  });
};
