import { expect, test } from 'vitest';
import { paperPlane, type PaperPlane } from '../../../../geometry/fitup/template/plane';
import { sectionOf, type SectionedMesh } from '../../../../geometry/fitup/template/section';
import { ofSide } from '../../../../geometry/fitup/template/sideOutlines';
import { ball, box, torus } from './solids';

const planeOf = (...numbers: number[]): PaperPlane => {
  const plane = paperPlane(numbers);
  if ('fault' in plane) throw new Error(plane.message);
  return plane;
};

const together = (...meshes: readonly SectionedMesh[]): SectionedMesh => {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const mesh of meshes) {
    const before = positions.length / 3;
    positions.push(...mesh.positions);
    triangles.push(...[...mesh.triangles].map((corner) => corner + before));
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
};

const cut = (mesh: SectionedMesh, plane: PaperPlane) => {
  const outlines = sectionOf(mesh, plane);
  if ('missedBy' in outlines) throw new Error('missed');
  return outlines;
};

test('a template of one side has that side’s outlines, whatever way it is read', () => {
  const both = together(
    ball([0, 700, 300], () => 50),
    ball([0, -700, 300], () => 80),
  );
  for (const numbers of [
    [0, 0, 300, 0, 0, 1],
    [0, 900, 300, 1, 0, 0],
    [0, 0, 300, -1, 0, 0.2],
  ]) {
    const plane = planeOf(...numbers);
    const outlines = cut(both, plane);
    expect(outlines).toHaveLength(2);
    const [left] = ofSide(outlines, plane, 'left');
    const [right] = ofSide(outlines, plane, 'right');
    expect(left!.length).toBeLessThan(right!.length);
    expect([...ofSide(outlines, plane, 'left'), ...ofSide(outlines, plane, 'right')]).toHaveLength(2);
  }
});

test('what crosses the centre line is on both, with its holes', () => {
  const plane = planeOf(0, 0, 0, 0, 0, 1);
  const ring = cut(torus([0, 150, 0], 300, 100), plane);
  expect(ofSide(ring, plane, 'left')).toEqual(ring);
  expect(ofSide(ring, plane, 'right')).toEqual(ring);
  const beside = cut(box([-10, 20, -10], [10, 40, 10]), plane);
  expect(ofSide(beside, plane, 'right')).toEqual([]);
});
