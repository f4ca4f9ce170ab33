import { DISK, type Draft, type FileLayer } from '../../../electron/files/fileLayer';

/** `fail`: one step is refused. `tear`: a write stops half-way and says so. `stop`: the program is ended at this step, for good. */
export type Interruption = 'fail' | 'tear' | 'stop';

export class Stopped extends Error {}

const systemError = (code: string): Error => Object.assign(new Error(code), { code });

const NOTHING = async (): Promise<void> => undefined;

/** The disk without flushing: what an interruption leaves behind is looked at by the same machine, and flushing takes long. */
export const UNFLUSHED: FileLayer = {
  ...DISK,
  create: async (place, mode) => ({ ...(await DISK.create(place, mode)), sync: NOTHING }),
  syncFolder: NOTHING,
};

/**
 * The disk, with an interruption at one of the steps that change it.
 * @param at - which of those steps, from 0
 * @param share - how much of a torn or stopped write gets through, 0 … 1
 */
export const failingDisk = (how: Interruption, at: number, share: number): FileLayer & { readonly steps: () => number } => {
  let steps = 0;
  let stopped = false;
  const step = async <Value>(work: () => Promise<Value>, part?: () => Promise<void>): Promise<Value> => {
    if (stopped) throw new Stopped();
    const isHere = steps === at;
    steps += 1;
    if (!isHere) return work();
    if (how !== 'fail') await part?.();
    stopped = how === 'stop';
    throw stopped ? new Stopped() : systemError(how === 'tear' ? 'ENOSPC' : 'EIO');
  };
  const whileRunning = async <Value>(work: () => Promise<Value>): Promise<Value> => {
    if (stopped) throw new Stopped();
    return work();
  };
  const fence = (draft: Draft): Draft => ({
    write: (bytes) =>
      step(
        () => draft.write(bytes),
        () => draft.write(bytes.subarray(0, Math.floor(bytes.length * share))),
      ),
    sync: () => step(() => draft.sync()),
    // the system closes what a stopped program had open
    close: async () => {
      await draft.close();
      await step(async () => undefined);
    },
  });
  return {
    steps: () => steps,
    create: async (place, mode) => fence(await step(() => UNFLUSHED.create(place, mode))),
    rename: (from, to) => step(() => DISK.rename(from, to)),
    remove: (place) => step(() => DISK.remove(place)),
    makeFolder: (place) => step(() => DISK.makeFolder(place)),
    syncFolder: (place) => step(() => UNFLUSHED.syncFolder(place)),
    read: (place) => whileRunning(() => DISK.read(place)),
    list: (place) => whileRunning(() => DISK.list(place)),
    status: (place) => whileRunning(() => DISK.status(place)),
    behindLinks: (place) => whileRunning(() => DISK.behindLinks(place)),
  };
};
