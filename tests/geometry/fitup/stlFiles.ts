import type { Vector } from '../../../geometry/index';

/** Triangles as a binary STL file. */
export function binaryStl(triangles: Float64Array, head = 'made by a test'): Uint8Array {
  const count = triangles.length / 9;
  const bytes = new Uint8Array(84 + 50 * count);
  bytes.set(new TextEncoder().encode(head));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < 9; k++) view.setFloat32(84 + 50 * i + 12 + 4 * k, triangles[9 * i + k], true);
  }
  return bytes;
}

/** The same as text. */
export function textStl(triangles: Float64Array): Uint8Array {
  const lines = ['solid test'];
  for (let i = 0; i < triangles.length; i += 9) {
    lines.push('facet normal 0 0 0', 'outer loop');
    for (let k = 0; k < 9; k += 3) lines.push(`vertex ${triangles.slice(i + k, i + k + 3).join(' ')}`);
    lines.push('endloop', 'endfacet');
  }
  return new TextEncoder().encode([...lines, 'endsolid test'].join('\n'));
}

export const tetrahedron = (size: number): Float64Array =>
  fromFaces(
    [
      [0, 0, 0],
      [size, 0, 0],
      [0, size, 0],
      [0, 0, size],
    ],
    [
      [0, 2, 1],
      [0, 1, 3],
      [0, 3, 2],
      [1, 2, 3],
    ],
  );

/** A box around the origin, seen from outside, by its half edges. */
export function boxTriangles([a, b, c]: Vector): Float64Array {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i): Vector => [i & 1 ? a : -a, i & 2 ? b : -b, i & 4 ? c : -c]);
  return fromFaces(corners, [
    [0, 2, 3],
    [0, 3, 1],
    [4, 5, 7],
    [4, 7, 6],
    [0, 1, 5],
    [0, 5, 4],
    [2, 6, 7],
    [2, 7, 3],
    [0, 4, 6],
    [0, 6, 2],
    [1, 3, 7],
    [1, 7, 5],
  ]);
}

const fromFaces = (corners: readonly Vector[], faces: readonly (readonly [number, number, number])[]): Float64Array =>
  Float64Array.from(faces.flatMap((face) => face.flatMap((corner) => corners[corner])));
