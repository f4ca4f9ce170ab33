import { describe, expect, it } from 'vitest';
import type { Vector } from '../../../../geometry/index';
import { dot, length, scale, subtract } from '../../../../geometry/core/vector';
import { boxCore, cylinderCore, pointCore, segmentCore, triangleCore } from '../../../../geometry/fitup/distance/core';
import { atDesign, inverse, placed, turned, type Placement } from '../../../../geometry/fitup/placement';
import { gapBetween } from '../../../../geometry/fitup/shapes/gapBetween';
import type { Solid } from '../../../../geometry/fitup/shapes/solid';
import { roundSolid, spunSolid } from '../../../../geometry/fitup/shapes/solids';
import { drawFrom } from '../../../laws/draw';
import { anyBody, barrel, box, direction, point, somewhere, type Body } from './bodies';

const here = atDesign();
const at = (x: number, y: number, z: number): Placement => {
  const place = atDesign();
  place.set([x, y, z], 9);
  return place;
};
const distanceOf = (a: Solid, b: Solid, relative: Placement = here): number => gapBetween(a, b, relative).distance;
const segment = (p: Vector, q: Vector): Solid => roundSolid([segmentCore(p, q)], 0);

describe('distances by exact constructions', () => {
  // 3-4-5 and 1-2-2 triangles: exact by hand.
  it.each<[string, Vector, Vector, Vector, Vector, number]>([
    ['skew', [-1, 0, 0], [1, 0, 0], [0, -1, 0.1], [0, 1, 0.1], 0.1],
    ['crossing', [0, 0, 0], [10, 10, 0], [0, 10, 0], [10, 0, 0], 0],
    ['parallel, overlapping', [0, 0, 0], [10, 0, 0], [2, 3, 4], [8, 3, 4], 5],
    ['parallel, apart', [0, 0, 0], [10, 0, 0], [13, 4, 0], [20, 4, 0], 5],
    ['in line', [0, 0, 0], [10, 0, 0], [13, 0, 0], [20, 0, 0], 3],
    ['in line, overlapping', [0, 0, 0], [10, 0, 0], [5, 0, 0], [20, 0, 0], 0],
    ['end to interior', [0, 0, 0], [10, 0, 0], [5, 3, 0], [5, 9, 2], 3],
    ['end to end', [0, 0, 0], [1, 2, 2], [3, 4, 3], [5, 5, 9], 3],
    ['a point and a segment', [2, -1, 0], [2, -1, 0], [-1, -2, -3], [1, 2, 3], Math.sqrt(5)],
    ['nearly parallel', [0, 0, 0], [100, 0, 0], [0, 1, 0], [100, 1, 1e-7], 1],
    ['touching ends', [0, 0, 0], [3, 0, 0], [3, 0, 0], [3, 5, 1], 0],
  ])('of two segments: %s', (_title, p0, q0, p1, q1, expected) => {
    expect(Math.abs(distanceOf(segment(p0, q0), segment(p1, q1)))).toBeCloseTo(expected, 10);
    expect(Math.abs(distanceOf(segment(p1, q1), segment(p0, q0)))).toBeCloseTo(expected, 10);
  });

  const flat = roundSolid([triangleCore([0, 0, 0], [4, 0, 0], [0, 3, 0])], 0);
  it.each<[Vector, Vector, number]>([
    [[1, 1, 5], [1, 1, 5], 5],
    [[2, -3, 4], [2, -3, 4], 5],
    [[-1, -2, 2], [-1, -2, 2], 3],
    [[4, 3, 0], [4, 3, 0], 2.4],
    [[3, 3, 0], [3, 3, 0], 1.8],
    [[6, 0, 0], [6, 0, 0], 2],
    [[2, 1.5, 7], [2, 1.5, 7], 7],
    [[1, 1, -2], [1, 1, 3], 0],
    [[3, 3, -2], [3, 3, 3], 1.8],
    [[1, 1, 2], [2, 1, 2], 2],
    [[-1, -1, 1], [5, -1, 1], Math.SQRT2],
    [[0, 4, 0], [4, 4, 0], 1],
    [[1, 0.5, 0], [2, 0.5, 0], 0],
  ])('of a triangle and the segment %j %j', (p, q, expected) => {
    // negative: what goes through is so deep in
    expect(Math.max(0, distanceOf(flat, segment(p, q)))).toBeCloseTo(expected, 9);
  });

  it('of a capsule and a box, as tests of two general collision libraries have them', () => {
    // flexible-collision-library/fcl, test_fcl_capsule_box_1 and _2 (commit e5efcc4)
    const upright = roundSolid([segmentCore([0, 0, -2], [0, 0, 2])], 2);
    const lying = roundSolid([segmentCore([-2, 0, 0], [2, 0, 0])], 2);
    const block = roundSolid(
      [
        boxCore(
          [0, 0, 0],
          [
            [0.5, 0, 0],
            [0, 1, 0],
            [0, 0, 2],
          ],
        ),
      ],
      0,
    );
    expect(distanceOf(block, upright, at(3, 0, 0))).toBeCloseTo(0.5, 10);
    expect(distanceOf(block, upright, at(0, 0, 8))).toBeCloseTo(2, 10);
    expect(distanceOf(block, lying, at(-10, 0, 0))).toBeCloseTo(5.5, 10);
    const gap = gapBetween(block, lying, at(-10, 0.8, 1.5));
    expect(gap.distance).toBeCloseTo(5.5, 10);
    expect(gap.points[0][0]).toBeCloseTo(-0.5, 9);
    expect(gap.points[1][0]).toBeCloseTo(-6, 9);
    expect(gap.points[1][1]).toBeCloseTo(0.8, 9);
  });

  it('of a tyre: rounded at the shoulder, flat on tread and side', () => {
    // r 300, half width 100, shoulder 20: circles of radius 280 at ±80
    const tyre = barrel([0, 0, 0], [0, 0, 1], 100, 300, 20).solid;
    const from = (x: number, y: number, z: number): number => distanceOf(tyre, roundSolid([pointCore([x, y, z])], 0));
    expect(from(300, 0, 100)).toBeCloseTo(Math.sqrt(800) - 20, 9);
    expect(from(310, 0, 110)).toBeCloseTo(30 * Math.SQRT2 - 20, 9);
    expect(distanceOf(tyre, segment([330, -400, 0], [330, 400, 0]))).toBeCloseTo(30, 9);
    expect(from(0, 120, 104)).toBeCloseTo(4, 9);
  });

  it('of a cylinder with flat ends and a disc', () => {
    const can = roundSolid([cylinderCore([0, 0, -20], [0, 0, 20], 10)], 0);
    const from = (x: number, z: number): number => distanceOf(can, roundSolid([pointCore([x, 0, z])], 0));
    expect(from(13, 24)).toBeCloseTo(5, 9);
    expect(from(13, 0)).toBeCloseTo(3, 9);
    expect(from(0, 26)).toBeCloseTo(6, 9);
    expect(from(6, 0)).toBeCloseTo(-4, 5);
    const disc = roundSolid([cylinderCore([0, 0, 0], [0, 0, 0], 10, [0, 0, 1])], 0);
    expect(distanceOf(disc, roundSolid([pointCore([13, 0, 4])], 0))).toBeCloseTo(5, 9);
    expect(distanceOf(disc, roundSolid([pointCore([3, 0, 4])], 0))).toBeCloseTo(4, 9);
  });

  it('of boxes: faces, edges, corners, and how deep one is in the other', () => {
    const cube = (half: number): Solid => box([0, 0, 0], [half, half, half], [1, 0, 0]).solid;
    expect(distanceOf(cube(1), cube(1), at(5, 0, 0))).toBeCloseTo(3, 10);
    expect(distanceOf(cube(1), cube(1), at(5, 6, 0))).toBeCloseTo(5, 10);
    expect(distanceOf(cube(1), cube(1), at(4, 5, 4))).toBeCloseTo(Math.sqrt(17), 10);
    const turnedBy45 = box([0, 0, 0], [1, 1, 1], [Math.SQRT1_2, Math.SQRT1_2, 0]).solid;
    expect(distanceOf(cube(1), turnedBy45, at(5, 0, 0))).toBeCloseTo(4 - Math.SQRT2, 10);
    // nested cubes of half sides 1 and 5: the shortest way out is 1 + 5
    expect(distanceOf(cube(5), cube(1))).toBeCloseTo(-6, 6);
    expect(distanceOf(cube(1), cube(5))).toBeCloseTo(-6, 6);
  });
});

