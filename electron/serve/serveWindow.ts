import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { type AddressInfo } from 'node:net';
import { PRESENCE_ADDRESS, QUESTION_ADDRESS, type FileAnswer } from '../../renderer/files/fileService';
import { FileDesk } from '../files/fileDesk';
import type { FileLayer } from '../files/fileLayer';
import { listSamples, readSample } from '../files/samples';
import { readBuiltFiles } from './builtFiles';
import { SECURITY_HEADERS } from './contentPolicy';
import { judgeRequest, methodOf } from './judgeRequest';
import { Presence } from './presence';
import { readBody } from './readBody';
import { refusalPage, wantsPage } from './refusalPage';
import { Session } from './session';

export interface ServeOptions {
  /** Folder of the built window. */
  readonly windowFolder: string;
  readonly samplesFolder: string;
  /** Where recovery copies, recent files and preferences are kept. */
  readonly stateFolder: string;
  /** Files that the start command was given: the only ones of this machine that the window may read and write. */
  readonly handed?: readonly string[];
  /** How long the window may be gone before the server ends, ms. */
  readonly goneAfterMs?: number;
  /** The disk; a test's own can fail. */
  readonly layer?: FileLayer;
}

export interface WindowServer {
  /** `http://127.0.0.1:<port>` */
  readonly origin: string;
  /** The address that lets one window in, once. */
  readonly openAddress: string;
  /** Whether a window is connected now. */
  isSeen(): boolean;
  /** Resolves when the server has ended: closed, or its window gone. */
  readonly ended: Promise<void>;
  close(): void;
}

export const DEFAULT_GONE_AFTER_MS = 60_000;

const FOR_GOOD = 'private, max-age=31536000, immutable';
const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Serves the built window and the files of the contract on 127.0.0.1 alone, to one window. */
export const serveWindow = async (options: ServeOptions): Promise<WindowServer> => {
  const files = await readBuiltFiles(options.windowFolder);
  const server = createServer();
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  const session = new Session(port);
  const { stateFolder, handed, layer } = options;
  const desk = new FileDesk({ stateFolder, ...(handed && { handed }), ...(layer && { layer }) });
  const ended = new Promise<void>((resolve) => server.once('close', resolve)).then(() => desk.close());
  const close = (): void => {
    presence.close();
    server.close();
    server.closeAllConnections();
  };
  const presence = new Presence(options.goneAfterMs ?? DEFAULT_GONE_AFTER_MS, close);

  const holdPresence = (response: ServerResponse, window: string): void => {
    const isNamed = UUID.test(window);
    presence.hold(response, () => void (isNamed && desk.windowWent(window)));
    if (isNamed) void desk.windowCame(window);
  };

  const answerRequest = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    const [address = '', query = ''] = (request.url ?? '').split('?', 2);
    const refusal = judgeRequest({ method: request.method ?? '', address, headers: request.headersDistinct }, port);
    if (refusal?.status === 405) response.setHeader('Allow', methodOf(address));
    if (refusal) return refuse(request, response, refusal.status, refusal.reason);
    if (address === '/open') {
      const cookie = session.exchange(new URLSearchParams(query).get('token') ?? '');
      if (cookie === null) {
        const isUsed = session.openToken === null;
        const reason = isUsed
          ? 'This address was used before. Start Jounce again.'
          : 'This is not the whole address that Jounce printed.';
        return refuse(request, response, 403, reason);
      }
      presence.noteSign();
      return void response.writeHead(303, { Location: '/', 'Set-Cookie': cookie, 'Cache-Control': 'no-store' }).end();
    }
    if (!session.admits(request.headers.cookie))
      return refuse(
        request,
        response,
        403,
        'This is not the address that Jounce printed when it was started, or this browser did not open it.',
      );
    presence.noteSign();
    if (address === PRESENCE_ADDRESS) return holdPresence(response, new URLSearchParams(query).get('window') ?? '');
    if (address.startsWith(QUESTION_ADDRESS)) {
      const body = await readBody(request);
      if (!body.ok) return refuse(request, response, body.status, body.reason);
      return send(response, await desk.answer(address.slice(QUESTION_ADDRESS.length), body.value));
    }
    if (address === '/api/samples') return send(response, await listSamples(options.samplesFolder));
    const sample = /^\/api\/samples\/([^/]+)$/.exec(address)?.[1];
    if (sample !== undefined) return send(response, await readSample(options.samplesFolder, decode(sample)));
    const file = files.get(address);
    if (!file) return refuse(request, response, 404, 'There is no such page.');
    response.writeHead(200, { 'Content-Type': file.type, 'Cache-Control': file.isHashed ? FOR_GOOD : 'no-store' }).end(file.body);
  };

  server.on('request', (request, response) => {
    answerRequest(request, response).catch(() => response.destroy());
  });
  return {
    origin: `http://127.0.0.1:${port}`,
    openAddress: `http://127.0.0.1:${port}/open?token=${session.openToken}`,
    isSeen: () => presence.isSeen,
    ended,
    close,
  };
};

/** A refused request is not read to its end: the connection closes. A browser that was led here gets a page. */
const refuse = (request: IncomingMessage, response: ServerResponse, status: number, reason: string): void => {
  const isPage = request.method === 'GET' && wantsPage(request.headers.accept);
  const type = `text/${isPage ? 'html' : 'plain'}; charset=utf-8`;
  response.writeHead(status, { 'Content-Type': type, 'Cache-Control': 'no-store', Connection: 'close' });
  response.end(isPage ? refusalPage(reason) : `${reason}\n`);
};

const statusOf = (answer: FileAnswer<unknown>): number => {
  if (answer.ok) return 200;
  switch (answer.failure.code) {
    case 'notFound':
      return 404;
    case 'badRequest':
      return 400;
    case 'changed':
      return 409;
    default:
      return 500;
  }
};

const send = (response: ServerResponse, answer: FileAnswer<unknown>): void => {
  const status = statusOf(answer);
  response.writeHead(status, { 'Content-Type': 'application/json; charset=utf-8', 'Cache-Control': 'no-store' });
  response.end(JSON.stringify(answer));
};

/** The text behind percent signs, or null when it is none. */
const decode = (text: string): string | null => {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
};
