import type { IncomingMessage } from 'node:http';
import { LARGEST_BODY_BYTES } from './judgeRequest';

export type Body =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly status: 400 | 413; readonly reason: string };

/** Reads a body of JSON. One that says nothing of its size is given up once it is past the largest that is let in. */
export const readBody = async (request: IncomingMessage): Promise<Body> => {
  const pieces: Buffer[] = [];
  let size = 0;
  for await (const piece of request as AsyncIterable<Buffer>) {
    size += piece.length;
    if (size > LARGEST_BODY_BYTES) return { ok: false, status: 413, reason: 'That is more than 16 MiB.' };
    pieces.push(piece);
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(pieces));
    return { ok: true, value: JSON.parse(text) as unknown };
  } catch {
    return { ok: false, status: 400, reason: 'That is no JSON.' };
  }
};
