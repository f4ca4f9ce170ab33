import { request, type IncomingHttpHeaders, type OutgoingHttpHeaders } from 'node:http';
import { connect } from 'node:net';
import { onTestFinished, expect, test } from 'vitest';
import { serveWindow, type ServeOptions, type WindowServer } from '../../../electron/serve/serveWindow';
import { temporaryFolder } from '../temporaryFolder';

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

const CAR = '{ "name": "Ålesund \\u00b0" }\n';

const serve = async (options: Partial<ServeOptions> = {}): Promise<WindowServer> => {
  const folder = await temporaryFolder({
    'window/index.html': '<!doctype html><title>Jounce</title>',
    'window/assets/main-abc123.js': 'export {};',
    'window/notes.txt': 'not one of the kinds that a window is made of',
    'samples/hatch.jounce.json': CAR,
    'samples/plain.jounce.json': CAR,
    'samples/readme.md': 'no car',
    'secret.jounce.json': 'outside',
  });
  const server = await serveWindow({
    windowFolder: `${folder}/window`,
    samplesFolder: `${folder}/samples`,
    stateFolder: `${folder}/state`,
    ...options,
  });
  onTestFinished(() => server.close());
  return server;
};

/** Asks as written: the path is not tidied and the headers are not completed. */
const ask = (server: WindowServer, path: string, headers: OutgoingHttpHeaders = {}, method = 'GET', body = ''): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const { port } = new URL(server.origin);
    const asked = request({ host: '127.0.0.1', port, path, method, headers, agent: false }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => (text += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }));
    });
    asked.on('error', reject);
    asked.end(body);
  });

/** Opens the window as a browser would, and gives the cookie. */
const open = async (server: WindowServer): Promise<OutgoingHttpHeaders> => {
  const { headers } = await ask(server, server.openAddress.slice(server.origin.length));
  return { Cookie: headers['set-cookie']?.[0]?.split(';')[0] };
};

test('the token opens the window once, turns into a cookie and leaves the address', async () => {
  const server = await serve();
  const opened = await ask(server, server.openAddress.slice(server.origin.length));
  expect(opened.status).toBe(303);
  expect(opened.headers.location).toBe('/');
  const [cookie = ''] = opened.headers['set-cookie'] ?? [];
  expect(cookie).toMatch(/^jounce-\d+=[\w-]{43}; HttpOnly; SameSite=Strict; Path=\/$/);
  expect(cookie).not.toContain(new URL(server.openAddress).searchParams.get('token'));
  const again = await ask(server, server.openAddress.slice(server.origin.length));
  expect([again.status, again.body]).toEqual([403, expect.stringContaining('used before')]);
  const page = await ask(server, server.openAddress.slice(server.origin.length), { Accept: 'text/html,*/*;q=0.8' });
  expect([page.status, page.headers['content-type']]).toEqual([403, 'text/html; charset=utf-8']);
  for (const part of ['<html lang="en">', '<title>Jounce: not opened</title>', '<h1>', 'npm start'])
    expect(page.body).toContain(part);
  expect(page.body).not.toMatch(/<script|<style|style=/);
  expect(again.headers['set-cookie']).toBeUndefined();
  const index = await ask(server, '/', { Cookie: cookie.split(';')[0] });
  expect(index.status).toBe(200);
  expect(index.body).toContain('<title>Jounce</title>');
});

test.each(['/open', '/open?token=', '/open?token=wrong', `/open?token=${'A'.repeat(43)}`])(
  '%s opens nothing and spends nothing',
  async (path) => {
    const server = await serve();
    const refused = await ask(server, path);
    expect([refused.status, refused.body]).toEqual([403, expect.stringContaining('not the whole address')]);
    expect((await ask(server, server.openAddress.slice(server.origin.length))).status).toBe(303);
  },
);

test.each(['/', '/index.html', '/assets/main-abc123.js', '/api/samples', '/api/samples/hatch', '/api/presence'])(
  '%s is answered with the cookie only',
  async (path) => {
    const server = await serve();
    expect((await ask(server, path)).status).toBe(403);
    const { Cookie } = await open(server);
    expect((await ask(server, path, { Cookie: `${String(Cookie)}x` })).status).toBe(403);
    expect((await ask(server, path, { Cookie: String(Cookie).replace(/=.*/, '=') })).status).toBe(403);
  },
);

test('another Host is refused, even with the cookie and on the right port', async () => {
  const server = await serve();
  const { port } = new URL(server.origin);
  const cookie = await open(server);
  const wrong = [
    `localhost:${port}`,
    `evil.example:${port}`,
    '127.0.0.1',
    `127.0.0.1:${Number(port) + 1}`,
    `127.0.0.1.:${port}`,
    `[::1]:${port}`,
  ];
  for (const Host of wrong) expect([Host, (await ask(server, '/', { ...cookie, Host })).status]).toEqual([Host, 403]);
  expect((await ask(server, '/', { ...cookie, Host: `127.0.0.1:${port}` })).status).toBe(200);
});

test('another Origin is refused, and the right one let in', async () => {
  const server = await serve();
  const cookie = await open(server);
  const wrong = [
    'null',
    'http://evil.example',
    `https${server.origin.slice(4)}`,
    server.origin.replace('127.0.0.1', 'localhost'),
    `${server.origin}/`,
  ];
  for (const Origin of wrong)
    expect([Origin, (await ask(server, '/api/samples', { ...cookie, Origin })).status]).toEqual([Origin, 403]);
  expect((await ask(server, '/api/samples', { ...cookie, Origin: server.origin })).status).toBe(200);
});

