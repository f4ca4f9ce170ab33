import { scale, subtract, unit, type Vector } from '../../core/vector';
import { knuckleDirection, wheelCentre } from '../../corner/knucklePoint';
import type { Motion } from '../../corner/motion';
import type { Span } from '../../corner/parts';
import { spanState } from '../../readings/spanReadings';
import type { AssembledAxle } from '../../setup/assembleCar';
import type { AssembledSide } from '../../setup/assembleSide';
import type { CarriedLoad } from './carriedLoad';
import { ball, type LinkRow } from './linkRow';

/** A line along which the free travel can be balanced. */
export interface Holder {
  readonly by: 'spring' | 'damper' | 'strut' | 'held';
  readonly ratio: number;
  /** on its carrier, or on the knuckle where it runs along the strut, for a push of 1 N */
  readonly push: Vector;
  readonly at: Vector;
  readonly load: CarriedLoad | null;
  readonly upper: Vector | null;
  readonly names: { readonly upper: string; readonly lower: string };
}

/** A line that shortens less than this per mm of travel holds nothing up. */
const SMALLEST_RATIO = 1e-6;

/** The spring's line, else the damper's, else the strut's: whichever the file gives first and the travel shortens. */
export function holderOf(axle: AssembledAxle, side: AssembledSide, motion: Motion, rack: number): Holder {
  const { corner, parts } = side;
  const { spring, damper } = axle.mechanism;
  const strut = corner.linkage.guide;
  const choices: [Holder['by'], Span | null, { upper: string; lower: string } | null][] = [
    ['spring', parts.spring, spring?.points ?? null],
    ['damper', parts.damper, damper?.points ?? null],
    ['strut', strut === null ? null : { between: 'strut', designLength: 0 }, null],
  ];
  for (const [by, span, points] of choices) {
    if (span === null) continue;
    const state = spanState(span, corner, motion, rack, null);
    if (Math.abs(state.rate) < SMALLEST_RATIO) continue;
    const names = points ?? { upper: 'strutTop', lower: 'strutFoot' };
    const shared = { by, ratio: -state.rate, names };
    if (span.between === 'strut')
      return {
        ...shared,
        push: scale(knuckleDirection(motion, strut!.axis), -1),
        at: strut!.top,
        load: null,
        upper: null,
      };
    const push = unit(subtract(state.lower, state.upper));
    const load = { link: by, carrier: span.lower, at: state.lower, force: push };
    return { ...shared, push, at: state.lower, load, upper: state.upper };
  }
  // nobody holds the wheel: as on a stand under its wheel centre, so that the links still have an answer
  const centre = wheelCentre(motion);
  return {
    by: 'held',
    ratio: 1,
    push: [0, 0, -1],
    at: centre,
    load: null,
    upper: null,
    names: { upper: '', lower: 'wheelCentre' },
  };
}

export function spanRow(holder: Holder, push: number, on: string): LinkRow {
  const force = scale(holder.push, push);
  return {
    link: holder.by,
    kind: holder.by === 'spring' ? 'spring' : 'damper',
    axial: -push,
    ends: [ball(holder.names.upper, 'body', holder.upper!, scale(force, -1)), ball(holder.names.lower, on, holder.at, force)],
    bending: null,
    buckling: null,
    why: { bending: 'pushes along its own line', buckling: 'not a bar' },
  };
}

export function heldRow(holder: Holder, push: number): LinkRow {
  const force = scale(holder.push, push);
  return {
    link: 'held',
    kind: 'held',
    axial: -push,
    ends: [ball('wheelCentre', 'knuckle', holder.at, force), ball('wheelCentre', 'body', holder.at, scale(force, -1))],
    bending: null,
    buckling: null,
    why: { bending: NOTHING_HOLDS, buckling: NOTHING_HOLDS },
  };
}

const NOTHING_HOLDS = 'no part: it stands for the spring that the file does not give';
