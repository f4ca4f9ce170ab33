import type { Scene as ThreeScene, WebGLRenderer } from 'three';
import { MM_PER_POINT_UNIT } from '../../geometry/index';
import type { BenchState, BenchStore } from '../state/benchStore';
import { chosenUnits } from '../state/chosenUnits';
import { isPlan, projectionOf, type PointRef, type ViewName } from '../state/viewing';
import { eyePoint, zoomAt, type Eye, type Point } from './camera';
import { cardPlace, type CardPlace } from './cardPlace';
import { toCar } from './dragTarget';
import { buildHand, type Hand } from './hand';
import { overlaps, type LabelBox } from './labelPlaces';
import { buildMaterials } from './materials';
import { buildOverlay } from './overlay';
import { aimedEnd, placeOf, type OverlayContent } from './overlayContent';
import { overlayItems } from './overlayItems';
import type { OverlayItem } from './overlayTypes';
import { buildPane, type Pane } from './pane';
import { planGrid } from './planGrid';
import { isClear, ringAt, ringShare } from './ringPlace';
import { printPicture } from './printPicture';
import { overlayContent } from './sceneContent';
import { buildStage } from './stage';
import { eyeOf, marginsOf, type Margins } from './views';

/** Two views side by side have no tools at their edge, but names all round. */
const SCHEMATIC_MARGINS: Margins = { left: 0.17, right: 0.16, top: 0.16, bottom: 0.13 };
/** How far under the upper edge the words of a question stand [px]. */
const ASKED_TOP = 10;
/** Room round a point that the words of a question leave free [px]. */
const ASKED_CLEAR = 24;
/** Arms that a point is dragged by [px]. */
const ARM_PX = 72;

/** What the view's buttons and the hand on it may do. Places are px from the view's upper left. */
export interface SceneControl {
  /** Views square to the car lie side by side: they are moved and zoomed, and keep their direction. */
  readonly isPlan: () => boolean;
  /** Every view as the window framed it, whatever the person did since. */
  readonly fit: () => void;
  /** Nearer or farther; in a view square to the car about the place under the hand. */
  readonly zoom: (factor: number, at?: readonly [number, number]) => void;
  readonly turn: (change: (eye: Eye) => Eye, at?: readonly [number, number]) => void;
  readonly hand: Hand;
  /** the picture with all that is written on it, as a PNG */
  readonly print: (width: number, words: string) => Promise<Blob | null>;
}

export interface SceneTools {
  readonly store: BenchStore;
  readonly gl: WebGLRenderer;
  readonly scene: ThreeScene;
  readonly overlay: SVGSVGElement;
  /** the element that the view fills */
  readonly host: HTMLElement;
  readonly invalidate: () => void;
}

export interface RunningScene extends SceneControl {
  readonly resize: (width: number, height: number) => void;
  readonly retheme: () => void;
  readonly frame: () => void;
  readonly end: () => void;
}

const isStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Places of what stands over the view: nothing is written under it. */
const blockedBoxes = (
  host: HTMLElement,
  pane: Pane,
  isTaken: (element: Element) => boolean = () => true,
): readonly LabelBox[] => {
  const origin = host.getBoundingClientRect();
  const { x, y } = pane.box();
  return [...(host.parentElement ?? host).querySelectorAll('[data-over-view]')].filter(isTaken).map((element) => {
    const box = element.getBoundingClientRect();
    return { x: box.x - origin.x - x, y: box.y - origin.y - y, width: box.width, height: box.height };
  });
};

/** From where an eye looks: a parallel one from far off along its line of sight. */
const farEye = (eye: Eye): Point => eyePoint(eye.parallel ? { ...eye, distance: Math.max(eye.distance, 100_000) } : eye);

