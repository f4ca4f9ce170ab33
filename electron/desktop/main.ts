/** Electron's main process: a list of setup calls. The fuses of its program are set when it is packaged (electron-builder.json). */
import path from 'node:path';
import { app, ipcMain, Menu, protocol, type BrowserWindow } from 'electron';
import type { MenuCommand } from '../../renderer/files/fileService';
import { FileDesk } from '../files/fileDesk';
import { stateFolder } from '../files/stateFolder';
import { readBuiltFiles } from '../serve/builtFiles';
import { ASKED, HANDED } from './channelNames';
import { channelHandlers } from './channels';
import { nativeDialogs } from './dialogs';
import { denyNavigation, denyPermissions } from './fences';
import { menuTemplate } from './menu';
import { openWindow, showExistingWindow } from './openWindow';
import { desktopPlaces, filesOfCall } from './places';
import { answerScheme, WINDOW_SCHEME } from './windowScheme';

const scriptFolder = import.meta.dirname;
const places = desktopPlaces(process.argv, scriptFolder);
const state = stateFolder();
/** what the system wants opened before there is a window (macOS tells by an event) */
const early: string[] = [...filesOfCall(process.argv, process.cwd())];
let desk: FileDesk | null = null;
let shown: string | null = null;

const serveScheme = async (): Promise<void> => {
  const files = await readBuiltFiles(places.windowFolder);
  protocol.handle(WINDOW_SCHEME, (request) => {
    const { status, headers, body } = answerScheme(files, request.method, request.url);
    return new Response(typeof body === 'string' ? body : new Uint8Array(body), { status, headers });
  });
};

/** One window: one that begins takes the place of the one that was loaded before. */
const windowBegins = (own: FileDesk, id: string): void => {
  if (shown !== null && shown !== id) void own.windowWent(shown);
  shown = id;
  void own.windowCame(id);
};

const answerChannels = (own: FileDesk): void => {
  const handlers = channelHandlers(places.samplesFolder, own, (id) => windowBegins(own, id));
  for (const [channel, handle] of Object.entries(handlers)) {
    ipcMain.handle(channel, (event, argument: unknown) => handle(event.senderFrame?.url, argument));
  }
};

const hand = (window: BrowserWindow | null, file: string): void => {
  if (desk && window) window.webContents.send(HANDED, desk.hand(file));
  else early.push(file);
};

const watchCalls = (): void => {
  app.on('second-instance', (_event, args, folder) => {
    const window = showExistingWindow();
    for (const file of filesOfCall(args, folder)) hand(window, file);
  });
  app.on('open-file', (event, file) => {
    event.preventDefault();
    hand(showExistingWindow(), file);
  });
};

const start = async (): Promise<void> => {
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([
    { scheme: WINDOW_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  denyNavigation(app);
  watchCalls();
  app.on('window-all-closed', () => app.quit());
  await app.whenReady();
  denyPermissions();
  await serveScheme();
  const own = new FileDesk({ stateFolder: state, handed: early, dialogs: nativeDialogs });
  answerChannels(own);
  desk = own;
  const ask = (command: MenuCommand): void => showExistingWindow()?.webContents.send(ASKED, command);
  Menu.setApplicationMenu(Menu.buildFromTemplate([...menuTemplate(process.platform, ask)]));
  const window = await openWindow(path.join(scriptFolder, 'preload.cjs'), state);
  window.on('closed', () => void own.close());
};

if (app.requestSingleInstanceLock()) {
  start().catch((reason: unknown) => {
    process.stderr.write(`${reason instanceof Error ? reason.message : String(reason)}\n`);
    app.exit(1);
  });
} else {
  app.quit();
}
