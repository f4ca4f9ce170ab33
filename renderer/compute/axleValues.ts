import type { AxleName, CarDocument } from '../../geometry/index';
import { setupNamed } from '../state/settings';
import { mmPerFileUnit } from '../units/fileLength';
import { standingRow } from './standing';

/** What a setup asks of an axle as a whole. */
export type AxleValueName = 'setToe' | 'rideHeight';

/** How they are called while in hand; adjusters have names without a colon. */
export const HELD_AXLE_VALUES: Readonly<Record<AxleValueName, string>> = {
  setToe: 'axle:setToe',
  rideHeight: 'axle:rideHeight',
};

export const heldAxleValue = (held: string): AxleValueName | null =>
  held === HELD_AXLE_VALUES.setToe ? 'setToe' : held === HELD_AXLE_VALUES.rideHeight ? 'rideHeight' : null;

export interface AxleScale {
  /** what a mechanic sets it to */
  readonly step: number;
  readonly range: number;
}

/** Toe in degrees per wheel, heights in millimetres. */
export const AXLE_SCALES: Readonly<Record<AxleValueName, AxleScale>> = {
  setToe: { step: 0.01, range: 5 },
  rideHeight: { step: 1, range: 200 },
};

/** A number inside the scale, to six decimals. */
export const withinScale = (value: number, { range }: AxleScale): number => {
  const within = Math.min(range, Math.max(-range, Number(value.toFixed(6))));
  return within === 0 ? 0 : within;
};

/** The number so many steps on. */
export const steppedAxleValue = (value: number, steps: number, scale: AxleScale): number =>
  withinScale(value + steps * scale.step, scale);

/** What the setup asks for: toe in degrees per wheel, ride height in mm over design; null: nothing. */
export const axleValueOf = (document: CarDocument, setup: string, axle: AxleName, name: AxleValueName): number | null => {
  const value = setupNamed(document, setup)[axle]?.[name];
  if (value === undefined) return null;
  return name === 'rideHeight' ? value * mmPerFileUnit(document) : value;
};

/**
 * Where the first step of a value that is not set begins: toe at what the left wheel has where it stands, to the nearest
 * step, so that setting it does not throw it; the height at design.
 */
export const axleValueFrom = (document: CarDocument, setup: string, axle: AxleName, name: AxleValueName): number => {
  const value = axleValueOf(document, setup, axle, name);
  if (value !== null || name === 'rideHeight') return value ?? 0;
  const toe = standingRow({ document, setup }, axle)?.left['toe'];
  const scale = AXLE_SCALES[name];
  return typeof toe === 'number' ? withinScale(Math.round(toe / scale.step) * scale.step, scale) : 0;
};
