import { chmod, mkdir, readFile, rename, rm, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import { expect, onTestFinished, test } from 'vitest';
import { FileDesk, type DeskOptions } from '../../../electron/files/fileDesk';
import { DISK } from '../../../electron/files/fileLayer';
import type { CopyNote, FileAnswer, Questions } from '../../../renderer/files/fileService';
import { temporaryFolder } from '../temporaryFolder';

const uuid = (digit: number): string =>
  `${digit}`.repeat(8) + `-${digit}${digit}${digit}${digit}-4000-8000-` + `${digit}`.repeat(12);
const [A, B, COPY] = [uuid(1), uuid(2), uuid(3)];

const deskOn = (folder: string, options: Partial<DeskOptions> = {}): FileDesk => {
  const desk = new FileDesk({ stateFolder: `${folder}/state`, handed: [`${folder}/cars/mine.jounce.json`], ...options });
  onTestFinished(() => desk.close());
  return desk;
};

const carFolder = (): Promise<string> => temporaryFolder({ 'cars/mine.jounce.json': '{ "name": "Mine" }\n' });

const ask = <Method extends keyof Questions>(desk: FileDesk, method: Method, asked: Questions[Method]['ask']) =>
  desk.answer(method, asked) as Promise<FileAnswer<Questions[Method]['answer']>>;

const value = <Value>(answer: FileAnswer<Value>): Value => {
  if (!answer.ok) throw new Error(`refused: ${answer.failure.code}`);
  return answer.value;
};

const codeOf = (answer: FileAnswer<unknown>): string => (answer.ok ? 'ok' : answer.failure.code);

const begin = async (desk: FileDesk, window = A) => value(await ask(desk, 'begin', { window }));
const openMine = async (desk: FileDesk, window = A) => {
  const [{ id } = { id: '' }] = (await begin(desk, window)).handed;
  return value(await ask(desk, 'openFile', { window, id }));
};

const note = (part: Partial<CopyNote> = {}): CopyNote => ({
  id: COPY,
  window: A,
  title: 'Mine',
  name: 'mine.jounce.json',
  file: null,
  sample: null,
  savedAt: 5,
  keptAt: 10,
  setup: 'Trial 1',
  against: 'Baseline',
  steps: [{ name: 'Turn top plate', at: 9 }],
  isParked: false,
  ...part,
});

test('saving says why not, and the file is as it was', async () => {
  const folder = await carFolder();
  const desk = deskOn(folder);
  const { id, version } = await openMine(desk);
  const place = `${folder}/cars/mine.jounce.json`;
  const save = (expected: string | null = version.stamp) => ask(desk, 'saveFile', { window: A, id, text: 'new', expected });
  await chmod(place, 0o444);
  expect(value(await ask(desk, 'lookAtFile', { window: A, id })).isReadOnly).toBe(true);
  expect(codeOf(await save())).toBe('readOnly');
  expect(await readFile(place, 'utf8')).toContain('Mine');
  await chmod(place, 0o644);
  await writeFile(place, 'theirs');
  const theirs = value(await ask(desk, 'lookAtFile', { window: A, id })).version;
  expect(await save()).toMatchObject({ ok: false, failure: { code: 'changed', there: theirs } });
  expect(codeOf(await save(theirs?.stamp))).toBe('ok');
  expect(await readFile(place, 'utf8')).toBe('new');
  await rm(place);
  expect(value(await ask(desk, 'lookAtFile', { window: A, id })).version).toBeNull();
  expect(await save()).toMatchObject({ ok: false, failure: { code: 'changed', there: null } });
  expect(codeOf(await save(null))).toBe('ok');
  await rename(`${folder}/cars`, `${folder}/elsewhere`);
  expect(codeOf(await save())).toBe('noFolder');
  expect(codeOf(await save(null))).toBe('noFolder');
  await mkdir(place, { recursive: true });
  expect(codeOf(await save(null))).toBe('notAFile');
});

test.each([
  ['ENOSPC', 'full'],
  ['EDQUOT', 'full'],
  ['EROFS', 'readOnly'],
  ['EACCES', 'readOnly'],
  ['EIO', 'unwritable'],
])('a disk that answers %s is said to be: %s', async (code, said) => {
  const folder = await carFolder();
  const layer = { ...DISK, create: () => Promise.reject(Object.assign(new Error(code), { code })) };
  const desk = deskOn(folder, { layer });
  const { id, version } = await openMine(desk);
  const answer = await ask(desk, 'saveFile', { window: A, id, text: 'new', expected: version.stamp });
  expect(answer).toMatchObject({ ok: false, failure: { code: said, name: 'mine.jounce.json', folder: `${folder}/cars` } });
  expect(await readFile(`${folder}/cars/mine.jounce.json`, 'utf8')).toContain('Mine');
});

test('a file of another size, kind or name is refused when it is opened', async () => {
  const folder = await carFolder();
  await writeFile(`${folder}/large.json`, Buffer.alloc(16 * 1024 * 1024 + 1));
  const desk = deskOn(folder, { handed: [`${folder}/large.json`, `${folder}/cars`, `${folder}/nothing.json`] });
  const { handed } = await begin(desk);
  const codes = [];
  for (const { id } of handed) codes.push(codeOf(await ask(desk, 'openFile', { window: A, id })));
  expect(codes).toEqual(['tooLarge', 'notAFile', 'notFound']);
});

test('recent files come back with the ids that they had, latest first, no more than twelve', async () => {
  const folder = await carFolder();
  const first = deskOn(folder);
  const { id } = await openMine(first);
  await ask(first, 'noteRecent', { name: '/somewhere/picked.json' });
  const next = deskOn(folder, { handed: [] });
  const { recent, handed } = await begin(next);
  expect(handed).toEqual([]);
  expect(recent).toMatchObject([
    { id: null, name: 'picked.json', folder: null },
    { id, name: 'mine.jounce.json', folder: `${folder}/cars` },
  ]);
  expect(codeOf(await ask(next, 'openFile', { window: A, id }))).toBe('ok');
  for (let index = 0; index < 20; index += 1) await ask(next, 'noteRecent', { name: `car ${index}` });
  expect((await begin(next)).recent).toHaveLength(12);
});

test('a state folder with rubbish in it counts as empty', async () => {
  const folder = await carFolder();
  await mkdir(`${folder}/state/recovery`, { recursive: true });
  await mkdir(`${folder}/state/windows`, { recursive: true });
  await writeFile(`${folder}/state/recent.json`, '[{"id":"../x","place":5}]');
  await writeFile(`${folder}/state/preferences.json`, 'no json');
  await writeFile(`${folder}/state/recovery/${COPY}.copy`, 'no head at all');
  await writeFile(`${folder}/state/windows/1-00000000.json`, '{}');
  const desk = deskOn(folder);
  expect(await begin(desk)).toMatchObject({ copies: [], recent: [], preferences: {} });
  expect(codeOf(await ask(desk, 'readCopy', { id: COPY }))).toBe('notFound');
  expect(await readFile(`${folder}/state/recovery/${COPY}.copy`, 'utf8')).toBe('no head at all');
});

test('preferences: new ones are added to those that are kept', async () => {
  const desk = deskOn(await carFolder());
  await ask(desk, 'keepPreferences', { preferences: { theme: 'dark', size: 2 } });
  await ask(desk, 'keepPreferences', { preferences: { theme: 'light', play: false } });
  expect((await begin(desk)).preferences).toEqual({ theme: 'light', size: 2, play: false });
});

test('a copy is offered when its window is gone, with all that was kept, and not while it is there', async () => {
  const folder = await carFolder();
  const desk = deskOn(folder);
  const { id } = await openMine(desk);
  await ask(desk, 'keepOrigin', { id: COPY, text: 'before' });
  await ask(desk, 'keepCopy', { note: note({ file: id }), text: 'after\nwith lines' });
  expect((await begin(desk, B)).copies).toEqual([]);
  await desk.windowWent(A);
  const [copy] = (await begin(desk, B)).copies;
  expect(copy).toMatchObject({ ...note({ file: id }), folder: `${folder}/cars`, endedAt: expect.any(Number) });
  const next = deskOn(folder, { handed: [] });
  expect(value(await ask(next, 'readCopy', { id: COPY }))).toMatchObject({ text: 'after\nwith lines', origin: 'before' });
  const [again] = (await begin(next, B)).copies;
  expect(codeOf(await ask(next, 'openFile', { window: B, id: again?.file ?? '' }))).toBe('ok');
  await ask(next, 'dropCopy', { id: COPY });
  expect((await begin(next, B)).copies).toEqual([]);
  expect(codeOf(await ask(next, 'dropCopy', { id: COPY }))).toBe('ok');
});

test('a copy that was put aside is offered even while its window is there', async () => {
  const desk = deskOn(await carFolder());
  await desk.windowCame(A);
  await ask(desk, 'keepCopy', { note: note({ isParked: true }), text: 'aside' });
  expect(value(await ask(desk, 'listCopies', { window: B }))).toMatchObject([{ id: COPY, isParked: true }]);
});

test('two windows on one file are told of each other, by whatever path, across programs, and of no other', async () => {
  const folder = await carFolder();
  await symlink(`${folder}/cars/mine.jounce.json`, `${folder}/link.json`);
  await writeFile(`${folder}/third.json`, '{}');
  const [one, two] = [deskOn(folder), deskOn(folder, { handed: [`${folder}/link.json`, `${folder}/third.json`] })];
  const mine = await openMine(one, A);
  expect(mine.others).toBe(0);
  const [linked, third] = (await begin(two, B)).handed;
  expect(value(await ask(two, 'openFile', { window: B, id: linked?.id ?? '' })).others).toBe(1);
  expect(value(await ask(one, 'lookAtFile', { window: A, id: mine.id })).others).toBe(1);
  expect(value(await ask(two, 'openFile', { window: B, id: third?.id ?? '' })).others).toBe(0);
  expect(value(await ask(one, 'lookAtFile', { window: A, id: mine.id })).others).toBe(0);
  await ask(one, 'releaseFile', { window: A });
  expect(value(await ask(two, 'openFile', { window: B, id: linked?.id ?? '' })).others).toBe(0);
});

test('a file that a browser opened is told apart by name, size and time alone: whoever has one like it is told', async () => {
  const folder = await carFolder();
  const place = `${folder}/cars/mine.jounce.json`;
  await utimes(place, 1_700_000_000, 1_700_000_000.25);
  const [one, two] = [deskOn(folder), deskOn(folder)];
  const look = { name: 'mine.jounce.json', size: 19, savedAt: 1_700_000_000_250 };
  const alike = async (desk: FileDesk, window: string, part: Partial<typeof look> = {}): Promise<number> =>
    value(await ask(desk, 'notePicked', { window, ...look, ...part })).alike;
  expect(await alike(one, A)).toBe(0);
  expect(await alike(two, B)).toBe(1);
  for (const other of [{ name: 'other.json' }, { size: 18 }, { savedAt: look.savedAt + 5 }])
    expect(await alike(two, B, other)).toBe(0);
  // one window has it by its path, the other by the browser's own access
  const mine = await openMine(two, B);
  expect([mine.others, mine.alike]).toEqual([0, 1]);
  expect(await alike(one, A)).toBe(1);
  await writeFile(place, '{ "name": "Ours" }\n');
  expect(await alike(one, A)).toBe(0);
  const now = await alike(one, A, { savedAt: Math.floor((await stat(place)).mtimeMs) });
  expect([now, value(await ask(two, 'lookAtFile', { window: B, id: mine.id })).alike]).toEqual([1, 1]);
});

test('the record of a program that was ended, or fell silent, is stale: its copies are offered and it goes', async () => {
  const folder = await carFolder();
  const place = `${folder}/cars/mine.jounce.json`;
  const desk = deskOn(folder);
  await ask(desk, 'keepCopy', { note: note({ window: B }), text: 'x' });
  const record = (pid: number) => JSON.stringify({ pid, windows: [{ id: B, file: place }] });
  await writeFile(`${folder}/state/windows/1-live.json`, record(process.pid)).catch(async () => {
    await mkdir(`${folder}/state/windows`, { recursive: true });
    await writeFile(`${folder}/state/windows/1-live.json`, record(process.pid));
  });
  expect((await openMine(desk)).others).toBe(1);
  expect((await begin(desk)).copies).toEqual([]);
  const silent = Date.now() / 1000 - 60;
  await utimes(`${folder}/state/windows/1-live.json`, silent, silent);
  expect((await openMine(desk)).others).toBe(0);
  const [copy] = (await begin(desk)).copies;
  expect(copy?.endedAt).toBe(Math.round(silent * 1000));
  await expect(readFile(`${folder}/state/windows/1-live.json`)).rejects.toThrow();
  await writeFile(`${folder}/state/windows/2-dead.json`, record(2 ** 30));
  expect((await openMine(desk)).others).toBe(0);
});

test('native dialogs hand out what was chosen, and only that', async () => {
  const folder = await carFolder();
  const chosen = `${folder}/cars/mine.jounce.json`;
  let save: string | null = null;
  const names: string[] = [];
  const dialogs = { open: async () => chosen, save: async (name: string) => (names.push(name), save) };
  const desk = deskOn(folder, { handed: [], dialogs });
  const opened = value(await ask(desk, 'chooseFile', { window: A }));
  expect(opened).toMatchObject({ name: 'mine.jounce.json', folder: `${folder}/cars` });
  expect(value(await ask(desk, 'choosePlace', { window: A, name: '../../etc/passwd' }))).toBeNull();
  save = `${folder}/new.json`;
  const place = value(await ask(desk, 'choosePlace', { window: A, name: 'new.json' }));
  expect([names, place?.version]).toEqual([['passwd', 'new.json'], null]);
  expect(codeOf(await ask(desk, 'saveFile', { window: A, id: place?.id ?? '', text: '{}', expected: null }))).toBe('ok');
  save = chosen;
  expect(value(await ask(desk, 'choosePlace', { window: A, name: 'x' }))?.version?.stamp).toMatch(/^[0-9a-f]{64}$/);
});
