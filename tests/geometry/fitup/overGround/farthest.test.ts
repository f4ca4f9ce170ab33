import { describe, expect, test } from 'vitest';
import { add, cross, dot, scale, subtract, unit, type Vector } from '../../../../geometry/core/vector';
import { turnAbout } from '../../../../geometry/core/rotation';
import { boxCore, cylinderCore, pointCore, segmentCore, triangleCore, type Core } from '../../../../geometry/fitup/distance/core';
import { farthestPoint } from '../../../../geometry/fitup/overGround/farthest';
import type { MeshSolid, RoundSolid, Spin } from '../../../../geometry/fitup/shapes/solid';
import { roundSolid, spunSolid } from '../../../../geometry/fitup/shapes/solids';
import { drawFrom } from '../../../laws/draw';

const { between } = drawFrom(41);
const vector = (size: number): Vector => [between(-size, size), between(-size, size), between(-size, size)];

const SHAPES: readonly (readonly [string, () => RoundSolid])[] = [
  ['a sphere', () => roundSolid([pointCore(vector(100))], between(1, 40))],
  ['a capsule', () => roundSolid([segmentCore(vector(100), vector(100))], between(1, 40))],
  ['a triangle', () => roundSolid([triangleCore(vector(100), vector(100), vector(100))], 0)],
  ['a cylinder', () => roundSolid([cylinderCore(vector(100), vector(100), between(5, 60))], 0)],
  ['a box', () => roundSolid([boxOf()], 0)],
  ['several', () => roundSolid([segmentCore(vector(50), vector(50)), pointCore(vector(80))], [between(1, 9), between(1, 30)])],
];

function boxOf(): Core {
  const a = unit(vector(1));
  const b = unit(cross(a, vector(1)));
  return boxCore(vector(100), [scale(a, between(1, 50)), scale(b, between(1, 50)), scale(cross(a, b), between(1, 50))]);
}

/** Points of a core all over, its corners and edges among them. */
function pointsOf(core: Core): Vector[] {
  const centre: Vector = [core[1], core[2], core[3]];
  const v = [4, 7, 10].map((from): Vector => [core[from], core[from + 1], core[from + 2]]);
  const at = (a: number, b: number, c: number): Vector => add(centre, add(scale(v[0], a), add(scale(v[1], b), scale(v[2], c))));
  const ends = [-1, 1];
  switch (core[0]) {
    case 0:
      return [centre];
    case 1:
      return [-1, -0.4, 0.3, 1].map((a) => at(a, 0, 0));
    case 2:
      return [at(1, 0, 0), at(0, 1, 0), at(0, 0, 1), centre];
    case 3:
      return ends.flatMap((a) => ends.flatMap((b) => ends.map((c) => at(a, b, c))));
    default:
      return Array.from({ length: 720 }, (_, i) => (i * Math.PI) / 360).flatMap((angle) =>
        ends.map((a) => at(a, Math.cos(angle), Math.sin(angle))),
      );
  }
}

/** How far along a direction the samples of a solid get, turned about its axis by so many angles. */
function reachOf(solid: RoundSolid, direction: Vector, spin: Spin | null): number {
  const angles = spin === null ? [0] : Array.from({ length: 720 }, (_, i) => (i * Math.PI) / 360);
  const turns = angles.map(
    (angle) =>
      (point: Vector): Vector =>
        spin === null ? point : add(spin.at, turnAbout(subtract(point, spin.at), spin.axis, angle)),
  );
  let most = -Infinity;
  solid.cores.forEach((core, index) => {
    for (const point of pointsOf(core))
      for (const turn of turns) most = Math.max(most, dot(turn(point), direction) + solid.rounds[index]);
  });
  return most;
}

describe('the farthest point of a solid along a direction, against points all over it', () => {
  test.each(SHAPES)('%s as it is', (_, make) => {
    for (let i = 0; i < 20; i++) {
      const solid = make();
      const direction = unit(vector(1));
      const found = dot(farthestPoint(solid, direction), direction);
      const sampled = reachOf(solid, direction, null);
      expect(found).toBeGreaterThanOrEqual(sampled - 1e-9);
      expect(found).toBeLessThan(sampled + 0.01);
    }
  });

  test.each(SHAPES)('%s that turns about an axis', (_, make) => {
    for (let i = 0; i < 4; i++) {
      const solid = make();
      const spin = { at: vector(60), axis: unit(vector(1)) };
      const direction = unit(vector(1));
      const found = dot(farthestPoint(spunSolid(solid, spin.at, spin.axis), direction), direction);
      const sampled = reachOf(solid, direction, spin);
      expect(found).toBeGreaterThanOrEqual(sampled - 1e-6);
      // half a degree of a circle 300 mm around is 0.003 mm high
      expect(found).toBeLessThan(sampled + 0.02);
    }
  });

  test('a mesh, still and turning', () => {
    const triangles = Float64Array.from(Array.from({ length: 900 }, () => between(-80, 80)));
    const still: MeshSolid = {
      kind: 'mesh',
      mesh: { triangles, isClosed: false, search: null! },
      ball: { centre: [0, 0, 0], radius: 140 },
      spin: null,
    };
    const corners = Array.from({ length: 300 }, (_, i): Vector => [triangles[3 * i], triangles[3 * i + 1], triangles[3 * i + 2]]);
    const direction = unit(vector(1));
    const found = dot(farthestPoint(still, direction), direction);
    expect(found).toBeCloseTo(Math.max(...corners.map((corner) => dot(corner, direction))), 9);
    const spin = { at: vector(20), axis: direction };
    // turned about the direction itself nothing gets farther
    expect(dot(farthestPoint({ ...still, spin }, direction), direction)).toBeCloseTo(found, 9);
  });
});
