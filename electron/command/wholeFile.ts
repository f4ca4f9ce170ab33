import { access, constants, lstat, stat } from 'node:fs/promises';
import path from 'node:path';
import { replaceFile } from '../files/wholeFile';
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
  if (there === null) return refuseMissingFolder(target);
  // a link may lead nowhere, which is still something that stands in the way
  const behind = await stat(target).catch(() => null);
  if (behind !== null && !behind.isFile()) throw systemError(`${target} is not a file that can be replaced: name a file`);
  for (const read of reads) {
    const source = await stat(read).catch(() => null);
    if (source !== null && behind !== null && source.dev === behind.dev && source.ino === behind.ino)
      throw usageError(`${target} is read by this call: write to another file`);
  }
  if (!force) throw systemError(`${target} exists; --force replaces it`);
}

/** A file is written into a folder that is there: none is made. */
async function refuseMissingFolder(target: string): Promise<void> {
  const folder = path.dirname(target);
  const there = await stat(folder).catch(() => null);
  if (there?.isDirectory()) {
    await access(folder, constants.W_OK).catch(() => {
      throw systemError(`cannot write ${target}: ${unwritable(folder)}`);
    });
    return;
  }
  throw systemError(`cannot write ${target}: ${there === null ? `there is no folder ${folder}` : `${folder} is not a folder`}`);
}

const unwritable = (folder: string): string => `the folder ${folder} cannot be written; name a file in another one`;

/** Writes a file whole, or not at all: what was there stays until the new one is complete. */
export async function writeWholeFile(
  target: string,
  content: string | Uint8Array,
  force: boolean,
  reads: readonly string[],
): Promise<void> {
  await refuseUnwritable(target, force, reads);
  await replaceFile(target, typeof content === 'string' ? Buffer.from(content, 'utf8') : Buffer.from(content)).catch(
    async (thrown: unknown) => {
      // the folder is there, as was looked at: some of the system's own take no file, and say that there is none
      const isNew = (await lstat(target).catch(() => null)) === null;
      const isRefused = isNew && (thrown as NodeJS.ErrnoException | null)?.code === 'ENOENT';
      throw systemError(`cannot write ${target}: ${isRefused ? unwritable(path.dirname(target)) : reasonOf(thrown)}`);
    },
  );
}
