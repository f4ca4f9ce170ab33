import { toRadians } from '../../geometry/index';

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
  /** lines of sight are parallel: the view is as high everywhere as it is at the target */
  readonly parallel: boolean;
}

/** The steepest look down: from right above, the view would not know which way is up. */
export const STEEPEST = toRadians(89.5);

/** The eye's own axes: to the right of the view, up it, and away from the eye. */
export const eyeAxes = ({ azimuth, elevation }: Pick<Eye, 'azimuth' | 'elevation'>): readonly [Point, Point, Point] => {
  const [sa, ca, se, ce] = [Math.sin(azimuth), Math.cos(azimuth), Math.sin(elevation), Math.cos(elevation)];
  return [
    [-sa, ca, 0],
    [-se * ca, -se * sa, ce],
    [-ce * ca, -ce * sa, -se],
  ];
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
  elevation: Math.min(STEEPEST, Math.max(-STEEPEST, eye.elevation + up)),
});

const NEAREST = 150;
const FARTHEST = 300_000;

/** The eye nearer (factor under 1) or farther. */
export const zoom = (eye: Eye, factor: number): Eye => ({
  ...eye,
  distance: Math.min(FARTHEST, Math.max(NEAREST, eye.distance * factor)),
});

/** The same about a place of the view, which stays where it is. @param right,up - of that place from the middle, parts of the view's height */
export const zoomAt = (eye: Eye, factor: number, right: number, up: number): Eye => {
  const zoomed = zoom(eye, factor);
  const left = 1 - zoomed.distance / eye.distance;
  return { ...zoomed, target: pan(eye, right * left, up * left).target };
};

/** The eye and its target moved across the view. @param right,up - parts of the view's height */
export const pan = (eye: Eye, right: number, up: number): Eye => {
  const height = viewHeight(eye);
  const [across, upward] = eyeAxes(eye);
  const [r, u] = [right * height, up * height];
  const [x, y, z] = eye.target;
  return {
    ...eye,
    target: [x + r * across[0] + u * upward[0], y + r * across[1] + u * upward[1], z + r * across[2] + u * upward[2]],
  };
};

/** How much of the car the view is high at its target [mm]. */
export const viewHeight = ({ distance, lens }: Eye): number => 2 * distance * Math.tan(lens / 2);

/**
 * The lens that still shows what was framed with another shape of the view: never less of it across, never less up and down.
 * @param lens - whole angle over the height that it was framed with [rad]
 * @param framed,aspect - width ÷ height of the view then and now
 */
export const lensKeeping = (lens: number, framed: number, aspect: number): number =>
  2 * Math.atan(Math.tan(lens / 2) * Math.max(1, framed / aspect));

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
