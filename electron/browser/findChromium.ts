import { accessSync, constants, statSync } from 'node:fs';
import path from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];
const USUAL_PLACES: Partial<Record<NodeJS.Platform, readonly string[]>> = {
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

const isProgram = (file: string): boolean => {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
};

/**
 * Where a Chromium is, or null: `JOUNCE_CHROMIUM` first, then PATH, then the places where installers put one.
 * A `JOUNCE_CHROMIUM` that is not a program finds nothing: who names one does not want another.
 */
export const findChromium = (
  environment: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
): string | null => {
  const named = environment['JOUNCE_CHROMIUM'];
  if (named !== undefined && named !== '') return isProgram(named) ? named : null;
  const ending = platform === 'win32' ? '.exe' : '';
  const folders = (environment['PATH'] ?? '').split(path.delimiter).filter((folder) => path.isAbsolute(folder));
  const inPath = NAMES.flatMap((name) => folders.map((folder) => path.join(folder, name + ending)));
  return [...inPath, ...(USUAL_PLACES[platform] ?? [])].find(isProgram) ?? null;
};
