import type { Adjuster, AxleMechanism, SideMechanism } from '../car/mechanism';
import type { Seat } from '../car/document';
import { add, ZERO, type Vector } from '../core/vector';
import { clampAngle } from './clampEccentric';
import { eccentricBoltShift } from './eccentricBolt';
import { offsetBushingShift } from './offsetBushing';
import { slideShift } from './slide';
import { turnbuckleChange } from './turnbuckle';

/**
 * What all adjusters of one side do together, at the design position. Displacements of one point add per seat, so the order
 * of the adjusters does not matter.
 */
export interface Adjustment {
  /** point -> displacement [mm], by the body that carries the moved centre */
  readonly shifts: Readonly<Record<Seat, Readonly<Record<string, Vector>>>>;
  /** rod (or "barLink") -> change of length [mm] */
  readonly lengths: Readonly<Record<string, number>>;
  /** turn of the knuckle against the strut [rad, right hand about `axis` through `pivot`] */
  readonly clamp: { readonly pivot: string; readonly axis: Vector; readonly angle: number } | null;
  /** how much shorter the seats make the spring [mm] */
  readonly springSeat: number;
  /** how much the threaded foot shifts the damper's travel [mm] */
  readonly strutBody: number;
}

/** Settings of one side in mm and radians: bushing clocks null where a concentric one is fitted; absent is zero. */
export type Settings = Readonly<Record<string, number | null>>;

/**
 * @param settings - mm for slides, radians for clocks, turns for turnbuckles and perches
 * @param spindle - of this corner at design, outboard: the way of a spacer
 */
export function adjustmentOf(axle: AxleMechanism, side: SideMechanism, spindle: Vector, settings: Settings): Adjustment {
  const shifts: Record<Seat, Record<string, Vector>> = { body: {}, arm: {}, knuckle: {} };
  const lengths: Record<string, number> = {};
  let clamp: Adjustment['clamp'] = null;
  let springSeat = 0;
  let strutBody = 0;
  const shift = (adjuster: { readonly moves: string; readonly seat: Seat }, by: Vector): void => {
    const sameSeat = shifts[adjuster.seat];
    sameSeat[adjuster.moves] = add(sameSeat[adjuster.moves] ?? ZERO, by);
  };
  for (const adjuster of axle.adjusters) {
    const setting = settings[adjuster.name];
    if (setting === undefined || setting === null) continue;
    switch (adjuster.kind) {
      case 'slide':
        shift(adjuster, slideShift(adjuster, setting, spindle));
        break;
      case 'eccentric-bolt':
        shift(adjuster, eccentricBoltShift(adjuster, setting));
        break;
      case 'offset-bushing':
        shift(adjuster, offsetBushingShift(adjuster, setting));
        break;
      case 'clamp-eccentric':
        // at its zero nothing is turned, not even by rounding
        clamp =
          setting === 0
            ? null
            : { pivot: adjuster.pivot, axis: adjuster.axis, angle: clampAngle(adjuster, setting, side.points) };
        break;
      case 'turnbuckle':
        lengths[adjuster.rod] = (lengths[adjuster.rod] ?? 0) + turnbuckleChange(adjuster, setting);
        break;
      case 'perch':
        if (adjuster.moves === 'seat') springSeat += adjuster.perTurn * setting;
        else strutBody += adjuster.perTurn * setting;
        break;
    }
  }
  return { shifts, lengths, clamp, springSeat, strutBody };
}

export type AdjusterOf<Kind extends Adjuster['kind']> = Extract<Adjuster, { kind: Kind }>;
