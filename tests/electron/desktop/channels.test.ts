import { expect, onTestFinished, test } from 'vitest';
import { HAND_DROPPED, LIST_SAMPLES, QUESTION, READ_SAMPLE } from '../../../electron/desktop/channelNames';
import { channelHandlers } from '../../../electron/desktop/channels';
import { FileDesk } from '../../../electron/files/fileDesk';
import { METHODS } from '../../../electron/files/questions';
import { temporaryFolder } from '../temporaryFolder';

const PAGE = 'jounce://window/index.html';
const WINDOW = '11111111-1111-4111-8111-111111111111';

const handlers = async () => {
  const folder = await temporaryFolder({
    'samples/hatch.jounce.json': '{}',
    'secret.jounce.json': 'outside',
    'mine.jounce.json': '{ "name": "Mine" }',
  });
  const desk = new FileDesk({ stateFolder: `${folder}/state`, handed: [`${folder}/mine.jounce.json`] });
  onTestFinished(() => desk.close());
  const begun: string[] = [];
  const all = channelHandlers(`${folder}/samples`, desk, (id) => begun.push(id));
  return {
    folder,
    begun,
    names: Object.keys(all),
    list: all[LIST_SAMPLES]!,
    read: all[READ_SAMPLE]!,
    ask: all[QUESTION]!,
    drop: all[HAND_DROPPED]!,
  };
};

test('there is a channel for samples, questions and dropped files, and no other', async () => {
  expect((await handlers()).names).toEqual(['files:listSamples', 'files:readSample', 'files:question', 'files:handDropped']);
});

test('our page is given the samples and the files that were handed out', async () => {
  const { list, read, ask, begun } = await handlers();
  expect(await list(PAGE, undefined)).toEqual({ ok: true, value: [{ name: 'hatch' }] });
  expect(await read(PAGE, 'hatch')).toEqual({ ok: true, value: { name: 'hatch', text: '{}' } });
  const begin = (await ask(PAGE, { method: 'begin', asked: { window: WINDOW } })) as unknown as {
    value: { handed: { id: string }[] };
  };
  expect(begun).toEqual([WINDOW]);
  const opened = await ask(PAGE, { method: 'openFile', asked: { window: WINDOW, id: begin.value.handed[0]?.id } });
  expect(opened).toMatchObject({ ok: true, value: { name: 'mine.jounce.json' } });
});

test.each([
  undefined,
  '',
  'https://evil.example/jounce://window/',
  'jounce://window.evil/index.html',
  'jounce://window/other.html',
  'file:///index.html',
  'about:blank',
])('a sender at %s is told nothing', async (sender) => {
  const { list, read, ask, drop, folder, begun } = await handlers();
  const answers = [
    await list(sender, undefined),
    await read(sender, 'hatch'),
    await ask(sender, { method: 'begin', asked: { window: WINDOW } }),
  ];
  for (const answer of answers) expect(answer).toEqual({ ok: false, failure: { code: 'disconnected', name: null } });
  expect(await drop(sender, `${folder}/mine.jounce.json`)).toBeNull();
  expect(begun).toEqual([]);
});

test.each([
  ['../secret'],
  ['/etc/passwd'],
  [''],
  ['hatch.jounce.json'],
  ['__proto__'],
  ['hatch\0'],
  ['x'.repeat(1_000_000)],
  [null],
  [undefined],
  [42],
  [['hatch']],
  [{ toString: () => 'hatch' }],
])('a hostile name finds nothing: %j', async (name) => {
  const answer = await (await handlers()).read(PAGE, name);
  expect(answer).toMatchObject({ ok: false, failure: { code: 'notFound' } });
  expect(JSON.stringify(answer).length).toBeLessThan(500);
});

test.each([
  [undefined],
  [null],
  [42],
  ['begin'],
  [[]],
  [{}],
  [{ method: 'begin' }],
  [{ method: ['begin'], asked: { window: WINDOW } }],
  [{ method: '__proto__', asked: { window: WINDOW } }],
  [{ method: 'hasOwnProperty', asked: { window: WINDOW } }],
  [{ method: 'begin', asked: { window: '../x' } }],
  [{ method: 'begin', asked: { window: WINDOW, extra: true } }],
  [{ method: 'openFile', asked: { window: WINDOW, id: '/etc/passwd' } }],
  [{ method: 'saveFile', asked: { window: WINDOW, id: WINDOW, text: 5, expected: null } }],
  [{ method: 'saveFile', asked: { window: WINDOW, id: WINDOW, text: '', expected: 'any' } }],
  [{ method: 'keepCopy', asked: { note: {}, text: '' } }],
  [{ method: 'dropCopy', asked: { id: '../../mine.jounce' } }],
  [{ method: 'keepPreferences', asked: { preferences: { '../x': 1 } } }],
  [{ method: 'keepPreferences', asked: { preferences: { nested: { a: 1 } } } }],
  [{ method: 'noteRecent', asked: { name: '' } }],
])('a message of the wrong shape is refused: %j', async (message) => {
  expect(await (await handlers()).ask(PAGE, message)).toEqual({ ok: false, failure: { code: 'badRequest', name: null } });
});

test('every method refuses nothing, too much and rubbish', async () => {
  const { ask } = await handlers();
  for (const method of METHODS)
    for (const asked of [undefined, null, {}, { window: 5 }, { id: {} }, 'x', [WINDOW], { [method]: true }])
      expect([method, await ask(PAGE, { method, asked })]).toMatchObject([
        method,
        { ok: false, failure: { code: 'badRequest' } },
      ]);
});

test('a dropped file is handed out by the path that Chromium gives, and nothing else is', async () => {
  const { drop, ask, folder } = await handlers();
  const file = (await drop(PAGE, `${folder}/secret.jounce.json`)) as { id: string };
  expect(file).toMatchObject({ name: 'secret.jounce.json' });
  expect(await ask(PAGE, { method: 'openFile', asked: { window: WINDOW, id: file.id } })).toMatchObject({ ok: true });
  for (const place of ['', 'relative.json', 5, null, `${folder}/x\0.json`, `/${'x'.repeat(5000)}`, {}])
    expect(await drop(PAGE, place)).toBeNull();
});

test('a folder that is not there is said to be unreadable', async () => {
  const folder = await temporaryFolder();
  const desk = new FileDesk({ stateFolder: `${folder}/state` });
  onTestFinished(() => desk.close());
  const gone = channelHandlers(`${folder}/gone`, desk);
  expect(await gone[LIST_SAMPLES]!(PAGE, undefined)).toEqual({ ok: false, failure: { code: 'unreadable', name: null } });
});
