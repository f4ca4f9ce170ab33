import {
  QUESTION_ADDRESS,
  questionsBy,
  type FileAnswer,
  type FileFailure,
  type FileService,
  type SampleFile,
  type SampleText,
} from './fileService';

/** An answer that takes longer than this never comes, ms. Saving flushes the disk, which may be a slow one. */
const PATIENCE_MS = 20_000;

const disconnected = (name: string | null): { ok: false; failure: FileFailure } => ({
  ok: false,
  failure: { code: 'disconnected', name },
});

/** One request to the loopback server; its status says nothing that the answer does not. */
const ask = async <Value>(address: string, name: string | null, init: RequestInit = {}): Promise<FileAnswer<Value>> => {
  try {
    const signal = AbortSignal.timeout(PATIENCE_MS);
    const reply = await fetch(address, { credentials: 'same-origin', signal, ...init });
    if (reply.status === 413) return { ok: false, failure: { code: 'tooLarge', name } };
    return (await reply.json()) as FileAnswer<Value>;
  } catch {
    return disconnected(name);
  }
};

/**
 * A browser finishes the requests of a page that was left as long as all of them under way are under 64 KiB together, by the
 * Fetch standard, and fails the one that passes it at once. So a save beside a copy that is being kept goes without.
 */
const OUTLIVE_PAGE = 60_000;
let outliving = 0;

const post = async <Value>(method: string, text: string): Promise<FileAnswer<Value>> => {
  const body = new TextEncoder().encode(text);
  const keepalive = outliving + body.length < OUTLIVE_PAGE;
  if (keepalive) outliving += body.length;
  try {
    const headers = { 'Content-Type': 'application/json' };
    return await ask(QUESTION_ADDRESS + method, null, { method: 'POST', headers, body, keepalive });
  } finally {
    if (keepalive) outliving -= body.length;
  }
};

/** The files of the loopback server that served this window. */
export const fetchedFiles: FileService = {
  shell: 'served',
  listSamples: () => ask<readonly SampleFile[]>('/api/samples', null),
  readSample: (name) => ask<SampleText>(`/api/samples/${encodeURIComponent(name)}`, name),
  whenHanded: () => undefined,
  whenAsked: () => undefined,
  handDropped: () => Promise.resolve(null),
  ...questionsBy((method, asked) => post(method, JSON.stringify(asked))),
};
