import { createHash } from 'node:crypto';
import { access, constants } from 'node:fs/promises';
import path from 'node:path';
import type { FileAnswer, FileVersion } from '../../renderer/files/fileService';
import { answered, failedAt, readFailure, writeFailure } from './failures';
import { DISK, type FileLayer } from './fileLayer';
import { replaceFile } from './wholeFile';

/** A car file is not larger. */
export const LARGEST_CAR_BYTES = 16 * 1024 * 1024;

export interface CarBytes {
  readonly bytes: Buffer;
  readonly version: FileVersion;
  readonly isReadOnly: boolean;
}

/** How a file stands; `version` null: it is not there. */
export interface CarLook {
  readonly version: FileVersion | null;
  readonly isReadOnly: boolean;
}

const stampOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Nobody may write it. The bits are asked too: the system lets its administrator write what is marked as read-only. */
const isReadOnly = async (place: string, mode: number): Promise<boolean> =>
  (mode & 0o222) === 0 ||
  (await access(place, constants.W_OK).then(
    () => false,
    () => true,
  ));

/** Reads a car file with its version. */
export const readCarFile = async (place: string, layer: FileLayer = DISK): Promise<FileAnswer<CarBytes>> => {
  try {
    const there = await layer.status(place);
    if (!there) return failedAt('notFound', place);
    if (!there.isFile) return failedAt('notAFile', place);
    if (there.size > LARGEST_CAR_BYTES) return failedAt('tooLarge', place);
    const bytes = await layer.read(place);
    const version = { stamp: stampOf(bytes), savedAt: there.writtenAt };
    return answered({ bytes, version, isReadOnly: await isReadOnly(place, there.mode) });
  } catch (reason) {
    return readFailure(reason, place);
  }
};

/** How a car file stands on the disk now. */
export const lookAtCarFile = async (place: string, layer: FileLayer = DISK): Promise<FileAnswer<CarLook>> => {
  const read = await readCarFile(place, layer);
  if (read.ok) return answered({ version: read.value.version, isReadOnly: read.value.isReadOnly });
  return read.failure.code === 'notFound' ? answered({ version: null, isReadOnly: false }) : read;
};

/**
 * Writes a car file whole, over the version that is expected there and over no other.
 * @param expected - stamp of that version; null: only where there is no file
 */
export const saveCarFile = async (
  place: string,
  text: string,
  expected: string | null,
  layer: FileLayer = DISK,
): Promise<FileAnswer<CarLook>> => {
  const bytes = Buffer.from(text, 'utf8');
  if (bytes.length > LARGEST_CAR_BYTES) return failedAt('tooLarge', place);
  const now = await lookAtCarFile(place, layer);
  if (!now.ok) return now;
  const there = now.value.version;
  if (there && now.value.isReadOnly) return failedAt('readOnly', place);
  const isExpected = (there?.stamp ?? null) === expected || there?.stamp === stampOf(bytes);
  if (!isExpected) {
    if (!there && !(await hasFolder(place, layer))) return failedAt('noFolder', place);
    return failedAt('changed', place, { there });
  }
  try {
    await replaceFile(place, bytes, 0o666, layer);
  } catch (reason) {
    return writeFailure(reason, place);
  }
  const written = await layer.status(place).catch(() => null);
  return answered({ version: { stamp: stampOf(bytes), savedAt: written?.writtenAt ?? Date.now() }, isReadOnly: false });
};

const hasFolder = async (place: string, layer: FileLayer): Promise<boolean> => {
  const folder = await layer.status(path.dirname(place)).catch(() => null);
  return folder !== null;
};
