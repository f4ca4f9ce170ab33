import { GRAVITY } from './masses';

/** One axle of a car in steady cornering, lengths in mm. */
export interface AxleInRoll {
  /** [kg] */
  readonly sprung: number;
  readonly unsprung: number;
  /** of the unsprung mass over the ground */
  readonly unsprungHeight: number;
  readonly rollCentreHeight: number;
  readonly track: number;
  /** [N·m/rad] */
  readonly stiffness: number;
}

/**
 * Roll of the body per g of lateral acceleration [rad/g]: m g d / (K − m g d), d the distance of the sprung mass's centre of
 * gravity over the roll axis. The second term is the weight that leans out.
 * @param sprung - [kg]
 * @param arm - d [mm]
 * @param stiffness - of both axles [N·m/rad]
 * @returns null where the stiffness does not hold the car upright
 * @see D. C. Barton, J. D. Fieldhouse, Automotive Chassis Engineering, 2018, pp. 173–174 (worked example)
 */
export function rollGradient(sprung: number, arm: number, stiffness: number, gravity = GRAVITY): number | null {
  const tilt = (sprung * gravity * arm) / 1000;
  return stiffness > tilt ? tilt / (stiffness - tilt) : null;
}

/** Lateral load transfer of an axle per g [N]: through the roll centre, through springs and bar, and of the wheels themselves. */
export function loadTransfers(
  axle: AxleInRoll,
  gradient: number,
  gravity = GRAVITY,
): { readonly geometric: number; readonly elastic: number; readonly unsprung: number } {
  return {
    geometric: (axle.sprung * gravity * axle.rollCentreHeight) / axle.track,
    elastic: (1000 * axle.stiffness * gradient) / axle.track,
    unsprung: (axle.unsprung * gravity * axle.unsprungHeight) / axle.track,
  };
}

/** Natural frequency of a sprung mass on its wheel rates [Hz]. @param rate - N/mm */
export const rideFrequency = (rate: number, mass: number): number => Math.sqrt((1000 * rate) / mass) / (2 * Math.PI);
