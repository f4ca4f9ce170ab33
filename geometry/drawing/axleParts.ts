import type { SideName } from '../car/document';
import { rule } from './marks';
import { circle, group, move, path, rect, turn, type Shape } from './shape';

/** Toe is drawn ten times as large as it is: a tenth of a degree would not be seen. */
const TOE_SCALE = 10;
/** Drawing units of one millimetre of ride height, and how far the drawing goes. */
const HEIGHT_SCALE = 0.5;
const HEIGHT_ROOM = 26;

const WHEEL: readonly Shape[] = [rect('face', -15, -46, 30, 92, 7), path('scribed', 'M0-46v92')];

/** Both wheels of the axle from above, the front of the car up. @param left - toe [degrees per wheel, + toe-in], null where there is none */
export const toePart = (left: number | null, right: number | null): readonly Shape[] => [
  path('scribed', 'M60 4v112', [9, 3, 2, 3]),
  path('index', 'M60 2l-5 9h10z'),
  rect('dark', 26, 56, 68, 8, 2),
  group([move(26, 60), turn(TOE_SCALE * (left ?? 0))], WHEEL),
  group([move(94, 60), turn(-TOE_SCALE * (right ?? 0))], WHEEL),
];

/** The wheel in its arch, seen from the left. @param mm - height of the body over design; null: none is asked for */
export const heightPart = (mm: number | null): readonly Shape[] => {
  const up = Math.max(-HEIGHT_ROOM, Math.min(HEIGHT_ROOM, HEIGHT_SCALE * (mm ?? 0)));
  return [
    path('scribed', 'M2 112h116'),
    circle('dark', 56, 76, 36),
    circle('face', 56, 76, 21),
    circle('hole', 56, 76, 5),
    group(
      [move(0, -up)],
      [path('body', 'M2 30h100v36h-4c0-23.2-18.8-42-42-42c-23.2 0-42 18.8-42 42H2z'), path('index', 'M102 48l9-5v10z')],
    ),
    group([turn(-90, 114, 48)], rule({ middle: 114, pitch: 10 * HEIGHT_SCALE, count: 11, base: 50, long: -9, short: -5 })),
  ];
};

/** One wheel of `toePart`, for a drawing a side. @param toe - degrees, + toe-in */
export const toeWheelPart = (side: SideName, toe: number): readonly Shape[] => [
  path('scribed', 'M60 4v112', [9, 3, 2, 3]),
  path('index', 'M60 2l-5 9h10z'),
  group([move(60, 60), turn((side === 'left' ? 1 : -1) * TOE_SCALE * toe)], WHEEL),
];
