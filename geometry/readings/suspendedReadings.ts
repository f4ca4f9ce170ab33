import type { Damper } from '../car/mechanism';
import { springLoad, type SpringLoad } from '../axle/springLoad';
import type { Acceleration } from '../corner/acceleration';
import { motionAcceleration } from '../corner/acceleration';
import type { Motion } from '../corner/motion';
import type { GroundFrame } from '../axle/ground';
import type { Spring } from '../car/mechanism';
import type { AssembledSide } from '../setup/assembleSide';
import { barState, type BarState } from './barReadings';
import { contactRiseRate, spanState } from './spanReadings';

/** What spring, damper and bar of one corner do at one pose. Null where the file does not say enough. */
export interface SuspendedState {
  readonly springRatio: number | null;
  readonly springTravel: number | null;
  readonly springForce: number | null;
  readonly wheelRate: number | null;
  /** of the spring, at the contact: wheel rate ÷ v_n² and the term of v_n's own change [N/mm] */
  readonly contactRate: number | null;
  readonly damperRatio: number | null;
  readonly damperTravel: number | null;
  readonly bumpLeft: number | null;
  readonly solidLeft: number | null;
  readonly droopLeft: number | null;
  readonly bar: BarState | null;
}

export const NOTHING_SUSPENDED: SuspendedState = {
  springRatio: null,
  springTravel: null,
  springForce: null,
  wheelRate: null,
  contactRate: null,
  damperRatio: null,
  damperTravel: null,
  bumpLeft: null,
  solidLeft: null,
  droopLeft: null,
  bar: null,
};

/** How the force of a spring is known: by its lengths, or by the weight it carries where the car stands. */
export type SpringDatum =
  | { readonly by: 'lengths' }
  | { readonly by: 'weight'; readonly force: number; readonly travel: number }
  | { readonly by: 'nothing' };

export function suspendedState(
  side: AssembledSide,
  spring: Spring | null,
  damper: Damper | null,
  /** [N/mm] */ springRate: number | null,
  datum: SpringDatum,
  motion: Motion,
  rack: number,
  ground: GroundFrame,
  contactRise: number,
): SuspendedState {
  const { corner, parts, adjustment } = side;
  let springRatio: number | null = null;
  let springTravel: number | null = null;
  let springForce: number | null = null;
  let wheelRate: number | null = null;
  let contactRate: number | null = null;
  if (parts.spring !== null && spring !== null) {
    const wantsRate = springRate !== null && datum.by !== 'nothing';
    const second: Acceleration | null = wantsRate ? motionAcceleration(corner, motion, rack) : null;
    const state = spanState(parts.spring, corner, motion, rack, second);
    springRatio = -state.rate;
    springTravel = parts.spring.designLength - state.length;
    if (second !== null && springRate !== null) {
      const load = loadOf(spring, springRate, datum, springTravel, adjustment.springSeat);
      springForce = load.force;
      wheelRate = load.rate * springRatio * springRatio - load.force * state.rate2;
      const riseRate = contactRiseRate(corner, motion, ground.normal, second);
      const atWheel = load.force * springRatio;
      contactRate = wheelRate / (contactRise * contactRise) - (atWheel * riseRate) / (contactRise * contactRise * contactRise);
    }
  }
  let damperRatio: number | null = null;
  let damperTravel: number | null = null;
  let stops: DamperStops = NO_STOPS;
  if (parts.damper !== null && damper !== null) {
    const state = spanState(parts.damper, corner, motion, rack, null);
    damperRatio = -state.rate;
    damperTravel = parts.damper.designLength - state.length + adjustment.strutBody;
    stops = damperStops(damper, parts.damper.designLength);
  }
  const left = (stop: number | null): number | null => (stop === null || damperTravel === null ? null : stop - damperTravel);
  return {
    springRatio,
    springTravel,
    springForce,
    wheelRate,
    contactRate,
    damperRatio,
    damperTravel,
    bumpLeft: left(stops.touch),
    solidLeft: left(stops.solid),
    droopLeft: stops.open === null || damperTravel === null ? null : damperTravel - stops.open,
    bar: parts.bar === null ? null : barState(parts.bar, corner, motion, rack),
  };
}

function loadOf(spring: Spring, rate: number, datum: SpringDatum, travel: number, seat: number): SpringLoad {
  if (datum.by === 'weight') {
    const force = datum.force + rate * (travel - datum.travel);
    return force > 0 ? { force, rate } : { force: 0, rate: 0 };
  }
  return springLoad(spring, rate, spring.installed! - travel - seat);
}

/** Damper travels at which it first touches its bump rubber, is solid, and is fully open [mm, + shorter]. */
export interface DamperStops {
  readonly touch: number | null;
  readonly solid: number | null;
  readonly open: number | null;
}

const NO_STOPS: DamperStops = { touch: null, solid: null, open: null };

/** From `stroke` and `droopStopAt`, or from the eye-to-eye lengths `open` and `closed`. @param designLength - [mm] */
export function damperStops(damper: Damper, designLength: number): DamperStops {
  const open = damper.open !== null ? designLength - damper.open : damper.droopStopAt !== null ? -damper.droopStopAt : null;
  const solid =
    damper.closed !== null ? designLength - damper.closed : damper.stroke !== null && open !== null ? open + damper.stroke : null;
  return { touch: damper.bumpStopAt, solid, open };
}
