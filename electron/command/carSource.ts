import { constants, createReadStream, openSync, readFileSync, statSync } from 'node:fs';
import { Socket } from 'node:net';
import { dirname } from 'node:path';
import {
  parseCar,
  parseCarBytes,
  toMechanism,
  type CarDocument,
  type CarMechanism,
  type Fault,
  type Warning,
} from '../../geometry/index';
import type { CommandFaultCode } from './codes';
import { CommandError } from './commandError';
import { sayWhileWaiting } from './terminal';

/** A car that has been read and judged. */
export interface LoadedCar {
  readonly document: CarDocument;
  readonly warnings: readonly Warning[];
  /** the version that the file says, where it is older than the one that is written now */
  readonly olderVersion?: number;
  readonly mechanism: CarMechanism;
  /** where files that the car names are looked for; null: the car came without a place */
  readonly folder: string | null;
  /** as read, so that a car made of it keeps its spelling */
  readonly text: string;
  /** part of a longer text, whose lines and columns it does not know */
  readonly isExcerpt?: true;
}

/** The largest file that is read at all; one byte more is enough to know that it is too large. */
export const LARGEST_FILE = 16 * 1024 * 1024;

type Parsed = ReturnType<typeof parseCar>;

function loaded(parsed: Parsed, name: string, folder: string | null = null): LoadedCar {
  if (!parsed.ok) {
    const { faults } = parsed.failure;
    throw new CommandError({ kind: 'file', message: `${name} is refused: ${countOf(faults.length, 'fault')}`, faults });
  }
  const { document, warnings, olderVersion, text } = parsed.value;
  return {
    document,
    warnings,
    mechanism: toMechanism(document),
    text,
    folder,
    ...(olderVersion === undefined ? {} : { olderVersion }),
  };
}

export const countOf = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

/** The car in a file, or on standard input when the path is `-`. */
export async function readCarFile(path: string): Promise<LoadedCar> {
  const bytes = path === '-' ? await readStandardInput() : await readFileCapped(path);
  return path === '-' ? loaded(parseCarBytes(bytes), 'standard input') : loaded(parseCarBytes(bytes), path, dirname(path));
}

/** The car in a text, such as the `car` of a line of `batch`. Lines and columns would be those of the line: they are left out. */
export function readCarText(text: string): LoadedCar {
  try {
    return { ...loaded(parseCar(text), 'the car'), isExcerpt: true };
  } catch (thrown) {
    if (!(thrown instanceof CommandError)) throw thrown;
    throw new CommandError({ ...thrown.document, faults: (thrown.document.faults ?? []).map(withoutPlace) });
  }
}

export const withoutPlace = (fault: Fault): Fault => ({ ...fault, line: null, column: null });

/**
 * A file's bytes, at most one more than the largest that is read.
 *
 * A file proper is read at once, without the threads that reading in the background starts: a call has milliseconds.
 * Pipes and devices have no size to ask for and may never end, so they are read piece by piece and Ctrl-C gets through.
 */
export async function readFileCapped(path: string): Promise<Uint8Array> {
  try {
    const status = statSync(path);
    if (status.isDirectory()) throw unreadable(path, 'a folder', 'a file');
    if (status.isFIFO()) return await readCapped(pipeAt(path), path);
    if (!status.isFile()) return await readCapped(createReadStream(path), path);
    return status.size <= LARGEST_FILE ? readFileSync(path) : await readCapped(createReadStream(path), path);
  } catch (thrown) {
    if (thrown instanceof CommandError) throw thrown;
    throw unreadable(path, reasonOf(thrown), 'a file that can be read');
  }
}

/** Read on demand and not by a thread that waits, which nothing would end: Ctrl-C ends the program while nobody writes yet. */
const pipeAt = (path: string): AsyncIterable<Buffer> =>
  new Socket({ fd: openSync(path, constants.O_RDONLY | constants.O_NONBLOCK), readable: true, writable: false });

export const readStandardInput = (): Promise<Uint8Array> => readCapped(process.stdin, 'standard input');

async function readCapped(stream: AsyncIterable<Buffer>, name: string): Promise<Uint8Array> {
  const pieces: Buffer[] = [];
  let size = 0;
  // a pipe that nobody writes to says nothing: whoever sits before it is told what is waited for
  const hasCome = sayWhileWaiting(name);
  try {
    for await (const piece of stream) {
      hasCome();
      pieces.push(piece);
      size += piece.length;
      if (size > LARGEST_FILE) break;
    }
  } finally {
    hasCome();
  }
  return Buffer.concat(pieces);
}

function unreadable(path: string, found: string, expected: string): CommandError {
  const fault: Fault = {
    code: 'cannot-read' satisfies CommandFaultCode,
    path: null,
    line: null,
    column: null,
    found,
    expected,
    hint: null,
  };
  return new CommandError({ kind: 'file', message: `cannot read ${path}: ${found}`, faults: [fault] });
}

/** The system's own words for a failure, by its code. */
export function reasonOf(thrown: unknown): string {
  const code = (thrown as NodeJS.ErrnoException | null)?.code;
  switch (code) {
    case 'ENOENT':
      return 'no such file';
    case 'EACCES':
    case 'EPERM':
      return 'the system does not allow it';
    case 'EISDIR':
      return 'a folder';
    case 'ENOTDIR':
      return 'a part of its path is not a folder';
    case 'ENOSPC':
      return 'the disk is full';
    default:
      return code ?? (thrown instanceof Error ? thrown.message : String(thrown));
  }
}
