import type { KeepOut } from '../../../geometry/index';

/** Directed edges that are not run through once there and once back. */
export function badEdges({ mesh: { triangles } }: Pick<KeepOut, 'mesh'>): number {
  const ways = new Map<string, number>();
  for (let i = 0; i < triangles.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const key = `${triangles[i + k]} ${triangles[i + ((k + 1) % 3)]}`;
      ways.set(key, (ways.get(key) ?? 0) + 1);
    }
  return [...ways].filter(([key, count]) => count !== 1 || ways.get(key.split(' ').reverse().join(' ')) !== 1).length;
}
