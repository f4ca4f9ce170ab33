import { nameOfKey } from '../adjusters/fitterWords';
import { nearestMark } from '../compute/adjusterSteps';
import { nearestSetting } from '../compute/nearestSetting';
import { placeSetup } from '../compute/placeSetup';
import { movePoint } from '../state/actions/editCar';
import { abandonTurn, beginTurn, endTurn, turnAdjuster } from '../state/actions/editSetup';
import type { BenchStore } from '../state/benchStore';
import { isApart, settingOf, setupNamed, withSetting, withSetup } from '../state/settings';
import { isPlan, type PointRef } from '../state/viewing';
import { mmPerFileUnit } from '../units/fileLength';
import { alongAxis, inPlane, isAtEye, moveAtDesign, roundedPlace, toCar } from './dragTarget';
import { clockToward } from './clockToward';
import type { GroundFrame } from './groundFrame';
import { adjustersMoving, isOnKnuckle } from './joints';
import { turnedToGround } from './overlayContent';
import type { Pane } from './pane';
import { AXES } from './pointItems';
import { along, separation, type Point } from './points';

export type AxisName = 'x' | 'y' | 'z';

/** A drag of a point: follows the hand, is one undo step when it ends, and leaves nothing when it is abandoned. */
export interface PointDrag {
  /** @param axis - the car's axis that the point stays on; null: anywhere in the view's plane */
  readonly to: (x: number, y: number, axis: AxisName | null) => void;
  readonly end: () => void;
  readonly abandon: () => void;
}

/** How a point can be dragged: by the adjuster that moves it, or itself once the person agreed. */
export type DragWay =
  { readonly kind: 'adjuster'; readonly name: string } | { readonly kind: 'point' } | { readonly kind: 'ask' };

/** The adjuster in hand goes before others that move the same point. In the pictures beside the coordinates these are what is moved. */
export const wayToDrag = (store: BenchStore, { axle: axleName, point }: PointRef): DragWay => {
  const { history, held, axle: onBench, viewing } = store.getState();
  const axle = history?.present.document[axleName];
  if (!history || !axle) return { kind: 'ask' };
  if (isPlan(viewing)) return { kind: 'point' };
  const setup = setupNamed(history.present.document, history.present.setup);
  // Only the axle on the bench can be adjusted: its cards are the ones that are seen to turn.
  const moving = axleName === onBench ? adjustersMoving(axle, point, setup[axleName]?.setToe !== undefined) : [];
  const [first] = moving;
  if (first !== undefined) return { kind: 'adjuster', name: held !== null && moving.includes(held) ? held : first };
  return viewing.mayMove ? { kind: 'point' } : { kind: 'ask' };
};

/** Where the hand wants the point: in the ground's frame, counted from where the drag took hold of it. */
const targetOf = (
  pane: Pane,
  frame: GroundFrame,
  start: Point,
  grip: Point,
  x: number,
  y: number,
  axis: AxisName | null,
): Point => {
  const hand = pane.onPlane(x, y, start);
  const to: Point = [start[0] + hand[0] - grip[0], start[1] + hand[1] - grip[1], start[2] + hand[2] - grip[2]];
  const away = pane.away();
  const line = AXES.find(({ name }) => name === axis);
  if (!line) {
    const axes = AXES.map(({ direction }) => turnedToGround(frame, direction));
    const [dx, dy, dz] = inPlane([to[0] - start[0], to[1] - start[1], to[2] - start[2]], axes, away);
    return [start[0] + dx, start[1] + dy, start[2] + dz];
  }
  const direction = turnedToGround(frame, line.direction);
  if (isAtEye(direction, away)) return start;
  const [from, beside, place] = [pane.project(start), pane.project(along(start, direction, 1)), pane.project(to)];
  return from && beside && place ? alongAxis(start, direction, [from, beside], [place[0], place[1]]) : start;
};

