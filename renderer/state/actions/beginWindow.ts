import type { FileService, Preferences } from '../../files/fileService';
import { changeFiles, isUnsaved, type BenchStore, type Theme } from '../benchStore';
import { listSamples, openFirstSample, openHanded } from './openCar';
import { offerCopy } from './recoverCar';
import { listCopies } from './replaceCar';

const THEMES: readonly unknown[] = ['light', 'dark', 'system'] satisfies readonly Theme[];

/**
 * The window's start: samples and what was kept on this machine, the file that the start command named or else a sample, and
 * a copy that a window left behind, if there is one.
 */
export const beginWindow = async (store: BenchStore, files: FileService): Promise<void> => {
  const [begun] = await Promise.all([files.begin({ window: store.getState().files.window }), listSamples(store, files)]);
  if (!begun.ok) return openFirstSample(store, files);
  const { handed, copies, recent, preferences } = begun.value;
  changeFiles(store, { copies, recent });
  takePreferences(store, preferences);
  keepPreferences(store, files);
  const [first] = handed;
  if (first) await openHanded(store, files, first);
  if (!store.getState().file) await openFirstSample(store, files);
  const left = copies.find(({ isParked }) => !isParked);
  if (left) await offerCopy(store, files, left);
  else setTimeout(() => void lookAgain(store, files), LOOK_AGAIN_MS);
};

/** After a reload the window before may still count as open for a moment, and its copy as at work. */
const LOOK_AGAIN_MS = 2000;

/** What this window has kept itself in the meantime, of a car begun since, is no copy that was left behind. */
const lookAgain = async (store: BenchStore, files: FileService): Promise<void> => {
  await listCopies(store, files);
  const state = store.getState();
  const left = state.files.copies.find(({ isParked }) => !isParked);
  const isTouched = (state.history?.past.length ?? 0) > 0 || isUnsaved(state) || state.unfinished !== null;
  if (left && !isTouched) await offerCopy(store, files, left);
};

/** The theme is a preference like the others, with a place of its own in the store. */
const takePreferences = (store: BenchStore, { theme, ...preferences }: Preferences): void => {
  store.setState({ preferences: { ...preferences, ...store.getState().preferences } });
  if (THEMES.includes(theme)) store.setState({ theme: theme as Theme });
};

/** Keeps on the disk what the person changes. What cannot be kept is chosen again next time. */
const keepPreferences = (store: BenchStore, files: FileService): void => {
  store.subscribe(({ theme, preferences }, before) => {
    const changed = Object.entries(preferences).filter(([name, value]) => value !== before.preferences[name]);
    if (theme !== before.theme) changed.push(['theme', theme]);
    if (changed.length > 0) void files.keepPreferences({ preferences: Object.fromEntries(changed) });
  });
};
