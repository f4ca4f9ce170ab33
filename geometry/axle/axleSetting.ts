import type { AxleName } from '../car/document';
import { SOLVED } from '../corner/motion';
import { startTrack, trackCorner } from '../corner/solveCorner';
import { spanState } from '../readings/spanReadings';
import type { PerSide } from '../readings/rows';
import type { SpringDatum } from '../readings/suspendedReadings';
import type { AssembledCar } from '../setup/assembleCar';
import type { AssembledSide } from '../setup/assembleSide';
import { barHoleOf } from '../setup/cornerParts';
import { carMasses, GRAVITY, type AxleMasses, type CarMasses } from './masses';

/** Rates and loads of one axle in one setup: what the readings of springs and bar need beside the poses. */
export interface AxleSetting {
  readonly masses: CarMasses | null;
  readonly own: AxleMasses | null;
  /** [N/mm] */
  readonly springRate: number | null;
  readonly springDatum: PerSide<SpringDatum>;
  /** per arm end, per mm of it with the other held [N/mm] */
  readonly barRate: PerSide<number | null>;
  readonly wheelbase: number | null;
}

/** @param withSprings - false: nobody asks for what springs carry, which costs a pose of each side */
export function axleSetting(car: AssembledCar, name: AxleName, withSprings = true): AxleSetting {
  const axle = car[name]!;
  const { spring, bar } = axle.mechanism;
  const masses = carMasses(car.mechanism);
  const springRate = axle.setup?.springRate ?? spring?.rate ?? null;
  const datum = (side: 'left' | 'right'): SpringDatum => {
    if (!withSprings || spring === null || springRate === null) return { by: 'nothing' };
    if (spring.installed !== null && spring.freeLength !== null) return { by: 'lengths' };
    return masses === null ? { by: 'nothing' } : springByWeight(axle[side], axle.standing[side], masses[name].sprung[side]);
  };
  const barRate = (side: 'left' | 'right'): number | null => {
    if (bar === null) return null;
    const rate = axle.setup?.barRate ?? bar.rate;
    const hole = barHoleOf(bar, side, axle.setup);
    if (hole === null) return rate;
    if (hole.rate !== null && axle.setup?.barRate === undefined) return hole.rate;
    if (rate === null) return null;
    const arm = armLength(bar.pivot, bar.armEnd, bar.axis) / armLength(bar.pivot, hole.armEnd, bar.axis);
    return rate * arm * arm;
  };
  return {
    masses,
    own: masses?.[name] ?? null,
    springRate,
    springDatum: { left: datum('left'), right: datum('right') },
    barRate: { left: barRate('left'), right: barRate('right') },
    wheelbase: car.mechanism.wheelbase,
  };
}

function armLength(
  pivot: readonly [number, number, number],
  end: readonly [number, number, number],
  axis: readonly [number, number, number],
): number {
  const d = [end[0] - pivot[0], end[1] - pivot[1], end[2] - pivot[2]];
  const along = d[0] * axis[0] + d[1] * axis[1] + d[2] * axis[2];
  return Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2] - along * along);
}

/** Without lengths the spring is taken to carry its sprung corner where the car stands: force = weight ÷ springRatio there. */
function springByWeight(side: AssembledSide, standing: number, sprung: number): SpringDatum {
  const span = side.parts.spring;
  if (span === null) return { by: 'nothing' };
  const track = startTrack(side.corner);
  if (trackCorner(side.corner, track, standing, 0) !== SOLVED) return { by: 'nothing' };
  const state = spanState(span, side.corner, track.motion, 0, null);
  const ratio = -state.rate;
  if (!(Math.abs(ratio) > 1e-6)) return { by: 'nothing' };
  return { by: 'weight', force: (sprung * GRAVITY) / ratio, travel: span.designLength - state.length };
}
