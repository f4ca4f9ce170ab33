import { expect, onTestFinished, test, vi } from 'vitest';
import { serializeCar, setupNames } from '../../../geometry/index';
import type { CopyNote, FileAnswer, FileService, HandedFile } from '../../../renderer/files/fileService';
import { carDifferences } from '../../../renderer/files/carDifferences';
import { fileNameFor } from '../../../renderer/files/places';
import { faultList, linesAround } from '../../../renderer/files/faultText';
import { redoStep, setToe, turnAdjuster, undoStep } from '../../../renderer/state/actions/editSetup';
import { keepCopies } from '../../../renderer/state/actions/keepCopies';
import { openHanded } from '../../../renderer/state/actions/openCar';
import { offerCopy, takeBoth, takeCopy, takeSaved } from '../../../renderer/state/actions/recoverCar';
import { answerQuestion } from '../../../renderer/state/actions/replaceCar';
import { savedWords } from '../../../renderer/shell/SavedWord';
import { saveCar } from '../../../renderer/state/actions/saveCar';
import { lookAtFile } from '../../../renderer/state/actions/watchFile';
import { isSameDocument } from '../../../renderer/state/sameDocument';
import { createBenchStore, isUnsaved, type BenchStore } from '../../../renderer/state/benchStore';
import { carText } from '../carUnderTest';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';

const yes = <Value>(value: Value): FileAnswer<Value> => ({ ok: true, value });

/** A shell that holds one file in memory and writes down what it is asked to keep. */
const shellWith = (text: string) => {
  const disk = { text, stamp: 'one', fails: false, isGone: false };
  const copies = new Map<string, { note: CopyNote; text: string }>();
  const file = (): HandedFile => ({
    id: 'mine',
    name: 'mine.jounce.json',
    folder: '/cars',
    version: { stamp: disk.stamp, savedAt: 1000 },
    isReadOnly: false,
    others: 0,
    alike: 0,
    base64: Buffer.from(disk.text).toString('base64'),
  });
  const files = {
    shell: 'served',
    openFile: async () => yes(file()),
    releaseFile: async () => yes(null),
    keepOrigin: async () => yes(null),
    keepCopy: async (asked: { note: CopyNote; text: string }) => {
      if (disk.fails) return { ok: false, failure: { code: 'full', name: null } };
      copies.set(asked.note.id, asked);
      return yes(null);
    },
    dropCopy: async ({ id }: { id: string }) => (copies.delete(id), yes(null)),
    listCopies: async () => yes([]),
    lookAtFile: async () =>
      yes({ version: disk.isGone ? null : { stamp: disk.stamp, savedAt: 1000 }, isReadOnly: false, others: 0, alike: 0 }),
    saveFile: async ({ text: written, expected }: { text: string; expected: string | null }) => {
      if (disk.isGone) return { ok: false, failure: { code: 'noFolder', name: 'mine.jounce.json' } };
      if (expected !== disk.stamp) {
        const there = { stamp: disk.stamp, savedAt: 2000 };
        return { ok: false, failure: { code: 'changed', name: 'mine.jounce.json', there } };
      }
      Object.assign(disk, { text: written, stamp: `${disk.stamp}+` });
      return yes({ version: { stamp: disk.stamp, savedAt: 3000 }, isReadOnly: false, others: 0, alike: 0 });
    },
  } as unknown as FileService;
  return { disk, copies, files };
};

const noteOfCopy = {
  ...{ title: 'Check car 23', name: 'mine.jounce.json', file: 'mine', folder: '/cars', sample: null, window: 'another' },
  ...{ savedAt: 1000, keptAt: 2000, endedAt: null, setup: 'Trial 1', against: 'Baseline', steps: [], isParked: false },
};

const opened = async () => {
  vi.useFakeTimers();
  onTestFinished(() => void vi.useRealTimers());
  const shell = shellWith(carText('car-23'));
  const store: BenchStore = createBenchStore();
  const keeper = keepCopies(store, shell.files);
  onTestFinished(keeper.stop);
  await openHanded(store, shell.files, { id: 'mine', name: 'mine.jounce.json', folder: '/cars' });
  const turn = (value: number) => turnAdjuster(store, 'plateAcross', 'top plate', 'both', value);
  return { ...shell, store, keeper, turn };
};

