import { access } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type writeFileAtomic from 'write-file-atomic';
import { systemError } from './commandError';
import { reasonOf } from './carSource';

/** Refuses a file that is there already, unless it may be replaced. Asked before the work, so that nobody waits in vain. */
export async function refuseExisting(path: string, force: boolean): Promise<void> {
  if (force) return;
  try {
    await access(path);
  } catch {
    return;
  }
  throw systemError(`${path} exists; --force replaces it`);
}

/** Writes a file whole: under another name beside it, flushed, then renamed. What was there stays until then. */
export async function writeWholeFile(path: string, text: string, force: boolean): Promise<void> {
  await refuseExisting(path, force);
  try {
    // loaded as it was published: inside a bundle it would miss the name of its own file
    const write = createRequire(import.meta.url)('write-file-atomic') as typeof writeFileAtomic;
    await write(path, text, { encoding: 'utf8' });
  } catch (thrown) {
    throw systemError(`cannot write ${path}: ${reasonOf(thrown)}`);
  }
}
