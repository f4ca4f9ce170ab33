import { describe, expect, it } from 'vitest';
import { findSetup, parseCar, readStl, toMechanism, type Vector } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { clearanceStudy, type ClearanceAnswer } from '../../../geometry/fitup/clearance/clearance';
import { openEdges, volumeOf } from '../../../geometry/fitup/meshes/closedMesh';
import { turnAbout } from '../../../geometry/core/rotation';
import { add, distance, scale } from '../../../geometry/core/vector';
import { segmentCore } from '../../../geometry/fitup/distance/core';
import { atDesign } from '../../../geometry/fitup/placement';
import { gapBetween } from '../../../geometry/fitup/shapes/gapBetween';
import type { MeshSolid } from '../../../geometry/fitup/shapes/solid';
import { roundSolid, spunSolid } from '../../../geometry/fitup/shapes/solids';
import type { MeshFiles } from '../../../geometry/fitup/meshes/partMeshes';
import { answerStudy } from '../../../geometry/studies/study';
import { drawFrom } from '../../laws/draw';
import { anyBody, somewhere } from './shapes/bodies';
import { sample } from './loadedCars';
import { binaryStl, boxTriangles, tetrahedron, textStl } from './stlFiles';

const solidOf = (triangles: Float64Array, isClosed = true): MeshSolid => ({
  kind: 'mesh',
  mesh: { triangles, isClosed, search: searchMesh(triangles) },
  ball: { centre: [0, 0, 0], radius: 400 },
  spin: null,
});

describe('an STL file', () => {
  it('is read alike from binary and from text', () => {
    const triangles = tetrahedron(12.5);
    for (const bytes of [binaryStl(triangles), textStl(triangles)]) {
      const read = readStl(bytes);
      expect(read.ok && [...read.value]).toEqual([...triangles]);
    }
    // a binary file may begin with the word that text does
    const lying = binaryStl(triangles, 'solid and still binary');
    expect(readStl(lying).ok).toBe(true);
  });

  it.each([
    ['empty', new Uint8Array(0), 'empty'],
    ['cut off', binaryStl(tetrahedron(1)).slice(0, 200), 'bytes where a binary STL of 4 triangles'],
    ['with a count that lies', withCount(binaryStl(tetrahedron(1)), 2_000_000), '2000000 triangles'],
    ['of too many triangles', hugeStl(300_001), '300001 triangles'],
    ['with a corner that is no number', binaryStl(Float64Array.from([0, 0, 0, 1, 0, 0, 0, NaN, 0])), 'triangle 1'],
    [
      'of text with a word for a number',
      new TextEncoder().encode('solid a\nvertex 0 0 x\nvertex 1 0 0\nvertex 0 1 0'),
      'triangle 1',
    ],
    ['of text that ends too soon', new TextEncoder().encode('solid a\nvertex 0 0 0\nvertex 1 0 0'), '2 corners'],
    ['of no triangle', binaryStl(new Float64Array(0)), 'no triangle'],
    ['that is something else', new TextEncoder().encode('%PDF-1.7 and so on and so forth'.repeat(9)), 'binary STL'],
  ])('%s is refused with what was found and what to do', (_title, bytes, found) => {
    const read = readStl(bytes);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.failure.found).toContain(found);
    expect(read.failure.hint).not.toBe('');
  });

  it('is closed when every edge is run through once each way', () => {
    const box = boxTriangles([10, 20, 30]);
    expect(openEdges(box)).toBe(0);
    // volume by hand: 20 × 40 × 60
    expect(volumeOf(box)).toBeCloseTo(48_000, 6);
    expect(openEdges(box.slice(9))).toBe(3);
    const turned = box.slice();
    turned.copyWithin(0, 3, 6);
    turned.set(box.subarray(0, 3), 3);
    expect(openEdges(turned)).toBeGreaterThan(0);
  });
});