test('on the way out nothing is waited for: what a copy goes on from is known to be kept, and a new one is asked for with its origin', async () => {
  const { store, files, keeper, turn } = await opened();
  const asked: string[] = [];
  const never = new Promise<never>(() => undefined);
  const note = (name: string) => (of: { note?: CopyNote; id?: string }) => (asked.push(`${name} ${of.note?.id ?? of.id}`), never);
  turn(-5);
  Object.assign(files, { keepOrigin: note('origin'), keepCopy: note('copy') });
  keeper.keepAtOnce();
  const { copy } = store.getState().files;
  expect(asked).toEqual([`origin ${copy}`, `copy ${copy}`]);
  // while those are still under way
  turn(-6);
  keeper.keepAtOnce();
  expect(asked.slice(2)).toEqual([`copy ${copy}`]);
});

test('an edit right after going on with a copy is kept in one write, for what it grew from is on the disk', async () => {
  const { store, files, turn, disk } = await opened();
  turn(-5);
  const { document } = store.getState().history?.present ?? {};
  if (!document) throw new Error('a car is open');
  const kept = { text: serializeCar(document, disk.text), origin: disk.text };
  const read = { ...noteOfCopy, id: store.getState().files.copy };
  Object.assign(files, { readCopy: async () => yes({ ...kept, note: read }) });
  const after = createBenchStore();
  const keeping = keepCopies(after, files);
  onTestFinished(keeping.stop);
  await offerCopy(after, files, read);
  const { offer } = after.getState().files;
  if (!offer || 'unfinished' in offer) throw new Error('the copy is held out');
  takeCopy(after, offer);
  const asked: string[] = [];
  Object.assign(files, {
    keepOrigin: async () => (asked.push('origin'), yes(null)),
    keepCopy: async ({ text }: { text: string }) => (asked.push(text.includes('-7') ? 'copy with the edit' : 'copy'), yes(null)),
  });
  turnAdjuster(after, 'plateAcross', 'top plate', 'both', -7);
  keeping.keepAtOnce();
  expect(asked).toEqual(['copy with the edit']);
});

test('an untouched car saves byte for byte; an edit and its undo too', async () => {
  const { store, files, disk, turn } = await opened();
  const before = disk.text;
  await saveCar(store, files);
  expect(disk.text).toBe(before);
  turn(-5);
  expect(isUnsaved(store.getState())).toBe(true);
  expect(await saveCar(store, files)).toBe(true);
  expect(isUnsaved(store.getState())).toBe(false);
  expect(disk.text).not.toBe(before);
  undoStep(store);
  expect(isUnsaved(store.getState())).toBe(true);
  await saveCar(store, files);
  expect(disk.text).toBe(before);
});

test('that a save failed is not written over by the look at the file, which says less', async () => {
  const { store, files, disk, turn } = await opened();
  turn(-5);
  disk.isGone = true;
  expect(await saveCar(store, files)).toBe(false);
  await lookAtFile(store, files);
  expect(store.getState().files.notice?.title).toBe('Not saved');
  disk.isGone = false;
  expect(await saveCar(store, files)).toBe(true);
  disk.isGone = true;
  await lookAtFile(store, files);
  expect(store.getState().files.notice?.title).toBe('The file is gone');
});

test('what was saved from here says so with its time, until it is changed', async () => {
  const { store, files, turn } = await opened();
  const said = () => savedWords(store.getState());
  expect(said()).toBe('');
  await saveCar(store, files);
  expect(said()).toMatch(/^saved .*\d\d:\d\d$/);
  turn(-5);
  expect(said()).toBe('');
  undoStep(store);
  expect(said()).toMatch(/^saved /);
  turn(-6);
  Object.assign(store.getState().file?.place ?? {}, { version: { stamp: 'of nobody', savedAt: 1 } });
  expect(await saveCar(store, files)).toBe(false);
  expect(said()).toBe('');
});

