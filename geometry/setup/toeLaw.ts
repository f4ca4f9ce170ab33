import type { Adjuster } from '../car/mechanism';

/**
 * An adjuster's number as a function of a parameter in which toe is nearly linear: mm for what slides, mm along the slot for
 * a cam (its clock is an arc sine, which ends at 90°), the clock itself for a bushing.
 */
export interface ToeLaw {
  readonly start: number;
  /** first step of the search, in the parameter's unit */
  readonly step: number;
  /** parameters beyond which the law has no setting; null where it has none */
  readonly limits: readonly [number, number] | null;
  /** setting [mm, rad, turns] at a parameter */
  setting(parameter: number): number;
}

export function toeLaw(adjuster: Adjuster): ToeLaw {
  switch (adjuster.kind) {
    case 'slide':
      return { start: 0, step: 0.5, limits: null, setting: (p) => p };
    case 'turnbuckle':
      return { start: 0, step: 0.5, limits: null, setting: (p) => p / adjuster.perTurn };
    case 'perch':
      return { start: 0, step: 0.5, limits: null, setting: (p) => p };
    case 'eccentric-bolt':
    case 'clamp-eccentric':
      return camLaw(adjuster.throw);
    case 'offset-bushing':
      return { start: 0, step: 0.1, limits: [-Math.PI, Math.PI], setting: (p) => p };
  }
}

const camLaw = (reach: number): ToeLaw => ({
  start: 0,
  step: 0.1 * reach,
  limits: [-reach, reach],
  setting: (p) => Math.asin(p / reach),
});
