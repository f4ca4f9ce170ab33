/** What each product is made from: folders with everything below, and files, from the root. */
const SETTINGS = ['package.json', 'package-lock.json', 'tsconfig.json'];

export const SOURCES = {
  command: ['geometry', 'electron', 'renderer/files', ...SETTINGS],
  shell: ['geometry', 'electron', 'renderer/files', ...SETTINGS],
  window: ['geometry', 'renderer', 'vite.config.ts', ...SETTINGS],
};
