import { expect, test } from 'vitest';
import { menuTemplate } from '../../../electron/desktop/menu';

test.each(['linux', 'darwin', 'win32'] as const)(
  'the native menu on %s asks the window for what concerns the car',
  (platform) => {
    const asked: string[] = [];
    const items = menuTemplate(platform, (command) => asked.push(command)).flatMap(({ submenu }) =>
      Array.isArray(submenu) ? submenu : [],
    );
    for (const { click } of items) (click as (() => void) | undefined)?.();
    expect(asked).toEqual(['open', 'save', 'saveAs', 'undo', 'redo']);
    const keys = items.flatMap(({ accelerator }) => accelerator ?? []);
    expect(new Set(keys).size).toBe(keys.length);
  },
);
