import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';

export interface BuiltFile {
  readonly type: string;
  readonly body: Buffer;
  /** The name carries a hash of the content: it may be kept for good. */
  readonly isHashed: boolean;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
};

/**
 * Every file of a built window by its address (`/` is `/index.html`), read once.
 * An answer is looked up in this list and nowhere else, so no address can lead out of the folder.
 *
 * @throws RangeError where the folder holds no index.html
 */
export const readBuiltFiles = async (folder: string): Promise<ReadonlyMap<string, BuiltFile>> => {
  const files = new Map<string, BuiltFile>();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    const type = TYPES[path.extname(entry.name)];
    if (!entry.isFile() || type === undefined) continue;
    const place = path.join(entry.parentPath, entry.name);
    const address = `/${path.relative(folder, place).split(path.sep).join('/')}`;
    files.set(address, { type, body: await readFile(place), isHashed: address.startsWith('/assets/') });
  }
  const index = files.get('/index.html');
  if (!index) throw new RangeError(`${folder} is not a built window: it holds no index.html.`);
  return files.set('/', index);
};