test('a copy is kept within a second of an edit, goes when the car is saved or the edit undone', async () => {
  const { store, files, copies, turn } = await opened();
  turn(-5);
  await vi.advanceTimersByTimeAsync(999);
  const [copy] = [...copies.values()];
  expect(copy?.note).toMatchObject({ file: 'mine', setup: 'Trial 1', isParked: false, savedAt: 1000 });
  expect(copy?.note.steps.map(({ name }) => name)).toEqual(['Turn top plate']);
  undoStep(store);
  await vi.advanceTimersByTimeAsync(999);
  expect(copies.size).toBe(0);
  turn(-6);
  await vi.advanceTimersByTimeAsync(999);
  expect(copies.size).toBe(1);
  await saveCar(store, files);
  await vi.advanceTimersByTimeAsync(999);
  expect(copies.size).toBe(0);
});

test('a copy that cannot be kept is said, tried again, and the message goes by itself', async () => {
  const { store, copies, disk, turn } = await opened();
  disk.fails = true;
  turn(-5);
  await vi.advanceTimersByTimeAsync(999);
  expect(store.getState().files.notice?.text).toMatch(/disk .* is full/);
  disk.fails = false;
  await vi.advanceTimersByTimeAsync(2500);
  expect([copies.size, store.getState().files.notice]).toEqual([1, null]);
});

/** A second window that goes on with what the first one left behind. */
const recovered = async () => {
  const { files, copies, keeper, turn } = await opened();
  turn(-5);
  await vi.advanceTimersByTimeAsync(999);
  const [copy] = [...copies.values()];
  if (!copy) throw new Error('a copy was kept');
  keeper.stop();
  const next: BenchStore = createBenchStore();
  const keeperOfNext = keepCopies(next, files);
  onTestFinished(keeperOfNext.stop);
  const note = { ...copy.note, endedAt: 2000, folder: '/cars' };
  await offerCopy(next, { ...files, readCopy: async () => yes({ note, text: copy.text, origin: carText('car-23') }) }, note);
  const { offer } = next.getState().files;
  if (!offer || 'unfinished' in offer) throw new Error('the copy is offered');
  takeCopy(next, offer);
  return { next, files, copies };
};

test('a recovered copy goes when the car is saved at once, before the window has written one of its own', async () => {
  const { next, files, copies } = await recovered();
  expect(isUnsaved(next.getState())).toBe(true);
  expect(await saveCar(next, files)).toBe(true);
  await vi.advanceTimersByTimeAsync(5000);
  expect(copies.size).toBe(0);
});

test('a recovered copy that is gone on with counts the steps of before too', async () => {
  const { next, copies } = await recovered();
  setToe(next, 0.1);
  await vi.advanceTimersByTimeAsync(999);
  expect([...copies.values()].map(({ note }) => note.steps.map(({ name }) => name))).toEqual([['Turn top plate', 'Set toe']]);
});

test('another car waits for an answer; a copy that is put aside stays on the disk', async () => {
  const { store, files, keeper, copies, turn } = await opened();
  turn(-5);
  const mine = store.getState().file;
  await openHanded(store, files, { id: 'mine', name: 'mine.jounce.json', folder: '/cars' });
  expect(store.getState().file).toBe(mine);
  await answerQuestion(store, files, keeper, 'stay');
  expect([store.getState().file, store.getState().files.question]).toEqual([mine, null]);
  await openHanded(store, files, { id: 'mine', name: 'mine.jounce.json', folder: '/cars' });
  await answerQuestion(store, files, keeper, 'keep');
  expect(isUnsaved(store.getState())).toBe(false);
  await vi.advanceTimersByTimeAsync(5000);
  expect([...copies.values()].map(({ note }) => note.isParked)).toEqual([true]);
});

test('changes that are not to be kept go with their copy, even with one still on its way to the disk', async () => {
  const { store, files, keeper, copies, turn } = await opened();
  turn(-5);
  await vi.advanceTimersByTimeAsync(999);
  expect(copies.size).toBe(1);
  turn(-6);
  void keeper.keepNow();
  await openHanded(store, files, { id: 'mine', name: 'mine.jounce.json', folder: '/cars' });
  await answerQuestion(store, files, keeper, 'drop');
  expect([isUnsaved(store.getState()), store.getState().files.question]).toEqual([false, null]);
  await vi.advanceTimersByTimeAsync(5000);
  expect(copies.size).toBe(0);
});

