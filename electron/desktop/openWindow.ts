import { BrowserWindow } from 'electron';
import { WINDOW_ADDRESS } from './windowScheme';

/** The one window: sandboxed, its scripts apart from the preload script's, without Node. */
export const openWindow = async (preload: string): Promise<BrowserWindow> => {
  const window = new BrowserWindow({
    title: 'Jounce',
    width: 1440,
    height: 900,
    minWidth: 1024,
    minHeight: 640,
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
  window.once('ready-to-show', () => window.show());
  await window.loadURL(WINDOW_ADDRESS);
  return window;
};

/** A second start brings the first window to the front. */
export const showExistingWindow = (): void => {
  const [window] = BrowserWindow.getAllWindows();
  if (!window) return;
  if (window.isMinimized()) window.restore();
  window.focus();
};