describe('the distance to a mesh', () => {
  it('is that of the same solid by its formula, on 400 pairs (seed 17)', () => {
    const draw = drawFrom(17);
    const halves: Vector = [60, 35, 90];
    const mesh = solidOf(boxTriangles(halves));
    let apart = 0;
    for (let i = 0; i < 400; i++) {
      const body = anyBody(draw);
      const relative = somewhere(draw, 250);
      const { distance, points, isCutOnly } = gapBetween(mesh, body.solid, relative);
      const back = gapBetween(body.solid, mesh, inverted(relative));
      expect(back.distance).toBeCloseTo(distance, 6);
      const exact = exactToBox(halves, body.solid, relative);
      if (exact <= 0) {
        expect(isCutOnly, `${body.title} ${exact}`).toBe(true);
        continue;
      }
      apart += 1;
      expect(distance, body.title).toBeCloseTo(exact, 6);
      expect(Math.hypot(points[0][0] - points[1][0], points[0][1] - points[1][1], points[0][2] - points[1][2])).toBeCloseTo(
        exact,
        6,
      );
    }
    expect(apart).toBeGreaterThan(100);
  });

  it('of what turns is that of all its turns, and of a skin that turns inside it too', () => {
    const box = solidOf(boxTriangles([30, 40, 50]));
    // a rim's skin about an axis that is askew, well beside the box, across it, and wholly within it
    for (const [middle, reach, isCut] of [
      [[150, 20, 10], 60, false],
      [[60, 0, 0], 55, true],
      [[0, 0, 0], 12, true],
    ] as const) {
      const [axis, out]: [Vector, Vector] = [
        [0.6, 0.8, 0],
        [0, 0, 1],
      ];
      const profile = segmentCore(
        add(middle, add(scale(axis, -10), scale(out, reach))),
        add(middle, add(scale(axis, 10), scale(out, reach))),
      );
      const skin = spunSolid(roundSolid([profile], 0, true), middle, axis);
      for (const gap of [gapBetween(box, skin, atDesign()), gapBetween(skin, box, atDesign())]) {
        if (isCut) {
          expect(gap).toMatchObject({ isCutOnly: true, distance: 0 });
          continue;
        }
        let least = Infinity;
        for (let turn = 0; turn < 2 * Math.PI; turn += 0.002) {
          const turned = [-10, 10].map((along) => add(middle, add(scale(axis, along), turnAbout(scale(out, reach), axis, turn))));
          const still = roundSolid([segmentCore(turned[0], turned[1])], 0, true);
          least = Math.min(least, gapBetween(box, still, atDesign()).distance);
        }
        expect(gap.distance).toBeCloseTo(least, 2);
        expect(gap.distance).toBeLessThan(least + 1e-6);
        expect(distance(gap.points[0], gap.points[1])).toBeCloseTo(gap.distance, 6);
      }
    }
  });

  it('knows what is inside of a closed one, and of two meshes', () => {
    const box = solidOf(boxTriangles([50, 50, 50]));
    const small = solidOf(boxTriangles([5, 5, 5]));
    expect(gapBetween(box, small, atDesign()).isCutOnly).toBe(true);
    const away = atDesign();
    away.set([80, 0, 0], 9);
    expect(gapBetween(box, small, away).distance).toBeCloseTo(25, 9);
    const skin = solidOf(boxTriangles([50, 50, 50]), false);
    expect(gapBetween(skin, solidOf(boxTriangles([5, 5, 5]), false), atDesign()).distance).toBeCloseTo(45, 9);
  });
});

/** All triangles between some points: those of their convex hull are among them, and no other reaches out of it. */
function hullOf(points: readonly Vector[]): Float64Array {
  const triangles: number[] = [];
  for (let i = 0; i < points.length; i++)
    for (let j = i + 1; j < points.length; j++)
      for (let k = j + 1; k < points.length; k++) triangles.push(...points[i], ...points[j], ...points[k]);
  return Float64Array.from(triangles);
}

describe('meshes against what is known of them', () => {
  it('the distance of two hulls that a general library prints in its examples', () => {
    // openGJK (github.com/MattiaMontanari/openGJK), scalar/examples: the convex hulls of nine points and of their negatives
    const points: readonly Vector[] = [
      [0, 5.5, 0],
      [2.3, 1, -2],
      [8.1, 4, 2.4],
      [4.3, 5, 2.2],
      [2.5, 1, 2.3],
      [7.1, 1, 2.4],
      [1, 1.5, 0.3],
      [3.3, 0.5, 0.3],
      [6, 1.4, 0.2],
    ];
    const one = solidOf(hullOf(points), false);
    const other = solidOf(hullOf(points.map((point) => scale(point, -1))), false);
    const gap = gapBetween(one, other, atDesign());
    expect(gap.distance).toBeCloseTo(3.6536497223, 9);
    expect(distance(gap.points[0], gap.points[1])).toBeCloseTo(gap.distance, 9);
  });

  it('a tetrahedron and a torus of facets: volume by closed forms, every edge run through once each way', () => {
    expect(volumeOf(tetrahedron(1))).toBeCloseTo(1 / 6, 15);
    for (const [around, across] of [
      [4, 4],
      [12, 8],
      [48, 24],
      [200, 100],
    ] as const) {
      const mesh = torusOf(3, 1, around, across);
      const exact = (around * Math.sin((2 * Math.PI) / around) * 3 * across * Math.sin((2 * Math.PI) / across)) / 2;
      expect(Math.abs(volumeOf(mesh) / exact - 1)).toBeLessThan(1e-9);
      expect(openEdges(mesh)).toBe(0);
      // as an STL file has it, in single precision, it is still closed
      const read = readStl(binaryStl(mesh));
      if (!read.ok) throw new Error(read.failure.found);
      expect(read.value).toHaveLength(18 * around * across);
      expect(openEdges(read.value)).toBe(0);
      expect(Math.abs(volumeOf(read.value) / exact - 1)).toBeLessThan(1e-5);
      // one facet taken out leaves three edges
      expect(openEdges(mesh.slice(9))).toBe(3);
    }
    // of more and more facets it is the smooth one: 2 π² R r²
    expect(Math.abs(volumeOf(torusOf(3, 1, 1200, 600)) / (6 * Math.PI * Math.PI) - 1)).toBeLessThan(1e-4);
  });
});

