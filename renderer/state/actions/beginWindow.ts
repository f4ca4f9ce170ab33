import type { FileService, HandedName, Preferences } from '../../files/fileService';
import { changeFiles, isUnsaved, type BenchStore, type Theme } from '../benchStore';
import { listSamples, openFirstSample, openHanded } from './openCar';
import { listReopenable } from './recentFiles';
import { offerCopy } from './recoverCar';
import { openAgain, tellNotOpenAgain, type OpenBefore } from './rememberOpen';
import { listCopies } from './replaceCar';

const THEMES: readonly unknown[] = ['light', 'dark', 'system'] satisfies readonly Theme[];

/**
 * The window's start: samples and what was kept on this machine, what was open before a reload, or the file that the start
 * command named, or else a sample; and a copy that a window left behind, if there is one.
 */
export const beginWindow = async (store: BenchStore, files: FileService, before: OpenBefore | null = null): Promise<void> => {
  const [begun] = await Promise.all([files.begin({ window: store.getState().files.window }), listSamples(store, files)]);
  if (!begun.ok) return openFirstSample(store, files);
  const { handed, copies, recent, preferences } = begun.value;
  changeFiles(store, { copies, recent });
  takePreferences(store, preferences);
  keepPreferences(store, files);
  void listReopenable(store);
  await openFirst(store, files, handed[0] ?? null, before);
  const left = copies.find(({ isParked }) => !isParked);
  if (left) await offerCopy(store, files, left);
  else setTimeout(() => void lookAgain(store, files), LOOK_AGAIN_MS);
};

/** One car is open after this, if only a sample; why it is not the one that was meant is still told then. */
const openFirst = async (
  store: BenchStore,
  files: FileService,
  handed: HandedName | null,
  before: OpenBefore | null,
): Promise<void> => {
  if (before) store.setState({ study: before.study });
  if (before && (await openAgain(store, files, before))) return;
  const isOther = handed !== null && !(before?.file.kind === 'handed' && before.file.id === handed.id);
  const { refused: refusedBefore } = store.getState();
  if (handed && isOther) await openHanded(store, files, handed);
  const refused = refusedBefore ?? store.getState().refused;
  if (!store.getState().file) await openFirstSample(store, files);
  if (refused) store.setState({ refused: { ...refused, isAtStart: true } });
  if (before) tellNotOpenAgain(store, before);
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
