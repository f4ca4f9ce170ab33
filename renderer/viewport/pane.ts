import { OrthographicCamera, PerspectiveCamera, Vector3, type Camera } from 'three';
import { toDegrees } from '../../geometry/index';
import type { ViewName } from '../state/viewing';
import { eyeAxes, eyePoint, lensKeeping, viewHeight, type Eye, type Point } from './camera';
import type { Overlay } from './overlay';
import { between, separation } from './points';
import type { Project } from './screenLines';

/** Depth of what is drawn before and behind the target [mm]. */
const DEPTH = 5000;
const EASING_MS = 160;

/** One view in the canvas: its place [px from the upper left], its eye and what is drawn over it. */
export interface Pane {
  readonly view: ViewName;
  readonly overlay: Overlay;
  readonly eye: () => Eye | null;
  /** Frames what the window wants seen. @param eased - the eye goes there in a moment instead of at once */
  readonly look: (eye: Eye, eased?: 'eased') => void;
  /** Changes the eye as the person has it: from now on only another `look` frames it anew. */
  readonly turn: (change: (eye: Eye) => Eye) => void;
  readonly isTurned: () => boolean;
  /** Gives the view its place. What the person framed stays in sight in a view of another shape. */
  readonly place: (x: number, y: number, width: number, height: number) => void;
  readonly box: () => { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** the camera for this frame; `moving` while the eye is on its way */
  readonly aim: (now: number) => { readonly camera: Camera; readonly moving: boolean } | null;
  /** from the ground's frame to px of the pane */
  readonly project: Project;
  /** the point under a place of the pane in the plane through a point, square to the line of sight */
  readonly onPlane: (x: number, y: number, through: Point) => Point;
  /** along the line of sight, away from the eye: unit vector in the ground's frame */
  readonly away: () => Point;
  /** how much of the car a pixel is at a point [mm] */
  readonly mmPerPixel: (at: Point) => number;
}

const smooth = (share: number): number => share * share * (3 - 2 * share);

/** From one angle to another by the shorter way round. */
const turn = (from: number, to: number, share: number): number => {
  const way = ((((to - from + Math.PI) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)) - Math.PI;
  return from + way * share;
};

export const easedEye = (from: Eye, to: Eye, share: number): Eye => {
  const mix = (a: number, b: number): number => a + (b - a) * share;
  return {
    ...to,
    target: [mix(from.target[0], to.target[0]), mix(from.target[1], to.target[1]), mix(from.target[2], to.target[2])],
    azimuth: turn(from.azimuth, to.azimuth, share),
    elevation: mix(from.elevation, to.elevation),
    distance: mix(from.distance, to.distance),
  };
};

export const buildPane = (view: ViewName, overlay: Overlay): Pane => {
  const perspective = new PerspectiveCamera();
  const parallel = new OrthographicCamera();
  const scratch = new Vector3();
  let camera: Camera = perspective;
  let eye: Eye | null = null;
  let way: { readonly from: Eye; readonly start: number } | null = null;
  let box = { x: 0, y: 0, width: 1, height: 1 };
  const aspectNow = (): number => box.width / Math.max(1, box.height);
  /** lens and shape of the view that the eye was last framed with */
  let framed = { lens: 0, aspect: 1 };
  let turned = false;

  const set = (now: Eye): void => {
    const aspect = aspectNow();
    // A parallel eye stands back far enough that nothing is behind it.
    const distance = now.parallel ? Math.max(now.distance, DEPTH) : now.distance;
    const used = now.parallel ? parallel : perspective;
    used.near = Math.max(20, distance - DEPTH);
    used.far = distance + DEPTH;
    used.up.set(0, 0, 1);
    used.position.set(...eyePoint({ ...now, distance }));
    used.lookAt(...now.target);
    if (now.parallel) {
      const half = viewHeight(now) / 2;
      [parallel.top, parallel.bottom, parallel.left, parallel.right] = [half, -half, -half * aspect, half * aspect];
    } else {
      perspective.fov = toDegrees(now.lens);
      perspective.aspect = aspect;
    }
    used.updateProjectionMatrix();
    used.updateMatrixWorld();
    camera = used;
  };

  const project: Project = (point) => {
    scratch.set(point[0], point[1], point[2]).project(camera);
    if (Math.abs(scratch.z) > 1) return null;
    const [x, y] = [((scratch.x + 1) / 2) * box.width, ((1 - scratch.y) / 2) * box.height];
    const { x: cx, y: cy, z: cz } = camera.position;
    const [dx, dy, dz] = [point[0] - cx, point[1] - cy, point[2] - cz];
    return [x, y, Math.sqrt(dx * dx + dy * dy + dz * dz)];
  };

  const unproject = (x: number, y: number, depth: number): Point => {
    scratch.set((x / box.width) * 2 - 1, 1 - (y / box.height) * 2, depth).unproject(camera);
    return [scratch.x, scratch.y, scratch.z];
  };

  const awayNow = (): Point => (eye ? eyeAxes(eye)[2] : [1, 0, 0]);

  const onPlane = (x: number, y: number, through: Point): Point => {
    const [near, far] = [unproject(x, y, -1), unproject(x, y, 1)];
    const away = awayNow();
    const depth = (to: Point): number => (to[0] - near[0]) * away[0] + (to[1] - near[1]) * away[1] + (to[2] - near[2]) * away[2];
    return between(near, far, depth(through) / depth(far));
  };

  return {
    view,
    overlay,
    eye: () => eye,
    look: (to, eased) => {
      way = eased && eye ? { from: eye, start: performance.now() } : null;
      eye = to;
      framed = { lens: to.lens, aspect: aspectNow() };
      turned = false;
    },
    turn: (change) => {
      if (!eye) return;
      way = null;
      eye = change(eye);
      turned = true;
    },
    isTurned: () => turned,
    place: (x, y, width, height) => {
      box = { x, y, width, height };
      if (eye && turned) eye = { ...eye, lens: lensKeeping(framed.lens, framed.aspect, aspectNow()) };
      overlay.place(x, y, width, height);
    },
    box: () => box,
    aim: (now) => {
      if (!eye) return null;
      const share = way ? Math.min(1, (now - way.start) / EASING_MS) : 1;
      set(way && share < 1 ? easedEye(way.from, eye, smooth(share)) : eye);
      if (share >= 1) way = null;
      return { camera, moving: way !== null };
    },
    project,
    onPlane,
    away: awayNow,
    mmPerPixel: (at) => {
      const place = project(at);
      return place ? separation(onPlane(place[0], place[1], at), onPlane(place[0] + 1, place[1], at)) : 1;
    },
  };
};
