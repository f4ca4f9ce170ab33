import { QUESTION_ADDRESS } from '../../renderer/files/fileService';

/** The largest body that is let in. */
export const LARGEST_BODY_BYTES = 16 * 1024 * 1024;

export interface Refusal {
  readonly status: 400 | 403 | 405 | 413 | 415;
  readonly reason: string;
}

/** The parts of a request that are judged before anything is looked up. */
export interface RequestFacts {
  readonly method: string;
  /** without the query */
  readonly address: string;
  /** Each header with all its values, as Node's `headersDistinct`. */
  readonly headers: Readonly<Record<string, readonly string[] | undefined>>;
}

/** Questions are posted, the rest is fetched. */
export const methodOf = (address: string): 'GET' | 'POST' => (address.startsWith(QUESTION_ADDRESS) ? 'POST' : 'GET');

const refuse = (status: Refusal['status'], reason: string): Refusal => ({ status, reason });

/**
 * Why a request is refused whoever sends it, or null.
 *
 * `Host` must be this server's address to the letter, so that a name which someone points at 127.0.0.1 is not answered;
 * `Origin`, where sent, must be it too, and must be sent with everything but GET.
 *
 * @param port - the port that the server listens on
 */
export const judgeRequest = ({ method, address, headers }: RequestFacts, port: number): Refusal | null => {
  const host = headers['host'] ?? [];
  if (host.length !== 1 || host[0] !== `127.0.0.1:${port}`) return refuse(403, 'This address is not served here.');
  const origin = headers['origin'] ?? [];
  const isOwn = origin.length === 1 && origin[0] === `http://127.0.0.1:${port}`;
  if (!isOwn && (origin.length > 0 || method !== 'GET')) return refuse(403, 'Only the window itself may ask.');
  const size = headers['content-length']?.[0];
  if (size !== undefined && Number(size) > LARGEST_BODY_BYTES) return refuse(413, 'That is more than 16 MiB.');
  const allowed = methodOf(address);
  if (method !== allowed) return refuse(405, `Nothing is answered here but ${allowed}.`);
  // a form on another page cannot send this type
  if (method === 'POST' && headers['content-type']?.[0] !== 'application/json')
    return refuse(415, 'Questions are asked in JSON.');
  return null;
};
