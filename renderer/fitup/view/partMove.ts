import type { CarDocument, DrawnPart, Triple, Vector } from '../../../geometry/index';
import { movedShape } from '../../points/parts/partEdits';

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** As fine as a point is dragged on the bench [mm]. */
const round = (value: number): number => Math.round(value * 100) / 100 + 0;

/** A move in the car as the part's own numbers have it, to a hundredth of a millimetre. */
export const moveInFile = (moved: Vector, ways: NonNullable<DrawnPart['ways']>): Triple => [
  round(dot(moved, ways[0])),
  round(dot(moved, ways[1])),
  round(dot(moved, ways[2])),
];

/** A move of the part's own numbers as it is seen in the car. */
export const moveInCar = ([x, y, z]: Triple, ways: NonNullable<DrawnPart['ways']>): Vector => [
  x * ways[0][0] + y * ways[1][0] + z * ways[2][0],
  x * ways[0][1] + y * ways[1][1] + z * ways[2][1],
  x * ways[0][2] + y * ways[1][2] + z * ways[2][2],
];

/** The car with one of its parts moved; the same car where it has no place of its own. @param by - in the part's own numbers [mm] */
export const withMovedPart = (document: CarDocument, name: string, by: Triple, mm: number): CarDocument => {
  const part = document.parts?.[name];
  const shape = part && movedShape(part.shape, [by[0] / mm, by[1] / mm, by[2] / mm]);
  if (!part || !shape || by.every((value) => value === 0)) return document;
  return { ...document, parts: { ...document.parts, [name]: { ...part, shape } } };
};

/** Whether a part of the file has a place of its own, so that it can be moved. */
export const isMovable = (document: CarDocument, name: string): boolean => {
  const part = document.parts?.[name];
  return part !== undefined && movedShape(part.shape, [0, 0, 0]) !== null;
};

/** The car's axis that a way across the picture lies nearest to, and its sense. @param axes - of the car as the picture has them */
export const nearestAxis = (
  way: Vector,
  axes: readonly [Vector, Vector, Vector],
): { readonly axis: 0 | 1 | 2; readonly sense: 1 | -1 } => {
  const shares = axes.map((axis) => dot(axis, way));
  const axis = ([0, 1, 2] as const).reduce(
    (best, i) => (Math.abs(shares[i] ?? 0) > Math.abs(shares[best] ?? 0) + 1e-9 ? i : best),
    0 as 0 | 1 | 2,
  );
  return { axis, sense: (shares[axis] ?? 0) < 0 ? -1 : 1 };
};