/** The scene behind the canvas: follows the store without React, and draws only when something moved. */
export const runScene = (tools: SceneTools): RunningScene => {
  const { store, gl, scene, overlay, host, invalidate } = tools;
  const materials = buildMaterials();
  materials.readTokens();
  const stage = buildStage(materials);
  scene.add(stage.object);
  let panes: readonly Pane[] = [];
  let [width, height] = [1, 1];
  let hovered: PointRef | null = null;
  let ring: { say: string | undefined; eye: Eye; wide: number; high: number; share: number } | null = null;

  const viewsOf = (state: BenchState): readonly ViewName[] =>
    state.viewing.layout.length > 0 ? state.viewing.layout : [state.view];

  const isParallel = ({ viewing, preferences }: BenchState, view: ViewName): boolean =>
    viewing.layout.length > 1 || projectionOf(preferences, view) === 'parallel';

  const aimPane = (pane: Pane, state: BenchState, eased?: 'eased'): void => {
    const subject = stage.subject();
    if (!subject) return;
    const schematic = state.viewing.layout.length > 1;
    const { width: wide, height: high } = pane.box();
    const aspect = wide / Math.max(1, high);
    const projection = isParallel(state, pane.view) ? 'parallel' : 'perspective';
    const margins = schematic ? SCHEMATIC_MARGINS : marginsOf(subject.scope, wide, high);
    pane.look(
      eyeOf(pane.view, schematic ? { ...subject, points: subject.joints } : subject, aspect, projection, margins),
      eased && !isStill() ? eased : undefined,
    );
  };

  const placePanes = (): void =>
    panes.forEach((pane, index) => {
      const wide = width / panes.length;
      pane.place(index * wide, 0, wide, height);
    });

  /** Panes for the views that are wanted; the bench's one pane is kept, so that its eye can travel. */
  const layPanes = (state: BenchState, newSubject: boolean, reframed: boolean): void => {
    const views = viewsOf(state);
    const same = panes.length === views.length && panes.every(({ view }, index) => view === views[index]);
    if (!same) {
      const [before] = panes;
      const from = panes.length === 1 ? (before?.eye() ?? null) : null;
      panes.forEach((pane) => pane.overlay.remove());
      panes = views.map((view) => buildPane(view, buildOverlay(overlay)));
      placePanes();
      const [first] = panes;
      if (from && first && panes.length === 1) first.look(from);
    }
    for (const pane of panes) {
      const eased = !newSubject && pane.eye() !== null && panes.length === 1 ? 'eased' : undefined;
      const isNew = !same || newSubject || !pane.eye();
      // Another lens shows the same from where the person stands.
      if (reframed && !isNew && pane.isTurned()) pane.turn((eye) => ({ ...eye, parallel: isParallel(state, pane.view) }));
      else if (isNew || reframed) aimPane(pane, state, eased);
    }
  };

  const show = (state: BenchState, before: BenchState | null): void => {
    const { newSubject } = stage.show(state);
    const reframed =
      before !== null &&
      (projectionOf(before.preferences, state.view) !== projectionOf(state.preferences, state.view) ||
        before.viewing.layout.length !== state.viewing.layout.length);
    layPanes(state, newSubject, reframed);
    stage.showSolids(state.viewing.layout.length < 2);
    invalidate();
  };

  const draw = (pane: Pane, now: number): boolean => {
    const aimed = pane.aim(now);
    const eye = pane.eye();
    if (!aimed || !eye) return false;
    const { x, y, width: wide, height: high } = pane.box();
    gl.setScissorTest(panes.length > 1);
    gl.setViewport(x, height - y - high, wide, high);
    gl.setScissor(x, height - y - high, wide, high);
    cutWheels(farEye(eye));
    stage.readGround(pane.away());
    gl.render(scene, aimed.camera);
    const content = contentOf(pane);
    if (content)
      pane.overlay.draw([...gridOf(pane, content), ...overlayItems(content)], {
        project: pane.project,
        width: wide,
        height: high,
        blocked: blockedBoxes(host, pane),
        lengthWords: content.lengthWords,
      });
    return aimed.moving;
  };

  /** Coordinates under the lines of a view that is square to the car. */
  const gridOf = (pane: Pane, { schematic, axles: [first] }: OverlayContent): readonly OverlayItem[] => {
    const eye = pane.eye();
    if (!schematic || !first || !eye) return [];
    const { width: wide, height: high } = pane.box();
    const corners = [
      [0, 0],
      [wide, 0],
      [0, high],
      [wide, high],
    ] as const;
    return planGrid({
      view: pane.view,
      frame: first.frame,
      corners: corners.map(([x, y]) => toCar(first.frame, pane.onPlane(x, y, eye.target))),
      mmPerPixel: pane.mmPerPixel(eye.target),
      mmPerUnit: MM_PER_POINT_UNIT[chosenUnits(store.getState()).length],
    });
  };

  const cutWheels = (from: Point) => new Map(stage.axles().map(({ name, model }) => [name as string, model.cutFor(from)]));

  const contentOf = (pane: Pane): OverlayContent | null => {
    const eye = pane.eye();
    if (!eye) return null;
    const state = store.getState();
    const from = farEye(eye);
    const seen = { view: pane.view, outlines: cutWheels(from), hovered, eye: from };
    const content = overlayContent(state, stage, { ...seen, arm: 1 });
    const ref = content?.chosen?.ref ?? content?.aim?.from ?? content?.range?.from;
    const at = content && ref ? placeOf(content, ref) : null;
    if (!at) return content;
    const near = overlayContent(state, stage, { ...seen, arm: ARM_PX * pane.mmPerPixel(at) });
    return near?.aim ? { ...near, aim: { ...near.aim, reach: near.aim.reach * shareInSight(pane, near, eye) } } : near;
  };

  /** Where along its line the ring of a direction stands: kept while it is dragged, chosen anew where the eye or the question is. */
  const shareInSight = (pane: Pane, content: OverlayContent, eye: Eye): number => {
    const { pick } = store.getState().viewing;
    const box = pane.box();
    const { width: wide, height: high } = box;
    if (ring?.say === pick?.say && ring?.eye === eye && ring.wide === wide && ring.high === high) return ring.share;
    const blocked = blockedBoxes(host, pane);
    ring = { say: pick?.say, eye, wide, high, share: ringShare((share) => isClear(ringAt(content, pane, share), box, blocked)) };
    return ring.share;
  };

  /** The chosen point's card goes where the point does not lie under it; not while it is dragged. */
  const keepClear = (): void => {
    const [pane] = panes;
    const card = host.closest('.viewport')?.querySelector('.pointcard');
    if (!(card instanceof HTMLElement) || !pane || panes.length > 1 || store.getState().history?.mark) return;
    const content = contentOf(pane);
    const at = content?.chosen && placeOf(content, content.chosen.ref);
    const place = at && pane.project(at);
    if (!place) return;
    const size = { width: card.offsetWidth, height: card.offsetHeight };
    const now = (card.dataset['place'] ?? 'lowerLeft') as CardPlace;
    card.dataset['place'] = cardPlace(now, [place[0], place[1]], size, { width, height });
  };

  /** What is asked for in the view goes to its foot where it would stand over the point that it is about, or under the tools. */
  const askClear = (): void => {
    const asked = host.querySelector('.asked');
    const [pane] = panes;
    if (!(asked instanceof HTMLElement) || !pane || panes.length > 1) return;
    const content = contentOf(pane);
    const places = content?.aim ? [placeOf(content, content.aim.from), aimedEnd(content)] : [];
    const { offsetWidth: wide, offsetHeight: high } = asked;
    const head = { x: (width - wide) / 2, y: ASKED_TOP, width: wide, height: high };
    const tools = blockedBoxes(host, pane, (element) => element !== asked && !element.matches('.pointcard'));
    const isOverPoint = places.some((at) => {
      const place = at && pane.project(at);
      if (!place) return false;
      return place[1] < ASKED_TOP + high + ASKED_CLEAR && Math.abs(place[0] - width / 2) < wide / 2 + ASKED_CLEAR;
    });
    asked.dataset['place'] = isOverPoint || tools.some((box) => overlaps(box, head)) ? 'foot' : 'head';
  };

  const frame = (): void => {
    const now = performance.now();
    const moving = panes.map((pane) => draw(pane, now)).includes(true);
    const { memory, programs } = gl.info;
    Object.assign(gl.domElement.dataset, {
      drawn: String(Number(gl.domElement.dataset['drawn'] ?? 0) + 1),
      // What the graphics driver holds: a test opens and closes cars and counts.
      geometries: String(memory.geometries),
      textures: String(memory.textures),
      programs: String(programs?.length ?? 0),
    });
    if (moving) invalidate();
    else {
      keepClear();
      askClear();
      // what was chosen with this frame may have made the card larger since
      requestAnimationFrame(keepClear);
    }
  };

  show(store.getState(), null);
  const leave = store.subscribe(show);
  /** The driver has given the canvas back empty: everything is handed to it anew by the next frame. */
  const onRestored = (): void => {
    stage.drawGround();
    invalidate();
  };
  gl.domElement.addEventListener('webglcontextrestored', onRestored);
  void document.fonts.ready.then(() => {
    stage.drawGround();
    invalidate();
  });

  const paneAt = (x: number, y: number): Pane | null =>
    panes.find((pane) => {
      const box = pane.box();
      return x >= box.x && x < box.x + box.width && y >= box.y && y < box.y + box.height;
    }) ?? null;
  const isPlanNow = (): boolean => isPlan(store.getState().viewing);
  /** The view under a place; by the keyboard views side by side are moved together. */
  const panesAt = (at: readonly [number, number] | undefined): readonly Pane[] =>
    at ? [paneAt(...at)].filter((pane) => pane !== null) : panes;
  const hover = (point: PointRef | null): void => {
    if (String(Object.values(point ?? {})) === String(Object.values(hovered ?? {}))) return;
    hovered = point;
    invalidate();
  };

  return {
    frame,
    hand: buildHand({ store, paneAt, content: contentOf, hover }),
    isPlan: isPlanNow,
    fit: () => {
      for (const pane of panes) aimPane(pane, store.getState());
      invalidate();
    },
    zoom: (factor, at) => {
      for (const pane of panesAt(at)) {
        const { x, y, width: wide, height: high } = pane.box();
        const [right, up] = at && isPlanNow() ? [(at[0] - x - wide / 2) / high, (high / 2 - (at[1] - y)) / high] : [0, 0];
        pane.turn((eye) => zoomAt(eye, factor, right, up));
      }
      invalidate();
    },
    turn: (change, at) => {
      for (const pane of panesAt(at)) pane.turn(change);
      invalidate();
    },
    print: (wide, words) => printPicture({ gl, host, overlay, width, height }, { wide, words }, materials.setDensity, frame),
    resize: (wide, high) => {
      if (wide === width && high === height) return;
      [width, height] = [wide, high];
      placePanes();
      for (const pane of panes) if (!pane.isTurned()) aimPane(pane, store.getState());
      invalidate();
    },
    retheme: () => {
      materials.readTokens();
      stage.drawGround();
      invalidate();
    },
    end: () => {
      leave();
      gl.domElement.removeEventListener('webglcontextrestored', onRestored);
      panes.forEach((pane) => pane.overlay.remove());
      stage.dispose();
      scene.remove(stage.object);
      materials.dispose();
    },
  };
};
