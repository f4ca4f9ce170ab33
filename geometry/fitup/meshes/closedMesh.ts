import type { Triangles } from '../shapes/mesh';

/** How many edges of a mesh are not run through exactly once each way: 0 for one that has an inside. */
export function openEdges(triangles: Triangles): number {
  const numbers = new Map<string, number>();
  const numberOf = (at: number): number => {
    // the same place is the same three numbers in every triangle of an STL file
    const key = `${triangles[at] || 0} ${triangles[at + 1] || 0} ${triangles[at + 2] || 0}`;
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, numbers.size);
    return numbers.size - 1;
  };
  const edges = new Map<string, number>();
  for (let i = 0; i < triangles.length; i += 9) {
    const corners = [numberOf(i), numberOf(i + 3), numberOf(i + 6)];
    for (let k = 0; k < 3; k++) {
      const [from, to] = [corners[k], corners[(k + 1) % 3]];
      const key = from < to ? `${from} ${to}` : `${to} ${from}`;
      const way = from < to ? 1 : WAY_BACK;
      edges.set(key, (edges.get(key) ?? 0) + way);
    }
  }
  let open = 0;
  for (const ways of edges.values()) if (ways !== 1 + WAY_BACK) open += 1;
  return open;
}

/** Counts the way back apart from the way there. */
const WAY_BACK = 1 << 16;

/** Volume that a closed mesh encloses, in its unit cubed; negative where its triangles are seen from inside. */
export function volumeOf(t: Triangles): number {
  let six = 0;
  for (let i = 0; i < t.length; i += 9) {
    six +=
      t[i] * (t[i + 4] * t[i + 8] - t[i + 5] * t[i + 7]) +
      t[i + 1] * (t[i + 5] * t[i + 6] - t[i + 3] * t[i + 8]) +
      t[i + 2] * (t[i + 3] * t[i + 7] - t[i + 4] * t[i + 6]);
  }
  return six / 6;
}
