/** What `npm start` was given to open. */
import { existsSync, statSync } from 'node:fs';
import path from 'node:path';

/**
 * The car files that a start command names, absolute, or the sentence that says why it cannot start.
 *
 * @param {readonly string[]} args - after the program's own
 * @param {string} folder - that they are relative to: where the person typed the command
 * @returns {{ files: string[] } | { refusal: string }}
 */
export const filesToOpen = (args, folder) => {
  const option = args.find((arg) => arg.startsWith('-'));
  if (option !== undefined) return { refusal: `npm start takes car files and no option ${option}: npm start -- car.jounce.json` };
  const files = args.map((arg) => path.resolve(folder, arg));
  const missing = files.find((file) => !existsSync(file));
  if (missing !== undefined) return { refusal: `${missing}: no such file. Nothing was started.` };
  const odd = files.find((file) => !statSync(file).isFile());
  if (odd !== undefined) return { refusal: `${odd} is a folder or a device, not a car file. Nothing was started.` };
  return { files };
};
