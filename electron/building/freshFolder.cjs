/**
 * What is made from sources, made anew only when they have changed. One file without imports of our own, and nothing
 * asynchronous before something has to be made: the command line loads it on every call and has milliseconds to answer.
 */
const { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, utimesSync } = require('node:fs');

const SETTINGS = ['package.json', 'package-lock.json', 'tsconfig.json'];

/** What each product is made from: folders with everything below, and files, from the root. */
const SOURCES = {
  command: ['geometry', 'electron/building', 'electron/command', 'electron/files', 'renderer/files', ...SETTINGS],
  shell: ['electron', 'renderer/files', ...SETTINGS],
  window: ['geometry', 'renderer', 'vite.config.ts', 'electron/building', ...SETTINGS],
};

/** A build older than this is thrown away when the next one is made; a program that still runs from it has loaded its chunks by then. */
const KEPT_MS = 24 * 60 * 60 * 1000;

/**
 * A name for the state of some sources: it changes when a file is written, resized, added, removed or renamed.
 *
 * Made from sizes and times of writing, not from content. A folder's own time tells of what was added to it, removed or
 * renamed, so names are not needed. Two running 32-bit sums, written to the base 36.
 *
 * @param {string} root - folder that the sources are relative to
 * @param {readonly string[]} sources - folders (with everything below) and files; one that is missing counts as such
 * @returns {string} 14 digits; others under another Node, whose compiled code is not the same
 */
const stampOf = (root, sources) => {
  let first = 17;
  let second = 0;
  const take = (/** @type {number} */ value) => {
    first = (Math.imul(first, 31) + (value % 4294967296)) | 0;
    second = (Math.imul(second ^ first, 0x01000193) + value / 65536) | 0;
  };
  for (const letter of process.version) take(letter.charCodeAt(0));
  const visit = (/** @type {string} */ place) => {
    const status = statSync(place, { throwIfNoEntry: false });
    take(status ? status.mtimeMs * 1000 : 0);
    if (!status) return;
    if (!status.isDirectory()) return take(status.size);
    for (const entry of readdirSync(place)) visit(`${place}/${entry}`);
  };
  for (const source of sources) visit(`${root}/${source}`);
  return [first, second].map((part) => (part >>> 0).toString(36).padStart(7, '0')).join('');
};

/**
 * A folder named for the stamp of its sources.
 * Two programs may ask at once: each makes its own under another name, and the first to finish gives its to both.
 */
class FreshFolder {
  /**
   * @param {string} root - the package
   * @param {string} name - what is made
   * @param {readonly string[]} sources - what it is made from
   */
  constructor(root, name, sources) {
    this.parent = `${root}/build/today`;
    this.name = name;
    this.folder = `${this.parent}/${name}-${stampOf(root, sources)}`;
  }

  get isThere() {
    return existsSync(this.folder);
  }

  /**
   * @param {(folder: string) => Promise<void>} make - fills an empty folder
   * @returns {Promise<string>} the folder, finished
   */
  async ensure(make) {
    if (this.isThere) return this.folder;
    const draft = `${this.parent}/draft-${this.name}-${process.pid}`;
    rmSync(draft, { recursive: true, force: true });
    mkdirSync(draft, { recursive: true });
    try {
      await make(draft);
      this.hand(draft);
    } finally {
      rmSync(draft, { recursive: true, force: true });
    }
    return this.folder;
  }

  /**
   * Gives a finished draft its name, unless another program was first, and throws old builds away.
   * @param {string} draft
   */
  hand(draft) {
    const now = Date.now();
    utimesSync(draft, now / 1000, now / 1000);
    try {
      renameSync(draft, this.folder);
    } catch (reason) {
      if (!this.isThere) throw reason;
    }
    for (const entry of readdirSync(this.parent)) {
      const place = `${this.parent}/${entry}`;
      const written = statSync(place, { throwIfNoEntry: false })?.mtimeMs ?? now;
      if (entry.includes(`${this.name}-`) && now - written > KEPT_MS) rmSync(place, { recursive: true, force: true });
    }
  }
}

module.exports = { FreshFolder, SOURCES, stampOf };
