/**
 * Electron's main process: a list of setup calls.
 *
 * When it is packaged, these fuses of Electron's program are to be set: RunAsNode off, EnableNodeOptionsEnvironmentVariable
 * off, EnableNodeCliInspectArguments off, EnableCookieEncryption on, EnableEmbeddedAsarIntegrityValidation on,
 * OnlyLoadAppFromAsar on, GrantFileProtocolExtraPrivileges off.
 */
import path from 'node:path';
import { app, ipcMain, Menu, protocol } from 'electron';
import { readBuiltFiles } from '../serve/builtFiles';
import { channelHandlers } from './channels';
import { denyNavigation, denyPermissions } from './fences';
import { openWindow, showExistingWindow } from './openWindow';
import { desktopPlaces } from './places';
import { answerScheme, WINDOW_SCHEME } from './windowScheme';

const scriptFolder = import.meta.dirname;
const places = desktopPlaces(process.argv, scriptFolder);

const serveScheme = async (): Promise<void> => {
  const files = await readBuiltFiles(places.windowFolder);
  protocol.handle(WINDOW_SCHEME, (request) => {
    const { status, headers, body } = answerScheme(files, request.method, request.url);
    return new Response(typeof body === 'string' ? body : new Uint8Array(body), { status, headers });
  });
};

const answerChannels = (): void => {
  for (const [channel, handle] of Object.entries(channelHandlers(places.samplesFolder))) {
    ipcMain.handle(channel, (event, argument: unknown) => handle(event.senderFrame?.url, argument));
  }
};

const setMenu = (): void => {
  const mac: Electron.MenuItemConstructorOptions[] =
    process.platform === 'darwin' ? [{ role: 'appMenu' }] : [{ role: 'fileMenu' }];
  Menu.setApplicationMenu(Menu.buildFromTemplate([...mac, { role: 'editMenu' }, { role: 'viewMenu' }, { role: 'windowMenu' }]));
};

const start = async (): Promise<void> => {
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([
    { scheme: WINDOW_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  denyNavigation(app);
  app.on('second-instance', showExistingWindow);
  app.on('window-all-closed', () => app.quit());
  await app.whenReady();
  denyPermissions();
  await serveScheme();
  answerChannels();
  setMenu();
  await openWindow(path.join(scriptFolder, 'preload.cjs'));
};

if (app.requestSingleInstanceLock()) {
  start().catch((reason: unknown) => {
    process.stderr.write(`${reason instanceof Error ? reason.message : String(reason)}\n`);
    app.exit(1);
  });
} else {
  app.quit();
}
