import type { KeepOut } from '../../../geometry/index';

/** Directed edges that are not run through once there and once back, to whoever knows corners by their places in an STL file. */
export function badEdges({ mesh: { positions, triangles } }: Pick<KeepOut, 'mesh'>): number {
  const round = Float32Array.from(positions);
  const placeOf = (corner: number): string => round.subarray(3 * corner, 3 * corner + 3).join(',');
  const ways = new Map<string, number>();
  for (let i = 0; i < triangles.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const key = `${placeOf(triangles[i + k]!)} ${placeOf(triangles[i + ((k + 1) % 3)]!)}`;
      ways.set(key, (ways.get(key) ?? 0) + 1);
    }
  return [...ways].filter(([key, count]) => count !== 1 || ways.get(key.split(' ').reverse().join(' ')) !== 1).length;
}
