import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { parseCar, setupNames, type CarDocument, type DrawnPart, type Vector } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import { meshesOfCar } from '../../../renderer/fitup/fitUpQuestion';
import { isMovable, moveInCar, moveInFile, nearestAxis, withMovedPart } from '../../../renderer/fitup/view/partMove';
import { setupNamed } from '../../../renderer/state/settings';

const read = parseCar(readFileSync(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'), 'utf8'));
if (!read.ok) throw new Error('the sample has faults');
const hatch = read.value.document;

const drawnOf = (document: CarDocument, side: 'left' | 'right'): readonly DrawnPart[] => {
  const [name = ''] = setupNames(document);
  const result = answerFitUp(
    {
      job: 'drawn',
      document,
      setup: [name, setupNamed(document, name)],
      axle: 'front',
      side,
      at: { travel: 45, from: 'design', rack: -40 },
      meshes: meshesOfCar(document).meshes,
    },
    searchMesh,
  );
  if (!result.ok) throw new Error(result.failure.message);
  return result.value.parts;
};

/** A point of a part that goes with it. */
const markOf = (parts: readonly DrawnPart[], name: string): Vector => {
  const shape = parts.find((part) => part.name === name)?.shapes[0];
  switch (shape?.kind) {
    case 'box':
      return shape.centre;
    case 'mesh':
      return [shape.triangles[0]!, shape.triangles[1]!, shape.triangles[2]!];
    case 'capsule':
    case 'cylinder':
      return shape.from;
    case 'sphere':
    case 'turned':
      return shape.at;
    default:
      throw new Error(`no ${name}`);
  }
};

const CASES = (['left', 'right'] as const).flatMap((side) =>
  ['caliperFront', 'armFront', 'duct', 'archLiner'].flatMap((name) =>
    ([{}, { side: 'right' }] as const).map((more) => [side, name, more] as const),
  ),
);

test.each(CASES)('seen on the %s, %s %j goes where the hand wants it, turned as its carrier is', (side, name, more) => {
  const document: CarDocument = { ...hatch, parts: { ...hatch.parts, [name]: { ...hatch.parts![name]!, ...more } } };
  expect(isMovable(document, name)).toBe(true);
  const before = drawnOf(document, side);
  const ways = before.find((part) => part.name === name)?.ways;
  if (!ways) throw new Error('it has no place of its own');
  const wanted: Vector = [7.5, -4.25, 12];
  const by = moveInFile(wanted, ways);
  const moved = withMovedPart(document, name, by, 1);
  // the car put together anew says where it then is
  const [from, to] = [markOf(before, name), markOf(drawnOf(moved, side), name)];
  for (const axis of [0, 1, 2] as const) {
    expect(Math.abs(to[axis] - from[axis] - wanted[axis])).toBeLessThan(0.02);
    expect(moveInCar(by, ways)[axis]).toBeCloseTo(to[axis] - from[axis], 3);
  }
});

test('what has no place of its own is not moved, nor is anything by nothing', () => {
  expect(isMovable(hatch, 'tyreFront')).toBe(false);
  expect(isMovable(hatch, 'tieRod')).toBe(false);
  expect(withMovedPart(hatch, 'tyreFront', [1, 2, 3], 1)).toBe(hatch);
  expect(withMovedPart(hatch, 'duct', [0, 0, 0], 1)).toBe(hatch);
  expect(drawnOf(hatch, 'left').find(({ name }) => name === 'tieRod')?.ways).toBeNull();
});

test('in a file of inches a move of 25.4 mm is one of 1', () => {
  const before = hatch.parts!['caliperFront']!.shape;
  const after = withMovedPart(hatch, 'caliperFront', [25.4, 0, -12.7], 25.4).parts!['caliperFront']!.shape;
  if (before.kind !== 'box' || after.kind !== 'box') throw new Error('no box');
  expect(after.centre[0] - before.centre[0]).toBeCloseTo(1, 9);
  expect(after.centre[2] - before.centre[2]).toBeCloseTo(-0.5, 9);
});

test('arrow keys move along the axis of the car that lies nearest to their way', () => {
  const axes = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ] as const;
  expect(nearestAxis([-0.5, 0.86, 0], axes)).toEqual({ axis: 1, sense: 1 });
  expect(nearestAxis([-0.9, 0.1, 0.4], axes)).toEqual({ axis: 0, sense: -1 });
});
