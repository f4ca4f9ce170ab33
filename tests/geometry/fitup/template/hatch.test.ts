import { describe, expect, it } from 'vitest';
import { besideBoxes, HATCH_MM, hatchOf } from '../../../../geometry/fitup/template/hatch';
import type { Stroke } from '../../../../geometry/fitup/template/hatch';

type Point = readonly [number, number];

const circle = (x: number, y: number, radius: number, sense: 1 | -1): { points: readonly Point[] } => ({
  points: Array.from({ length: 720 }, (_, i): Point => {
    const angle = (sense * 2 * Math.PI * i) / 720;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }),
});

const box = (low: Point, high: Point): { points: readonly Point[] } => ({
  points: [low, [high[0], low[1]], high, [low[0], high[1]]],
});

const long = (strokes: readonly Stroke[]): number =>
  strokes.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);

describe('hatching', () => {
  it('covers a ring and not its hole, one line every 6 mm', () => {
    const strokes = hatchOf([circle(30, -40, 200, 1), circle(50, -20, 90, -1)]);
    for (const [from, to] of strokes) {
      expect(to[0] - from[0]).toBeCloseTo(to[1] - from[1], 9);
      for (const share of [0.01, 0.3, 0.5, 0.77, 0.99]) {
        const [x, y] = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
        expect(Math.hypot(x - 30, y + 40)).toBeLessThan(200.01);
        expect(Math.hypot(x - 50, y + 20)).toBeGreaterThan(89.99);
      }
    }
    // as long as the surface is wide, over the distance from line to line
    expect((long(strokes) * HATCH_MM) / (Math.PI * (200 * 200 - 90 * 90))).toBeCloseTo(1, 2);
  });

  it('is right where its lines go through corners and along edges', () => {
    const step = HATCH_MM * Math.SQRT2;
    // corners of squares and of a lozenge whose edges lie on the lines themselves
    for (const outline of [
      box([0, 0], [10 * step, 10 * step]),
      box([3 * step, -2 * step], [7 * step, 5 * step]),
      {
        points: [
          [0, 0],
          [20 * step, 20 * step],
          [18 * step, 22 * step],
          [-2 * step, 2 * step],
        ] as const,
      },
    ]) {
      const xs = outline.points.map(([x]) => x);
      let twice = 0;
      outline.points.forEach(([x, y], i) => {
        const [nx, ny] = outline.points[(i + 1) % outline.points.length]!;
        twice += x * ny - nx * y;
      });
      // off by a line's length at the most, that of an edge which is one
      const longest = Math.SQRT2 * (Math.max(...xs) - Math.min(...xs));
      expect(Math.abs(long(hatchOf([outline])) - (0.5 * twice) / HATCH_MM)).toBeLessThanOrEqual(longest + 1e-6);
    }
  });

  it('runs on from one place to another, whatever is hatched', () => {
    const lines = (strokes: readonly Stroke[]): Set<number> =>
      new Set(strokes.map(([[x, y]]) => Math.round(1e6 * (x - y)) / 1e6));
    const all = lines(hatchOf([box([-500, -500], [500, 500])]));
    for (const line of lines(hatchOf([circle(12.3, 45.6, 77.7, 1)]))) expect(all.has(line)).toBe(true);
  });

  it('leaves room for names', () => {
    const strokes = hatchOf([box([0, 0], [100, 100])]);
    const name = { min: [40, 30], max: [80, 36] } as const;
    const kept = besideBoxes(strokes, [name]);
    expect(kept.length).toBeGreaterThan(strokes.length);
    for (const [from, to] of kept)
      for (const share of [0, 0.2, 0.5, 0.8, 1]) {
        const [x, y] = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
        expect(x > 40 + 1e-9 && x < 80 - 1e-9 && y > 30 + 1e-9 && y < 36 - 1e-9).toBe(false);
      }
  });
});
