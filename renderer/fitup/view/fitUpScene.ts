import { Color, Group, Mesh, Raycaster, Scene, Vector3, WebGLRenderer, type BufferGeometry } from 'three';
import { toRadians, type Vector } from '../../../geometry/index';
import { buildAxleModel, type AxleModel } from '../../viewport/axleModel';
import { eyePoint, type Eye, type Point } from '../../viewport/camera';
import { buildMaterials, hexDigits, type Finish } from '../../viewport/materials';
import { buildOverlay, type Overlay } from '../../viewport/overlay';
import { movedItem } from '../../viewport/movedItem';
import { buildPane } from '../../viewport/pane';
import { fitEye } from '../../viewport/views';
import { drawForces, drawGap, drawLocator, marksLayer } from './drawnMarks';
import type { FitUpContent } from './fitUpContent';
import { buildPartHand, type PartGrip, type PartHand } from './partHand';
import { geometryOf } from './solidMeshes';

const LENS = toRadians(22);
const MARGINS = { left: 0.1, right: 0.1, top: 0.14, bottom: 0.14 };
/** The picture beside the picture that says where on the corner it is [px]. */
const LOCATOR = { size: 148, edge: 12 } as const;
/** The gap's part of the view's height, and least of what is shown around it [mm]. */
const GAP_SHARE = 0.12;
const LEAST_SHOWN = 170;
/** Room for the arrow of a force where the picture is aimed, so that a larger one of another case is in sight too [mm]. */
const ARROW_ROOM = 300;

const eyeTo = ([x, y, z]: Point): { azimuth: number; elevation: number } => ({
  azimuth: Math.atan2(y, x),
  elevation: Math.atan2(z, Math.sqrt(x * x + y * y)),
});

const NO_OVERLAY: Overlay = { draw: () => undefined, place: () => undefined, remove: () => undefined };

export interface FitUpScene {
  readonly show: (content: FitUpContent) => void;
  readonly turn: (change: (eye: Eye) => Eye) => void;
  /** aims anew, whatever the person did since */
  readonly fit: () => void;
  /** shows the arms of a part that is drawn, by its name, so that it can be moved; null: of none */
  readonly hold: (name: string | null) => void;
  /** draws the held part moved, in the car's frame [mm] */
  readonly shift: (moved: Vector) => void;
  /** takes hold of the held part, or of one of its arms, where the pointer is on it [px] */
  readonly grip: (x: number, y: number) => PartGrip | null;
  /** the car's axis that lies nearest to the right of the picture, or up it */
  readonly axisTo: (way: 'right' | 'up') => ReturnType<PartHand['axisTo']> | null;
  readonly resize: () => void;
  readonly retheme: () => void;
  readonly end: () => void;
}

/** One context for the life of the window: contexts of closed canvases leak. */
let shared: WebGLRenderer | null = null;
const theRenderer = (): WebGLRenderer => {
  if (shared) return shared;
  const made = new WebGLRenderer({ antialias: true, alpha: true });
  made.autoClear = false;
  return (shared = made);
};

const finishOf = (shapeKind: string | null, isHeld: boolean): Finish => {
  if (isHeld) return 'blued';
  if (shapeKind === 'tyre') return 'rubber';
  return shapeKind === 'rim' ? 'alloy' : shapeKind === null ? 'steel' : 'zinc';
};

