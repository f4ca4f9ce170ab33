import { expect, onTestFinished, test, vi } from 'vitest';
import { parseCar } from '../../../geometry/index';
import type { CopyNote, FileService } from '../../../renderer/files/fileService';
import { FIRST_CHOICE, newCarDocument } from '../../../renderer/points/newCar/newCarDocument';
import { documentOfGiven, emptyCar } from '../../../renderer/points/newCar/unfinishedCar';
import { beginGivenCar, keepUnfinished, showUnfinished } from '../../../renderer/state/actions/beginCar';
import { beginWindow } from '../../../renderer/state/actions/beginWindow';
import { keepCopies } from '../../../renderer/state/actions/keepCopies';
import { keepUnfinishedCopies } from '../../../renderer/state/actions/keepUnfinishedCopies';
import { offerCopy, takeUnfinished } from '../../../renderer/state/actions/recoverCar';
import { openCarText } from '../../../renderer/state/actions/openCar';
import { LAYOUT_NAMES, type GivenPoint, type UnfinishedCar } from '../../../renderer/state/begunCar';
import { createBenchStore } from '../../../renderer/state/benchStore';
import { readUnfinished, unfinishedText } from '../../../renderer/state/unfinishedText';
import { carText } from '../carUnderTest';

const yes = <Value>(value: Value) => ({ ok: true, value }) as const;
const choiceOf = (name: string) => ({ ...FIRST_CHOICE, name, rear: null });
const named = (name: string): UnfinishedCar => emptyCar(choiceOf(name), null);

/** The car with one of its points given. */
const withPoint = (car: UnfinishedCar, name: string, at: GivenPoint): UnfinishedCar =>
  car.front ? { ...car, front: { ...car.front, points: { ...car.front.points, [name]: at } } } : car;

/** A disk that outlives its windows; what is asked of it is written down. */
const diskOf = () => {
  const disk = {
    copies: new Map<string, { note: CopyNote; text: string }>(),
    fails: null as string | null,
    asked: [] as string[],
  };
  const summaries = () => [...disk.copies.values()].map(({ note }) => ({ ...note, endedAt: null, folder: null }));
  const answered = async (method: string, act: () => void) => {
    disk.asked.push(method);
    if (disk.fails !== null) return { ok: false, failure: { code: disk.fails, name: null } };
    act();
    return yes(null);
  };
  const files = {
    shell: 'served',
    begin: async () => yes({ handed: [], copies: summaries(), recent: [], preferences: {} }),
    listSamples: async () => yes([]),
    keepOrigin: async () => yes(null),
    keepPreferences: async () => yes(null),
    keepCopy: (asked: { note: CopyNote; text: string }) =>
      answered(`keep ${asked.note.title}`, () => disk.copies.set(asked.note.id, structuredClone(asked))),
    dropCopy: ({ id }: { id: string }) => answered(`drop ${disk.copies.get(id)?.note.title}`, () => disk.copies.delete(id)),
    listCopies: async () => yes(summaries()),
    readCopy: async ({ id }: { id: string }) => {
      const kept = disk.copies.get(id);
      return kept && yes({ ...kept, note: { ...kept.note, endedAt: null, folder: null }, origin: null });
    },
  } as unknown as FileService;
  return { disk, files };
};

const windowOn = (files: FileService) => {
  vi.useFakeTimers();
  onTestFinished(() => void vi.useRealTimers());
  const store = createBenchStore();
  const cars = keepCopies(store, files);
  const points = keepUnfinishedCopies(store, files, cars);
  const end = () => (cars.stop(), points.stop());
  onTestFinished(end);
  return { store, points, end };
};

const later = (ms = 5000) => vi.advanceTimersByTimeAsync(ms);
const titles = (copies: Iterable<{ note: CopyNote }>) => [...copies].map(({ note }) => note.title);

test('what is given is kept soon after, and only the last of it; it is read as it was given, and never as a car', async () => {
  const { disk, files } = diskOf();
  const { store, points } = windowOn(files);
  const car = withPoint(named('Fen saloon'), 'ballJoint', [8, 724.25, null]);
  keepUnfinished(store, named('Fen saloon'));
  keepUnfinished(store, car);
  await later(600);
  expect(disk.asked).toEqual(['keep Fen saloon, unfinished']);
  const [kept] = [...disk.copies.values()];
  expect(kept && readUnfinished(kept.text)).toEqual(car);
  expect(parseCar(kept?.text ?? '').ok).toBe(false);
  expect(kept?.note).toMatchObject({ file: null, sample: null, isParked: false, window: store.getState().files.window });
  // a window that is left in the same moment keeps it too
  keepUnfinished(store, withPoint(car, 'strutTop', [1, 2, 3]));
  points.keepNow();
  await later(0);
  expect(disk.asked).toHaveLength(2);
});

test('the window that comes next is offered it, and goes on under the same copy; its own is never offered', async () => {
  const { disk, files } = diskOf();
  const before = windowOn(files);
  const car = withPoint(named('Fen saloon'), 'armFront', [15, null, 212]);
  keepUnfinished(before.store, car);
  await later();
  before.end();

  const { store } = windowOn(files);
  await beginWindow(store, files);
  const { offer } = store.getState().files;
  if (!offer || !('unfinished' in offer)) throw new Error('the points are offered');
  expect(offer.unfinished).toEqual(car);
  takeUnfinished(store, offer);
  expect(store.getState()).toMatchObject({ unfinished: car, isGiving: true, page: 'points' });
  await later();
  expect(store.getState().files).toMatchObject({ offer: null, copies: [] });
  // it is this window's now
  expect([...disk.copies.values()].map(({ note }) => note.window)).toEqual([store.getState().files.window]);
  keepUnfinished(store, withPoint(car, 'strutTop', [1, 2, 3]));
  await later();
  expect(disk.copies.size).toBe(1);
});

