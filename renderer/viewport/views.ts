import { toRadians, type AxleName } from '../../geometry/index';
import type { Projection, Scope, ViewName } from '../state/viewing';
import { eyeAxes, STEEPEST, type Eye, type Point } from './camera';

/** What has to fit into a view, in the ground's frame [mm]. */
export interface Subject {
  readonly axle: AxleName;
  readonly scope: Scope;
  /** everything that should be seen */
  readonly points: readonly Point[];
  /** the named points alone: all that a view of lines shows */
  readonly joints: readonly Point[];
  /** of the corner that is looked at: unit vector, outboard */
  readonly spindle: Point;
  /** upward; null where the corner has none */
  readonly steeringAxis: Point | null;
}

/** Parts of the view that are kept free at its edges: tools stand at the right, labels all round. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
export const CORNER_MARGINS: Margins = { left: 0.1, right: 0.1, top: 0.09, bottom: 0.07 };
export const AXLE_MARGINS: Margins = { left: 0.06, right: 0.06, top: 0.26, bottom: 0.1 };

/** Tools of a short view stand in two rows at its right, what its wheels have in one line at its left: `viewport.css` asks the same [px]. */
const SHORT = { height: 260, width: 440, tools: 272, line: 44 } as const;

/** What is kept free for tools and labels. @param width,height - of the view [px] */
export const marginsOf = (scope: Scope, width: number, height: number): Margins => {
  if (height <= SHORT.height && width >= SHORT.width)
    return { left: 0.04, right: SHORT.tools / width, top: SHORT.line / height, bottom: 0.07 };
  return scope === 'axle' || scope === 'car' ? AXLE_MARGINS : CORNER_MARGINS;
};

const PICTURE_LENS = toRadians(22);
const FITTING_ROUNDS = 6;

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const angleOf = ([x, y, z]: Point): { azimuth: number; elevation: number } => ({
  azimuth: Math.atan2(y, x),
  elevation: Math.min(STEEPEST, Math.max(-STEEPEST, Math.atan2(z, Math.sqrt(x * x + y * y)))),
});

/** Whether the square view along the car is from behind: then left stays left, as in the tables. */
export const isFromBehind = ({ axle, scope }: Pick<Subject, 'axle' | 'scope'>): boolean =>
  axle === 'rear' || scope === 'axle' || scope === 'car';

const directionOf = (view: ViewName, subject: Subject): { azimuth: number; elevation: number } => {
  const { axle, scope, spindle, steeringAxis } = subject;
  const side = scope === 'right' ? -1 : 1;
  const away = isFromBehind(subject) ? Math.PI : 0;
  switch (view) {
    case 'corner':
      return { azimuth: side * toRadians(axle === 'front' ? 31 : 149), elevation: toRadians(axle === 'front' ? 20 : 19) };
    case 'front':
      return { azimuth: away, elevation: 0 };
    case 'side':
      return { azimuth: (side * Math.PI) / 2, elevation: 0 };
    case 'top':
      return { azimuth: Math.PI, elevation: STEEPEST };
    case 'wheel':
      return angleOf(spindle);
    case 'axis':
      return steeringAxis ? { ...angleOf(steeringAxis) } : { azimuth: Math.PI, elevation: STEEPEST };
  }
};

/** The eye that sees all points, filling what the margins leave of the view. @param aspect - width ÷ height */
export const fitEye = (
  points: readonly Point[],
  direction: { readonly azimuth: number; readonly elevation: number },
  parallel: boolean,
  aspect: number,
  margins: Margins,
): Eye => {
  const [across, upward, away] = eyeAxes(direction);
  const seen = points.map((point) => [dot(across, point), dot(upward, point), dot(away, point)] as const);
  const half = Math.tan(PICTURE_LENS / 2);
  const [wide, high] = [(1 - margins.left - margins.right) * half * aspect, (1 - margins.top - margins.bottom) * half];
  const depth = seen.reduce((sum, [, , z]) => sum + z, 0) / Math.max(1, seen.length);
  let [x, y, distance] = [0, 0, 6000];
  for (let round = 0; round < FITTING_ROUNDS; round += 1) {
    const scaled = seen.map(([px, py, z]) => {
      const near = parallel ? 1 : distance / Math.max(0.2 * distance, distance + z - depth);
      return [(px - x) * near, (py - y) * near] as const;
    });
    const [xs, ys] = [scaled.map(([px]) => px), scaled.map(([, py]) => py)];
    const [left, right, low, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    x += (left + right) / 2;
    y += (low + top) / 2;
    distance = Math.max((right - left) / 2 / wide, (top - low) / 2 / high, 100);
  }
  // The middle of what the margins leave is not the middle of the view.
  x += (margins.right - margins.left) * half * aspect * distance;
  y += (margins.top - margins.bottom) * half * distance;
  const at = (axis: 0 | 1 | 2): number => x * across[axis] + y * upward[axis] + depth * away[axis];
  return { ...direction, target: [at(0), at(1), at(2)], distance, lens: PICTURE_LENS, parallel };
};

/** The eye of a named view. @param aspect - width ÷ height of the view */
export const eyeOf = (
  view: ViewName,
  subject: Subject,
  aspect: number,
  projection: Projection,
  margins: Margins = marginsOf(subject.scope, Infinity, Infinity),
): Eye => fitEye(subject.points, directionOf(view, subject), projection === 'parallel', aspect, margins);
