import { fail, succeed, type Result } from '../core/result';
import { cross, dot, type Vector } from '../core/vector';

/** Where an axis of a file of coordinates points on the car. */
export type AxisWord = 'forward' | 'back' | 'left' | 'right' | 'up' | 'down';
/** Where its X, Y and Z point. */
export type FrameAxes = readonly [AxisWord, AxisWord, AxisWord];

export const AXIS_WORDS: readonly AxisWord[] = ['forward', 'back', 'left', 'right', 'up', 'down'];
/** The car's own frame. */
export const CAR_AXES: FrameAxes = ['forward', 'left', 'up'];

const DIRECTIONS: Readonly<Record<AxisWord, Vector>> = {
  forward: [1, 0, 0],
  back: [-1, 0, 0],
  left: [0, 1, 0],
  right: [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
};

/** A frame of coordinates that is at right angles to the car's: rows of the matrix that turns its numbers into the car's. */
export interface Frame {
  readonly rows: readonly [Vector, Vector, Vector];
  /** a left-handed one is a mirror image as numbers, and the same point of the car all the same */
  readonly handed: 'right' | 'left';
}

/** Two axes run along one line of the car, so that nothing measures another. */
export interface AxesFailure {
  readonly kind: 'same-line';
  readonly axes: readonly ['x' | 'y' | 'z', 'x' | 'y' | 'z'];
}

const NAMES = ['x', 'y', 'z'] as const;

/**
 * The frame of three axis words.
 *
 * Column k of the matrix is the car's direction of the file's axis k; its determinant says how the frame is handed.
 *
 * @returns the frame; or which two axes run along the same line
 */
export function frameOf(axes: FrameAxes): Result<Frame, AxesFailure> {
  const [x, y, z] = axes.map((word) => DIRECTIONS[word]);
  const pairs: readonly (readonly [0 | 1 | 2, 0 | 1 | 2])[] = [
    [0, 1],
    [0, 2],
    [1, 2],
  ];
  for (const [a, b] of pairs)
    if (dot(DIRECTIONS[axes[a]], DIRECTIONS[axes[b]]) !== 0) return fail({ kind: 'same-line', axes: [NAMES[a], NAMES[b]] });
  return succeed({
    rows: [
      [x[0], y[0], z[0]],
      [x[1], y[1], z[1]],
      [x[2], y[2], z[2]],
    ],
    handed: dot(cross(x, y), z) > 0 ? 'right' : 'left',
  });
}

const plainZero = (value: number): number => (value === 0 ? 0 : value);

/** A point of that frame as the car's frame has it, in the same unit. */
export const inCarFrame = ({ rows }: Frame, p: Vector): Vector => [
  plainZero(dot(rows[0], p)),
  plainZero(dot(rows[1], p)),
  plainZero(dot(rows[2], p)),
];
