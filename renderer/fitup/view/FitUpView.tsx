import { useEffect, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import type { AxleName, CarDocument, MeshFiles, PlacedCorner, SetupDocument, SideName } from '../../../geometry/index';
import { placeSetup } from '../../compute/placeSetup';
import type { FitUpAnswers, FitUpOrder } from '../../compute/fitup/fitUpOrder';
import { memoLast } from '../../compute/memoLast';
import { Segments } from '../../look/controls/Segments';
import { useUnits } from '../../look/units';
import { mmPerFileUnit } from '../../units/fileLength';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import { orbit, pan, zoom, type Eye } from '../../viewport/camera';
import { useWebgl } from '../../viewport/useWebgl';
import { useFitUp } from '../useFitUp';
import { usePartMove, type MovedPart } from './usePartMove';
import type { FitUpContent, FitUpViewName } from './fitUpContent';
import type { FitUpScene } from './fitUpScene';

/** Where one wheel is looked at. */
export interface ViewPlace {
  readonly setup: readonly [string, SetupDocument];
  readonly side: SideName;
  /** travel from design [mm], or from where the car stands */
  readonly travel: number;
  readonly from: 'design' | 'standing';
  readonly rack: number;
  /** the travel is then heave from where the car stands */
  readonly rollDeg?: number;
}

/** What is drawn over the corner. */
export type Shown = Pick<FitUpContent, 'about' | 'gap' | 'forces' | 'items' | 'focus'> & {
  /** solids besides those of the car, in its frame */
  readonly more?: FitUpContent['parts'];
  /** without the parts of the file, which would hide it */
  readonly isBare?: boolean;
};

/** The same list while both are the same: what it draws is made anew for every other one. */
const withMore = memoLast(
  (parts: FitUpContent['parts'], more: FitUpContent['parts'] | undefined): FitUpContent['parts'] =>
    more === undefined ? parts : [...parts, ...more],
  2,
);

const NO_PARTS: FitUpContent['parts'] = [];

export const NOTHING_SHOWN: Shown = { about: [], gap: null, forces: [], items: [], focus: null };

/** Ends of the hoses of a corner, by name [mm]. */
export type SpanEnds = FitUpAnswers['drawn']['spans'];

interface FitUpViewProps {
  readonly document: CarDocument;
  readonly axle: AxleName;
  readonly meshes: MeshFiles;
  readonly place: ViewPlace | null;
  /** what is drawn over the corner once it is known how it stands; the same object while nothing changes */
  readonly shown: Shown | ((corner: PlacedCorner, spans: SpanEnds) => Shown);
  readonly subject: string;
  readonly view: FitUpViewName;
  readonly views: readonly { readonly name: FitUpViewName; readonly label: string }[];
  readonly onView: (view: FitUpViewName) => void;
  readonly title: string;
  readonly subtitle: string;
  readonly theme: string;
  /** told how far the wheel stands from design [mm] */
  readonly onStanding?: (standing: number) => void;
  /** the part that may be moved in the picture */
  readonly moved?: MovedPart | null;
  /** told what solids the corner has, those of the axle's own numbers too */
  readonly onDrawn?: (parts: FitUpContent['parts']) => void;
  /** what stands under the picture */
  readonly children?: ReactNode;
}

const drawnOrder = memoLast(
  (
    document: CarDocument,
    name: string,
    setup: SetupDocument,
    axle: AxleName,
    side: SideName,
    travel: number,
    from: ViewPlace['from'],
    rack: number,
    rollDeg: number,
    meshes: MeshFiles,
  ) =>
    ({
      job: 'drawn',
      document,
      setup: [name, setup],
      axle,
      side,
      at: { travel, from, rack, rollDeg },
      meshes,
    }) satisfies FitUpOrder,
  4,
);

const DRAG_TURN = 2.6;
const KEY_TURN = 0.09;
const KEY_PAN = 0.04;
const ZOOM_STEP = 1.12;

const keyChange = ({ key, shiftKey }: KeyboardEvent): ((eye: Eye) => Eye) | null => {
  const move = (right: number, up: number) => (eye: Eye) =>
    shiftKey ? pan(eye, right * KEY_PAN, up * KEY_PAN) : orbit(eye, right * KEY_TURN, up * KEY_TURN);
  const moves: Readonly<Record<string, (eye: Eye) => Eye>> = {
    ArrowLeft: move(-1, 0),
    ArrowRight: move(1, 0),
    ArrowUp: move(0, 1),
    ArrowDown: move(0, -1),
    '+': (eye) => zoom(eye, 1 / ZOOM_STEP),
    '=': (eye) => zoom(eye, 1 / ZOOM_STEP),
    '-': (eye) => zoom(eye, ZOOM_STEP),
  };
  return moves[key] ?? null;
};

/** The corner at a position with its parts, what is chosen among them, and what is measured on it. */
export const FitUpView = ({
  document,
  axle,
  meshes,
  place,
  shown,
  subject,
  view,
  views,
  onView,
  title,
  subtitle,
  theme,
  onStanding,
  moved = null,
  onDrawn,
  children,
}: FitUpViewProps) => {
  const units = useUnits();
  const webgl = useWebgl();
  const host = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const scene = useRef<FitUpScene | null>(null);
  const latest = useRef<FitUpContent | null>(null);
  const press = useRef<{ x: number; y: number; readonly across: boolean } | null>(null);
  const order =
    place === null
      ? null
      : drawnOrder(
          document,
          place.setup[0],
          place.setup[1],
          axle,
          place.side,
          place.travel,
          place.from,
          place.rack,
          place.rollDeg ?? 0,
          meshes,
        );
  const { state, last } = useFitUp('drawn', order);
  const standing = last?.answer.standing ?? null;
  useEffect(() => {
    if (standing !== null && last?.order === order) onStanding?.(standing);
  }, [standing, last, order, onStanding]);
  useEffect(() => {
    if (last?.order === order && last) onDrawn?.(last.answer.parts);
  }, [last, order, onDrawn]);

  const content = useMemo((): FitUpContent | null => {
    const own = document[axle];
    if (!last || !own || last.order.axle !== axle) return null;
    const { at, side, setup } = last.order;
    const placed = placeSetup(last.order.document, setup[0], axle, {
      travel: at.from === 'standing' ? at.travel : at.travel - last.answer.standing,
      rollDeg: at.rollDeg ?? 0,
      rack: at.rack,
    });
    if (!placed) return null;
    const over = typeof shown === 'function' ? shown(placed[side], last.answer.spans) : shown;
    return {
      axleName: axle,
      axle: own,
      mm: mmPerFileUnit(document),
      placed,
      rack: at.rack,
      side,
      // arrows are of links, which a liner or a duct would hide, as a caliper would a joint
      parts: over.forces.length > 0 || over.isBare ? NO_PARTS : withMore(last.answer.parts, over.more),
      ...over,
      view,
      // the places come a moment after the row was chosen: the eye is aimed at where it then is
      subject: `${subject} ${at.travel} ${at.rack} ${at.rollDeg ?? 0} ${side}`,
    };
  }, [document, axle, last, shown, view, subject]);

  useEffect(() => {
    latest.current = content;
    if (content) scene.current?.show(content);
  }, [content]);

  useEffect(() => {
    const [element, overlay] = [host.current, svg.current];
    if (!webgl || !element || !overlay) return;
    let ended = false;
    let sized: ResizeObserver | null = null;
    const lengths = shownQuantity({ quantity: 'length', decimals: 0 }, units);
    void import('./fitUpScene').then(({ runFitUpScene }) => {
      if (ended) return;
      const begun = runFitUpScene(element, overlay, (mm) => withUnit(lengths.format(mm), lengths.unit));
      scene.current = begun;
      begun.resize();
      if (latest.current) begun.show(latest.current);
      sized = new ResizeObserver(() => begun.resize());
      sized.observe(element);
    });
    return () => {
      ended = true;
      sized?.disconnect();
      scene.current?.end();
      scene.current = null;
    };
  }, [webgl, units]);
  useEffect(() => scene.current?.retheme(), [theme]);

  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      scene.current?.turn((eye) => zoom(eye, event.deltaY > 0 ? ZOOM_STEP : 1 / ZOOM_STEP));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, []);

  const [isMoving, setMoving] = useState(false);
  const ways = content?.parts.find(({ name }) => name === moved?.name)?.ways ?? null;
  const hand = usePartMove(scene, moved, ways, isMoving && moved !== null && ways !== null);
  const movedName = moved === null ? '' : moved.label.charAt(0).toLowerCase() + moved.label.slice(1);

  const onKeyDown = (event: KeyboardEvent) => {
    if (hand.keyDown(event)) return event.preventDefault();
    const change = keyChange(event);
    if (event.key === '0') scene.current?.fit();
    else if (change) scene.current?.turn(change);
    else return;
    event.preventDefault();
  };
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    if (hand.press(event)) return;
    press.current = { x: event.clientX, y: event.clientY, across: event.shiftKey || event.button === 1 };
  };
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    if (hand.move(event)) return;
    const now = press.current;
    if (!now) return;
    const high = Math.max(1, event.currentTarget.clientHeight);
    const [dx, dy] = [(event.clientX - now.x) / high, (event.clientY - now.y) / high];
    [now.x, now.y] = [event.clientX, event.clientY];
    scene.current?.turn((eye) => (now.across ? pan(eye, -dx, dy) : orbit(eye, -dx * DRAG_TURN, dy * DRAG_TURN)));
  };
  const onPointerUp = () => {
    hand.release();
    press.current = null;
  };
  const onPointerCancel = () => {
    hand.abandon();
    press.current = null;
  };

  const moves = shownQuantity({ quantity: 'length', decimals: 2 }, units);
  const isThere = content !== null && webgl === true;
  return (
    <section className="fitupview" aria-label="Where it is">
      <div
        ref={host}
        className="fitupcanvas"
        role="img"
        tabIndex={isThere ? 0 : undefined}
        aria-label={`${title}. ${subtitle.replace(/\.$/, '')}. ${
          isMoving && moved !== null
            ? `Arrow keys move ${movedName} by 1 mm, with Shift by 0.1 mm, Escape puts it back`
            : 'Arrow keys turn the picture, with Shift they move it'
        }; plus and minus zoom, 0 shows it as at first.`}
        onKeyDown={onKeyDown}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onPointerCancel={onPointerCancel}
        onKeyUp={hand.keyUp}
        onBlur={hand.blur}
      >
        <svg ref={svg} className="overlay" aria-hidden="true" />
        {webgl === false && (
          <p className="nopicture">No picture: this machine or browser offers no WebGL. The tables hold all numbers.</p>
        )}
        {place !== null && state.kind === 'failed' && <p className="nopicture">No picture: {state.failure.message}</p>}
      </div>
      {place !== null && (
        <div className="fituptitle" data-over-view>
          <b>{title}</b>
          <span>{subtitle}</span>
        </div>
      )}
      {place !== null && views.length > 1 && (
        <div className="fitupviews" data-over-view>
          <Segments label="View" options={views} chosen={view} className="upright" onChoose={onView} />
        </div>
      )}
      {isThere && moved !== null && ways !== null && (
        <div className="fitupmove" data-over-view>
          <button type="button" className="button" aria-pressed={isMoving} onClick={() => setMoving(!isMoving)}>
            Move {movedName}
          </button>
          {isMoving && (
            <output aria-live="polite">
              {hand.by === null
                ? 'Drag it, or an arm; arrow keys in the picture. Esc puts it back.'
                : hand.by.map((value, axis) => `${'xyz'[axis] ?? ''} ${moves.formatChange(value)}`).join('  ') + ` ${moves.unit}`}
            </output>
          )}
        </div>
      )}
      {children}
    </section>
  );
};