test('a window in which points are being given already is not asked over them a moment later', async () => {
  const { disk, files } = diskOf();
  const { store } = windowOn(files);
  await beginWindow(store, files);
  disk.copies.set('left', { note: { id: 'left', title: 'Marsh estate', isParked: false } as CopyNote, text: carText('car-23') });
  keepUnfinished(store, named('Fen saloon'));
  await later();
  expect(store.getState().files.offer).toBe(null);
  expect(store.getState().files.copies.map(({ title }) => title)).toEqual(['Marsh estate']);
});

test('taken up in place of others, those are put aside and stay on the list', async () => {
  const { disk, files } = diskOf();
  const before = windowOn(files);
  keepUnfinished(before.store, named('Fen saloon'));
  await later();
  before.end();
  const { store } = windowOn(files);
  const given = withPoint(named('Marsh estate'), 'armRear', [1, 2, 3]);
  keepUnfinished(store, given);
  const [summary] = [...disk.copies.values()].map(({ note }) => ({ ...note, endedAt: null, folder: null }));
  if (!summary) throw new Error('a copy was kept');
  await offerCopy(store, files, summary);
  const { offer } = store.getState().files;
  if (!offer || !('unfinished' in offer)) throw new Error('the points are offered');
  takeUnfinished(store, offer);
  await later();
  expect(titles(disk.copies.values()).sort()).toEqual(['Fen saloon, unfinished', 'Marsh estate, unfinished']);
  const aside = [...disk.copies.values()].find(({ note }) => note.isParked);
  expect(aside && readUnfinished(aside.text)).toEqual(given);
  expect(store.getState().files.copies.map(({ title }) => title)).toEqual(['Marsh estate, unfinished']);
});

test('given up, its copy goes; made a car, it goes only once that car has a copy of its own', async () => {
  const { disk, files } = diskOf();
  const { store } = windowOn(files);
  keepUnfinished(store, named('Fen saloon'));
  showUnfinished(store, true);
  await later();
  keepUnfinished(store, null);
  await later();
  expect(disk.copies.size).toBe(0);
  expect(store.getState().isGiving).toBe(false);

  const typical = newCarDocument(choiceOf('Marsh estate')).front?.points ?? {};
  const empty = named('Marsh estate');
  const whole: UnfinishedCar = { ...empty, front: { points: typical, camber: -1, toe: 0.1, loadedRadius: 310 } };
  keepUnfinished(store, whole);
  await later();
  disk.asked.length = 0;
  expect(beginGivenCar(store, whole.choice, documentOfGiven(whole))).toBe(true);
  disk.fails = 'full';
  await later(1000);
  expect(disk.asked).not.toContain('drop Marsh estate, unfinished');
  expect(titles(disk.copies.values())).toEqual(['Marsh estate, unfinished']);
  disk.fails = null;
  await later();
  expect(titles(disk.copies.values())).toEqual(['Marsh estate']);
  expect(store.getState().files.notice).toBe(null);
});

test('a disk that is full is told and tried again; a program that ended is waited for', async () => {
  const { disk, files } = diskOf();
  const { store } = windowOn(files);
  disk.fails = 'full';
  keepUnfinished(store, named('Fen saloon'));
  await later(1000);
  expect(store.getState().files.notice).toMatchObject({ title: 'No recovery copy can be kept', ways: [] });
  disk.fails = 'disconnected';
  await later();
  expect(store.getState().files.lostAt).not.toBe(null);
  disk.fails = null;
  await later();
  expect(disk.copies.size).toBe(1);
  expect(store.getState().files.notice).toBe(null);
});

test('another car that is opened is shown, and what is given waits beside it', async () => {
  const { store } = windowOn(diskOf().files);
  keepUnfinished(store, named('Fen saloon'));
  showUnfinished(store, true);
  openCarText(store, 'car', null, carText('car-23'));
  expect(store.getState()).toMatchObject({ isGiving: false, unfinished: named('Fen saloon') });
});

test('a copy that is damaged, or of another kind, is not taken for points', () => {
  const car = { ...named('Fen saloon'), choice: { ...choiceOf('Fen saloon'), unit: 'in' as const } };
  const text = unfinishedText(car);
  expect(readUnfinished(text)).toEqual(car);
  for (const layout of LAYOUT_NAMES) {
    const other = emptyCar({ ...FIRST_CHOICE, front: layout, rear: layout }, null);
    expect(readUnfinished(unfinishedText(other))).toEqual(other);
  }
  const parts = JSON.parse(text) as Record<string, unknown>;
  const broken = [
    text.slice(0, -20),
    carText('car-23'),
    'null',
    '[]',
    ...[
      { format: 'jounce-car' },
      { version: 2 },
      { choice: { ...car.choice, front: 'beam' } },
      { choice: { ...car.choice, unit: 'ft' } },
      { choice: { ...car.choice, wheelbase: '2640' } },
      { choice: { ...car.choice, rear: 'strut' } },
      { front: null },
      { front: { ...car.front, camber: '1' } },
      { front: { ...car.front, points: { armFront: [1, 2] } } },
      { front: { ...car.front, points: { armFront: [1, 2, 'x'] } } },
    ].map((part) => JSON.stringify({ ...parts, ...part })),
  ];
  broken.forEach((one) => expect(readUnfinished(one), one).toBe(null));
});
