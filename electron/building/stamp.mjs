import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';

/**
 * A name for the state of some sources: it changes when a file is added, removed, written or resized.
 *
 * Made from paths, sizes and times of writing, not from the content: the command line asks on every call and has
 * milliseconds to answer. A text of 14 digits to the base 36 (two 32-bit hashes of the listing).
 *
 * @param {string} root - folder that the names are relative to
 * @param {readonly string[]} sources - folders (with everything below) and files; one that is missing counts as such
 * @returns {string}
 */
export const stampOf = (root, sources) => {
  let first = 0x811c9dc5;
  let second = 0x9e3779b9;
  /** @param {string} line */
  const take = (line) => {
    for (let index = 0; index < line.length; index += 1) {
      const code = line.charCodeAt(index);
      first = Math.imul(first ^ code, 0x01000193);
      second = Math.imul(second ^ code, 0x85ebca6b) ^ (second >>> 13);
    }
  };
  /** @param {string} name */
  const visit = (name) => {
    const status = statSync(path.join(root, name), { throwIfNoEntry: false });
    if (!status) return take(`${name} missing\n`);
    if (!status.isDirectory()) return take(`${name} ${status.size} ${status.mtimeMs}\n`);
    for (const inside of readdirSync(path.join(root, name)).sort()) visit(`${name}/${inside}`);
  };
  for (const source of sources) visit(source);
  return [first, second].map((part) => (part >>> 0).toString(36).padStart(7, '0')).join('');
};
