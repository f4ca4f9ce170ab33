import { fail, succeed, type Result } from '../../core/result';
import type { Triangles } from '../shapes/mesh';

/** More triangles than this are refused: thin them out where they were made. */
export const MOST_TRIANGLES = 300_000;

const HEADER = 84;
const RECORD = 50;

/** Why a file is no mesh: what was found, and what to do. */
export interface StlFault {
  readonly found: string;
  readonly hint: string;
}

/**
 * Triangles of an STL file, binary or text, in its own unit; triangles without area are left out.
 * Which of the two it is, is told by its length: many binary files begin with the word that text does.
 */
export function readStl(bytes: Uint8Array): Result<Triangles, StlFault> {
  if (bytes.length === 0) return refuse('an empty file', 'save the mesh again as binary STL');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = bytes.length >= HEADER ? view.getUint32(80, true) : 0;
  if (bytes.length >= HEADER && bytes.length === HEADER + RECORD * count) return readBinary(view, count);
  const start = textOf(bytes.subarray(0, 512));
  if (/^\s*solid\b/i.test(start) && !start.includes('\0')) return readText(textOf(bytes));
  return refuse(
    bytes.length < HEADER
      ? `${bytes.length} bytes, less than the head of a binary STL`
      : `${bytes.length} bytes where a binary STL of ${count} ${count === 1 ? 'triangle' : 'triangles'}, as its head says, has ${HEADER + RECORD * count}`,
    'save the mesh again as binary STL: this file is cut off, or is no STL',
  );
}

const PIECE = 8192;

/** One letter a byte. */
function textOf(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += PIECE) text += String.fromCharCode(...bytes.subarray(i, i + PIECE));
  return text;
}

const refuse = (found: string, hint: string): Result<never, StlFault> => fail({ found, hint });

const tooMany = (count: number): Result<never, StlFault> =>
  refuse(`${count} triangles`, `save it with ${MOST_TRIANGLES} or fewer: a tenth of a millimetre is fine enough for clearance`);

function readBinary(view: DataView, count: number): Result<Triangles, StlFault> {
  if (count > MOST_TRIANGLES) return tooMany(count);
  const corners = new Float64Array(9 * count);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < 9; k++) corners[9 * i + k] = view.getFloat32(HEADER + RECORD * i + 12 + 4 * k, true);
  }
  return judged(corners);
}

/** Each solid of a text ends with this line: without it at the end, triangles may be missing that nobody would miss. */
const END = /(?:^|\n)[ \t]*endsolid\b[^\n]*\s*$/i;

const NUMBER = '[-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d+)?';

function readText(text: string): Result<Triangles, StlFault> {
  const vertex = new RegExp(`\\bvertex\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)`, 'gi');
  const isNumber = new RegExp(`^${NUMBER}$`);
  const corners: number[] = [];
  for (const found of text.matchAll(vertex)) {
    for (const word of found.slice(1, 4)) corners.push(isNumber.test(word) ? Number(word) : NaN);
    if (corners.length > 9 * MOST_TRIANGLES) return tooMany(Math.floor(corners.length / 9));
  }
  if (corners.length % 9 !== 0) return refuse(`${corners.length / 3} corners`, 'three make a triangle: the file is cut off');
  const read = judged(Float64Array.from(corners));
  if (read.ok && !END.test(text)) {
    return refuse('a text without `endsolid` at its end', 'save the mesh again: the file is cut off');
  }
  return read;
}

function judged(corners: Float64Array): Result<Triangles, StlFault> {
  if (corners.length === 0) return refuse('no triangle', 'save the mesh again: this file holds none');
  const bad = corners.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0) return refuse(`triangle ${Math.floor(bad / 9) + 1} with a corner that is no number`, 'save the mesh again');
  const kept: number[] = [];
  for (let i = 0; i < corners.length; i += 9) if (hasArea(corners, i)) kept.push(i);
  if (kept.length === 0) return refuse('triangles without area only', 'save the mesh again');
  if (9 * kept.length === corners.length) return succeed(corners);
  const left = new Float64Array(9 * kept.length);
  kept.forEach((from, index) => left.set(corners.subarray(from, from + 9), 9 * index));
  return succeed(left);
}

function hasArea(t: Triangles, i: number): boolean {
  const [ux, uy, uz] = [t[i + 3] - t[i], t[i + 4] - t[i + 1], t[i + 5] - t[i + 2]];
  const [vx, vy, vz] = [t[i + 6] - t[i], t[i + 7] - t[i + 1], t[i + 8] - t[i + 2]];
  return uy * vz !== uz * vy || uz * vx !== ux * vz || ux * vy !== uy * vx;
}
