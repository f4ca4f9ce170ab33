import { toRadians, type AxleName } from '../../geometry/index';
import type { ViewName } from '../state/benchStore';

export type Point = readonly [number, number, number];

/** Where the eye is: it turns about a target. Angles in radians, lengths in mm, axes of the car: X forward, Y left, Z up. */
export interface Eye {
  readonly target: Point;
  /** from X towards Y */
  readonly azimuth: number;
  readonly elevation: number;
  readonly distance: number;
  /** the lens's whole angle over the height of the view */
  readonly lens: number;
}

/** What has to fit into a view. */
export interface Subject {
  readonly axle: AxleName;
  /** where the left wheel stands on the ground */
  readonly left: Point;
  readonly halfTrack: number;
  /** height of the tallest part over the ground */
  readonly height: number;
  readonly wheelRadius: number;
}

/** A lens for pictures, and one so long that the view is as good as parallel, for the views square to the car. */
const PICTURE_LENS = toRadians(22);
const LONG_LENS = toRadians(4);
const STEEPEST = toRadians(89);

/** Distance at which `width` × `height` [mm] square to the view fill it. */
const distanceFor = (width: number, height: number, aspect: number, lens: number): number =>
  Math.max(height, width / aspect) / 2 / Math.tan(lens / 2);

const square = (azimuth: number, elevation: number, target: Point, width: number, height: number, aspect: number): Eye => ({
  target,
  azimuth,
  elevation,
  lens: LONG_LENS,
  distance: distanceFor(width, height, aspect, LONG_LENS),
});

/**
 * The eye of a named view.
 * @param aspect - width ÷ height of the view
 */
export const eyeOf = (view: ViewName, subject: Subject, aspect: number): Eye => {
  const { left, halfTrack, height, axle, wheelRadius } = subject;
  const [x, y] = left;
  const middle = height / 2;
  const away = axle === 'front' ? 0 : Math.PI;
  switch (view) {
    case 'corner': {
      const azimuth = toRadians(axle === 'front' ? 31 : 149);
      const size = Math.max(height, 2 * wheelRadius) * 1.32;
      return {
        target: [x, y - 0.3 * halfTrack, middle * 0.94],
        azimuth,
        elevation: toRadians(axle === 'front' ? 20 : 19),
        lens: PICTURE_LENS,
        distance: distanceFor(size * 0.98, size, aspect, PICTURE_LENS),
      };
    }
    case 'front':
      return square(away, 0, [x, 0, middle], 2 * halfTrack + 420, height + 260, aspect);
    case 'side':
      return square(Math.PI / 2, 0, [x, y, middle], 3.2 * wheelRadius, height + 220, aspect);
    case 'top':
      return square(away, STEEPEST, [x, 0, 0], 2 * halfTrack + 420, 3 * wheelRadius, aspect);
  }
};

/** Where the eye stands. */
export const eyePoint = ({ target, azimuth, elevation, distance }: Eye): Point => {
  const level = distance * Math.cos(elevation);
  return [
    target[0] + level * Math.cos(azimuth),
    target[1] + level * Math.sin(azimuth),
    target[2] + distance * Math.sin(elevation),
  ];
};

/** The eye turned about its target. @param right,up - radians */
export const orbit = (eye: Eye, right: number, up: number): Eye => ({
  ...eye,
  azimuth: eye.azimuth + right,
  elevation: Math.min(STEEPEST, Math.max(-toRadians(10), eye.elevation + up)),
});

const NEAREST = 150;
const FARTHEST = 300_000;

/** The eye nearer (factor under 1) or farther. */
export const zoom = (eye: Eye, factor: number): Eye => ({
  ...eye,
  distance: Math.min(FARTHEST, Math.max(NEAREST, eye.distance * factor)),
});

/** The eye and its target moved across the view. @param right,up - parts of the view's height */
export const pan = (eye: Eye, right: number, up: number): Eye => {
  const height = 2 * eye.distance * Math.tan(eye.lens / 2);
  const [sa, ca] = [Math.sin(eye.azimuth), Math.cos(eye.azimuth)];
  const [se, ce] = [Math.sin(eye.elevation), Math.cos(eye.elevation)];
  const [r, u] = [right * height, up * height];
  return {
    ...eye,
    target: [eye.target[0] - r * sa - u * se * ca, eye.target[1] + r * ca - u * se * sa, eye.target[2] + u * ce],
  };
};

/** Which half of a wheel is taken away so that what is behind it is seen: the one nearest the eye, or its solid altogether. */
export type WheelCut = 'fore' | 'aft' | 'above' | 'outline';

const FLAT_ON = Math.cos(toRadians(68));
const FROM_ABOVE = Math.sin(toRadians(62));

/** @param eye - direction from the wheel to the eye, any length; the spindle lies along Y */
export const wheelCutFor = (eye: Point): WheelCut => {
  const [x, , z] = eye;
  const length = Math.sqrt(eye[0] * eye[0] + eye[1] * eye[1] + eye[2] * eye[2]);
  const across = Math.sqrt(x * x + z * z) / length;
  if (across < FLAT_ON) return 'outline';
  if (z / length > FROM_ABOVE) return 'above';
  return x >= 0 ? 'fore' : 'aft';
};
