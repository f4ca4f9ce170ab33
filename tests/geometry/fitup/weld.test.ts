import { describe, expect, it } from 'vitest';
import { weld } from '../../../geometry/fitup/keepOut/weld';
import { badEdges } from './badEdges';

const TETRAHEDRON = {
  positions: [0, 0, 0, 100, 0, 0, 0, 100, 0, 0, 0, 100],
  triangles: [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3],
};

const asMade = ({ positions, triangles }: { readonly positions: readonly number[]; readonly triangles: readonly number[] }) => ({
  mesh: { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) },
});

describe('corners that are in one place in single precision', () => {
  it('a mesh without any stays itself', () => {
    expect(weld(TETRAHEDRON)).toBe(TETRAHEDRON);
  });

  it('become one, and what has no area between them goes', () => {
    // the edge from 1 to 3 cut a hundred-thousandth of a millimetre from its end: two triangles more, two of them slivers
    const cut = {
      positions: [...TETRAHEDRON.positions, 100 - 1e-6, 0, 1e-6],
      triangles: [0, 2, 1, 0, 1, 4, 0, 4, 3, 0, 3, 2, 1, 2, 4, 4, 2, 3],
    };
    const off = { ...cut, positions: cut.positions.map((value, i) => (i % 3 === 2 ? value + 1000 : value)) };
    expect(badEdges(asMade(off))).toBeGreaterThan(0);
    const welded = weld(off)!;
    expect(welded.triangles.length / 3).toBe(4);
    expect(welded.positions.length / 3).toBe(4);
    expect(badEdges(asMade(welded))).toBe(0);
  });

  it('of two shells that touch along an edge make no closed mesh: it is not handed out as one', () => {
    const { positions, triangles } = TETRAHEDRON;
    // turned half a turn about the edge from 0 to 1
    const other = positions.map((value, i) => (i % 3 === 0 ? value : -value));
    const both = { positions: [...positions, ...other], triangles: [...triangles, ...triangles.map((corner) => corner + 4)] };
    expect(weld(both)).toBeNull();
  });
});
