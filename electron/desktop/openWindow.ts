import { BrowserWindow, dialog, screen } from 'electron';
import { WINDOW_ADDRESS } from './windowScheme';
import { keepWindowState, readWindowState } from './windowState';

/** Asked by the window when it holds changes that were not saved; their copy is kept whatever is answered. */
const askBeforeLeaving = (window: BrowserWindow): boolean =>
  dialog.showMessageBoxSync(window, {
    type: 'warning',
    message: 'The car has changes that were not saved.',
    detail: 'A copy of them is kept and offered at the next start.',
    buttons: ['Stay', 'Close without saving'],
    defaultId: 0,
    cancelId: 0,
  }) === 1;

/** The one window: sandboxed, its scripts apart from the preload script's, without Node. It opens where it was closed. */
export const openWindow = async (preload: string, stateFolder: string): Promise<BrowserWindow> => {
  const kept = await readWindowState(
    stateFolder,
    screen.getAllDisplays().map(({ workArea }) => workArea),
  );
  const window = new BrowserWindow({
    title: 'Jounce',
    width: 1440,
    height: 900,
    ...kept.bounds,
    minWidth: 640,
    minHeight: 360,
    show: false,
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      webSecurity: true,
      webviewTag: false,
      spellcheck: false,
    },
  });
  if (kept.isMaximized) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.webContents.on('will-prevent-unload', (event) => {
    if (askBeforeLeaving(window)) event.preventDefault(); // prevents the prevention
  });
  window.on('close', () => {
    void keepWindowState(stateFolder, { bounds: window.getNormalBounds(), isMaximized: window.isMaximized() });
  });
  await window.loadURL(WINDOW_ADDRESS);
  return window;
};

/** A second start brings the first window to the front. */
export const showExistingWindow = (): BrowserWindow | null => {
  const [window] = BrowserWindow.getAllWindows();
  if (!window) return null;
  if (window.isMinimized()) window.restore();
  window.focus();
  return window;
};
