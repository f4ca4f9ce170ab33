import { randomBytes } from 'node:crypto';
import { lstat, open, realpath, rename, stat, unlink } from 'node:fs/promises';
import path from 'node:path';
import { systemError, usageError } from './commandError';
import { reasonOf } from './carSource';

/**
 * Refuses a place that must not be written, before the work, so that nobody waits in vain: a file that is there already unless
 * it may be replaced, one that this very call reads, and what is no file at all.
 *
 * @param reads - paths of the files that the call reads
 */
export async function refuseUnwritable(target: string, force: boolean, reads: readonly string[]): Promise<void> {
  const there = await lstat(target).catch(() => null);
  if (there === null) return;
  // a link may lead nowhere, which is still something that stands in the way
  const behind = await stat(target).catch(() => null);
  if (behind !== null && !behind.isFile()) throw usageError(`${target} is not a file that can be replaced: name a file`);
  for (const read of reads) {
    const source = await stat(read).catch(() => null);
    if (source !== null && behind !== null && source.dev === behind.dev && source.ino === behind.ino)
      throw usageError(`${target} is read by this call: write to another file`);
  }
  if (!force) throw systemError(`${target} exists; --force replaces it`);
}

/**
 * Writes a file whole: under another name beside it, flushed, then renamed. What was there stays until then, and stays when
 * the disk is full. (Node's own `writeFile` goes on after a short write; the package that is usually taken for this does not.)
 */
export async function writeWholeFile(target: string, text: string, force: boolean, reads: readonly string[]): Promise<void> {
  await refuseUnwritable(target, force, reads);
  // through a link to the file it stands for
  const place = await realpath(target).catch(() => target);
  const temporary = path.join(path.dirname(place), `.${path.basename(place)}.${randomBytes(6).toString('hex')}`);
  try {
    const mode = await stat(place).then(
      (there) => there.mode,
      () => 0o666,
    );
    const file = await open(temporary, 'wx', mode);
    try {
      await file.writeFile(text, 'utf8');
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(temporary, place);
  } catch (thrown) {
    await unlink(temporary).catch(() => undefined);
    throw systemError(`cannot write ${target}: ${reasonOf(thrown)}`);
  }
}