const moveItself = (store: BenchStore, ref: PointRef, frame: GroundFrame, start: Point): ((target: Point) => void) => {
  const { history, shown } = store.getState();
  const document = history?.present.document;
  const axle = document?.[ref.axle];
  const own = axle?.right?.points?.[ref.point];
  const design = ref.side === 'right' && own ? own : axle?.points[ref.point];
  if (!document || !axle || !design) return () => undefined;
  const mm = mmPerFileUnit(document);
  const rotation = isOnKnuckle(axle, ref.point) && shown ? shown.row.placed[ref.side].rotation : null;
  const mirrored = ref.side === 'right' && !own;
  const from = toCar(frame, start);
  return (target) => {
    const to = toCar(frame, target);
    const [dx, dy, dz] = moveAtDesign([to[0] - from[0], to[1] - from[1], to[2] - from[2]], rotation);
    const place = roundedPlace([design[0] * mm + dx, design[1] * mm + (mirrored ? -dy : dy), design[2] * mm + dz], mm);
    movePoint(store, ref.axle, mirrored ? 'left' : ref.side, ref.point, place, `Move ${nameOfKey(ref.point).toLowerCase()}`);
  };
};

/** Pulled less than this, a bushing's hole points nowhere [mm]. */
const PULLED = 2;

const turnIt = (store: BenchStore, ref: PointRef, name: string, frame: GroundFrame, start: Point): ((target: Point) => void) => {
  const adjuster = store.getState().history?.present.document[ref.axle]?.adjusters?.[name];
  if (!adjuster) return () => undefined;
  const label = (adjuster.label ?? nameOfKey(name)).toLowerCase();
  const from = toCar(frame, start);
  /** A bushing that rides on a part leaves its bolt where it is and moves the part: its hole is pulled to where the hand is. */
  const pulled = (target: Point): number | null => {
    if (adjuster.kind !== 'offset-bushing' || separation(start, target) < PULLED) return null;
    const to = toCar(frame, target);
    const clock = clockToward(adjuster, [to[0] - from[0], to[1] - from[1], to[2] - from[2]], ref.side);
    return clock === null ? null : nearestMark(adjuster, clock);
  };
  const isOnPart = adjuster.kind === 'offset-bushing' && adjuster.seat !== undefined && adjuster.seat !== 'body';
  return (target) => {
    const { history, position } = store.getState();
    if (!history) return;
    const { document, setup: setupName } = history.present;
    const setup = setupNamed(document, setupName);
    const sides = isApart(setup, ref.axle, name) ? ref.side : 'both';
    const now = settingOf(setup, ref.axle, name, ref.side);
    if (isOnPart) {
      const clock = pulled(target);
      if (clock !== null && clock !== now) turnAdjuster(store, name, label, sides, clock);
      return;
    }
    const missAt = (setting: number | null): number => {
      const tried = withSetup(document, setupName, withSetting(setup, ref.axle, name, sides, setting));
      const at = placeSetup(tried, setupName, ref.axle, position)?.[ref.side].points[ref.point];
      return at ? separation(frame.toGround(at), target) : Infinity;
    };
    const setting = nearestSetting(adjuster, now, missAt);
    if (setting !== now) turnAdjuster(store, name, label, sides, setting);
  };
};

/**
 * Takes hold of a point where it is now.
 * @param start - of the point, in the ground's frame
 * @param grip - where the pointer is [px of the pane]
 */
export const beginPointDrag = (
  store: BenchStore,
  ref: PointRef,
  way: Exclude<DragWay, { kind: 'ask' }>,
  pane: Pane,
  frame: GroundFrame,
  start: Point,
  grip: readonly [number, number],
): PointDrag => {
  const held = pane.onPlane(grip[0], grip[1], start);
  const move = way.kind === 'point' ? moveItself(store, ref, frame, start) : turnIt(store, ref, way.name, frame, start);
  if (way.kind === 'adjuster') store.setState({ held: way.name });
  beginTurn(store);
  return {
    to: (x, y, axis) => move(targetOf(pane, frame, start, held, x, y, axis)),
    end: () => endTurn(store),
    abandon: () => abandonTurn(store),
  };
};
