import type { ClampEccentricDocument, EccentricBoltDocument, OffsetBushingDocument, SideName } from '../car/document';
import { toDegrees, toRadians } from '../core/angle';
import { clockSeen } from '../words/clockWords';
import { dialMarks, hexagon, rule } from './marks';
import { circle, group, move, numeral, path, rect, turn, type Shape } from './shape';

/** Drawn size of a displacement: to scale, and never more than the part has room for. */
const scaleFor = (mm: number, room: number, most: number): number => Math.min(most, room / Math.max(mm, 1e-6));

/**
 * A cam bolt between its fences, seen along the bolt: it turns about the bolt, which slides in its slot. The slot's plus is on
 * the right.
 */
export const eccentricBolt = (adjuster: EccentricBoltDocument, value: number, mm: number): readonly Shape[] => {
  const scale = scaleFor(adjuster.throw * mm, 14, 2.2);
  const reach = scale * adjuster.throw * mm;
  const at = 60 + reach * Math.sin(toRadians(value));
  const rim = Math.max(0, reach - 11);
  return [
    rect('body', 4, 12, 112, 96, 2),
    rect('hole', 52 - reach, 51, 16 + 2 * reach, 18, 9),
    rect('dark', 17, 12, 8, 96),
    rect('dark', 95, 12, 8, 96),
    group(
      [move(at, 60), turn(value)],
      [
        circle('face', 0, reach, 33 - rim),
        ...dialMarks({ cx: 0, cy: reach, inner: 24, outer: 32 - rim, every: adjuster.mark, from: -90, to: 90 }),
        path('nut', hexagon(12)),
        circle('dark', 0, 0, 7),
        path('scribed', 'M0-4V4M-4 0H4'),
      ],
    ),
    path('index', 'M60 10l-5-8h10z'),
    ...rule({ middle: 60, pitch: scale, count: 11, base: 113, long: -9, short: -5 }),
    path('index', `M${at} 103l-4-7h8z`),
  ];
};

/** A bushing with its hole off centre, in the eye of the arm, with the clock that the fitter reads. */
export const offsetBushing = (
  adjuster: OffsetBushingDocument,
  value: number | null,
  mm: number,
  side: SideName,
): readonly Shape[] => {
  const scale = scaleFor(adjuster.offset * mm, 14, 2.2);
  const offset = value === null ? 0 : scale * adjuster.offset * mm;
  const seen = clockSeen(value ?? 0, adjuster.axis, adjuster.seenFrom, side);
  return [
    circle('body', 60, 60, 45),
    circle('hole', 60, 60, 37),
    ...dialMarks({ cx: 60, cy: 60, inner: 51, outer: 45.5, every: adjuster.index }),
    numeral('12', 60, 8.5),
    numeral('3', 115, 64.5),
    numeral('6', 60, 120),
    numeral('9', 5, 64.5),
    group(
      [turn(seen, 60, 60)],
      [
        circle('face', 60, 60, 36),
        circle('dark', 60, 60 - offset, 20),
        circle('hole', 60, 60 - offset, 13),
        path('scribed', `M60 ${43 - offset}v34M43 ${60 - offset}h34`),
        ...(value === null ? [] : [path('index', 'M60 14.500l-5 9h10z')]),
      ],
    ),
    path('centre', 'M54 60h12M60 54v12'),
  ];
};

const asin = (sine: number): number => toDegrees(Math.asin(Math.max(-1, Math.min(1, sine))));

/** Where the strut's two bolts are drawn. */
const [UPPER, LOWER] = [32, 88];

/**
 * The strut's bracket with its plain bolt, its cam bolt above or below it as on the car, and the knuckle that turns about the
 * plain one. Outboard is on the right.
 */
export const clampEccentric = (
  adjuster: ClampEccentricDocument,
  value: number,
  mm: number,
  pivotToBolt: number | undefined,
): readonly Shape[] => {
  const turned = pivotToBolt ? asin((adjuster.throw * Math.sin(toRadians(value))) / pivotToBolt) : 0;
  // a turn about an axis that points forward leans the wheel's top in
  const tilt = adjuster.axis[0] < 0 ? -turned : turned;
  const [plain, cammed] = adjuster.bolt === 'clampUpper' ? [LOWER, UPPER] : [UPPER, LOWER];
  const cam = Math.min(3.5, adjuster.throw * mm * 1.15);
  return [
    rect('body', 12, 0, 30, 120),
    path('scribed', 'M27 0v120', [9, 3, 2, 3]),
    rect('dark', 38, 14, 44, 92, 3),
    group(
      [turn(-tilt, 62, plain)],
      [path('face', 'M52 20h18c6 0 10 4 10 10v40l34 14v22l-44-6c-8-1-18-4-18-14z'), rect('hole', 53, cammed - 6, 18, 14, 7)],
    ),
    circle('nut', 62, plain, 11),
    group([move(62, plain)], [path('face', hexagon(7))]),
    group(
      [move(62, cammed), turn(value)],
      [
        circle('face', 0, cam, 19),
        ...dialMarks({ cx: 0, cy: cam, inner: 12, outer: 18, every: adjuster.mark, from: -90, to: 90 }),
        path('nut', hexagon(8.5)),
      ],
    ),
    path('index', `M62 ${cammed - 19.5}l-4-7h8z`),
  ];
};
