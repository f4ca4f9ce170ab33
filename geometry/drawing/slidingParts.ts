import type { PerchDocument, SlideDocument, TurnbuckleDocument } from '../car/document';
import { shimsFor } from '../words/fitterWords';
import { dialMarks, hexagon, rule } from './marks';
import { circle, group, mirror, move, path, rect, turn, type Shape } from './shape';

const clampTo = (value: number, most: number): number => Math.max(-most, Math.min(most, value));
const widestOf = ([min, max]: readonly [number, number], mm: number): number => Math.max(Math.abs(min), Math.abs(max)) * mm;

const STUDS = [
  [44, 34],
  [76, 34],
  [44, 86],
  [76, 86],
] as const;

/** A plate that slides under its four studs, seen from above, the front of the car up, outboard to the right. */
const topPlate = (adjuster: SlideDocument, value: number, mm: number): readonly Shape[] => {
  const scale = Math.min(1.5, 15 / Math.max(widestOf(adjuster.range, mm), 1e-6));
  const across = adjuster.along === 'spindle' || Math.abs(adjuster.along[1]) >= Math.abs(adjuster.along[0]);
  const sign = adjuster.along !== 'spindle' && (across ? adjuster.along[1] : -adjuster.along[0]) < 0 ? -1 : 1;
  const shift = clampTo(value * mm * scale * sign, 16);
  const shapes = [
    rect('body', 6, 16, 108, 88, 4),
    circle('hole', 60, 60, 34),
    ...rule({ middle: 60, pitch: Math.max(1.5, scale), count: 31, base: 16, long: -8, short: -4 }),
    group(
      [move(60 + shift, 60)],
      [
        rect('face', -40, -36, 80, 72, 6),
        rect('hole', -34, -30.5, 68, 9, 4.5),
        rect('hole', -34, 21.5, 68, 9, 4.5),
        circle('dark', 0, 0, 17),
        circle('face', 0, 0, 11),
        circle('hole', 0, 0, 5),
        path('scribed', 'M-22 0h44M0-22v44'),
        path('index', 'M0-44l-4.5 8h9z'),
      ],
    ),
    ...STUDS.map(([x, y]) => group([move(x, y)], [circle('nut', 0, 0, 6), path('hole', hexagon(3.6))])),
  ];
  return across ? shapes : [group([turn(90, 60, 60)], shapes)];
};

/** A ball joint under its bracket with the shims that are between them. */
const shimStack = (adjuster: SlideDocument, value: number, mm: number): readonly Shape[] => {
  const scale = Math.min(4, 30 / Math.max(widestOf(adjuster.range, mm), 1e-6));
  const height = Math.abs(value) * mm * scale;
  const shims = shimsFor(value, adjuster.shims ?? [adjuster.step]) ?? [Math.abs(value)];
  const stack: Shape[] = [];
  let top = 30;
  shims.forEach((shim, index) => {
    const thickness = shim * mm * scale;
    stack.push(rect(index % 2 === 0 ? 'face' : 'dark', 30, top, 60, thickness));
    top += thickness;
  });
  return [
    rect('body', 14, 6, 92, 24, 2),
    ...stack,
    group(
      [move(0, 30 + height)],
      [
        path('face', 'M34 0h52v7h-52z'),
        circle('dark', 60, 30, 25),
        circle('face', 60, 30, 16),
        path('scribed', 'M46 30h28M60 16v28'),
      ],
    ),
    rect('nut', 56, 0, 8, 30),
    rect('nut', 50, 0, 20, 6),
    ...rule({ middle: 60, pitch: Math.max(2, scale), count: 21, base: 112, long: -6, short: -3, upright: true }),
    path('index', `M105 ${30 + height}l-8-4v8z`),
  ];
};

/** A plate slides flat; a slide of one direction that is mostly upright, or one with shims, is a stack under a joint. */
export const isStack = (adjuster: SlideDocument): boolean =>
  adjuster.shims !== undefined || (adjuster.along !== 'spindle' && Math.abs(adjuster.along[2]) > 0.7);

export const slide = (adjuster: SlideDocument, value: number, mm: number): readonly Shape[] =>
  isStack(adjuster) ? shimStack(adjuster, value, mm) : topPlate(adjuster, value, mm);

const END: readonly Shape[] = [
  rect('dark', 18, 54, 34, 12),
  path('scribed', 'M19 54l2.4 12M23 54l2.4 12M27 54l2.4 12M31 54l2.4 12'),
  circle('face', 10, 60, 11),
  circle('hole', 10, 60, 5),
  rect('nut', 34, 51, 5, 18),
];

/** A sleeve with opposite threads: the ends come out or go in, and the sleeve's hexagon is seen on its end. */
export const turnbuckle = (adjuster: TurnbuckleDocument, value: number, mm: number): readonly Shape[] => {
  const apart = clampTo(0.8 * adjuster.perTurn * mm * value, 9);
  const [left, right] = [10 - apart, 110 + apart];
  return [
    group([move(-apart, 0)], END),
    group([move(apart, 0), mirror(60)], END),
    rect('face', 40, 46, 40, 28, 2),
    path('scribed', 'M40 53h40M40 67h40'),
    circle('body', 60, 98, 15),
    ...dialMarks({ cx: 60, cy: 98, inner: 18.5, outer: 15, every: 45 }),
    group([move(60, 98), turn(360 * value)], [path('face', hexagon(11)), path('index', 'M0-14.500l-3.5 7h7z')]),
    path('scribed', `M${left} 22v16M${right} 22v16`, [2, 2]),
    path('scribed', `M${left} 28H${right}`),
    path('index', `M${left} 28l6-3v6zM${right} 28l-6-3v6z`),
  ];
};

/** A spring's ring on its thread, with the coils that stand on it. */
export const perch = (adjuster: PerchDocument, value: number, mm: number): readonly Shape[] => {
  const scale = Math.min(1.6, 26 / Math.max(widestOf(adjuster.range, mm) * adjuster.perTurn, 1e-6));
  const rise = clampTo(scale * adjuster.perTurn * mm * value, 34);
  return [
    rect('body', 44, 2, 32, 116, 2),
    ...Array.from({ length: 19 }, (_, index) => path('scribed', `M44 ${8 + 6 * index}l32-3`)),
    group(
      [move(0, 72 - rise)],
      [
        rect('dark', 22, -3, 76, 6, 1),
        rect('face', 30, 3, 60, 15, 1),
        ...[35, 47, 59, 71, 83].map((x) => rect('hole', x, 6, 5, 12)),
        rect('dark', 34, 22, 52, 9, 1),
        path('coil', 'M26-12C50-2 80-18 95-20'),
        path('coil', 'M26-32C50-22 80-38 95-40'),
        path('index', 'M99 0l9-4.500v9z'),
      ],
    ),
    ...rule({ middle: 72, pitch: Math.max(1.6, scale), count: 25, base: 118, long: -8, short: -4, upright: true }),
  ];
};
