import { fetchedFiles } from './fetchedFiles';
import { PRESENCE_ADDRESS, type FileService, type WindowBridge } from './fileService';

/** Electron's bridge where there is one, the loopback server otherwise. */
export const findFiles = (): FileService => (window as unknown as WindowBridge).jounce ?? fetchedFiles;

/** How soon a lost connection is tried again when the browser has given it up, ms. */
const AGAIN_MS = 2_000;

/**
 * Tells the loopback server, for as long as the window lives, that there is still somebody: it ends a minute after the
 * last window. The other way round the window learns that the server is gone. Nothing to do under Electron.
 *
 * @param id - of this window
 * @param onChange - called with whether the server answers, whenever that changes
 */
export const keepPresence = (id: string, onChange: (isThere: boolean) => void): void => {
  if ((window as unknown as WindowBridge).jounce) return;
  let presence: EventSource;
  const connect = (): void => {
    presence = new EventSource(`${PRESENCE_ADDRESS}?window=${id}`);
    presence.onopen = () => onChange(true);
    presence.onerror = () => {
      onChange(false);
      if (presence.readyState === EventSource.CLOSED) setTimeout(connect, AGAIN_MS);
    };
  };
  connect();
  window.addEventListener('pagehide', () => presence.close());
};