/**
 * The proof that a distance of convex bodies is right, by their second description: both points lie on the bodies, they are that far
 * apart, and a slab of that width between them has one body on each side.
 */
function expectProved(a: Body, b: Body, relative: Placement): number {
  const { distance, points } = gapBetween(a.solid, b.solid, relative);
  const back = inverse(relative);
  const supportB = (way: Vector): number => b.support(turned(back, way)) + dot(way, placed(relative, [0, 0, 0]));
  const said = `${a.title} and ${b.title}, ${distance}`;
  const way = subtract(points[1], points[0]);
  expect(a.outside(points[0]), said).toBeLessThan(1e-6);
  expect(b.outside(placed(back, points[1])), said).toBeLessThan(1e-6);
  expect(Math.abs(length(way) - Math.abs(distance)), said).toBeLessThan(1e-6);
  if (distance > 1e-4) {
    const normal = scale(way, 1 / length(way));
    expect(a.support(normal), said).toBeLessThan(dot(points[0], normal) + 1e-6 + 1e-6 / distance);
    expect(-supportB(scale(normal, -1)), said).toBeGreaterThan(dot(points[1], normal) - 1e-6 - 1e-6 / distance);
  }
  return distance;
}

describe('distances of any bodies', () => {
  const SEED = 4711;
  it(`are proved by a slab between the bodies, on 10,000 pairs (seed ${SEED})`, () => {
    const draw = drawFrom(SEED);
    let apart = 0;
    for (let i = 0; i < 10_000; i++) {
      const [a, b] = [anyBody(draw), anyBody(draw)];
      const relative = i % 4 === 0 ? at(...point(draw, 300)) : somewhere(draw, 300);
      if (gapBetween(a.solid, b.solid, relative).distance <= 0) continue;
      apart += 1;
      expectProved(a, b, relative);
    }
    expect(apart).toBeGreaterThan(4000);
  });

  it(`which cut are parted by their depth, and by no way out that is shorter (seed ${SEED})`, () => {
    const draw = drawFrom(SEED + 1);
    let cut = 0;
    while (cut < 400) {
      const [a, b] = [anyBody(draw), anyBody(draw)];
      const relative = somewhere(draw, 60);
      const { distance, points } = gapBetween(a.solid, b.solid, relative);
      if (distance >= -0.01 || a.title === 'triangle' || b.title === 'triangle') continue;
      cut += 1;
      const back = inverse(relative);
      const width = (way: Vector): number =>
        a.support(way) + b.support(turned(back, scale(way, -1))) - dot(way, placed(relative, [0, 0, 0]));
      // the depth is the least width over all ways: no direction may be narrower
      let least = Infinity;
      for (let k = 0; k < 600; k++) least = Math.min(least, width(direction(draw)));
      expect(-distance, `${a.title} and ${b.title}`).toBeLessThan(least + 1e-6);
      // a descent over the ways comes to it
      let best = least;
      for (let start = 0; start < 40; start++) {
        let way = direction(draw);
        let now = width(way);
        for (let step = 0.5; step > 1e-9;) {
          const by = direction(draw);
          const next: Vector = [way[0] + step * by[0], way[1] + step * by[1], way[2] + step * by[2]];
          const tried = scale(next, 1 / length(next));
          if (width(tried) < now) [way, now] = [tried, width(tried)];
          else step *= 0.93;
        }
        best = Math.min(best, now);
      }
      expect(-distance, `${a.title} and ${b.title}`).toBeLessThan(best + 1e-6);
      // and along its own way it is a way out: no less than the least
      const way = subtract(points[0], points[1]);
      expect(width(scale(way, 1 / length(way))), `${a.title} and ${b.title}`).toBeCloseTo(-distance, 3);
    }
  }, 60_000);
});

