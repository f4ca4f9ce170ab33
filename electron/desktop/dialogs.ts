import { BrowserWindow, dialog, type FileFilter } from 'electron';
import type { Dialogs } from '../files/fileDesk';

const FILTERS: FileFilter[] = [
  { name: 'Cars', extensions: ['jounce.json', 'json'] },
  { name: 'All files', extensions: ['*'] },
];

const owner = (): BrowserWindow | undefined => BrowserWindow.getAllWindows()[0];

/** The system's own dialogs. What a person chooses in them is handed out, and nothing else. */
export const nativeDialogs: Dialogs = {
  open: async () => {
    const options: Electron.OpenDialogOptions = { title: 'Open a car file', filters: FILTERS, properties: ['openFile'] };
    const window = owner();
    const { filePaths } = await (window ? dialog.showOpenDialog(window, options) : dialog.showOpenDialog(options));
    return filePaths[0] ?? null;
  },
  save: async (name) => {
    const options: Electron.SaveDialogOptions = {
      title: 'Save the car as',
      defaultPath: name,
      filters: FILTERS,
      properties: ['showOverwriteConfirmation', 'createDirectory'],
    };
    const window = owner();
    const { filePath } = await (window ? dialog.showSaveDialog(window, options) : dialog.showSaveDialog(options));
    return filePath === '' ? null : filePath;
  },
};
