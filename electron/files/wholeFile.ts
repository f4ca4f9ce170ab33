import { randomBytes } from 'node:crypto';
import path from 'node:path';
import { DISK, type FileLayer } from './fileLayer';

/** Names of drafts: `.name.` and twelve hexadecimal digits. */
export const DRAFT_NAME = /^\..+\.[0-9a-f]{12}$/;

/**
 * Writes a file whole: under another name beside it, flushed, then renamed. What was there stays until then, and stays when
 * the disk is full. (Node's own `writeFile` goes on after a short write; the package that is usually taken for this does not.)
 *
 * @param target - a link is followed to the file it stands for
 * @param mode - permissions of a new file; an old one keeps its own
 * @throws the system's error; the old file is there then
 */
export const replaceFile = async (target: string, bytes: Uint8Array, mode = 0o666, layer: FileLayer = DISK): Promise<void> => {
  const place = await layer.behindLinks(target);
  const there = await layer.status(place);
  const draftPlace = path.join(path.dirname(place), `.${path.basename(place)}.${randomBytes(6).toString('hex')}`);
  try {
    const draft = await layer.create(draftPlace, there?.mode ?? mode);
    try {
      await draft.write(bytes);
      await draft.sync();
    } finally {
      await draft.close();
    }
    await layer.rename(draftPlace, place);
  } catch (reason) {
    await layer.remove(draftPlace).catch(() => undefined);
    throw reason;
  }
  // the file is there by now, whatever becomes of this
  await layer.syncFolder(path.dirname(place)).catch(() => undefined);
};
