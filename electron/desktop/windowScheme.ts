import type { BuiltFile } from '../serve/builtFiles';
import { SECURITY_HEADERS } from '../serve/contentPolicy';

/** The window has a scheme and so an origin of its own: module workers and fetch do not work from `file:`. */
export const WINDOW_SCHEME = 'jounce';
export const WINDOW_ORIGIN = `${WINDOW_SCHEME}://window`;
export const WINDOW_ADDRESS = `${WINDOW_ORIGIN}/index.html`;

/** Whether an address is the window's own page, the only place where it may go. */
export const isOwnPage = (address: string): boolean => address.split(/[?#]/, 1)[0] === WINDOW_ADDRESS;

export interface SchemeAnswer {
  readonly status: 200 | 404 | 405;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer | string;
}

const refuse = (status: 404 | 405, body: string): SchemeAnswer => ({
  status,
  headers: { ...SECURITY_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' },
  body,
});

/** Answers an address of the scheme from the list of built files and from nothing else. */
export const answerScheme = (files: ReadonlyMap<string, BuiltFile>, method: string, address: string): SchemeAnswer => {
  if (method !== 'GET') return refuse(405, 'Nothing here is answered but GET.');
  const [place = ''] = address.split(/[?#]/, 1);
  const file = place.startsWith(`${WINDOW_ORIGIN}/`) ? files.get(place.slice(WINDOW_ORIGIN.length)) : undefined;
  if (!file) return refuse(404, 'There is no such page.');
  return { status: 200, headers: { ...SECURITY_HEADERS, 'Content-Type': file.type }, body: file.body };
};
