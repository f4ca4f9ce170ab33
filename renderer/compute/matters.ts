import type { CarDocument } from '../../geometry/index';

/**
 * What a change of a reading must exceed to be worth a word, in contract units, where the car file does not say
 * (`tolerances`, `matters`). Readings without an entry are never named as an effect.
 */
const MATTERS: Readonly<Record<string, number>> = {
  camber: 0.1,
  toe: 0.02,
  caster: 0.5,
  kingpinInclination: 0.75,
  mechanicalTrail: 3,
  scrubRadius: 5,
  rollCentreHeight: 10,
  bumpSteer: 0.002,
  camberGain: 0.005,
  track: 10,
  wheelbaseChange: 5,
  bodyHeight: 2,
  antiDive: 5,
  antiLiftBraking: 5,
  antiLiftDrive: 5,
  antiSquat: 5,
  wheelRate: 2,
};

/** The amount of a reading that counts; undefined where nobody said. */
export const mattersOf = (document: CarDocument, reading: string): number | undefined =>
  document.tolerances?.[reading]?.matters ?? MATTERS[reading];
