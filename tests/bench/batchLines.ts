import type { CarDocument, Triple } from '../../geometry/index';

/** A thousand cars that differ in one point, each asked for its readings: the lines of a batch. */
export function batchLines(document: CarDocument, count: number): Uint8Array {
  const encoder = new TextEncoder();
  const lines = Array.from({ length: count }, (_, i) => {
    const top = document.front!.points['strutTop'];
    const strutTop: Triple = [top[0], top[1] - 0.01 * i, top[2]];
    const car = { ...document, front: { ...document.front!, points: { ...document.front!.points, strutTop } } };
    return JSON.stringify({ id: i, car, ask: 'readings', options: { travel: 10 } });
  });
  return encoder.encode(`${lines.join('\n')}\n`);
}
