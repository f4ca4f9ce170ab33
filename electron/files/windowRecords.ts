import { randomBytes } from 'node:crypto';
import path from 'node:path';
import * as z from 'zod';
import { DISK, type FileLayer } from './fileLayer';
import { isRunning } from './isRunning';
import { OWNER_ONLY } from './stateFiles';
import { replaceFile } from './wholeFile';

/** How often a program says that it is still there, and after what silence it is taken for ended, ms. */
const BEAT_MS = 5_000;
export const SILENCE_MS = 30_000;

const recordSchema = z.object({
  pid: z.number().int(),
  windows: z.array(z.object({ id: z.string(), file: z.string().nullable() })),
});
type Windows = z.infer<typeof recordSchema>['windows'];

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
  private readonly windows = new Map<string, string | null>();
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
  note(window: string, file: string | null): Promise<void> {
    if (this.windows.has(window) && this.windows.get(window) === file) return this.queue;
    this.windows.set(window, file);
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
      const windows = [...this.windows].map(([id, file]) => ({ id, file }));
      await this.layer.makeFolder(this.folder).catch(() => undefined);
      const bytes = Buffer.from(JSON.stringify({ pid: process.pid, windows }));
      // a record that cannot be kept costs a warning in another window, not the work in this one
      await replaceFile(place, bytes, OWNER_ONLY, this.layer).catch(() => undefined);
    });
    return this.queue;
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
  async othersOn(file: string, window: string): Promise<number> {
    const { live } = await this.readOthers();
    const all = [...live, ...[...this.windows].map(([id, open]) => ({ id, file: open }))];
    return all.filter((other) => other.id !== window && other.file === file).length;
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
