import { findSetup, sweptSpace, toMechanism, type CarDocument } from '../../geometry/index';

/** A row of the bench. */
export interface KeepOutRow {
  readonly name: string;
  readonly units: number;
  readonly runs: number;
  readonly work: () => unknown;
}

/** The space that a steered wheel sweeps over all travel and lock of one setup, as a closed mesh within 2 mm, and within 1 mm. */
export const keepOutBench = (hatch: CarDocument): readonly KeepOutRow[] =>
  [2, 1].map((bound) => keepOutRow(`keep-out of a wheel, ${bound} mm`, hatch, bound));

function keepOutRow(name: string, hatch: CarDocument, bound: number): KeepOutRow {
  const mechanism = toMechanism(hatch);
  const setups = [['Baseline', findSetup(hatch, 'Baseline')]] as const;
  return {
    name,
    units: 1,
    runs: 3,
    work: () => {
      const made = sweptSpace(mechanism, { axles: ['front'], sides: ['left'], setups, of: ['tyreFront'], grow: 0, bound });
      if (!('mesh' in made)) throw new Error('no mesh was made');
    },
  };
}
