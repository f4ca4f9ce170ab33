import { choosePoint } from '../state/actions/viewing';
import type { BenchStore } from '../state/benchStore';
import { isPlan, type PointRef } from '../state/viewing';
import { toCar } from './dragTarget';
import { jointAt } from './joints';
import { aimedEnd, placeOf, type OverlayContent } from './overlayContent';
import type { Pane } from './pane';
import { beginPointDrag, wayToDrag, type AxisName, type PointDrag } from './pointDrag';
import { AXES, armsOf } from './pointItems';
import { direction, separation, type Point } from './points';

/** What the pointer can do to the joints in the view. Places are px from the view's upper left. */
export interface Hand {
  /** Names the joint under the pointer; true where there is one. */
  readonly hover: (x: number, y: number) => boolean;
  /** Chooses the joint under the pointer, or hands it to the page that asked for one; false where there is none. */
  readonly click: (x: number, y: number) => boolean;
  /**
   * Takes hold of the chosen point, of one of its arms, or of the ring of a direction; beside the coordinates of any point. Null
   * where the eye is to be turned.
   */
  readonly grip: (x: number, y: number) => PointDrag | null;
}

export interface HandTools {
  readonly store: BenchStore;
  readonly paneAt: (x: number, y: number) => Pane | null;
  readonly content: (pane: Pane) => OverlayContent | null;
  readonly hover: (point: PointRef | null) => void;
}

const REACH = 14;

const isNear = (pane: Pane, at: Point, x: number, y: number): boolean => {
  const place = pane.project(at);
  return place !== null && Math.abs(place[0] - x) <= REACH && Math.abs(place[1] - y) <= REACH;
};

export const buildHand = ({ store, paneAt, content: contentOf, hover }: HandTools): Hand => {
  /** The pane under a place, what it shows, and the place in it. */
  const under = (x: number, y: number) => {
    const pane = paneAt(x, y);
    const content = pane && contentOf(pane);
    return pane && content ? { pane, content, x: x - pane.box().x, y: y - pane.box().y } : null;
  };

  const gripAim = (pane: Pane, content: OverlayContent, x: number, y: number): PointDrag | null => {
    const { pick } = store.getState().viewing;
    const { aim } = content;
    const frame = content.axles.find(({ name }) => name === aim?.from.axle)?.frame;
    const from = aim && placeOf(content, aim.from);
    if (!aim || !from || !frame || pick?.kind !== 'direction') return null;
    const end = aimedEnd(content);
    if (!end || !isNear(pane, end, x, y)) return null;
    const before = aim.direction;
    let latest = before;
    pick.onAimed(latest, 'begin');
    return {
      to: (px, py, axis) => {
        const line = AXES.find(({ name }) => name === axis);
        const to = pane.onPlane(px, py, end);
        if (!line && separation(to, from) < 1) return;
        const [tail, tip] = aim.reach < 0 ? [to, from] : [from, to];
        latest = line ? line.direction : direction(toCar(frame, tail), toCar(frame, tip));
        pick.onAimed(latest, 'move');
      },
      end: () => pick.onAimed(latest, 'end'),
      abandon: () => pick.onAimed(before, 'end'),
    };
  };

  /** Whether a place is on the chosen point or on one of its arms. */
  const isOver = (pane: Pane, content: OverlayContent, ref: PointRef, x: number, y: number): boolean => {
    const at = placeOf(content, ref);
    return (at !== null && isNear(pane, at, x, y)) || armsOf(content).some(({ end }) => isNear(pane, end, x, y));
  };

  /** In the pictures beside the coordinates the point with the ring is taken hold of, chosen or not. */
  const ringed = (found: NonNullable<ReturnType<typeof under>>): PointRef | null => {
    const { viewing } = store.getState();
    if (!isPlan(viewing) || viewing.pick !== null) return null;
    return jointAt(found.content, found.pane.project, found.x, found.y);
  };

  return {
    hover: (x, y) => {
      const found = under(x, y);
      const ref = found && jointAt(found.content, found.pane.project, found.x, found.y);
      hover(ref);
      return ref !== null;
    },
    click: (x, y) => {
      const found = under(x, y);
      const ref = found && jointAt(found.content, found.pane.project, found.x, found.y);
      if (!ref) return false;
      const { pick } = store.getState().viewing;
      if (pick?.kind === 'point') pick.onPicked(ref);
      else choosePoint(store, ref);
      return true;
    },
    grip: (x, y) => {
      const found = under(x, y);
      if (!found) return null;
      const { pane, content } = found;
      if (content.aim) return gripAim(pane, content, found.x, found.y);
      const own = content.chosen?.ref;
      const chosen = own && isOver(pane, content, own, found.x, found.y) ? own : (ringed(found) ?? own);
      const at = chosen && placeOf(content, chosen);
      const frame = content.axles.find(({ name }) => name === chosen?.axle)?.frame;
      if (!chosen || !at || !frame) return null;
      const way = wayToDrag(store, chosen);
      if (way.kind === 'ask') return null;
      const held = (chosen === own ? armsOf(content) : []).find(({ end }) => isNear(pane, end, found.x, found.y));
      if (!held && !isNear(pane, at, found.x, found.y)) return null;
      const drag = beginPointDrag(store, chosen, way, pane, frame, at, [found.x, found.y]);
      if (chosen !== own) choosePoint(store, chosen);
      const locked: AxisName | null = held?.name ?? null;
      return { ...drag, to: (px, py, axis) => drag.to(px - pane.box().x, py - pane.box().y, axis ?? locked) };
    },
  };
};
