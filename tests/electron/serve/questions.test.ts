import { request, type OutgoingHttpHeaders } from 'node:http';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { expect, onTestFinished, test } from 'vitest';
import { serveWindow, type WindowServer } from '../../../electron/serve/serveWindow';
import { temporaryFolder } from '../temporaryFolder';

const WINDOW = '11111111-1111-4111-8111-111111111111';
const MIB = 1024 * 1024;

interface Served {
  readonly server: WindowServer;
  readonly folder: string;
  readonly headers: OutgoingHttpHeaders;
}

interface Reply {
  readonly status: number;
  readonly body: string;
}

const send = (server: WindowServer, path: string, headers: OutgoingHttpHeaders, body: string | Buffer = ''): Promise<Reply> =>
  new Promise((resolve, reject) => {
    const { port } = new URL(server.origin);
    const asked = request({ host: '127.0.0.1', port, path, method: 'POST', headers, agent: false }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => (text += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, body: text }));
    });
    asked.on('error', reject);
    asked.end(body);
  });

/** A server that was started with one file, and the headers of the window that it let in. */
const serve = async (): Promise<Served> => {
  const folder = await temporaryFolder({
    'window/index.html': '<!doctype html>',
    'samples/hatch.jounce.json': '{}',
    'cars/mine.jounce.json': '{ "name": "Mine" }\n',
    'cars/other.jounce.json': 'not handed out',
  });
  const server = await serveWindow({
    windowFolder: `${folder}/window`,
    samplesFolder: `${folder}/samples`,
    stateFolder: `${folder}/state`,
    handed: [`${folder}/cars/mine.jounce.json`],
  });
  onTestFinished(() => server.close());
  const cookie = await new Promise<string>((resolve, reject) => {
    const asked = request(server.openAddress, { agent: false }, (response) => {
      resolve(response.headers['set-cookie']?.[0]?.split(';')[0] ?? '');
      response.resume();
    });
    asked.on('error', reject).end();
  });
  return { server, folder, headers: { Cookie: cookie, Origin: server.origin, 'Content-Type': 'application/json' } };
};

const ask = async (
  { server, headers }: Served,
  method: string,
  asked: unknown,
): Promise<Reply & { readonly answer: unknown }> => {
  const reply = await send(server, `/api/files/${method}`, headers, JSON.stringify(asked));
  return { ...reply, answer: reply.body.startsWith('{') ? (JSON.parse(reply.body) as unknown) : null };
};

const handedId = async (served: Served): Promise<string> => {
  const { answer } = await ask(served, 'begin', { window: WINDOW });
  return (answer as { value: { handed: { id: string }[] } }).value.handed[0]?.id ?? '';
};

test('a file that the start command named is opened and saved by its id; the window never sends a path', async () => {
  const served = await serve();
  const id = await handedId(served);
  const opened = (await ask(served, 'openFile', { window: WINDOW, id })).answer as {
    value: { name: string; base64: string; version: { stamp: string } };
  };
  expect(opened.value.name).toBe('mine.jounce.json');
  expect(Buffer.from(opened.value.base64, 'base64').toString()).toBe('{ "name": "Mine" }\n');
  const saved = await ask(served, 'saveFile', { window: WINDOW, id, text: 'new', expected: opened.value.version.stamp });
  expect(saved.status).toBe(200);
  expect(await readFile(`${served.folder}/cars/mine.jounce.json`, 'utf8')).toBe('new');
  await writeFile(`${served.folder}/cars/mine.jounce.json`, 'theirs');
  const again = await ask(served, 'saveFile', { window: WINDOW, id, text: 'newer', expected: opened.value.version.stamp });
  expect([again.status, again.answer]).toMatchObject([
    409,
    { ok: false, failure: { code: 'changed', name: 'mine.jounce.json' } },
  ]);
  expect(await readFile(`${served.folder}/cars/mine.jounce.json`, 'utf8')).toBe('theirs');
});

