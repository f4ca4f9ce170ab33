import type { MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../../renderer/files/fileService';

/**
 * The native menu. What concerns the car is asked of the window, which knows what is open and what was done.
 * @param ask - sends the window a command
 */
export const menuTemplate = (
  platform: NodeJS.Platform,
  ask: (command: MenuCommand) => void,
): readonly MenuItemConstructorOptions[] => {
  const item = (label: string, accelerator: string, command: MenuCommand): MenuItemConstructorOptions => ({
    label,
    accelerator,
    click: () => ask(command),
  });
  const isMac = platform === 'darwin';
  return [
    ...(isMac ? [{ role: 'appMenu' as const }] : []),
    {
      label: 'File',
      submenu: [
        item('Open…', 'CmdOrCtrl+O', 'open'),
        { type: 'separator' },
        item('Save', 'CmdOrCtrl+S', 'save'),
        item('Save as…', 'CmdOrCtrl+Shift+S', 'saveAs'),
        { type: 'separator' },
        isMac ? { role: 'close' } : { role: 'quit' },
      ],
    },
    {
      label: 'Edit',
      submenu: [
        item('Undo', 'CmdOrCtrl+Z', 'undo'),
        item('Redo', 'CmdOrCtrl+Shift+Z', 'redo'),
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    { label: 'View', submenu: [{ role: 'zoomIn' }, { role: 'zoomOut' }, { role: 'resetZoom' }, { role: 'togglefullscreen' }] },
    { role: 'windowMenu' },
  ];
};
