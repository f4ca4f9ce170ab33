import { session, type App, type Session } from 'electron';
import { isOwnPage } from './windowScheme';

/** The window goes nowhere else, opens no other and holds no other page. */
export const denyNavigation = (app: App): void => {
  app.on('web-contents-created', (_event, contents) => {
    contents.on('will-navigate', (event) => {
      if (!isOwnPage(event.url)) event.preventDefault();
    });
    contents.on('will-redirect', (event) => event.preventDefault());
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  });
};

/** No camera, no place, no notification: the window needs no permission at all, and fetches nothing from elsewhere. */
export const denyPermissions = (own: Session = session.defaultSession): void => {
  own.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  own.setPermissionCheckHandler(() => false);
  own.setDevicePermissionHandler(() => false);
};
