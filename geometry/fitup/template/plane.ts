import type { SideName } from '../../car/document';
import { toRadians } from '../../core/angle';
import { plainNumber } from '../../words/plainNumber';
import { cross, dot, length, reject, scale, subtract, unit, type Vector } from '../../core/vector';

/** A plane with the axes of the paper that lies in it. Car frame, mm. */
export interface PaperPlane {
  /** the paper's origin */
  readonly point: Vector;
  /** towards who reads the paper; of length 1 */
  readonly normal: Vector;
  /** to the right and up on the paper; of length 1, right × up = normal */
  readonly right: Vector;
  readonly up: Vector;
}

/** What is wrong with a plane as given. */
export interface BadPlane {
  readonly fault: 'plane-numbers' | 'plane-normal';
  readonly message: string;
}

/** Directions of the car that the paper is held by. */
export type Direction = 'FRONT' | 'UP' | 'OUTBOARD';

export interface PaperArrow {
  readonly direction: Direction;
  /** the direction's share to the right, up, and towards the reader; of length 1 */
  readonly right: number;
  readonly up: number;
  readonly towards: number;
  /** how it is drawn: as an arrow in the paper, or as one that is seen end on */
  readonly seen: 'along' | 'towards' | 'away';
}

const FORWARD: Vector = [1, 0, 0];
const UPWARD: Vector = [0, 0, 1];
const LEFTWARD: Vector = [0, 1, 0];

/** Nearer than this to the normal (the sine of 5°), a direction says nothing on the paper that could be held against a car. */
const END_ON = Math.sin(toRadians(5));

/**
 * The plane through a point, square to a normal, read from where the normal points. The car's up is up on the paper; on a plane
 * that lies flat its front is.
 * @param numbers - point and normal: px, py, pz [mm], nx, ny, nz of any length but zero
 */
export function paperPlane(numbers: readonly number[]): PaperPlane | BadPlane {
  if (numbers.length !== 6 || !numbers.every(Number.isFinite))
    return {
      fault: 'plane-numbers',
      message: 'a plane is six numbers: a point on it in mm and its normal, px,py,pz,nx,ny,nz',
    };
  const [px, py, pz, ...rest] = numbers;
  const largest = Math.max(...rest.map(Math.abs));
  if (largest === 0)
    return {
      fault: 'plane-normal',
      message: 'the normal of the plane, its last three numbers, has no length: 0,1,0 looks across the car',
    };
  // divided first: the square of a very small or large number is none
  const normal = unit([rest[0] / largest, rest[1] / largest, rest[2] / largest]);
  const onPaper = reject(UPWARD, normal);
  const up = unit(length(onPaper) > END_ON ? onPaper : reject(FORWARD, normal));
  return { point: [px, py, pz], normal, right: cross(up, normal), up };
}

/** Where a point stands on the paper, and how far it is off it, + towards the reader [mm]. */
export function onPaper(
  { point, normal, right, up }: PaperPlane,
  p: Vector,
): { readonly at: readonly [number, number]; readonly off: number } {
  const from = subtract(p, point);
  return { at: [dot(from, right), dot(from, up)], off: dot(from, normal) };
}

/** Nearer than this to an axis of the car, a normal is that axis. */
const ALONG = 1 - 1e-9;

/** Where the paper is read from, in the words of who stands beside the car; else its direction in the car frame. */
export function seenFrom({ normal }: Pick<PaperPlane, 'normal'>): string {
  const ends = [
    ['from the front', 'from behind'],
    ['from the left', 'from the right'],
    ['from above', 'from below'],
  ] as const;
  for (const i of [0, 1, 2] as const) if (Math.abs(normal[i]) > ALONG) return `seen ${ends[i][normal[i] > 0 ? 0 : 1]}`;
  return `seen from where the normal points, ${normal.map(plainNumber).join(', ')}`;
}

/** FRONT, UP and OUTBOARD as the paper shows them. @param side - of the car, which OUTBOARD is of */
export function paperArrows({ normal, right, up }: PaperPlane, side: SideName): readonly PaperArrow[] {
  const ways: readonly (readonly [Direction, Vector])[] = [
    ['FRONT', FORWARD],
    ['UP', UPWARD],
    ['OUTBOARD', side === 'left' ? LEFTWARD : scale(LEFTWARD, -1)],
  ];
  return ways.map(([direction, way]) => {
    const towards = dot(way, normal);
    const isAlong = length(reject(way, normal)) > END_ON;
    return {
      direction,
      right: dot(way, right),
      up: dot(way, up),
      towards,
      seen: isAlong ? 'along' : towards > 0 ? 'towards' : 'away',
    };
  });
}