/** A torus about Z, facets seen from outside. */
function torusOf(ring: number, tube: number, around: number, across: number): Float64Array {
  const at = (i: number, j: number): Vector => {
    const [u, v] = [(2 * Math.PI * (i % around)) / around, (2 * Math.PI * (j % across)) / across];
    const out = ring + tube * Math.cos(v);
    return [out * Math.cos(u), out * Math.sin(u), tube * Math.sin(v)];
  };
  const triangles: number[] = [];
  for (let i = 0; i < around; i++)
    for (let j = 0; j < across; j++) {
      const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      triangles.push(...a, ...b, ...c, ...a, ...c, ...d);
    }
  return Float64Array.from(triangles);
}

describe('a part that is a mesh', () => {
  const answer = (shape: object, meshes: MeshFiles, side: 'left' | 'right', more: object = {}): ClearanceAnswer => {
    const parts = {
      liner: { axle: 'front', on: 'body', shape, ...more },
      arm: { axle: 'front', on: 'knuckle', shape: { kind: 'sphere', at: [40, 640, 330], radius: 20 } },
    };
    const parsed = parseCar(JSON.stringify({ ...sample('saltmarsh-hatch'), parts }));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
    const { document } = parsed.value;
    const setups = [['Baseline', findSetup(document, 'Baseline')]] as const;
    const study = clearanceStudy(toMechanism(document), { axles: ['front'], sides: [side], setups, meshes }, searchMesh);
    const answered = answerStudy(study);
    if (!answered.ok) throw new Error(answered.failure.message);
    return answered.value;
  };
  const clearanceOf = ({ rows }: ClearanceAnswer): number => rows.find(({ pair }) => pair.join() === 'liner,arm')!.clearance;

  it.each(['left', 'right'] as const)('keeps the distance that the same box has: %s', (side) => {
    const box = { kind: 'box', centre: [300, 480, 560], size: [60, 120, 40] };
    const mesh = { kind: 'mesh', file: 'liner.stl', scale: 10, place: { at: [300, 480, 560] } };
    // in centimetres in its own file
    const meshes = { liner: boxTriangles([3, 6, 2]) };
    expect(Math.abs(clearanceOf(answer(mesh, meshes, side)) - clearanceOf(answer(box, {}, side)))).toBeLessThan(0.05);
  });

  it('given for the right side is seen from there, and keeps its own hand', () => {
    // no half of it is like the other: a wrong hand stands 40 mm off
    const wedge = tetrahedron(8);
    const place = { at: [280, -520, 540] };
    const right = { kind: 'mesh', file: 'liner.stl', scale: 10, place };
    const flipped = Float64Array.from(wedge, (value, i) => (i % 3 === 1 ? -value : value));
    const left = { kind: 'mesh', file: 'liner.stl', scale: 10, place: { at: [280, 520, 540] } };
    const seen = clearanceOf(answer(right, { liner: wedge }, 'left', { side: 'right' }));
    expect(seen).toBeCloseTo(clearanceOf(answer(left, { liner: flipped }, 'left')), 6);
    expect(Math.abs(seen - clearanceOf(answer(left, { liner: wedge }, 'left')))).toBeGreaterThan(1);
  });

  it('without its triangles is left out, and that is said', () => {
    const { missing, rows } = answer({ kind: 'mesh', file: 'liner.stl' }, {}, 'left');
    expect(missing.join()).toContain('"liner"');
    expect(rows.some(({ pair }) => pair.includes('liner'))).toBe(false);
  });
});

/** The same distance with the box as a convex core, which `shapes/gap.test.ts` proves. */
function exactToBox(halves: Vector, solid: Parameters<typeof gapBetween>[1], relative: Float64Array): number {
  return gapBetween(boxSolid(halves), solid, relative).distance;
}

function boxSolid(halves: Vector): Parameters<typeof gapBetween>[0] {
  const core = Float64Array.from([3, 0, 0, 0, halves[0], 0, 0, 0, halves[1], 0, 0, 0, halves[2]]);
  return {
    kind: 'round',
    cores: [core],
    rounds: [0],
    isSkin: false,
    ball: { centre: [0, 0, 0], radius: 400 },
    spin: null,
    cover: null,
  };
}

function inverted(m: Float64Array): Float64Array {
  const out = new Float64Array(12);
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) out[3 * row + column] = m[3 * column + row];
    out[9 + row] = -(m[row] * m[9] + m[3 + row] * m[10] + m[6 + row] * m[11]);
  }
  return out;
}

function withCount(bytes: Uint8Array, count: number): Uint8Array {
  const out = bytes.slice();
  new DataView(out.buffer).setUint32(80, count, true);
  return out;
}

function hugeStl(count: number): Uint8Array {
  return withCount(new Uint8Array(84 + 50 * count), count);
}
