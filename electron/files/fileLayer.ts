import { open, readdir, readFile, realpath, rename, stat, unlink, mkdir } from 'node:fs/promises';
import path from 'node:path';

export interface FileStatus {
  readonly isFile: boolean;
  readonly size: number;
  /** when it was written, ms since 1970 */
  readonly writtenAt: number;
  /** permissions, as the system counts them */
  readonly mode: number;
}

/** A file that is being written. */
export interface Draft {
  write(bytes: Uint8Array): Promise<void>;
  sync(): Promise<void>;
  close(): Promise<void>;
}

/** What keeping files needs of a disk, step by step, so that a test can stop, tear or refuse any of them. */
export interface FileLayer {
  /** A new file; fails where there is one. */
  create(place: string, mode: number): Promise<Draft>;
  rename(from: string, to: string): Promise<void>;
  remove(place: string): Promise<void>;
  makeFolder(place: string): Promise<void>;
  /** Makes a rename in this folder last over a power cut, where the system can. */
  syncFolder(place: string): Promise<void>;
  read(place: string): Promise<Buffer>;
  list(place: string): Promise<readonly string[]>;
  /** null where nothing is there */
  status(place: string): Promise<FileStatus | null>;
  /** The place behind links; the place itself where nothing is there. */
  behindLinks(place: string): Promise<string>;
}

const isMissing = (reason: unknown): boolean => ['ENOENT', 'ENOTDIR'].includes((reason as NodeJS.ErrnoException).code ?? '');

/** The disk of this machine. */
export const DISK: FileLayer = {
  create: async (place, mode) => {
    const file = await open(place, 'wx', mode);
    return { write: (bytes) => file.writeFile(bytes), sync: () => file.sync(), close: () => file.close() };
  },
  rename,
  remove: unlink,
  makeFolder: async (place) => void (await mkdir(place, { recursive: true, mode: 0o700 })),
  syncFolder: async (place) => {
    if (process.platform === 'win32') return; // a folder cannot be opened there
    const folder = await open(place, 'r');
    await folder.sync().finally(() => folder.close());
  },
  read: (place) => readFile(place),
  list: (place) =>
    readdir(place).catch((reason: unknown) => {
      if (isMissing(reason)) return [];
      throw reason;
    }),
  status: async (place) => {
    try {
      const there = await stat(place);
      return { isFile: there.isFile(), size: there.size, writtenAt: there.mtimeMs, mode: there.mode };
    } catch (reason) {
      if (isMissing(reason)) return null;
      throw reason;
    }
  },
  behindLinks: (place) => realpath(place).catch(() => path.resolve(place)),
};
