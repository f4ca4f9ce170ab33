import type { CarDocument, ToleranceDocument } from './document';

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

/** The change of a reading that counts; undefined where neither the file nor the defaults say. */
export const mattersOf = (document: CarDocument, reading: string): number | undefined =>
  document.tolerances?.[reading]?.matters ?? DEFAULTS[reading]?.matters;

/** How near to its target a reading is set; undefined where neither the file nor the defaults say. */
export const setWithin = (document: CarDocument, reading: string): number | undefined =>
  document.tolerances?.[reading]?.set ?? DEFAULTS[reading]?.set;
