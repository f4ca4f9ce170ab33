import { axleSetting } from '../../axle/axleSetting';
import { SOLVED } from '../../corner/motion';
import { startTrack, trackCorner, type Track } from '../../corner/solveCorner';
import { spanState } from '../../readings/spanReadings';
import type { AssembledSide } from '../../setup/assembleSide';
import type { FitUpCorner } from '../corners';

/** Wheel travels from design [mm], rack 0, within the envelope: null where it does not happen, or is not known, with the reason in `why`. */
export interface SpringStops {
  /** at this travel and below the spring is loose */
  readonly looseAt: number | null;
  /** at this travel and above its coils touch */
  readonly bindAt: number | null;
  /** of the spring [mm]: until it would be loose with the damper open, until its coils would touch with it solid; null where it is so, or is not known */
  readonly looseLeft: number | null;
  readonly bindLeft: number | null;
  /** the spring's lengths are not given: it is taken to carry its corner where the car stands */
  readonly isByWeight: boolean;
  readonly why: Readonly<Record<string, string>>;
}

/** Positions between open and solid at which the spring is looked at first. */
const STEPS = 40;

/** Where in its travel a spring is loose and where its coils touch. */
export function springStops(corner: FitUpCorner): SpringStops {
  const { car, axle, side, envelope, missing } = corner;
  const { spring } = axle;
  const none = (why: string): SpringStops => ({
    looseAt: null,
    bindAt: null,
    looseLeft: null,
    bindLeft: null,
    isByWeight: false,
    why: { looseAt: why, bindAt: why },
  });
  if (spring === null) return none('the file gives no spring');
  if (side.parts.spring === null) return none('the file gives no points of the spring');
  if (envelope === null) return none(missing ?? '');
  const { name, open, solid } = { name: axle.axle, ...envelope };
  const setting = axleSetting(car, name);
  const datum = setting.springDatum[side.mechanism.side];
  const seat = side.adjustment.springSeat;
  const why: Record<string, string> = {};
  const shortest = (free: number, helper: number | undefined): number => spring.installed! - seat - free - (helper ?? 0);
  // how much shorter than at design the spring is where it comes loose, and where it binds
  let loose: number | null = null;
  let bound: number | null = null;
  if (spring.installed !== null && spring.freeLength !== null) loose = shortest(spring.freeLength, spring.helper?.freeLength);
  else if (datum.by === 'weight' && setting.springRate !== null) loose = datum.travel - datum.force / setting.springRate;
  else why['looseAt'] = `give ${name}.spring its freeLength and installed length`;
  if (spring.installed !== null && spring.solidLength !== null) bound = shortest(spring.solidLength, spring.helper?.solidLength);
  else why['bindAt'] = `give ${name}.spring its solidLength and installed length`;
  const squeeze = squeezes(side, open, solid);
  const looseAt = loose === null ? null : highest(squeeze, loose);
  const bindAt = bound === null ? null : lowest(squeeze, bound);
  const looseLeft = loose !== null && looseAt === null ? squeeze.at(open) - loose : null;
  const bindLeft = bound !== null && bindAt === null ? bound - squeeze.at(solid) : null;
  if (looseLeft !== null) why['looseAt'] = `it is not loose anywhere: ${mmOf(looseLeft)} are left with the damper open`;
  if (bindLeft !== null) why['bindAt'] = `it does not bind: ${mmOf(bindLeft)} are left with the damper solid`;
  return { looseAt, bindAt, looseLeft, bindLeft, isByWeight: loose !== null && spring.freeLength === null, why };
}

const mmOf = (value: number): string => `${value.toFixed(1)} mm`;

interface Squeeze {
  /** how much shorter than at design, with no adjuster, the spring is [mm]; NaN where the links do not reach */
  readonly at: (travel: number) => number;
  readonly travels: readonly number[];
}

function squeezes(side: AssembledSide, open: number, solid: number): Squeeze {
  const span = side.parts.spring!;
  const track: Track = startTrack(side.corner);
  return {
    travels: Array.from({ length: STEPS + 1 }, (_, i) => (i === STEPS ? solid : open + ((solid - open) * i) / STEPS)),
    at: (travel) =>
      trackCorner(side.corner, track, travel, 0) === SOLVED
        ? span.designLength - spanState(span, side.corner, track.motion, 0, null).length
        : NaN,
  };
}

/** The highest travel at which the spring is no shorter than this; null: nowhere. */
function highest({ at, travels }: Squeeze, squeeze: number): number | null {
  for (let i = travels.length - 1; i >= 0; i--)
    if (at(travels[i]) <= squeeze)
      return i === travels.length - 1 ? travels[i] : between(at, squeeze, travels[i], travels[i + 1]);
  return null;
}

/** The lowest travel at which the spring is as short as this; null: nowhere. */
function lowest({ at, travels }: Squeeze, squeeze: number): number | null {
  for (let i = 0; i < travels.length; i++)
    if (at(travels[i]) >= squeeze) return i === 0 ? travels[i] : between(at, squeeze, travels[i - 1], travels[i]);
  return null;
}

/** By halving: the spring is longer than asked at `low`, or just so, and shorter at `high`. */
function between(at: Squeeze['at'], squeeze: number, low: number, high: number): number {
  let [longer, shorter] = [low, high];
  while (shorter - longer > 1e-10) {
    const middle = 0.5 * (longer + shorter);
    if (middle === longer || middle === shorter) break;
    if (at(middle) <= squeeze) longer = middle;
    else shorter = middle;
  }
  return 0.5 * (longer + shorter);
}
