import { expect, onTestFinished, test, vi } from 'vitest';
import { FIRST_CHOICE, newCarDocument } from '../../../renderer/points/newCar/newCarDocument';
import type { CopyNote, FileService } from '../../../renderer/files/fileService';
import { beginCar } from '../../../renderer/state/actions/beginCar';
import { beginWindow } from '../../../renderer/state/actions/beginWindow';
import { keepCopies } from '../../../renderer/state/actions/keepCopies';
import { createBenchStore } from '../../../renderer/state/benchStore';

const yes = <Value>(value: Value) => ({ ok: true, value }) as const;

/** A shell without samples, with what windows have kept. */
const shellOf = (copies: Map<string, { note: CopyNote; text: string }>) =>
  ({
    shell: 'served',
    begin: async () => yes({ handed: [], copies: [], recent: [], preferences: {} }),
    listSamples: async () => yes([]),
    keepOrigin: async () => yes(null),
    keepPreferences: async () => yes(null),
    keepCopy: async (asked: { note: CopyNote; text: string }) => (copies.set(asked.note.id, asked), yes(null)),
    dropCopy: async ({ id }: { id: string }) => (copies.delete(id), yes(null)),
    listCopies: async () => yes([...copies.values()].map(({ note }) => ({ ...note, endedAt: null, folder: null }))),
    readCopy: async ({ id }: { id: string }) => {
      const kept = copies.get(id);
      return kept && yes({ ...kept, note: { ...kept.note, endedAt: null, folder: null }, origin: kept.text });
    },
  }) as unknown as FileService;

const begun = async () => {
  vi.useFakeTimers();
  onTestFinished(() => void vi.useRealTimers());
  const copies = new Map<string, { note: CopyNote; text: string }>();
  const files = shellOf(copies);
  const store = createBenchStore();
  const keeper = keepCopies(store, files);
  onTestFinished(keeper.stop);
  await beginWindow(store, files);
  const begin = (name: string) => beginCar(store, { ...FIRST_CHOICE, name }, newCarDocument({ ...FIRST_CHOICE, name }));
  return { store, copies, begin };
};

test('a car begun in the first moments is not offered back as one that was left behind', async () => {
  const { store, copies, begin } = await begun();
  begin('Fen saloon');
  await vi.advanceTimersByTimeAsync(5000);
  expect(copies.size).toBe(1);
  expect(store.getState().files).toMatchObject({ offer: null, copies: [] });
});

test('a copy whose window is noticed to be gone only a moment later is offered, and not over a car begun since', async () => {
  for (const isBegun of [false, true]) {
    const { copies: left, store: before, begin: beginBefore } = await begun();
    beginBefore('Marsh estate');
    await vi.advanceTimersByTimeAsync(5000);
    const [kept] = [...left.values()];
    if (!kept) throw new Error('no copy was kept');
    expect(before.getState().files.offer).toBe(null);

    const { store, copies, begin } = await begun();
    copies.set(kept.note.id, kept);
    if (isBegun) begin('Fen saloon');
    await vi.advanceTimersByTimeAsync(5000);
    expect(store.getState().files.offer?.copy.note.title).toBe(isBegun ? undefined : 'Marsh estate');
    expect(store.getState().files.copies.map(({ title }) => title)).toEqual(['Marsh estate']);
  }
});