describe('bodies that turn', () => {
  const circle = spunSolid(roundSolid([pointCore([10, 0, 0])], 0), [0, 0, 0], [0, 0, 1]);
  // a circle of radius 10 in z = 0; distances exact by hand
  it.each<[Vector, Vector, number]>([
    [[0, 0, -5], [0, 0, 5], 10],
    [[0, 0, 24], [0, 0, 40], 26],
    [[15, -20, 0], [15, 20, 0], 5],
    [[3, -2, 0], [3, 2, 0], 10 - Math.sqrt(13)],
    [[-20, 0, 6], [20, 0, 6], 6],
    [[10, -20, 5], [10, 20, 5], 5],
    [[6, -20, 8], [6, 20, 8], 8],
  ])('a circle and the segment %j %j', (p, q, expected) => {
    expect(distanceOf(circle, segment(p, q))).toBeCloseTo(expected, 6);
    expect(distanceOf(segment(p, q), circle)).toBeCloseTo(expected, 6);
  });

  it('a ring of round section', () => {
    const ring = spunSolid(roundSolid([pointCore([280, 0, 0])], 20), [0, 0, 0], [0, 0, 1]);
    expect(distanceOf(ring, segment([280, -100, 45], [280, 100, 45]))).toBeCloseTo(25, 6);
  });

  it('two circles across each other', () => {
    // radius 10 about z, and radius 10 about x with its centre 25 out along x: from (10, 0, 0) to (25, ±y, ±z), least where 15² + (10 − 0)²
    const other = spunSolid(roundSolid([pointCore([25, 10, 0])], 0), [25, 0, 0], [1, 0, 0]);
    const bySampling = (): number => {
      let least = Infinity;
      for (let i = 0; i < 2000; i++) {
        const a = (2 * Math.PI * i) / 2000;
        // the point of the other circle nearest to (x, y, 0) lies in the half plane of its axis: distance √((25 − x)² + (10 − |y|)²)
        const [x, y] = [10 * Math.cos(a), 10 * Math.sin(a)];
        least = Math.min(least, Math.sqrt((25 - x) * (25 - x) + (10 - Math.abs(y)) * (10 - Math.abs(y))));
      }
      return least;
    };
    expect(Math.abs(distanceOf(circle, other) - bySampling())).toBeLessThan(0.01);
  });

  it('any solid, against 5,000 turns of it (seed 99)', () => {
    const draw = drawFrom(99);
    let apart = 0;
    for (let i = 0; i < 40; i++) {
      const [a, b] = [anyBody(draw), anyBody(draw)];
      const axis = direction(draw);
      const spun = spunSolid(b.solid, point(draw, 40), axis);
      if (spun.spin === null) continue;
      const relative = somewhere(draw, 250);
      const found = gapBetween(a.solid, spun, relative);
      const free = { ...spun, spin: null };
      let least = Infinity;
      const turn = atDesign();
      for (let k = 0; k < 5000 && least > 0; k++) {
        writeTurnAbout(spun.spin.at, axis, (2 * Math.PI * k) / 5000, turn);
        least = Math.min(least, gapBetween(a.solid, free, product(relative, turn)).distance);
      }
      if (found.distance <= 0) {
        expect(least).toBeLessThan(0.2);
        continue;
      }
      apart += 1;
      expect(found.distance).toBeLessThan(least + 1e-9);
      expect(found.distance).toBeGreaterThan(least - 0.1);
      expect(found.slack).toBe(0);
    }
    expect(apart).toBeGreaterThan(8);
  }, 60_000);
});

function writeTurnAbout(about: Vector, axis: Vector, angle: number, out: Placement): void {
  const [x, y, z] = axis;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const v = 1 - c;
  const rows = [
    [c + x * x * v, x * y * v - z * s, x * z * v + y * s],
    [y * x * v + z * s, c + y * y * v, y * z * v - x * s],
    [z * x * v - y * s, z * y * v + x * s, c + z * z * v],
  ];
  rows.forEach((row, i) => {
    out.set(row, 3 * i);
    out[9 + i] = about[i] - (row[0] * about[0] + row[1] * about[1] + row[2] * about[2]);
  });
}

function product(a: Placement, b: Placement): Placement {
  const out = atDesign();
  for (let column = 0; column < 3; column++) {
    const v = turned(a, [b[column], b[3 + column], b[6 + column]]);
    for (let row = 0; row < 3; row++) out[3 * row + column] = v[row];
  }
  out.set(placed(a, [b[9], b[10], b[11]]), 9);
  return out;
}
