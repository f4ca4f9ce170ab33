import type { AxleName, SideName } from '../../car/document';
import { SOLVED } from '../../corner/motion';
import { startTrack, trackCorner } from '../../corner/solveCorner';
import { spanState } from '../../readings/spanReadings';
import { damperStops } from '../../readings/suspendedReadings';
import type { FitUpCorner } from '../corners';
import { barTwist, type BarTwist } from './barTwist';
import { shaftRow, type ShaftRow } from './shaft';
import { isSpanOf, spanRow, type SpanRow } from './spans';
import { springStops } from './springStops';
import { threadsOf, type ThreadRow } from './threads';

/** What one wheel has left of everything that has an end, in one setup. Lengths in mm, angles in rad, travel from design. */
export interface StrokeRow {
  readonly setup: string;
  readonly axle: AxleName;
  readonly side: SideName;
  /** travel from design at which the wheel stands */
  readonly standing: number;
  /** of the damper, where the car stands: to the first touch of its bump rubber, to solid, to fully open */
  readonly bumpLeft: number | null;
  readonly solidLeft: number | null;
  readonly droopLeft: number | null;
  /** travel at which the spring is loose, and below; at which its coils touch, and above; null with the reason in `why` */
  readonly looseAt: number | null;
  readonly bindAt: number | null;
  /** of the spring, where it is not loose with the damper open, and does not bind with it solid: what is left of it there */
  readonly looseLeft: number | null;
  readonly bindLeft: number | null;
  readonly barTwist: BarTwist | null;
  readonly shaft: ShaftRow | null;
  /** by name */
  readonly spans: Readonly<Record<string, SpanRow | null>>;
  readonly threads: readonly ThreadRow[];
  /** the spring is taken to carry its corner where the car stands, for want of its lengths */
  readonly isByWeight: boolean;
  readonly why: Readonly<Record<string, string>>;
}

/**
 * What is left of damper, spring, bar, shaft, hoses and threads.
 * @param corners - of `fitUpCorners`: both sides of every axle
 */
export function strokeRows(corners: readonly FitUpCorner[]): StrokeRow[] {
  return corners.map((corner) => {
    const twin = corners.find((one) => one !== corner && one.setup === corner.setup && one.axle === corner.axle)!;
    return rowOf(corner, twin);
  });
}

const UNREACHED = 'no position of the envelope can be reached';

function rowOf(corner: FitUpCorner, twin: FitUpCorner): StrokeRow {
  const { car, axle, side, setup, missing } = corner;
  const { document, mmPerUnit: mm } = car.mechanism;
  const own = document[axle.axle]!;
  const standing = car[axle.axle]!.standing[side.mechanism.side];
  const why: Record<string, string> = {};
  const because = (reason: string, ...keys: readonly string[]): void => keys.forEach((key) => (why[key] = reason));
  const damper = damperLeft(corner, standing, because);
  const spring = springStops(corner);
  Object.assign(why, spring.why);
  const twist = barTwist(corner, twin);
  if (twist === null)
    because(axle.bar === null ? 'the file gives no anti-roll bar' : (missing ?? 'its link does not reach'), 'barTwist');
  const shaft = own.driveShaft === undefined ? null : shaftRow(own.driveShaft, mm, corner);
  if (shaft === null)
    because(own.driveShaft === undefined ? `the file gives no ${axle.axle}.driveShaft` : (missing ?? UNREACHED), 'shaft');
  else if (shaft.angleInner === null) because(`give ${axle.axle}.driveShaft its innerAxis`, 'shaft.angleInner');
  const spans = Object.entries(document.spans ?? {})
    .filter(([, span]) => isSpanOf(span, axle.axle, side.mechanism.points))
    .map(([name, span]) => {
      const row = spanRow(span, mm, corner);
      if (row === null) because(missing ?? UNREACHED, `spans.${name}`);
      return [name, row] as const;
    });
  const threads = threadsOf(axle, side, mm);
  for (const { name, verdict } of threads)
    if (verdict === null) because('give its material: steel and aluminium would be judged differently', `threads.${name}`);
  return {
    setup,
    axle: axle.axle,
    side: side.mechanism.side,
    standing,
    ...damper,
    looseAt: spring.looseAt,
    bindAt: spring.bindAt,
    looseLeft: spring.looseLeft,
    bindLeft: spring.bindLeft,
    barTwist: twist,
    shaft,
    spans: Object.fromEntries(spans),
    threads,
    isByWeight: spring.isByWeight,
    why,
  };
}

/** What is left of the damper where the wheel stands, rack 0. */
function damperLeft(
  { axle, side }: FitUpCorner,
  standing: number,
  because: (reason: string, ...keys: readonly string[]) => void,
): Pick<StrokeRow, 'bumpLeft' | 'solidLeft' | 'droopLeft'> {
  const none = { bumpLeft: null, solidLeft: null, droopLeft: null };
  const { damper } = axle;
  const span = side.parts.damper;
  const track = startTrack(side.corner);
  const name = axle.axle;
  if (damper === null || span === null) {
    because(damper === null ? 'the file gives no damper' : 'the file gives no points of the damper', ...Object.keys(none));
    return none;
  }
  if (trackCorner(side.corner, track, standing, 0) !== SOLVED) {
    because('the wheel cannot stand there', ...Object.keys(none));
    return none;
  }
  const gone = span.designLength - spanState(span, side.corner, track.motion, 0, null).length + side.adjustment.strutBody;
  const { touch, solid, open } = damperStops(damper, span.designLength);
  if (touch === null) because(`give ${name}.damper its bumpStopAt`, 'bumpLeft');
  if (solid === null) because(`give ${name}.damper its stroke and droopStopAt, or closed`, 'solidLeft');
  if (open === null) because(`give ${name}.damper its droopStopAt, or open`, 'droopLeft');
  return {
    bumpLeft: touch === null ? null : touch - gone,
    solidLeft: solid === null ? null : solid - gone,
    droopLeft: open === null ? null : gone - open,
  };
}
