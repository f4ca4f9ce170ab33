import { fetchedFiles } from './fetchedFiles';
import { PRESENCE_ADDRESS, type FileService, type WindowBridge } from './fileService';

/** Electron's bridge where there is one, the loopback server otherwise. */
export const findFiles = (): FileService => (window as unknown as WindowBridge).jounce ?? fetchedFiles;

/**
 * Tells the loopback server, for as long as the window lives, that there is still somebody: it ends a minute after the
 * last window. Nothing to do under Electron.
 */
export const keepPresence = (): void => {
  if ((window as unknown as WindowBridge).jounce) return;
  const presence = new EventSource(PRESENCE_ADDRESS);
  window.addEventListener('pagehide', () => presence.close());
};
