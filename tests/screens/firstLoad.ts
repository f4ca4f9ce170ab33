import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { gzipSync } from 'node:zlib';

/** One entry of the builder's list of chunks; the fields that matter here. */
interface ChunkNote {
  readonly file: string;
  readonly src?: string;
  readonly isEntry?: boolean;
  readonly imports?: readonly string[];
  readonly dynamicImports?: readonly string[];
  readonly css?: readonly string[];
}
type Manifest = Readonly<Record<string, ChunkNote>>;

export interface WeighedFile {
  readonly file: string;
  /** bytes after gzip */
  readonly bytes: number;
}

/** Keys of a chunk and of all that it cannot start without. */
const withImports = (manifest: Manifest, key: string, seen = new Set<string>()): ReadonlySet<string> => {
  if (seen.has(key)) return seen;
  seen.add(key);
  for (const needed of manifest[key]?.imports ?? []) withImports(manifest, needed, seen);
  return seen;
};

const filesOf = (manifest: Manifest, keys: Iterable<string>): ReadonlySet<string> =>
  new Set([...keys].flatMap((key) => [manifest[key]?.file ?? '', ...(manifest[key]?.css ?? [])]).filter((file) => file !== ''));

/**
 * The script and style that the window loads at its start, fonts left out: `paints` is there before the picture, `picture` comes
 * with it, `later` only on use.
 */
export const weighFirstLoad = async (folder: string) => {
  const manifest = JSON.parse(await readFile(path.join(folder, '.vite/manifest.json'), 'utf8')) as Manifest;
  const entry = Object.keys(manifest).find((key) => manifest[key]?.isEntry);
  const picture = Object.keys(manifest).find((key) => manifest[key]?.src?.endsWith('viewport/Picture.tsx'));
  if (entry === undefined || picture === undefined)
    throw new Error('The window has an entry and a picture in a chunk of its own.');
  const weigh = async (files: Iterable<string>): Promise<readonly WeighedFile[]> =>
    Promise.all(
      [...files].map(async (file) => ({ file, bytes: gzipSync(await readFile(path.join(folder, file)), { level: 9 }).length })),
    );
  const first = filesOf(manifest, withImports(manifest, entry));
  const withPicture = filesOf(manifest, withImports(manifest, picture));
  const all = filesOf(manifest, Object.keys(manifest));
  const isCode = (file: string) => /\.(js|css)$/.test(file);
  return {
    paints: await weigh(first),
    picture: await weigh([...withPicture].filter((file) => !first.has(file))),
    later: await weigh([...all].filter((file) => isCode(file) && !first.has(file) && !withPicture.has(file))),
  };
};

const KILOBYTE = 1000;
export const total = (files: readonly WeighedFile[]): number => files.reduce((sum, { bytes }) => sum + bytes, 0) / KILOBYTE;

/** One line a file, the heaviest first, with the sum. */
export const weightTable = (title: string, files: readonly WeighedFile[]): string =>
  [
    `${title}: ${total(files).toFixed(1)} kB`,
    ...[...files]
      .sort((a, b) => b.bytes - a.bytes)
      .map(({ file, bytes }) => `  ${(bytes / KILOBYTE).toFixed(1).padStart(7)}  ${file}`),
  ].join('\n');