test('a kept copy counts the steps that lead to it: not what was taken back, and what was made again once', async () => {
  const { store, copies, turn, files } = await opened();
  const names = async (): Promise<readonly string[]> => {
    await vi.advanceTimersByTimeAsync(2000);
    return [...copies.values()].flatMap(({ note }) => note.steps.map(({ name }) => name));
  };
  turn(-5);
  turn(-6);
  setToe(store, 0.1);
  undoStep(store);
  undoStep(store);
  expect(await names()).toEqual(['Turn top plate']);
  redoStep(store);
  expect(await names()).toEqual(['Turn top plate', 'Turn top plate']);
  await saveCar(store, files);
  undoStep(store);
  expect(await names()).toEqual(['Undo: Turn top plate']);
  undoStep(store);
  redoStep(store);
  expect(await names()).toEqual(['Undo: Turn top plate']);
  redoStep(store);
  expect(isUnsaved(store.getState())).toBe(false);
  setToe(store, 0.2);
  expect(await names()).toEqual(['Set toe']);
});

test('a version of somebody else is not written over unasked', async () => {
  const { store, files, disk, turn } = await opened();
  turn(-5);
  Object.assign(disk, { text: 'theirs', stamp: 'two' });
  expect(await saveCar(store, files)).toBe(false);
  expect(disk.text).toBe('theirs');
  expect(store.getState().files.notice?.ways).toEqual(['saveOver', 'takeTheirs', 'saveAs']);
});

test('theirs in place of mine: asked for as what it is, and only where the file is another version', async () => {
  const { store, files, disk, turn } = await opened();
  const again = () => openHanded(store, files, { id: 'mine', name: 'mine.jounce.json', folder: '/cars' });
  turn(-5);
  await again();
  expect(store.getState().files.question?.theirs).toBeUndefined();
  disk.stamp = 'two';
  await again();
  expect(store.getState().files.question?.theirs).toEqual({ name: 'mine.jounce.json', savedAt: 1000 });
});

test('a kept copy in place of changes that were not saved: asked whichever way it is opened, and the copies are listed', async () => {
  const { store, files, keeper, turn } = await opened();
  turn(-5);
  const { file } = store.getState();
  const document = file?.saved.document;
  if (!file || !document) throw new Error('no car is open');
  const note = { id: 'old', title: 'New car', name: 'new-car.jounce.json', file: null, folder: null, sample: null, steps: [] };
  const copy = { note: { ...note, setup: '', against: '', savedAt: null, keptAt: 1, endedAt: null }, text: carText('car-21') };
  const offer = {
    copy: { ...copy, origin: carText('car-21') },
    ...{ document, saved: document, savedText: carText('car-21'), version: null, isReadOnly: false, isFileNewer: false },
  } as unknown as Parameters<typeof takeCopy>[1];
  const ways = [takeCopy, takeBoth, (...of: Parameters<typeof takeCopy>) => void takeSaved(of[0], files, of[1])];
  for (const way of ways) {
    way(store, offer);
    await vi.advanceTimersByTimeAsync(0);
    expect(store.getState().file).toBe(file);
    expect(store.getState().files.question?.title).toContain('New car');
    await answerQuestion(store, files, keeper, 'stay');
  }
  const kept = { id: store.getState().files.copy, title: 'mine', keptAt: 2 };
  files.listCopies = async () => yes([kept]) as never;
  takeCopy(store, offer);
  await answerQuestion(store, files, keeper, 'keep');
  expect(store.getState().file).not.toBe(file);
  expect(store.getState().files.copies).toEqual([kept]);
});

