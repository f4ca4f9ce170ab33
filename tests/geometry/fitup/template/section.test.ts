import { describe, expect, it } from 'vitest';
import { dot, type Vector } from '../../../../geometry/core/vector';
import { paperPlane, type PaperPlane } from '../../../../geometry/fitup/template/plane';
import { sectionOf, type Outline, type SectionedMesh } from '../../../../geometry/fitup/template/section';
import { drawFrom } from '../../../laws/draw';
import { ball, box, cylinder, torus } from './solids';

function planeOf(...numbers: number[]): PaperPlane {
  const plane = paperPlane(numbers);
  if ('fault' in plane) throw new Error(plane.message);
  return plane;
}

function outlinesOf(mesh: SectionedMesh, plane: PaperPlane): readonly Outline[] {
  const section = sectionOf(mesh, plane);
  if ('missedBy' in section) throw new Error(`missed by ${section.missedBy}`);
  return section;
}

const inside = (outlines: readonly Outline[]): number =>
  outlines.reduce((sum, { area, isHole }) => sum + (isHole ? -area : area), 0);

/** What the part of a mesh behind a plane leaves open there: by its own surface, since closed surfaces have no area vector. */
function capArea({ positions, triangles }: SectionedMesh, { point, normal, right, up }: PaperPlane): number {
  let cap = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const corners = [0, 1, 2].map((k): Vector => {
      const at = 3 * triangles[i + k];
      const p: Vector = [positions[at] - point[0], positions[at + 1] - point[1], positions[at + 2] - point[2]];
      return [dot(p, right), dot(p, up), dot(p, normal)];
    });
    const behind: (readonly [number, number])[] = [];
    corners.forEach((a, k) => {
      const b = corners[(k + 1) % 3];
      if (a[2] < 0) behind.push([a[0], a[1]]);
      if (a[2] < 0 !== b[2] < 0) {
        const t = a[2] / (a[2] - b[2]);
        behind.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
      }
    });
    behind.forEach(([x, y], k) => {
      const [nx, ny] = behind[(k + 1) % behind.length];
      cap -= 0.5 * (x * ny - nx * y);
    });
  }
  return cap;
}

describe('section of a closed mesh', () => {
  it('of a sphere is a circle, counter-clockwise', () => {
    const outlines = outlinesOf(
      ball([100, 700, 300], () => 50, 400, 300),
      planeOf(100, 720, 300, 1, 2, 0),
    );
    expect(outlines).toHaveLength(1);
    expect(outlines[0].isHole).toBe(false);
    const off = (20 * 2) / Math.sqrt(5);
    expect(outlines[0].area / (Math.PI * (2500 - off * off))).toBeCloseTo(1, 3);
    expect(outlines[0].length / (2 * Math.PI * Math.sqrt(2500 - off * off))).toBeCloseTo(1, 3);
  });

  it('of a ring has a hole, or is two circles', () => {
    const ring = torus([0, 0, 0], 300, 100, 400, 200);
    const flat = outlinesOf(ring, planeOf(0, 0, 0, 0, 0, 1));
    expect(flat.map(({ isHole }) => isHole).sort()).toEqual([false, true]);
    expect(inside(flat) / (Math.PI * (400 ** 2 - 200 ** 2))).toBeCloseTo(1, 3);
    const across = outlinesOf(ring, planeOf(0, 0, 0, 1, 0, 0));
    expect(across.map(({ isHole }) => isHole)).toEqual([false, false]);
    for (const { area } of across) expect(area / (Math.PI * 100 ** 2)).toBeCloseTo(1, 3);
  });

  it('of an oblique cylinder is an ellipse', () => {
    const outlines = outlinesOf(cylinder(40, -500, 500), planeOf(0, 0, 20, 0, 1, 1));
    expect(outlines).toHaveLength(1);
    expect(outlines[0].area / (Math.PI * 40 * 40 * Math.SQRT2)).toBeCloseTo(1, 3);
  });

  it('of a box is exact, also through its corners, and a face in front of the plane is not cut', () => {
    const mesh = box([0, 0, 0], [30, 40, 50]);
    expect(inside(outlinesOf(mesh, planeOf(0, 0, 25, 0, 0, 1)))).toBeCloseTo(1200, 9);
    // through four of its corners
    expect(inside(outlinesOf(mesh, planeOf(0, 0, 0, 40, -30, 0)))).toBeCloseTo(2500, 9);
    // in the plane of its top, met from behind, and of its bottom
    expect(inside(outlinesOf(mesh, planeOf(0, 0, 50, 0, 0, 1)))).toBeCloseTo(1200, 9);
    expect(sectionOf(mesh, planeOf(0, 0, 0, 0, 0, 1))).toEqual({ missedBy: 0 });
  });

  it('says by how much and on which side a plane misses', () => {
    const mesh = box([0, 0, 0], [30, 40, 50]);
    expect(sectionOf(mesh, planeOf(0, 0, 60, 0, 0, 2))).toEqual({ missedBy: -10 });
    expect(sectionOf(mesh, planeOf(0, 0, 60, 0, 0, -2))).toEqual({ missedBy: 10 });
  });

  it('refuses a mesh that is open where it is cut', () => {
    const { positions, triangles } = box([0, 0, 0], [30, 40, 50]);
    expect(() => sectionOf({ positions, triangles: triangles.slice(0, -3) }, planeOf(0, 0, 25, 0, 0, 1))).toThrow(/not closed/);
  });

  it('closes and encloses what the rest of the mesh leaves open: 1,000 planes, seed 20281', () => {
    const draw = drawFrom(20281);
    let cut = 0;
    for (let i = 0; i < 1000; i++) {
      const rough = Array.from({ length: 12 * 9 }, () => draw.between(30, 100));
      const mesh =
        i % 3 === 0
          ? torus([0, 0, 0], 90, 40, 24, 12)
          : ball([0, 0, 0], (u, v) => rough[Math.round(12 * u) + 12 * Math.round(8 * v)], 12, 9);
      // every other one through a corner of the mesh, and some square to an axis, where many corners are on it
      const corner = 3 * Math.floor(draw.between(0, mesh.positions.length / 3));
      const point = i % 2 === 0 ? [...mesh.positions.slice(corner, corner + 3)] : [0, 1, 2].map(() => draw.between(-60, 60));
      const normal = i % 5 === 0 ? [0, 0, 1] : [0, 1, 2].map(() => draw.between(-1, 1));
      const plane = planeOf(...point, ...normal);
      const section = sectionOf(mesh, plane);
      const outlines = 'missedBy' in section ? [] : section;
      if (outlines.length > 0) cut++;
      for (const { points } of outlines) expect(points.length).toBeGreaterThan(2);
      expect(Math.abs(inside(outlines) - capArea(mesh, plane))).toBeLessThan(1e-6);
    }
    expect(cut).toBeGreaterThan(900);
  });
});
