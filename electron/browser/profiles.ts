import { mkdir, readdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { isRunning } from '../files/isRunning';

const PREFIX = 'window-profile-';

/** An empty browser profile for this run, named for our process; those that a crash left behind are thrown away. */
export const makeProfile = async (folder: string): Promise<string> => {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  for (const name of await readdir(folder)) {
    const owner = Number(name.slice(PREFIX.length));
    if (!name.startsWith(PREFIX) || (owner !== process.pid && isRunning(owner))) continue;
    await rm(path.join(folder, name), { recursive: true, force: true });
  }
  const profile = path.join(folder, `${PREFIX}${process.pid}`);
  await mkdir(profile, { mode: 0o700 });
  return profile;
};

/** A browser writes for a moment after it was told to end, so this tries again. */
export const removeProfile = (profile: string): Promise<void> =>
  rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
