import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rigidFit, type RigidFit } from '../../../geometry/index';
import { moved } from '../../../geometry/points/rigidFit';
import { turnAbout } from '../../../geometry/core/rotation';
import { add, unit, type Vector } from '../../../geometry/core/vector';

const fitOf = (from: readonly Vector[], to: readonly Vector[]): RigidFit => {
  const fit = rigidFit(from, to);
  if (!fit.ok) throw new Error(fit.failure.kind);
  return fit.value;
};
const failureOf = (from: readonly Vector[], to: readonly Vector[]) => {
  const fit = rigidFit(from, to);
  return fit.ok ? null : fit.failure;
};
const mirrorY = ([x, y, z]: Vector): Vector => [x, -y, z];

/** The exact rotation ⅓[[2,−1,2],[2,2,−1],[−1,2,2]] and a plain shift: a closed case. */
const A: readonly Vector[] = [
  [0, 0, 0],
  [300, 0, 0],
  [0, 400, 0],
  [0, 0, 500],
];
const B: readonly Vector[] = [
  [100, -50, 30],
  [300, 150, -70],
  [100 - 400 / 3, -50 + 800 / 3, 30 + 800 / 3],
  [100 + 1000 / 3, -50 - 500 / 3, 30 + 1000 / 3],
];

describe('closed cases', () => {
  test('an exact rotation of thirds and its shift come back', () => {
    const fit = fitOf(A, B);
    const thirds = [
      [2, -1, 2],
      [2, 2, -1],
      [-1, 2, 2],
    ];
    fit.rotation.forEach((row, i) => row.forEach((value, k) => expect(value).toBeCloseTo(thirds[i][k] / 3, 12)));
    [100, -50, 30].forEach((value, i) => expect(fit.translation[i]).toBeCloseTo(value, 9));
    expect(fit.rms).toBeLessThan(1e-9);
    expect(fit.size).toBeCloseTo(1, 12);
    expect(fit.planar).toBe(false);
  });

  // The figures of an independent program for the same points: scipy 1.17 Rotation.align_vectors on the centred sets.
  test('with errors on the points: rotation, shift, residuals and rms of another program', () => {
    const errors: readonly Vector[] = [
      [1, 0, 0],
      [-1, 1, 0],
      [0, -1, 2],
      [0, 0, -2],
    ];
    const fit = fitOf(
      A,
      B.map((b, i) => add(b, errors[i])),
    );
    const rotation = [
      [0.664636333, -0.332997626, 0.668858076],
      [0.669331313, 0.663185905, -0.334932903],
      [-0.332045387, 0.67029623, 0.663663186],
    ];
    fit.rotation.forEach((row, i) => row.forEach((value, k) => expect(value).toBeCloseTo(rotation[i][k], 8)));
    [99.844778107, -49.65182609, 29.915882747].forEach((value, i) => expect(fit.translation[i]).toBeCloseTo(value, 7));
    [1.209478568, 0.410713309, 0.634175679, 1.122485822].forEach((value, i) => expect(fit.residuals[i]).toBeCloseTo(value, 8));
    expect(fit.rms).toBeCloseTo(0.9074245202, 8);
  });

  // S. Umeyama, IEEE PAMI 13(4), 1991: the triangle of its example and its mirror image, read in public copies. In the plane a
  // proper rotation must be forced; in three dimensions the triangle turns over and fits.
  test('a mirrored triangle turns over and fits, and is said to be plane', () => {
    const fit = fitOf(
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 2, 0],
      ],
      [
        [0, 0, 0],
        [-1, 0, 0],
        [0, 2, 0],
      ],
    );
    expect(fit.rms).toBeLessThan(1e-12);
    expect(fit.planar).toBe(true);
    [
      [-1, 0, 0],
      [0, 1, 0],
      [0, 0, -1],
    ].forEach((row, i) => row.forEach((value, k) => expect(fit.rotation[i][k]).toBeCloseTo(value, 12)));
  });

  test('a mirrored set is refused, with what it misses by either way', () => {
    const failure = failureOf(A, A.map(mirrorY));
    expect(failure).toMatchObject({ kind: 'mirrored' });
    // √(n·) of the smallest singular value of the centred set: 182.242… by the same independent route
    expect(failure?.kind === 'mirrored' && failure.rms).toBeCloseTo(182.242150027, 7);
    expect(failure?.kind === 'mirrored' && failure.mirroredRms).toBeLessThan(1e-4);
  });

  test('points on a line, or all but, are refused; three off it are enough', () => {
    const line: readonly Vector[] = [
      [0, 0, 0],
      [100, 200, 200],
      [200, 400, 400],
    ];
    expect(failureOf(line, line)).toMatchObject({ kind: 'collinear', set: 'from' });
    const nearly: readonly Vector[] = [
      [0, 0, 0],
      [500, 0, 0],
      [1000, 1, 0],
    ];
    expect(failureOf(nearly, nearly)).toMatchObject({ kind: 'collinear' });
    const corner: readonly Vector[] = [
      [0, 0, 0],
      [300, 0, 0],
      [0, 400, 0],
    ];
    expect(fitOf(corner, corner).rms).toBeLessThan(1e-9);
    expect(failureOf(corner.slice(1), corner.slice(1))).toEqual({ kind: 'too-few', count: 2 });
    expect(() => rigidFit(corner, line.slice(1))).toThrow(RangeError);
  });

  test('a list in inches read as millimetres says how much too small it is', () => {
    expect(
      fitOf(
        A.map(([x, y, z]): Vector => [x / 25.4, y / 25.4, z / 25.4]),
        B,
      ).size,
    ).toBeCloseTo(25.4, 9);
  });
});

