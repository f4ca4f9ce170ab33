import type { FileAnswer, FileFailure, FileService, OpenedFile, SampleFile } from './fileService';

const disconnected = (name: string | null): { ok: false; failure: FileFailure } => ({
  ok: false,
  failure: { code: 'disconnected', name },
});

/** One GET of the loopback server; its status says nothing that the answer does not. */
const ask = async <Value>(address: string, name: string | null): Promise<FileAnswer<Value>> => {
  try {
    const reply = await fetch(address, { credentials: 'same-origin' });
    return (await reply.json()) as FileAnswer<Value>;
  } catch {
    return disconnected(name);
  }
};

/** The files of the loopback server that served this window. */
export const fetchedFiles: FileService = {
  listSamples: () => ask<readonly SampleFile[]>('/api/samples', null),
  readSample: (name) => ask<OpenedFile>(`/api/samples/${encodeURIComponent(name)}`, name),
};