test.each([
  ['without Origin', { Origin: undefined }, 403],
  ['from another Origin', { Origin: 'http://evil.example' }, 403],
  ['from no origin', { Origin: 'null' }, 403],
  ['with another Host', { Host: 'localhost' }, 403],
  ['without the cookie', { Cookie: undefined }, 403],
  ['with a made-up cookie', { Cookie: 'jounce-1=x' }, 403],
  ['as a form', { 'Content-Type': 'application/x-www-form-urlencoded' }, 415],
  ['as plain text', { 'Content-Type': 'text/plain' }, 415],
  ['without a type', { 'Content-Type': undefined }, 415],
])('a question %s is refused', async (_name, change, status) => {
  const served = await serve();
  const id = await handedId(served);
  const headers = Object.fromEntries(
    Object.entries({ ...served.headers, ...change }).filter(([, value]) => value !== undefined),
  ) as OutgoingHttpHeaders;
  const body = JSON.stringify({ window: WINDOW, id, text: 'evil', expected: null });
  expect((await send(served.server, '/api/files/saveFile', headers, body)).status).toBe(status);
  expect(await readFile(`${served.folder}/cars/mine.jounce.json`, 'utf8')).toBe('{ "name": "Mine" }\n');
});

test('bodies over 16 MiB are refused: said beforehand, and found while they come', async () => {
  const served = await serve();
  const large = Buffer.alloc(16 * MIB + 1, 0x20);
  const declared = await send(served.server, '/api/files/keepCopy', served.headers, large).catch(() => ({ status: 413 }));
  expect(declared.status).toBe(413);
  const chunked = { ...served.headers, 'Transfer-Encoding': 'chunked' };
  const found = await send(served.server, '/api/files/keepCopy', chunked, large).catch(() => ({ status: 413 }));
  expect(found.status).toBe(413);
  expect((await ask(served, 'begin', { window: WINDOW })).status).toBe(200);
});

test.each(['', '{', 'null', '[]', '"x"', '42', '{"window":', `{"window":"${WINDOW}","more":1}`])(
  'a body of the wrong shape is refused: %s',
  async (body) => {
    const served = await serve();
    for (const method of ['begin', 'openFile', 'saveFile', 'keepCopy', 'dropCopy', 'keepPreferences'])
      expect([method, (await send(served.server, `/api/files/${method}`, served.headers, body)).status]).toEqual([method, 400]);
  },
);

test('bytes that are no text are refused', async () => {
  const served = await serve();
  expect((await send(served.server, '/api/files/begin', served.headers, Buffer.from([0x22, 0xff, 0x22]))).status).toBe(400);
});

test.each(['', 'begin/', '../samples', '__proto__', 'constructor', 'toString', 'begin%00', 'BEGIN', 'answer'])(
  'there is no question %j',
  async (method) => {
    expect((await ask(await serve(), method, { window: WINDOW })).status).toBe(400);
  },
);

test('a path is no id, and an id that was not handed out opens and writes nothing', async () => {
  const served = await serve();
  const other = `${served.folder}/cars/other.jounce.json`;
  for (const id of [other, '../other.jounce.json', 'mine.jounce.json', '', 1, null, { toString: () => other }])
    expect((await ask(served, 'openFile', { window: WINDOW, id })).status).toBe(400);
  const foreign = '22222222-2222-4222-8222-222222222222';
  expect((await ask(served, 'openFile', { window: WINDOW, id: foreign })).status).toBe(404);
  expect((await ask(served, 'saveFile', { window: WINDOW, id: foreign, text: 'x', expected: null })).status).toBe(404);
  for (const id of ['../../cars/mine', `${foreign}/../x`, '..'])
    for (const method of ['readCopy', 'dropCopy']) expect((await ask(served, method, { id })).status).toBe(400);
  expect(await readFile(other, 'utf8')).toBe('not handed out');
});

test('native dialogs are no part of a served window', async () => {
  const served = await serve();
  expect((await ask(served, 'chooseFile', { window: WINDOW })).status).toBe(400);
  expect((await ask(served, 'choosePlace', { window: WINDOW, name: 'x' })).status).toBe(400);
});

test('what is kept can be read by its owner alone', async () => {
  const served = await serve();
  await ask(served, 'keepPreferences', { preferences: { theme: 'dark' } });
  expect((await stat(`${served.folder}/state/preferences.json`)).mode & 0o777).toBe(0o600);
  expect((await stat(`${served.folder}/state`)).mode & 0o777).toBe(0o700);
  const begun = (await ask(served, 'begin', { window: WINDOW })).answer;
  expect(begun).toMatchObject({ ok: true, value: { preferences: { theme: 'dark' } } });
});
