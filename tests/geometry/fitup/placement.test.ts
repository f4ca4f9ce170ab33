import { describe, expect, it } from 'vitest';
import type { Vector } from '../../../geometry/index';
import { add, cross, distance, dot, length, scale, subtract, unit } from '../../../geometry/core/vector';
import { turnAbout } from '../../../geometry/core/rotation';
import {
  anchor,
  atDesign,
  inverse,
  movedAtMost,
  seenMovedAtMost,
  placed,
  turned,
  writeLeastTurn,
  writeRelative,
  writeTurn,
  type Placement,
} from '../../../geometry/fitup/placement';
import { drawFrom, type Draw } from '../../laws/draw';

const SEED = 811;
const direction = (draw: Draw): Vector => {
  const v: Vector = [draw.between(-1, 1), draw.between(-1, 1), draw.between(-1, 1)];
  return length(v) < 0.05 ? [0, 0, 1] : unit(v);
};
const point = (draw: Draw, by = 500): Vector => [draw.between(-by, by), draw.between(-by, by), draw.between(-by, by)];
function somewhere(draw: Draw, turn = Math.PI): Placement {
  const place = atDesign();
  writeTurn(direction(draw), draw.between(-turn, turn), place);
  anchor(place, point(draw), point(draw));
  return place;
}

describe('placements', () => {
  it(`turn as the rotation by axis and angle does (seed ${SEED})`, () => {
    const draw = drawFrom(SEED);
    for (let i = 0; i < 300; i++) {
      const [axis, angle, p] = [direction(draw), draw.between(-Math.PI, Math.PI), point(draw)];
      const place = atDesign();
      writeTurn(axis, angle, place);
      expect(distance(turned(place, p), turnAbout(p, axis, angle))).toBeLessThan(1e-9);
    }
  });

  it(`the least turn takes one direction to the other about their common normal (seed ${SEED})`, () => {
    const draw = drawFrom(SEED);
    for (let i = 0; i < 300; i++) {
      const [from, to] = [direction(draw), direction(draw)];
      if (dot(from, to) < -0.999) continue;
      const place = atDesign();
      writeLeastTurn(from, to, place);
      expect(distance(turned(place, from), to)).toBeLessThan(1e-9);
      const normal = cross(from, to);
      if (length(normal) > 1e-6) expect(distance(turned(place, unit(normal)), unit(normal))).toBeLessThan(1e-9);
    }
  });

  it(`an anchored turn takes its point where it is told (seed ${SEED})`, () => {
    const draw = drawFrom(SEED);
    for (let i = 0; i < 100; i++) {
      const place = somewhere(draw);
      const [from, to] = [point(draw), point(draw)];
      anchor(place, from, to);
      expect(distance(placed(place, from), to)).toBeLessThan(1e-9);
    }
  });

  it(`the one seen from the other and put back is the one (seed ${SEED})`, () => {
    const draw = drawFrom(SEED);
    const relative = atDesign();
    for (let i = 0; i < 300; i++) {
      const [a, b, p] = [somewhere(draw), somewhere(draw), point(draw)];
      writeRelative(a, b, relative);
      expect(distance(placed(a, placed(relative, p)), placed(b, p))).toBeLessThan(1e-9);
    }
    const a = somewhere(draw);
    writeRelative(a, a, relative);
    atDesign().forEach((value, i) => expect(relative[i]).toBeCloseTo(value, 10));
  });
});

describe('how far a body can have moved', () => {
  it(`no point of it moved farther, in 10,000 cases (seed ${SEED})`, () => {
    const draw = drawFrom(SEED);
    let tightest = 0;
    let tightestSeen = 0;
    for (let i = 0; i < 10_000; i++) {
      const a = somewhere(draw);
      // near and far apart
      const b = draw.chance(0.5) ? somewhere(draw) : nearby(draw, a);
      const [centre, reach] = [point(draw), draw.between(0, 300)];
      const bound = movedAtMost(a, b, centre, reach);
      const seenBound = seenMovedAtMost(a, b, centre, reach);
      for (let k = 0; k < 3; k++) {
        const p = add(centre, scale(direction(draw), reach * draw.between(0, 1)));
        const moved = distance(placed(a, p), placed(b, p));
        expect(moved).toBeLessThanOrEqual(bound + 1e-9);
        if (bound > 1) tightest = Math.max(tightest, moved / bound);
        const seen = distance(placed(inverse(a), p), placed(inverse(b), p));
        expect(seen).toBeLessThanOrEqual(seenBound + 1e-9);
        if (seenBound > 1) tightestSeen = Math.max(tightestSeen, seen / seenBound);
      }
    }
    // and it is no empty promise
    expect(tightest).toBeGreaterThan(0.95);
    expect(tightestSeen).toBeGreaterThan(0.95);
  });

  it('is the chord of a turn square to the arm, and the way of a shift', () => {
    const [a, b] = [atDesign(), atDesign()];
    writeTurn([0, 0, 1], 0.7, b);
    expect(movedAtMost(a, b, [0, 0, 0], 100)).toBeCloseTo(
      distance([100, 0, 0], [100 * Math.cos(0.7), 100 * Math.sin(0.7), 0]),
      9,
    );
    const shifted = atDesign();
    anchor(shifted, [0, 0, 0], [3, 4, 12]);
    expect(movedAtMost(a, shifted, [7, 8, 9], 100)).toBeCloseTo(13, 12);
    expect(movedAtMost(a, a, [7, 8, 9], 100)).toBe(0);
  });
});

function nearby(draw: Draw, a: Placement): Placement {
  const step = atDesign();
  writeTurn(direction(draw), draw.between(-0.05, 0.05), step);
  const centre = point(draw);
  anchor(step, centre, add(centre, point(draw, 5)));
  // step after a
  const out = atDesign();
  const columns = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ].map((axis) => subtract(placed(step, placed(a, axis as unknown as Vector)), placed(step, placed(a, [0, 0, 0]))));
  const shift = placed(step, placed(a, [0, 0, 0]));
  for (let row = 0; row < 3; row++) {
    columns.forEach((column, k) => (out[3 * row + k] = column[row]));
    out[9 + row] = shift[row];
  }
  return out;
}
