import { randomBytes } from 'node:crypto';
import path from 'node:path';
import * as z from 'zod';
import type { PickedLook } from '../../renderer/files/fileService';
import { DISK, type FileLayer } from './fileLayer';
import { isRunning } from './isRunning';
import { OWNER_ONLY } from './stateFiles';
import { replaceFile } from './wholeFile';

/** How often a program says that it is still there, and after what silence it is taken for ended, ms. */
const BEAT_MS = 5_000;
export const SILENCE_MS = 30_000;

const recordSchema = z.object({
  pid: z.number().int(),
  windows: z.array(
    z.object({
      id: z.string(),
      file: z.string().nullable(),
      picked: z.object({ name: z.string(), size: z.number(), savedAt: z.number() }).optional(),
    }),
  ),
});
type Windows = z.infer<typeof recordSchema>['windows'];

/** What a window has open: the path behind links, or what a browser tells of a file that it opened itself; null: neither. */
export type OpenFile = string | PickedLook | null;

/** The disk knows fractions of the milliseconds that a browser tells. */
const SAME_MS = 1;

const isSameLook = (a: PickedLook, b: PickedLook): boolean =>
  a.name === b.name && a.size === b.size && Math.abs(a.savedAt - b.savedAt) <= SAME_MS;

const isSameOpen = (a: OpenFile, b: OpenFile): boolean =>
  typeof a === 'object' && typeof b === 'object' && a && b ? isSameLook(a, b) : a === b;

const openOf = ({ file, picked }: Windows[number]): OpenFile => file ?? picked ?? null;

/** How many other windows have a file open, and how many one that looks the same and may be it. */
export interface OtherWindows {
  readonly others: number;
  readonly alike: number;
}

/** A record whose program ended without taking it away. */
export interface StaleRecord {
  readonly place: string;
  readonly windows: readonly string[];
  /** its last sign of life, ms since 1970 */
  readonly lastSign: number;
}

/**
 * Which windows there are on this machine and which file each has open. Every running program keeps one record in the state
 * folder, named for its process and written anew every few seconds; one whose process is gone, or that was silent for half a
 * minute, is stale.
 */
export class WindowRecords {
  private readonly windows = new Map<string, OpenFile>();
  private readonly name = `${process.pid}-${randomBytes(4).toString('hex')}.json`;
  private readonly folder: string;
  private readonly beat: NodeJS.Timeout;
  /** writing goes one after another, or an older state could end up on top */
  private queue: Promise<void> = Promise.resolve();

  constructor(
    state: string,
    private readonly layer: FileLayer = DISK,
    private readonly now: () => number = Date.now,
  ) {
    this.folder = path.join(state, 'windows');
    this.beat = setInterval(() => void this.write(), BEAT_MS);
    this.beat.unref();
  }

  /** The window has this file open, or none. */
  note(window: string, open: OpenFile): Promise<void> {
    const known = this.windows.get(window);
    if (known !== undefined && isSameOpen(known, open)) return this.queue;
    this.windows.set(window, open);
    return this.write();
  }

  isOurs(window: string): boolean {
    return this.windows.has(window);
  }

  forget(window: string): Promise<void> {
    return this.windows.delete(window) ? this.write() : this.queue;
  }

  private write(): Promise<void> {
    this.queue = this.queue.then(async () => {
      const place = path.join(this.folder, this.name);
      if (this.windows.size === 0) return this.layer.remove(place).catch(() => undefined);
      const windows = this.ownWindows();
      await this.layer.makeFolder(this.folder).catch(() => undefined);
      const bytes = Buffer.from(JSON.stringify({ pid: process.pid, windows }));
      // a record that cannot be kept costs a warning in another window, not the work in this one
      await replaceFile(place, bytes, OWNER_ONLY, this.layer).catch(() => undefined);
    });
    return this.queue;
  }

  private ownWindows(): Windows {
    return [...this.windows].map(([id, open]) =>
      typeof open === 'string' || open === null ? { id, file: open } : { id, file: null, picked: open },
    );
  }

  /** The windows of the other programs that run, and the records of those that do not. */
  private async readOthers(): Promise<{ readonly live: Windows; readonly stale: readonly StaleRecord[] }> {
    const live: Windows = [];
    const stale: StaleRecord[] = [];
    for (const name of await this.layer.list(this.folder).catch(() => [])) {
      if (!name.endsWith('.json') || name.startsWith('.') || name === this.name) continue;
      const place = path.join(this.folder, name);
      const status = await this.layer.status(place).catch(() => null);
      const read = await this.layer.read(place).catch(() => null);
      if (!status || !read) continue;
      const record = parseRecord(read);
      const isLive = record !== null && isRunning(record.pid) && this.now() - status.writtenAt < SILENCE_MS;
      if (isLive) live.push(...record.windows);
      else stale.push({ place, windows: record?.windows.map((window) => window.id) ?? [], lastSign: status.writtenAt });
    }
    return { live, stale };
  }

  /** How many other windows, here and in other programs, have this file open. */
  async othersOn(file: string | PickedLook, window: string): Promise<OtherWindows> {
    const { live } = await this.readOthers();
    const open = [...live, ...this.ownWindows()].filter(({ id }) => id !== window).map(openOf);
    if (typeof file === 'string') {
      const own = await this.lookOf(file);
      const isAlike = (other: OpenFile): boolean =>
        other !== null && typeof other === 'object' && own !== null && isSameLook(other, own);
      return { others: open.filter((other) => other === file).length, alike: open.filter(isAlike).length };
    }
    const looks = await Promise.all(open.map((other) => (typeof other === 'string' ? this.lookOf(other) : other)));
    return { others: 0, alike: looks.filter((look) => look !== null && isSameLook(look, file)).length };
  }

  /** How a file of this disk looks to a browser; null where it is not there. */
  private async lookOf(file: string): Promise<PickedLook | null> {
    const status = await this.layer.status(file).catch(() => null);
    return status && { name: path.basename(file), size: status.size, savedAt: status.writtenAt };
  }

  /** The ids of all windows that are open now. */
  async openWindows(): Promise<ReadonlySet<string>> {
    const { live } = await this.readOthers();
    return new Set([...live.map(({ id }) => id), ...this.windows.keys()]);
  }

  async staleRecords(): Promise<readonly StaleRecord[]> {
    return (await this.readOthers()).stale;
  }

  /** The program ends: no window is left. */
  async close(): Promise<void> {
    clearInterval(this.beat);
    this.windows.clear();
    await this.write();
  }
}

const parseRecord = (bytes: Buffer): z.infer<typeof recordSchema> | null => {
  try {
    return recordSchema.parse(JSON.parse(bytes.toString('utf8')));
  } catch {
    return null;
  }
};
