import { findReading } from '../readings/catalogue';
import type { CarDocument, ToleranceDocument } from './document';

const MM_PER_INCH = 25.4;

/**
 * What a mechanic holds (`set`) and what a side effect must exceed to count (`matters`), in contract units, where the car file
 * does not say. Invented, to be edited in the file.
 */
const DEFAULTS: Readonly<Record<string, ToleranceDocument>> = {
  camber: { set: 0.1, matters: 0.1 },
  toe: { set: 0.02, matters: 0.02 },
  caster: { set: 0.15, matters: 0.5 },
  kingpinInclination: { matters: 0.75 },
  mechanicalTrail: { matters: 3 },
  scrubRadius: { matters: 5 },
  rollCentreHeight: { matters: 10 },
  bumpSteer: { matters: 0.002 },
  camberGain: { matters: 0.005 },
  track: { matters: 10 },
  wheelbaseChange: { matters: 5 },
  wheelbaseLeft: { matters: 5 },
  wheelbaseRight: { matters: 5 },
  bodyHeight: { set: 1, matters: 2 },
  antiDive: { matters: 5 },
  antiLiftBraking: { matters: 5 },
  antiLiftDrive: { matters: 5 },
  antiSquat: { matters: 5 },
  wheelRate: { matters: 2 },
};

/** The change of a reading that counts, in contract units; undefined where neither the file nor the defaults say. */
export const mattersOf = (document: CarDocument, reading: string): number | undefined =>
  given(document, reading, 'matters') ?? DEFAULTS[reading]?.matters;

/** How near to its target a reading is set, in contract units; undefined where neither the file nor the defaults say. */
export const setWithin = (document: CarDocument, reading: string): number | undefined =>
  given(document, reading, 'set') ?? DEFAULTS[reading]?.set;

/** What the file says: lengths in its own unit, all else as it is. */
function given({ tolerances, units }: CarDocument, reading: string, key: keyof ToleranceDocument): number | undefined {
  const value = tolerances?.[reading]?.[key];
  if (value === undefined || units?.length !== 'in') return value;
  return findReading(reading)?.quantity === 'length' ? value * MM_PER_INCH : value;
}
