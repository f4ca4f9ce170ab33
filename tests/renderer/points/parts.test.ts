import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { parseCar, type CarDocument } from '../../../geometry/index';
import { base64Of, readPartStl } from '../../../renderer/compute/fitup/readPartStl';
import { partMeshFiles } from '../../../renderer/compute/fitup/partMeshFiles';
import { judgeEdit } from '../../../renderer/points/fields/judgeEdit';
import { meshShape, nameOfFile, openWords, scaleOfStl, sizeWords } from '../../../renderer/points/parts/meshPart';
import {
  asKind,
  CHANGEABLE,
  copiedName,
  extentOf,
  touching,
  withCopiedPart,
  withoutPart,
  type Shape,
} from '../../../renderer/points/parts/partEdits';
import type { ShownUnits } from '../../../renderer/units/unitChoice';
import { binaryStl as madeStl, tetrahedron, textStl } from '../../geometry/fitup/stlFiles';

const MM: ShownUnits = { length: 'mm', angle: 'degrees', toe: 'angle', toeDiameter: null, force: 'newton' };
const INCHES: ShownUnits = { ...MM, length: 'in' };

let hatch: CarDocument;
beforeAll(() => {
  const read = parseCar(readFileSync(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'), 'utf8'));
  if (!read.ok) throw new Error('the sample has faults');
  hatch = read.value.document;
});

const stlOf = (bytes: Uint8Array) => {
  const read = readPartStl(bytes);
  if (!read.ok) throw new Error(read.failure.found);
  return read.value;
};
const withParts = (parts: CarDocument['parts']): CarDocument => ({ ...hatch, parts });

describe('a mesh from an STL file', () => {
  test('binary or text, it goes into the car file as binary that reads back as the same triangles', () => {
    const corners = tetrahedron(40);
    for (const bytes of [madeStl(corners), textStl(corners)]) {
      const stl = stlOf(bytes);
      expect(stl).toMatchObject({ triangles: 4, from: [0, 0, 0], to: [40, 40, 40], openEdges: 0 });
      const shape = meshShape(stl, 1, null);
      const car = withParts({ ...hatch.parts, bracket: { on: 'body', shape } });
      expect(judgeEdit(car)).toEqual([]);
      const { meshes, faults } = partMeshFiles({ bracket: { on: 'body', shape } });
      expect(faults).toEqual([]);
      expect([...meshes['bracket']!]).toEqual([...corners]);
    }
  });

  test('large files come through whole, whatever is left of the last three bytes', () => {
    for (const length of [0, 1, 2, 3, 24575, 24576, 24577, 60000]) {
      const bytes = Uint8Array.from({ length }, (_, index) => (index * 31) % 256);
      expect(base64Of(bytes)).toBe(Buffer.from(bytes).toString('base64'));
    }
  });

  test('a missing triangle is said, and broken files are refused with what to do', () => {
    const open = stlOf(madeStl(tetrahedron(40).slice(9)));
    expect(open.openEdges).toBe(3);
    expect(openWords(open.openEdges)).toContain('3 edges not shared');
    expect(openWords(0)).toBeNull();
    const cut = readPartStl(madeStl(tetrahedron(40)).slice(0, 200));
    expect(!cut.ok && cut.failure.hint).toContain('save the mesh again');
    const many = new Uint8Array(84);
    new DataView(many.buffer).setUint32(80, 2_000_000, true);
    expect(readPartStl(many).ok).toBe(false);
  });

  test('the unit is the person’s to say: the same file is 25.4 times as large in inches', () => {
    const stl = stlOf(madeStl(tetrahedron(10)));
    expect(sizeWords(stl, scaleOfStl('mm', 1), MM).size).toBe('4 triangles, 10.0 × 10.0 × 10.0 mm');
    expect(sizeWords(stl, scaleOfStl('in', 1), MM).size).toBe('4 triangles, 254.0 × 254.0 × 254.0 mm');
    expect(sizeWords(stl, scaleOfStl('in', 1), INCHES).size).toBe('4 triangles, 10.000 × 10.000 × 10.000 in');
    expect(meshShape(stl, scaleOfStl('in', 25.4), null)).not.toHaveProperty('scale');
    expect(meshShape(stl, scaleOfStl('mm', 25.4), null).scale).toBeCloseTo(1 / 25.4, 12);
  });

  test('beside the car file it goes by the name of its file; another one stays where the first one was', () => {
    const stl = stlOf(madeStl(tetrahedron(10)));
    expect(meshShape(stl, 1, 'duct.stl')).toEqual({ kind: 'mesh', file: 'duct.stl' });
    const placed = { kind: 'mesh', file: 'old.stl', place: { at: [1, 2, 3] } } as const;
    expect(meshShape(stl, 1, null, placed)).toEqual({ kind: 'mesh', data: stl.data, place: { at: [1, 2, 3] } });
    expect(nameOfFile('Brake duct (left).STL', hatch.parts)).toBe('BrakeDuctLeft');
    expect(nameOfFile('Brake duct.STL', { BrakeDuct: { on: 'body', shape: placed } })).toBe('BrakeDuct2');
    expect(nameOfFile('123.stl', {})).toBe('mesh');
  });
});

const SHAPES: readonly Shape[] = [
  { kind: 'sphere', at: [100, 500, 200], radius: 12 },
  { kind: 'capsule', from: [0, 500, 200], to: [30, 540, 200], radius: 10 },
  { kind: 'capsule', from: [0, 500, 200], to: [0, 500, 200], radius: 10 },
  { kind: 'cylinder', from: [0, 500, 200], to: [0, 500, 260], radius: 20 },
  { kind: 'box', centre: [10, 600, 300], size: [20, 80, 40] },
  { kind: 'box', centre: [10, 600, 300], size: [20, 80, 40], axes: [[1, 1, 0], [0, 0, 2]] }, // prettier-ignore
  { kind: 'mesh', data: base64Of(madeStl(tetrahedron(40))), scale: 2, place: { at: [5, 500, 100], axes: [[0, 1, 0], [0, 0, 1]] } }, // prettier-ignore
];

describe('another shape where a part stands', () => {
  const mesh = { from: [0, 0, 0], to: [40, 40, 40] } as const;

  test.each(SHAPES)('$kind becomes every other kind, at the same middle, and the car is sound', (shape) => {
    const before = extentOf(shape, mesh)!;
    for (const kind of CHANGEABLE) {
      const after = asKind(shape, kind, before);
      expect(after.kind).toBe(kind);
      expect(judgeEdit(withParts({ ...hatch.parts, tried: { on: 'body', shape: after } }))).toEqual([]);
      const now = extentOf(after, null);
      if (now === null) continue;
      const isLonger = shape.kind === 'capsule' && kind === 'cylinder' && shape.from[0] === shape.to[0];
      now.centre.forEach((value, axis) => expect(value).toBeCloseTo(before.centre[axis]!, isLonger ? -1.5 : 3));
    }
  });

  test('a radius stays a radius; a box takes the size of what it is put for', () => {
    const capsule = SHAPES[1]!;
    const extent = extentOf(capsule, null)!;
    expect(asKind(capsule, 'cylinder', extent)).toEqual({ ...capsule, kind: 'cylinder' });
    const box = asKind(capsule, 'box', extent);
    expect(box).toMatchObject({ size: [70, 20, 20], axes: [[0.6, 0.8, 0], [0, 0, 1]] }); // prettier-ignore
    expect(asKind(SHAPES[4]!, 'cylinder', extentOf(SHAPES[4]!, null)!)).toEqual({
      kind: 'cylinder',
      from: [10, 560, 300],
      to: [10, 640, 300],
      radius: 20,
    });
  });

  test('a mesh is measured where its place and scale put it; what cannot be measured is not', () => {
    const box = asKind(SHAPES[6]!, 'box', extentOf(SHAPES[6]!, mesh)!);
    expect(box).toEqual({ kind: 'box', centre: [45, 540, 140], size: [80, 80, 80], axes: [[0, 1, 0], [0, 0, 1]] }); // prettier-ignore
    expect(extentOf(SHAPES[6]!, null)).toBeNull();
    expect(extentOf({ kind: 'tyre' }, null)).toBeNull();
  });
});

describe('copying and removing parts', () => {
  const part = (touches?: readonly string[]) => ({ on: 'body', shape: SHAPES[0]!, ...(touches ? { touches } : {}) });
  const parts = { duct: part(), bracket: part(['duct', 'liner']), liner: part(['duct']) };

  test('a copy stands behind its original, under a free name, and may touch the same', () => {
    expect(copiedName({ ...parts, duct2: part() }, 'duct')).toBe('duct3');
    const copied = withCopiedPart(parts, 'duct', 'duct2');
    expect(Object.keys(copied)).toEqual(['duct', 'duct2', 'bracket', 'liner']);
    expect(copied['bracket']?.touches).toEqual(['duct', 'liner', 'duct2']);
    expect(judgeEdit(withParts(copied))).toEqual([]);
  });

  test('a part that goes away is touched by nobody any more, and the car is sound', () => {
    expect(touching(parts, 'duct')).toEqual(['bracket', 'liner']);
    const left = withoutPart(parts, 'duct');
    expect(left).toEqual({ bracket: part(['liner']), liner: part() });
    expect(judgeEdit(withParts(left))).toEqual([]);
    expect(withoutPart({ duct: part() }, 'duct')).toBeUndefined();
  });
});
