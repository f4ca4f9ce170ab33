import type { ClosedMesh } from '../keepOut/sweptSpace';

const HEADER = 80;
const FACET = 50;

/**
 * A mesh as binary STL, in its own unit: 80 bytes of words, the count, and of every triangle its normal and corners in single
 * precision, low byte first, and two bytes of nothing.
 * @param words - for whoever opens it; letters past ASCII are question marks
 * @see P. Bourke, "STL format", 1999
 */
export function binaryStl({ positions, triangles }: ClosedMesh, words: string): Uint8Array<ArrayBuffer> {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(HEADER + 4 + FACET * count);
  const view = new DataView(bytes.buffer);
  // a file that begins with "solid" is taken for one in text
  [...`binary STL, mm. ${words}`].slice(0, HEADER).forEach((letter, i) => {
    const code = letter.codePointAt(0) ?? 0;
    bytes[i] = code >= 32 && code < 127 ? code : 63;
  });
  view.setUint32(HEADER, count, true);
  for (let i = 0; i < count; i++) {
    const at = HEADER + 4 + FACET * i;
    const corner = (k: number, n: number): number => positions[3 * triangles[3 * i + k] + n];
    const [u, v] = [1, 2].map((k) => [0, 1, 2].map((n) => corner(k, n) - corner(0, n)));
    const normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    const size = Math.sqrt(normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]);
    for (let n = 0; n < 3; n++) {
      view.setFloat32(at + 4 * n, size > 0 ? normal[n] / size : 0, true);
      for (let k = 0; k < 3; k++) view.setFloat32(at + 12 + 12 * k + 4 * n, corner(k, n), true);
    }
  }
  return bytes;
}