/** The corner with its parts, the chosen ones over everything that would hide them, and what is measured between them. */
export const runFitUpScene = (host: HTMLElement, svg: SVGSVGElement, lengthWords: (mm: number) => string): FitUpScene => {
  const gl = theRenderer();
  host.prepend(gl.domElement);
  const materials = buildMaterials();
  const around = new Scene();
  const about = new Scene();
  const [aroundParts, aboutParts] = [new Group(), new Group()];
  around.add(aroundParts);
  about.add(aboutParts);
  const pane = buildPane('corner', buildOverlay(svg));
  const locator = buildPane('corner', NO_OVERLAY);
  const marks = marksLayer(svg);
  let model: AxleModel | null = null;
  let modelOf: FitUpContent['axle'] | null = null;
  let content: FitUpContent | null = null;
  let drawnParts: FitUpContent['parts'] | null = null;
  let geometries: BufferGeometry[] = [];
  let asked = 0;

  const byName = new Map<string, Mesh[]>();
  let heldName: string | null = null;
  const hand = buildPartHand(pane, () => model!.frame());
  const takeHeld = (): void => hand.hold(heldName === null || !model ? [] : (byName.get(heldName) ?? []));

  const ground = (point: Vector): Point => model?.frame().toGround(point) ?? point;

  const buildModel = (now: FitUpContent): AxleModel => {
    if (model && modelOf === now.axle) return model;
    if (model) {
      around.remove(model.object);
      model.dispose();
    }
    model = buildAxleModel(now.axle, now.placed, now.mm, materials);
    modelOf = now.axle;
    around.add(model.object);
    return model;
  };

  const buildParts = (now: FitUpContent): void => {
    geometries.forEach((geometry) => geometry.dispose());
    geometries = [];
    byName.clear();
    for (const group of [aroundParts, aboutParts]) group.clear();
    now.parts.forEach(({ name, shapeKind, shapes }) => {
      const place = now.about.indexOf(name);
      // what the picture of the corner shows anyhow is drawn again only where it is asked about
      if (place < 0 && (shapeKind === null || shapeKind === 'tyre' || shapeKind === 'rim')) return;
      const material = place < 0 ? materials.finish.body : materials.finish[finishOf(shapeKind, place === 0)];
      for (const shape of shapes) {
        const geometry = geometryOf(shape);
        geometries.push(geometry);
        const mesh = new Mesh(geometry, material);
        mesh.matrixAutoUpdate = false;
        mesh.frustumCulled = false;
        (place < 0 ? aroundParts : aboutParts).add(mesh);
        byName.set(name, [...(byName.get(name) ?? []), mesh]);
      }
    });
    takeHeld();
  };

  /** Where nothing of the two parts stands before the gap: the nearest to the way that the corner is usually looked at. */
  const sightAcross = (at: Point, way: Point, usual: { azimuth: number; elevation: number }): typeof usual => {
    const along = new Vector3(...way).normalize();
    const wanted = new Vector3(...eyePoint({ ...usual, target: [0, 0, 0], distance: 1, lens: LENS, parallel: true }));
    const first = wanted.clone().addScaledVector(along, -wanted.dot(along));
    if (first.length() < 1e-6) first.set(0, 0, 1).addScaledVector(along, -along.z);
    if (first.length() < 1e-6) first.set(1, 0, 0);
    first.normalize();
    const across = new Vector3().crossVectors(along, first);
    const from = new Vector3(...at);
    const caster = new Raycaster();
    about.updateMatrixWorld(true);
    const tries = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 7, -7, 8].map((step) => {
      const angle = (step * Math.PI) / 8;
      return first.clone().multiplyScalar(Math.cos(angle)).addScaledVector(across, Math.sin(angle));
    });
    const isFree = (direction: Vector3): boolean => {
      caster.set(from, direction);
      caster.far = 4000;
      return caster.intersectObjects(aboutParts.children, false).length === 0;
    };
    const chosen = tries.find(isFree) ?? tries[0] ?? wanted;
    return { azimuth: Math.atan2(chosen.y, chosen.x), elevation: Math.asin(Math.max(-1, Math.min(1, chosen.z))) };
  };

  const cornerPoints = (now: FitUpContent): readonly Point[] => {
    const { points, wheelCentre } = now.placed[now.side];
    const r = model?.wheelRadius ?? 300;
    const around: Vector[] = [
      [r, 0, 0],
      [-r, 0, 0],
      [0, 0, r],
      [0, 0, -r],
    ];
    const rim = around.map(([x, y, z]): Vector => [wheelCentre[0] + x, wheelCentre[1] + y, wheelCentre[2] + z]);
    const tips = now.forces.flatMap(({ at, arrow }) => {
      const size = Math.hypot(...arrow) || 1;
      return [at, at.map((value, axis) => value + (ARROW_ROOM * (arrow[axis] ?? 0)) / size) as unknown as Vector];
    });
    return [...Object.values(points), ...rim, ...tips].map(ground);
  };

  const usualWay = (now: FitUpContent): { azimuth: number; elevation: number } => ({
    azimuth: (now.side === 'left' ? 1 : -1) * toRadians(now.axleName === 'front' ? 31 : 149),
    elevation: toRadians(20),
  });

  const squareWay = (now: FitUpContent): { azimuth: number; elevation: number } => {
    switch (now.view) {
      case 'front':
        return { azimuth: now.axleName === 'front' ? 0 : Math.PI, elevation: 0 };
      case 'side':
        return { azimuth: ((now.side === 'left' ? 1 : -1) * Math.PI) / 2, elevation: 0 };
      case 'top':
        return { azimuth: Math.PI, elevation: toRadians(89.5) };
      default:
        return usualWay(now);
    }
  };

  const aim = (): void => {
    if (!content) return;
    const box = pane.box();
    const aspect = box.width / Math.max(1, box.height);
    locator.look(fitEye(cornerPoints(content), usualWay(content), false, 1, MARGINS));
    if (content.view === 'gap' && content.focus) {
      const { at, reach, square, from } = content.focus;
      const target = ground(at);
      const [zero, tip] = [ground([0, 0, 0]), square ? ground(square) : null];
      const way: Point | null = tip && [tip[0] - zero[0], tip[1] - zero[1], tip[2] - zero[2]];
      const seen = from ? ground(from) : null;
      const direction = seen
        ? eyeTo([seen[0] - zero[0], seen[1] - zero[1], seen[2] - zero[2]])
        : way
          ? sightAcross(target, way, usualWay(content))
          : usualWay(content);
      const high = Math.max(LEAST_SHOWN, reach / GAP_SHARE);
      pane.look({ ...direction, target, distance: high / (2 * Math.tan(LENS / 2)), lens: LENS, parallel: true });
      return;
    }
    pane.look(fitEye(cornerPoints(content), squareWay(content), content.view !== 'corner', aspect, MARGINS));
  };

  const draw = (): void => {
    asked = 0;
    if (!content || !model) return;
    const { width, height } = pane.box();
    const now = performance.now();
    const main = pane.aim(now);
    const eye = pane.eye();
    if (!main || !eye) return;
    gl.setScissorTest(false);
    gl.setViewport(0, 0, width, height);
    gl.clear();
    model.cutFor(eyePoint(eye.parallel ? { ...eye, distance: 100_000 } : eye));
    gl.render(around, main.camera);
    gl.clearDepth();
    gl.render(about, main.camera);
    const hasLocator = content.view === 'gap' && content.focus !== null && height > 330;
    const place = locator.box();
    const side = hasLocator ? locator.aim(now) : null;
    const away = locator.eye();
    if (side && away) {
      gl.setScissorTest(true);
      const below = height - place.y - place.height;
      gl.setScissor(place.x, below, place.width, place.height);
      gl.setViewport(place.x, below, place.width, place.height);
      gl.clear();
      model.cutFor(eyePoint(away));
      gl.render(around, side.camera);
      gl.clearDepth();
      gl.render(about, side.camera);
    }
    const blocked = [...(host.closest('.fitupview')?.querySelectorAll('[data-over-view]') ?? [])].map((element) => {
      const [box, origin] = [element.getBoundingClientRect(), host.getBoundingClientRect()];
      return { x: box.x - origin.x, y: box.y - origin.y, width: box.width, height: box.height };
    });
    if (side) blocked.push(place);
    pane.overlay.draw([...content.items.map((item) => movedItem(item, ground)), ...hand.items()], {
      project: pane.project,
      width,
      height,
      blocked,
      lengthWords: (mm) => lengthWords(mm),
    });
    marks.begin();
    // of a part that is in the hand it is not known
    if (content.gap && !hand.isShifted())
      drawGap(marks, content.gap, (point) => pane.project(ground(point)), { width, height }, blocked);
    drawForces(marks, content.forces, (point) => pane.project(ground(point)), { width, height }, blocked);
    if (side && content.focus) drawLocator(marks, place, locator.project(ground(content.focus.at)));
    marks.end();
    gl.domElement.dataset['drawn'] = String(Number(gl.domElement.dataset['drawn'] ?? 0) + 1);
    if (main.moving) request();
  };

  const request = (): void => {
    if (asked === 0) asked = requestAnimationFrame(draw);
  };

  const resize = (): void => {
    const { clientWidth: width, clientHeight: height } = host;
    if (width === 0 || height === 0) return;
    gl.setPixelRatio(Math.min(2, window.devicePixelRatio));
    gl.setSize(width, height);
    pane.place(0, 0, width, height);
    locator.place(LOCATOR.edge, height - LOCATOR.size - LOCATOR.edge, LOCATOR.size, LOCATOR.size);
    if (!pane.isTurned()) aim();
    request();
  };

  const readTokens = (): void => {
    materials.readTokens();
    const near = hexDigits(getComputedStyle(document.documentElement).getPropertyValue('--plate-near'));
    gl.setClearColor(new Color(`#${near ?? 'e1e6e4'}`), 1);
  };
  readTokens();
  const onRestored = (): void => request();
  gl.domElement.addEventListener('webglcontextrestored', onRestored);
  void document.fonts.ready.then(request);

  return {
    show: (next) => {
      const isOther = content?.subject !== next.subject || content.view !== next.view;
      const built = buildModel(next);
      built.place(next.placed, next.rack);
      built.show([next.side]);
      if (drawnParts !== next.parts || content?.about !== next.about) buildParts(next);
      drawnParts = next.parts;
      content = next;
      for (const group of [aroundParts, aboutParts]) {
        group.matrixAutoUpdate = false;
        group.matrix.copy(built.object.matrix);
        group.matrixWorldNeedsUpdate = true;
      }
      const isWheelAsked = next.parts.some(
        ({ name, shapeKind }) => next.about.includes(name) && (shapeKind === 'tyre' || shapeKind === 'rim'),
      );
      built.showWheels(!isWheelAsked);
      if (isOther) aim();
      request();
    },
    turn: (change) => {
      pane.turn(change);
      request();
    },
    fit: () => {
      aim();
      request();
    },
    hold: (name) => {
      heldName = name;
      takeHeld();
      request();
    },
    shift: (by) => {
      hand.shift(by);
      request();
    },
    grip: (x, y) => {
      const main = content && model ? pane.aim(performance.now()) : null;
      return main ? hand.grip(x, y, main.camera) : null;
    },
    axisTo: (way) => {
      const eye = pane.eye();
      return eye && model ? hand.axisTo(eye, way) : null;
    },
    resize,
    retheme: () => {
      readTokens();
      request();
    },
    end: () => {
      cancelAnimationFrame(asked);
      gl.domElement.removeEventListener('webglcontextrestored', onRestored);
      geometries.forEach((geometry) => geometry.dispose());
      model?.dispose();
      materials.dispose();
      marks.remove();
      pane.overlay.remove();
      gl.domElement.remove();
    },
  };
};
