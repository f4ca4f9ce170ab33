import { describe, expect, it } from 'vitest';
import { cross, dot, length, subtract } from '../../../../geometry/core/vector';
import { onPaper, paperArrows, paperPlane, type PaperPlane, seenFrom } from '../../../../geometry/fitup/template/plane';

function planeOf(...numbers: number[]): PaperPlane {
  const plane = paperPlane(numbers);
  if ('fault' in plane) throw new Error(plane.message);
  return plane;
}

describe('plane of the paper', () => {
  it('seen from the left has up at the top and the front at the left', () => {
    const arrows = paperArrows(planeOf(0, 700, 300, 0, 2, 0), 'left');
    expect(arrows).toEqual([
      { direction: 'FRONT', right: -1, up: 0, towards: 0, seen: 'along' },
      { direction: 'UP', right: 0, up: 1, towards: 0, seen: 'along' },
      { direction: 'OUTBOARD', right: 0, up: 0, towards: 1, seen: 'towards' },
    ]);
    expect(paperArrows(planeOf(0, 700, 300, 0, 2, 0), 'right')[2]).toMatchObject({ seen: 'away' });
  });

  it('lying flat has the front at the top', () => {
    const [front, up, outboard] = paperArrows(planeOf(0, 0, 300, 0, 0, 1), 'left');
    expect(front).toMatchObject({ right: 0, up: 1, seen: 'along' });
    expect(up).toMatchObject({ towards: 1, seen: 'towards' });
    expect(outboard).toMatchObject({ right: -1, up: 0, seen: 'along' });
    // and so when it is a little out of level
    expect(paperArrows(planeOf(0, 0, 300, 0.01, 0.02, 1), 'left')[0].up).toBeGreaterThan(0.99);
  });

  it('has square axes, and its points keep their distances', () => {
    const plane = planeOf(10, 700, 300, 0.3, -0.5, 0.2);
    expect(length(subtract(cross(plane.right, plane.up), plane.normal))).toBeLessThan(1e-15);
    expect(dot(plane.right, [0, 0, 1])).toBeCloseTo(0, 15);
    const { at, off } = onPaper(plane, [40, 650, 310]);
    expect(Math.sqrt(at[0] ** 2 + at[1] ** 2 + off ** 2)).toBeCloseTo(Math.sqrt(900 + 2500 + 100), 12);
    expect(off).toBeCloseTo((9 + 25 + 2) / Math.sqrt(0.38), 12);
  });

  it('takes a normal of any length but none', () => {
    expect(planeOf(0, 0, 0, 0, 1e-200, 0).normal).toEqual([0, 1, 0]);
    expect(planeOf(0, 0, 0, 0, 1e200, 0).normal).toEqual([0, 1, 0]);
    expect(paperPlane([0, 0, 0, 0, 0, 0])).toMatchObject({ fault: 'plane-normal' });
    expect(paperPlane([0, 0, 0, 0, 1])).toMatchObject({ fault: 'plane-numbers' });
    expect(paperPlane([0, 0, 0, 0, 1, NaN])).toMatchObject({ fault: 'plane-numbers' });
    expect(paperPlane([0, Infinity, 0, 0, 1, 0])).toMatchObject({ fault: 'plane-numbers' });
  });

  it('is seen from a side of the car where its normal is one of the car’s axes, else from where that points', () => {
    const words = (...normal: readonly number[]): string => {
      const plane = paperPlane([0, 0, 0, ...normal]);
      if ('fault' in plane) throw new Error(plane.message);
      return seenFrom(plane);
    };
    // x forward, y left, z up: the reader stands where the normal points
    expect(words(3, 0, 0)).toBe('seen from the front');
    expect(words(-1, 0, 0)).toBe('seen from behind');
    expect(words(0, 1, 0)).toBe('seen from the left');
    expect(words(0, -2, 0)).toBe('seen from the right');
    expect(words(0, 0, 1)).toBe('seen from above');
    expect(words(0, 0, -1)).toBe('seen from below');
    expect(words(0, 0.6, -0.8)).toBe('seen from where the normal points, 0, 0.6, −0.8');
  });
});
