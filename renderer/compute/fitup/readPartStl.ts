import { binaryStl, openEdges, readStl, type Result, type StlFault, type Triangles, type Vector } from '../../../geometry/index';

/** What an STL file holds, as it goes into a car file. */
export interface PartStl {
  readonly triangles: number;
  /** corners of the box around it, in the file's own unit */
  readonly from: Vector;
  readonly to: Vector;
  /** edges that not exactly two triangles share; 0: it is closed */
  readonly openEdges: number;
  /** binary STL in base64 */
  readonly data: string;
}

/** A file that is larger than any that is read, so that it need not be taken apart [bytes]. */
export const LARGEST_STL_BYTES = 120e6;

/** Triangles as a binary STL file, also those that came as text. */
const asBinary = (corners: Triangles): Uint8Array =>
  binaryStl({ positions: corners, triangles: Uint32Array.from({ length: corners.length / 3 }, (_, corner) => corner) }, 'Jounce');

/** A multiple of 3, so that the pieces can be joined. */
const PIECE = 3 * 8192;

export const base64Of = (bytes: Uint8Array): string => {
  const pieces: string[] = [];
  for (let i = 0; i < bytes.length; i += PIECE) pieces.push(btoa(String.fromCharCode(...bytes.subarray(i, i + PIECE))));
  return pieces.join('');
};

/** Reads an STL file, binary or text. Takes its time with a large one: for a thread that draws nothing. */
export const readPartStl = (bytes: Uint8Array): Result<PartStl, StlFault> => {
  const read = readStl(bytes);
  if (!read.ok) return read;
  const corners = read.value;
  const from: [number, number, number] = [Infinity, Infinity, Infinity];
  const to: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < corners.length; i += 3)
    for (const axis of [0, 1, 2] as const) {
      const value = corners[i + axis] ?? 0;
      from[axis] = Math.min(from[axis], value);
      to[axis] = Math.max(to[axis], value);
    }
  return {
    ok: true,
    value: { triangles: corners.length / 9, from, to, openEdges: openEdges(corners), data: base64Of(asBinary(corners)) },
  };
};
