import type { AxleName, PlacedAxle, PlacedCorner, SideName } from '../../../geometry/index';
import { formatNumber } from '../../units/format';
import { lengthWords } from '../../units/lengthWords';
import { shownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { groundFrame } from '../groundFrame';
import type { Point } from '../points';
import { convexHull } from '../screenLines';
import { AROUND_ON_PAPER, wheelCircle } from '../wheelCircle';
import { skeleton } from '../wheelItems';
import {
  across,
  joint,
  named,
  path,
  scaleBar,
  sheet,
  target,
  upright,
  words,
  type SheetBox,
  type SheetPart,
  type SheetPoint,
} from './sheet';
import { placeWords } from './wordPlaces';

/** Views that lengths can be taken from. */
export type DrawnView = 'front' | 'side' | 'top';

export interface DrawnAxle {
  readonly name: AxleName;
  readonly placed: PlacedAxle;
  /** [mm] */
  readonly tyreRadius: number;
  readonly tyreWidth: number;
}

export interface CarDrawing {
  /** name of the car and of its setup */
  readonly title: string;
  /** the position it is drawn at: "standing", "bump +15.0 mm" */
  readonly position: string;
  readonly view: DrawnView;
  /** units that its lengths are written in */
  readonly units: ShownUnits;
  /** one axle, or both: the side view then has the wheelbase */
  readonly axles: readonly DrawnAxle[];
}

const [WIDTH, HEIGHT] = [420, 297];
const MARGIN = 14;
const HEAD = 26;
const FOOT = 34;
const SCALES = [1, 2, 2.5, 5, 10, 20, 25, 50];
const SIDES: readonly SideName[] = ['left', 'right'];
const VIEW_WORDS: Readonly<Record<DrawnView, string>> = { front: 'from behind', side: 'from the left', top: 'from above' };

/** What a length is and how long, in the unit of the drawing: "track 1,523.4". */
type Size = (name: string, mm: number) => string;

/** The car's ground frame laid on paper: from behind left stays left, from the left the front is at the left, from above it is up. */
const flattened = (view: DrawnView, [x, y, z]: Point): SheetPoint =>
  view === 'front' ? [-y, -z] : view === 'side' ? [-x, -z] : [-y, -x];

interface Laid {
  readonly size: Size;
  /** a length with its unit, in whole millimetres or as fine in inches */
  readonly far: (mm: number) => string;
  readonly axle: DrawnAxle;
  /** a point of the car on the sheet */
  readonly at: (inCar: Point) => SheetPoint;
  /** a point of the ground's frame on the sheet */
  readonly on: (inGround: Point) => SheetPoint;
  readonly ground: (inCar: Point) => Point;
}

/** What is drawn of a corner: links, joints, the tyre's outline. */
const cornerParts = ({ axle, at }: Laid, side: SideName): readonly SheetPart[] => {
  const corner = axle.placed[side];
  const ring = (share: number) => wheelCircle(corner, axle.tyreRadius, share * axle.tyreWidth, AROUND_ON_PAPER);
  const tyre = [-0.5, 0.5].flatMap(ring).map(at);
  const links = skeleton(corner);
  const joints = links.flat().map(at);
  return [
    path('wheel', convexHull(tyre), 'Z'),
    ...links.map((points) => path('link', points.map(at))),
    ...joints.map((point) => joint(point)),
  ];
};

const axisParts = ({ at }: Laid, corner: PlacedCorner): readonly SheetPart[] => {
  const axis = corner.steeringAxis;
  if (!axis) return [];
  const by =
    (corner.wheelCentre[2] + 1.1 * corner.loadedRadius - axis.ground[2]) /
    (Math.abs(axis.direction[2]) < 0.2 ? 0.2 : axis.direction[2]);
  const high = axis.ground.map((value, index) => value + (axis.direction[index] ?? 0) * by) as unknown as Point;
  return [path('axis', [at(axis.ground), at(high)])];
};

/** An instant centre within the sheet with the line to it; one beyond it as a line to the edge with its distance. */
const centreParts = (from: SheetPoint, to: SheetPoint, beyond: (share: number) => string, name: string): readonly SheetPart[] => {
  const inside = (p: SheetPoint): boolean => p[0] > MARGIN && p[0] < WIDTH - MARGIN && p[1] > HEAD && p[1] < HEIGHT - FOOT;
  if (inside(to)) return [path('construct', [from, to]), target(to), named(name, to)];
  let [seen, unseen] = [0, 1];
  const on = (share: number): SheetPoint => [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
  for (let halving = 0; halving < 30; halving += 1) {
    const middle = (seen + unseen) / 2;
    if (inside(on(middle))) seen = middle;
    else unseen = middle;
  }
  const edge = on(seen);
  const anchor = edge[0] > WIDTH / 2 ? 'end' : 'start';
  // Over the line or under it, at its end or a part of the way back.
  const places = [1, 0.85, 0.7, 0.55].flatMap((share) => {
    const [x, y] = on(seen * share);
    return [y - 2, y + 4.6, y - 6, y + 8].map((baseline) => ({ at: [x, baseline], anchor }) as const);
  });
  return [path('construct', [from, edge]), { text: `${name}, ${beyond(1 - seen)} further`, names: edge, places }];
};

const separationOf = (a: Point, b: Point, axes: readonly (0 | 1 | 2)[]): number =>
  Math.sqrt(axes.reduce<number>((sum, axis) => sum + (a[axis] - b[axis]) * (a[axis] - b[axis]), 0));

const frontParts = (laid: Laid): readonly SheetPart[] => {
  const { axle, at, on, ground, size, far } = laid;
  const { placed } = axle;
  const [left, right] = [ground(placed.left.contactCentre), ground(placed.right.contactCentre)];
  const middle: Point = [left[0], 0, 0];
  const [pl, pr, pm] = [on(left), on(right), on(middle)];
  const parts: SheetPart[] = [
    ...across(pl, pr, pm[1] + 24, size('track', left[1] - right[1])),
    ...across(pl, pm, pm[1] + 14, size('half', left[1])),
    ...across(pm, pr, pm[1] + 14, size('half', -right[1])),
    path('middle', [pm, on([left[0], 0, Math.max(...Object.values(placed.left.points).map((point) => ground(point)[2])) + 60])]),
  ];
  for (const side of SIDES) {
    const corner = placed[side];
    const centre = corner.frontViewInstantCentre;
    parts.push(...axisParts(laid, corner));
    const axis = corner.steeringAxis;
    if (axis) {
      const [contact, foot] = [ground(corner.contactCentre), ground(axis.ground)];
      parts.push(...across(on(contact), on(foot), pm[1] + 6, size('scrub, square to the car', Math.abs(contact[1] - foot[1]))));
    }
    if (!centre) continue;
    const point: Point = [corner.contactCentre[0], centre[0], centre[1]];
    const length = separationOf(point, corner.contactCentre, [1, 2]);
    parts.push(...centreParts(at(corner.contactCentre), at(point), (share) => far(length * share), `${side} instant centre`));
  }
  if (placed.rollCentre) {
    const roll = ground(placed.rollCentre);
    parts.push(target(on(roll)), ...upright(on([roll[0], roll[1], 0]), on(roll), on(roll)[0] + 9, size('roll centre', roll[2])));
    if (Math.abs(roll[1]) > 0.5)
      parts.push(...across(on(roll), on([roll[0], 0, roll[2]]), on(roll)[1] - 6, size('offset', Math.abs(roll[1]))));
  }
  return parts;
};

const sideParts = (laid: readonly Laid[]): readonly SheetPart[] => {
  const parts: SheetPart[] = [];
  for (const one of laid) {
    const { axle, at, on, ground, size, far } = one;
    const corner = axle.placed.left;
    const contact = ground(corner.contactCentre);
    parts.push(...axisParts(one, corner));
    parts.push(
      ...upright(on(contact), at(corner.wheelCentre), on(contact)[0] - 10, size('centre', ground(corner.wheelCentre)[2])),
    );
    const axis = corner.steeringAxis;
    if (axis) {
      const foot = ground(axis.ground);
      parts.push(
        ...across(on(contact), on(foot), on(contact)[1] + 8, size('trail along the car', Math.abs(foot[0] - contact[0]))),
      );
    }
    const centre = corner.sideViewInstantCentre;
    if (centre) {
      const point: Point = [centre[0], corner.contactCentre[1], centre[1]];
      const length = separationOf(point, corner.contactCentre, [0, 2]);
      parts.push(
        ...centreParts(
          at(corner.contactCentre),
          at(point),
          (share) => far(length * share),
          `${axle.name} side-view instant centre`,
        ),
      );
    }
  }
  const [first, other] = laid;
  if (first && other) {
    const [a, b] = [first, other].map(({ axle, ground }) => ground(axle.placed.left.contactCentre));
    if (a && b)
      parts.push(...across(first.on(a), first.on(b), first.on(a)[1] + 20, first.size('wheelbase, left', Math.abs(a[0] - b[0]))));
    const centres = [first, other].flatMap(({ axle, ground }) =>
      axle.placed.rollCentre ? [ground(axle.placed.rollCentre)] : [],
    );
    const [p, q] = centres;
    if (p && q) {
      parts.push(path('axis', [first.on(p), first.on(q)]));
      for (const [index, centre] of [p, q].entries())
        parts.push(
          target(first.on(centre)),
          ...upright(
            first.on([centre[0], 0, 0]),
            first.on(centre),
            first.on(centre)[0] + 9,
            first.size(`${(index === 0 ? first : other).axle.name} roll centre`, centre[2]),
          ),
        );
    }
  }
  return parts;
};

const topParts = (laid: readonly Laid[]): readonly SheetPart[] => {
  const parts: SheetPart[] = [];
  for (const { axle, on, ground, size } of laid) {
    const [left, right] = [ground(axle.placed.left.contactCentre), ground(axle.placed.right.contactCentre)];
    const below = Math.max(on(left)[1], on(right)[1]) + axle.tyreRadius * Math.abs(on([0, 1, 0])[0] - on([0, 0, 0])[0]) + 10;
    parts.push(...across(on(left), on(right), below, size(`${axle.name} track`, left[1] - right[1])));
  }
  const [first, other] = laid;
  if (first && other) {
    const [a, b] = [first, other].map(({ axle, ground }) => ground(axle.placed.left.contactCentre));
    if (a && b)
      parts.push(
        ...upright(
          first.on(a),
          first.on(b),
          Math.min(first.on(a)[0], first.on(b)[0]) - 16,
          first.size('wheelbase, left', Math.abs(a[0] - b[0])),
        ),
      );
  }
  return parts;
};

/** Where words may stand: not in the head of the sheet, nor in its foot. */
const WORDS: SheetBox = { x0: 4, x1: WIDTH - 4, y0: HEAD - 2, y1: HEIGHT - 20 };

/** All parts of a drawing with its words laid where there is room for them. */
const laidOut = (parts: readonly SheetPart[]): readonly string[] => {
  const loose = parts.flatMap((part) => ('text' in part ? [part] : []));
  const drawn = parts.flatMap((part) => ('svg' in part ? [part] : []));
  const placed = placeWords(loose, drawn, WORDS);
  return parts.map((part) => {
    if ('svg' in part) return part.svg;
    const found = placed.get(part);
    if (!found) return '';
    const leader = found.leader ? path('thin', found.leader).svg : '';
    return leader + words(found.text, found.place.at, found.place.anchor);
  });
};

/**
 * One view of the axle, or of both, true to scale on A3, with its dimensions and a bar that proves the scale.
 * @returns a whole SVG file, its unit the millimetre
 */
export const carDrawing = (drawing: CarDrawing): string => {
  const { view, axles, title, position, units } = drawing;
  const length = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const size: Size = (name, mm) => [name, length.format(mm)].filter((part) => part !== '').join(' ');
  const far = (mm: number): string => lengthWords(mm, 0, units);
  const frames = axles.map(({ placed }) => groundFrame(placed.ground).toGround);
  const flat = axles.flatMap((axle, index) =>
    SIDES.flatMap((side) => {
      const corner = axle.placed[side];
      const rings = [-0.5, 0.5].flatMap((share) => wheelCircle(corner, axle.tyreRadius, share * axle.tyreWidth));
      const toGround = frames[index];
      return toGround ? [...Object.values(corner.points), ...rings].map((point) => flattened(view, toGround(point))) : [];
    }),
  );
  const [xs, ys] = [flat.map(([x]) => x), flat.map(([, y]) => y)];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const room: SheetPoint = [WIDTH - 2 * MARGIN - 60, HEIGHT - HEAD - FOOT - 34];
  const perMm = SCALES.find((one) => (x1 - x0) / one <= room[0] && (y1 - y0) / one <= room[1]) ?? 100;
  const place = ([x, y]: SheetPoint): SheetPoint => [
    WIDTH / 2 + (x - (x0 + x1) / 2) / perMm,
    HEAD + room[1] / 2 + (y - (y0 + y1) / 2) / perMm,
  ];
  const laid = axles.flatMap((axle, index): Laid[] => {
    const ground = frames[index];
    const on = (point: Point): SheetPoint => place(flattened(view, point));
    return ground ? [{ axle, size, far, ground, on, at: (point) => on(ground(point)) }] : [];
  });
  const sides = view === 'side' ? (['left'] as const) : SIDES;
  const names = axles.map(({ name }) => name).join(' and ');
  const heading = `${title}: ${names} ${VIEW_WORDS[view]}`;
  const floor = place([0, 0])[1];
  return sheet(WIDTH, HEIGHT, heading, [
    words(heading, [MARGIN, 13], 'start', 5),
    words(
      `${position}. Scale 1:${formatNumber(perMm, perMm === 2.5 ? 1 : 0)} on A3, lengths in ${units.length === 'in' ? 'inches' : 'mm'}.`,
      [MARGIN, 20],
      'start',
    ),
    ...laidOut([
      ...(view === 'top'
        ? []
        : [
            path('ground', [
              [MARGIN, floor],
              [WIDTH - MARGIN, floor],
            ]),
          ]),
      ...laid.flatMap((one) => sides.flatMap((side) => cornerParts(one, side))),
      ...(view === 'front' ? laid.slice(0, 1).flatMap(frontParts) : view === 'side' ? sideParts(laid) : topParts(laid)),
    ]),
    scaleBar([MARGIN, HEIGHT - 14], perMm, { name: length.unit, mm: length.fromShown(1) }),
    words('Rigid links, no compliance.', [WIDTH - MARGIN, HEIGHT - 10], 'end'),
  ]);
};
