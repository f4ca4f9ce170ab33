import { existsSync, readdirSync, statSync } from 'node:fs';
import { mkdir, rename, rm, utimes } from 'node:fs/promises';
import path from 'node:path';
import { stampOf } from './stamp.mjs';

/** A build older than this is thrown away when the next one is made; a program that still runs from it has loaded its chunks by then. */
const KEPT_MS = 24 * 60 * 60 * 1000;

/**
 * What is made from some sources, made anew only when they have changed: a folder named for the stamp of the sources.
 * Two programs may ask at once: each makes its own under another name, and the first to finish gives its to both.
 */
export class FreshFolder {
  /**
   * @param {string} root - the package
   * @param {string} name - what is made
   * @param {readonly string[]} sources - folders and files that it is made from
   */
  constructor(root, name, sources) {
    this.parent = path.join(root, 'build', 'today');
    this.name = name;
    this.folder = path.join(this.parent, `${name}-${stampOf(root, sources)}`);
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
    const draft = path.join(this.parent, `draft-${this.name}-${process.pid}`);
    await rm(draft, { recursive: true, force: true });
    await mkdir(draft, { recursive: true });
    try {
      await make(draft);
      await rename(draft, this.folder).catch((reason) => {
        if (!this.isThere) throw reason;
      });
    } finally {
      await rm(draft, { recursive: true, force: true });
    }
    const now = new Date();
    await utimes(this.folder, now, now);
    await this.sweep(now.getTime());
    return this.folder;
  }

  /** @param {number} now */
  async sweep(now) {
    for (const old of readdirSync(this.parent).filter((entry) => entry.includes(`${this.name}-`))) {
      const place = path.join(this.parent, old);
      const status = statSync(place, { throwIfNoEntry: false });
      if (status && now - status.mtimeMs > KEPT_MS) await rm(place, { recursive: true, force: true });
    }
  }
}
