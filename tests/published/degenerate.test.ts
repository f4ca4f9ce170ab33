import { describe, expect, it } from 'vitest';
import { parseCar, type AxleDocument, type Triple, type Vector } from '../../geometry/index';
import { add, scale, subtract } from '../../geometry/core/vector';
import { carOf } from './ask';

const OUTER: readonly Triple[] = [
  [50, 680, 180],
  [-100, 660, 220],
  [20, 640, 450],
  [-120, 650, 400],
  [120, 700, 330],
];
const axleFrom = (inner: (outer: Vector) => Vector): AxleDocument => ({
  layout: 'multi-link',
  points: {
    wheelCentre: [0, 750, 300],
    ...Object.fromEntries(OUTER.flatMap((outer, i) => [[`knuckle${i}`, outer] as const, [`body${i}`, inner(outer)] as const])),
  },
  rods: Object.fromEntries(OUTER.map((_, i) => [`rod${i}`, [`body${i}`, `knuckle${i}`] as const])),
  wheel: { camber: 0, toe: 0, loadedRadius: 300 },
});

// D13. Line geometry: five parallel lines, or five lines through one point, span rank 3 only. Computed for the catalogue of check
// values; the behaviour to show is that such an axle is reported as singular, not answered.
describe('D13 five links that do not hold a wheel', () => {
  const common: Vector = [30, 150, 320];
  it.each([
    ['five rods with the same vector (0, 0.3, 0) m', axleFrom((outer) => subtract(outer, [0, 300, 0]))],
    ['five rods that all meet one point', axleFrom((outer) => add(outer, scale(subtract(common, outer), 0.7)))],
    ['five parallel rods aslant', axleFrom((outer) => subtract(outer, [40, 300, -25]))],
  ])('%s: refused as singular', (_name, rear) => {
    const parsed = parseCar(JSON.stringify(carOf({ rear })));
    expect(parsed.ok ? [] : parsed.failure.faults.map(({ code }) => code)).toEqual(['singular-linkage']);
  });

  it('and the same rods spread apart hold it', () => {
    const rear = axleFrom((outer) => [outer[0] * 0.4, 300 - outer[0], outer[2] + (outer[1] - 660)]);
    expect(parseCar(JSON.stringify(carOf({ rear }))).ok).toBe(true);
  });
});
