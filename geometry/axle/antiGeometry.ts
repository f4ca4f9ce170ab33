/**
 * Anti-dive and its kin, in per cent: the part of the load transfer that the links carry.
 * @see textbook relations (T. D. Gillespie, Fundamentals of Vehicle Dynamics, 1992, ch. 7; Milliken & Milliken, ch. 17); from memory
 */
export interface AntiGeometry {
  /** share of the braking or driving force at this axle, 0…1 */
  readonly share: number;
  /** [mm] */
  readonly wheelbase: number;
  /** of the centre of gravity over the ground [mm] */
  readonly height: number;
}

/** Front: + slope × share × L / h × 100 %. @param slope - of contact centre (braking) or wheel centre (drive), + forward in bump */
export const frontAnti = (slope: number, { share, wheelbase, height }: AntiGeometry): number =>
  100 * slope * share * (wheelbase / height);

/** Rear: the same with the sign turned. */
export const rearAnti = (slope: number, anti: AntiGeometry): number => -frontAnti(slope, anti);