test('what differs is told in the fitter’s words, a new setup with the one it grew from', async () => {
  const { store, turn } = await opened();
  turn(-5);
  const [saved, changed] = [store.getState().file?.saved.document, store.getState().history?.present.document];
  if (!saved || !changed) throw new Error('a car is open');
  const known = { against: 'Baseline', copies: store.getState().history?.present.copies ?? {} };
  const [difference, ...others] = carDifferences(saved, { ...changed, notes: 'New' }, known, STANDARD_UNITS);
  expect(difference).toMatchObject({ part: 'Plate across', after: '5 mm inboard', where: 'Trial 1, new, from Baseline' });
  expect(others).toMatchObject([{ part: 'Notes', after: 'New' }]);
  const inches = carDifferences(saved, changed, known, { ...STANDARD_UNITS, length: 'in' });
  expect(inches[0]).toMatchObject({ part: 'Plate across', after: '0.1969 in inboard' });
  expect(carDifferences(saved, saved, { against: setupNames(saved)[0] ?? '' }, STANDARD_UNITS)).toEqual([]);
  // set and set to nothing again: the fitter reads the same, so nothing is told
  turn(0);
  const back = store.getState().history?.present.document;
  if (!back) throw new Error('a car is open');
  expect(carDifferences(saved, back, known, STANDARD_UNITS).filter(({ part }) => part === 'Plate across')).toEqual([]);
});

test('a new setup is told as made from the one that it was copied from, or from none; its amounts have their units', async () => {
  const { store } = await opened();
  const { document: saved } = store.getState().file?.saved ?? {};
  if (!saved) throw new Error('a car is open');
  const wet = { ...saved, onCar: 'Trial', setups: { ...saved.setups, Wet: { front: { rideHeight: -5, setToe: 0.1 } } } };
  const told = (copies: Record<string, string>, units = STANDARD_UNITS) =>
    carDifferences(saved, { ...wet, onCar: saved.onCar }, { against: 'Trial', copies }, units);
  const heightOf = (list: ReturnType<typeof told>) => list.find(({ part }) => part === 'Ride height');
  expect(heightOf(told({ Wet: 'Baseline' }))?.where).toBe('Wet, new, from Baseline, front');
  expect(heightOf(told({ Wet: 'Dry', Dry: 'Baseline' }))?.where).toBe('Wet, new, from Dry, from Baseline, front');
  expect(heightOf(told({}))?.where).toBe('Wet, new, beside Trial, front');
  expect(heightOf(told({ Wet: 'Baseline' }))).toMatchObject({ after: '5 mm lower than drawn' });
  expect(heightOf(told({ Wet: 'Baseline' }, { ...STANDARD_UNITS, length: 'in' }))).toMatchObject({
    after: '0.197 in lower than drawn',
  });
  expect(told({ Wet: 'Baseline' }).find(({ part }) => part === 'Set toe')?.after).toBe('set to 0.10°');
});

test('documents are the same by what they say, not by who they are', () => {
  expect(isSameDocument({ a: [1, { b: 2 }], c: undefined }, { a: [1, { b: 2 }] })).toBe(true);
  for (const other of [{ a: [1] }, { a: [1, 3] }, { a: { 0: 1, 1: 2 } }, { b: [1, 2] }, null])
    expect(isSameDocument({ a: [1, 2] }, other)).toBe(false);
});

test('a car without a file gets a name that every system takes', () => {
  expect(['Saltmarsh hatch', 'Åre / №5', '!!', 'mine.json'].map(fileNameFor)).toEqual([
    'saltmarsh-hatch.jounce.json',
    'are-no5.jounce.json',
    'car.jounce.json',
    'mine.json',
  ]);
});

test('the bad place of a file is marked: a text, a number, a bracket; lines beyond the near ones are left out', () => {
  const text = ['{', '  "ab\\"c": 12.5,', ...Array.from({ length: 1000 }, () => '0')].join('\r\n');
  const marked = (column: number) => linesAround(text, 2, column)[1]?.marked;
  expect([marked(3), marked(12), marked(16)]).toEqual(['"ab\\"c"', '12.5', ',']);
  expect(linesAround(text, 2, 3)).toHaveLength(202);
  const fault = { code: 'x', path: 'front', line: 2, column: 3, found: 'a', expected: 'b', hint: null };
  expect(faultList('car', [fault])).toBe('car\ncar:2:3 front: found a; expected b');
});