describe('laws', () => {
  const coordinate = fc.double({ min: -1000, max: 1000, noNaN: true });
  const vector = fc.tuple(coordinate, coordinate, coordinate);
  const motion = fc.record({
    axis: vector.filter(([x, y, z]) => x * x + y * y + z * z > 1),
    angle: fc.double({ min: -3.14, max: 3.14, noNaN: true }),
    shift: vector,
  });
  /** A body of 500 mm with a few more points anywhere: never near a line or a plane. */
  const sets = fc.array(vector, { maxLength: 6 }).map((more): readonly Vector[] => [...A, ...more]);

  test('a moved set gives its motion back within 1e-9', () => {
    fc.assert(
      fc.property(sets, motion, (points, { axis, angle, shift }) => {
        const to = points.map((p) => add(turnAbout(p, unit(axis), angle), shift));
        const fit = fitOf(points, to);
        fit.residuals.forEach((r) => expect(r).toBeLessThan(1e-9));
        for (const basis of [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ] as const) {
          const wanted = turnAbout(basis, unit(axis), angle);
          fit.rotation.forEach((row, i) =>
            expect(Math.abs(row[0] * basis[0] + row[1] * basis[1] + row[2] * basis[2] - wanted[i])).toBeLessThan(1e-9),
          );
        }
        fit.translation.forEach((value, i) => expect(Math.abs(value - shift[i])).toBeLessThan(1e-9));
      }),
      { seed: 1987, numRuns: 300 },
    );
  });

  test('no small turn of the fit lowers the sum of squares', () => {
    fc.assert(
      fc.property(
        sets,
        motion,
        fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 10, maxLength: 10 }),
        (points, { axis, angle, shift }, noise) => {
          const to = points.map((p, i) =>
            add(add(turnAbout(p, unit(axis), angle), shift), noise[i].map((v) => v / 200) as unknown as Vector),
          );
          const fit = fitOf(points, to);
          const sum = (change: (p: Vector) => Vector): number =>
            points.reduce((total, p, i) => {
              const q = change(moved(fit, p));
              return total + q.reduce((s, v, k) => s + (v - to[i][k]) * (v - to[i][k]), 0);
            }, 0);
          const least = sum((p) => p);
          for (const about of [
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
          ] as const)
            for (const by of [1e-3, -1e-3]) {
              expect(sum((p) => turnAbout(p, about, by))).toBeGreaterThanOrEqual(least - 1e-6);
              expect(sum((p) => add(p, about.map((v) => v * by * 10) as unknown as Vector))).toBeGreaterThanOrEqual(least - 1e-6);
            }
        },
      ),
      { seed: 1991, numRuns: 100 },
    );
  });
});
