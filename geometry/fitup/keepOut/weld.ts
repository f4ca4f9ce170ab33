/** A mesh by the numbers of its corners. */
interface PlainMesh {
  /** three coordinates a corner [mm] */
  readonly positions: readonly number[];
  /** three corners a triangle */
  readonly triangles: readonly number[];
}

/**
 * Makes corners one that are in one place once they are written in single precision, as in an STL file, and leaves out the triangles
 * that have no area then. Else an edge between them would be none to whoever reads the file.
 * @returns the mesh itself where no corners are; null where it would not stay closed: two shells that touch at an edge, say
 */
export function weld<Mesh extends PlainMesh>(mesh: Mesh): PlainMesh | null {
  const { positions, triangles } = mesh;
  const same = sameCorners(positions);
  if (same.size === 0) return mesh;
  const numberOf = (corner: number): number => {
    let at = corner;
    for (let next = same.get(at); next !== undefined; next = same.get(at)) at = next;
    return at;
  };
  const left: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => numberOf(triangles[i + k]));
    if (a !== b && b !== c && c !== a) left.push(a, b, c);
  }
  return isClosed(left) ? withoutUnused(positions, left) : null;
}

/** Of every corner that is where one before it is, in single precision: that one. */
function sameCorners(positions: readonly number[]): ReadonlyMap<number, number> {
  const round = Float32Array.from(positions);
  const order = Uint32Array.from({ length: round.length / 3 }, (_, i) => i);
  order.sort(
    (a, b) => round[3 * a] - round[3 * b] || round[3 * a + 1] - round[3 * b + 1] || round[3 * a + 2] - round[3 * b + 2] || a - b,
  );
  const same = new Map<number, number>();
  for (let i = 1; i < order.length; i++) {
    const [a, b] = [order[i - 1], order[i]];
    if ([0, 1, 2].every((k) => round[3 * a + k] === round[3 * b + k])) same.set(b, a);
  }
  return same;
}

/** Whether every edge is run through once each way. */
function isClosed(triangles: readonly number[]): boolean {
  const width = 1 << 26;
  const edges = new Set<number>();
  for (let i = 0; i < triangles.length; i++) {
    const next = i % 3 === 2 ? i - 2 : i + 1;
    const edge = triangles[i] * width + triangles[next];
    if (edges.has(edge)) return false;
    edges.add(edge);
  }
  for (const edge of edges) if (!edges.has((edge % width) * width + Math.floor(edge / width))) return false;
  return true;
}

function withoutUnused(positions: readonly number[], triangles: readonly number[]): PlainMesh {
  const numbers = new Map<number, number>();
  const kept: number[] = [];
  const renumbered = triangles.map((corner) => {
    const known = numbers.get(corner);
    if (known !== undefined) return known;
    const made = kept.length / 3;
    kept.push(positions[3 * corner], positions[3 * corner + 1], positions[3 * corner + 2]);
    numbers.set(corner, made);
    return made;
  });
  return { positions: kept, triangles: renumbered };
}