test('but for questions nothing but GET is answered, and without Origin not even that is said', async () => {
  const server = await serve();
  const cookie = await open(server);
  for (const method of ['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'HEAD']) {
    const answer = await ask(server, '/api/samples', { ...cookie, Origin: server.origin }, method);
    expect([method, answer.status, answer.headers.allow]).toEqual([method, 405, 'GET']);
    expect((await ask(server, '/api/samples', cookie, method)).status).toBe(403);
  }
});

test('a body over 16 MiB is refused before it is read', async () => {
  const server = await serve();
  const headers = { ...(await open(server)), Origin: server.origin, 'Content-Length': 16 * 1024 * 1024 + 1 };
  const answer = await new Promise<number>((resolve, reject) => {
    const { port } = new URL(server.origin);
    const asked = request({ host: '127.0.0.1', port, path: '/api/samples', method: 'POST', headers, agent: false });
    asked.on('response', (response) => resolve(response.statusCode ?? 0)).on('error', reject);
    asked.flushHeaders(); // and never a byte of the body
    onTestFinished(() => void asked.destroy());
  });
  expect(answer).toBe(413);
});

test.each([
  '/../secret.jounce.json',
  '/..%2fsecret.jounce.json',
  '/%2e%2e/secret.jounce.json',
  '/assets/../../secret.jounce.json',
  '//etc/passwd',
  '/assets',
  '/notes.txt',
  '/assets/main-abc123.js%00.html',
  '/__proto__',
  '/constructor',
  'http://evil.example/',
  '/api/samples/../../secret',
  '/api/samples/..%2fsecret',
  '/api/samples/..%2F..%2Fetc%2Fpasswd',
  '/api/samples/%00',
  '/api/samples/%E0%A4%A',
  '/api/samples/hatch.jounce.json',
  '/api/samples/readme',
  '/api/samples/',
  '/api/samples/__proto__',
  '/api/other',
])('%s finds nothing', async (path) => {
  const server = await serve();
  const answer = await ask(server, path, await open(server));
  expect(answer.status).toBe(404);
  expect(answer.body).not.toContain('outside');
});

test('every answer carries the headers that fence the window in', async () => {
  const server = await serve();
  const cookie = await open(server);
  const answers = [
    await ask(server, '/', cookie),
    await ask(server, '/nothing', cookie),
    await ask(server, '/'),
    await ask(server, '/api/samples', cookie),
  ];
  for (const { headers } of answers) {
    expect(headers['content-security-policy']).toContain("default-src 'self'; script-src 'self'; style-src 'self'");
    expect(headers['content-security-policy']).toContain("form-action 'none'; frame-ancestors 'none'");
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cache-control']).toBe('no-store');
    expect(headers['access-control-allow-origin']).toBeUndefined();
  }
});

test('the samples are listed and read', async () => {
  const server = await serve();
  const cookie = await open(server);
  expect(JSON.parse((await ask(server, '/api/samples', cookie)).body)).toEqual({
    ok: true,
    value: [{ name: 'hatch' }, { name: 'plain' }],
  });
  expect(JSON.parse((await ask(server, '/api/samples/hatch', cookie)).body)).toEqual({
    ok: true,
    value: { name: 'hatch', text: CAR },
  });
  const missing = await ask(server, '/api/samples/coup%C3%A9', cookie);
  expect([missing.status, JSON.parse(missing.body)]).toEqual([404, { ok: false, failure: { code: 'notFound', name: 'coupé' } }]);
});

test('it listens on 127.0.0.1 alone', async () => {
  const server = await serve();
  const { port } = new URL(server.origin);
  const reached = await new Promise<boolean>((resolve) => {
    const socket = connect({ host: '127.0.0.2', port: Number(port) });
    socket.on('connect', () => (socket.destroy(), resolve(true))).on('error', () => resolve(false));
  });
  expect(reached).toBe(false);
});

test('it waits for its window, stays while the window is there and ends when it is gone', async () => {
  const server = await serve({ goneAfterMs: 150 });
  let hasEnded = false;
  void server.ended.then(() => (hasEnded = true));
  const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
  await pause(400);
  expect(hasEnded).toBe(false);
  const cookie = await open(server);
  const { port } = new URL(server.origin);
  const stream = request({ host: '127.0.0.1', port, path: '/api/presence', headers: cookie, agent: false });
  await new Promise((resolve) => stream.on('response', (response) => resolve(response.resume())).end());
  stream.on('error', () => undefined);
  await pause(400);
  expect([hasEnded, server.isSeen()]).toEqual([false, true]);
  stream.destroy();
  await server.ended;
  expect(server.isSeen()).toBe(false);
});

test('a window that never says it is there is gone too, some time after its last request', async () => {
  const server = await serve({ goneAfterMs: 100 });
  await open(server);
  await server.ended;
});

test('a folder without a built window is refused', async () => {
  const folder = await temporaryFolder({ 'main.js': '' });
  await expect(serveWindow({ windowFolder: folder, samplesFolder: folder, stateFolder: folder })).rejects.toThrow(
    'is not a built window',
  );
});
